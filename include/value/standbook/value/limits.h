// What a check is judged against, as a person names it anywhere: `0.050..0.080` (`0.050 to 0.080`,
// `0.050-0.080`, `0.050...0.080`, `between 0.050 and 0.080`), `8 ± 2 °`, `80 +0.02 -0.01 mm` (two
// deviations, in either order), `at least 90 %` (`min 90 %`, `90 % min`, `>= 90 %`, `> 90 %`),
// `at most 0.05` (`max 0.05`, `0.05 mm max`, `<= 0.05`, `< 0.05`), `any`, `mm`, `exactly 4` (`= 4`),
// `yes`, `no`, `text`, `dry of dry/damp/wet`. A limit itself is inside. A comma before a digit is a
// decimal comma.
#pragma once
#include <standbook/value/formula.h>

typedef enum {
    LIMITS_VALUE,  // a lower limit, an upper one, or both: formulas
    LIMITS_ANY,    // a value without limits
    LIMITS_COUNT,  // `exactly 4`
    LIMITS_ANSWER, // yes, no, or one of some choices
    LIMITS_TEXT,   // words, any
} LimitsForm;

typedef struct Limits Limits;

// NULL, STANDBOOK_ERROR_MISUSE and the offset of the fault (characters, from 0) in *offset if the
// text is no limits. A bare number has the last unit of the line, else `unit` (may be NULL). Limits
// that are both constant and upside down are an error too.
Limits *limits_parse(const char *text, const Unit *unit, gsize *offset,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
// Whether a text that is no limits, but one number, could be meant as two limits: a number less
// another one, as in `0.06 - 0.01 mm`.
gboolean limits_could_be_two(const char *text);
Limits *limits_copy(const Limits *limits) G_GNUC_WARN_UNUSED_RESULT;
void limits_free(Limits *limits); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Limits, limits_free)

LimitsForm limits_form(const Limits *limits);
const char *limits_text(const Limits *limits); // as written
// LIMITS_VALUE: NULL for a side without a limit. Owned by the limits.
const Formula *limits_lower(const Limits *limits);
const Formula *limits_upper(const Limits *limits);
// The unit written, or else the default handed in; NULL for a pure number or none.
const Unit *limits_unit(const Limits *limits);
gboolean limits_has_unit(const Limits *limits); // one was written
guint limits_decimals(const Limits *limits);    // the most decimals written
gulong limits_count(const Limits *limits);      // LIMITS_COUNT
// LIMITS_ANSWER: the answer wanted, and all that may be given (NULL-terminated), that one among
// them.
const char *limits_wanted(const Limits *limits);
const char *const *limits_choices(const Limits *limits);
