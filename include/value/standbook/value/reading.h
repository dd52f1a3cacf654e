// One reading as typed at the bench: `59.790`, `-0.02`, `17/32 in`, `2 5/8"`, `<0.03`, `>0.25 mm`.
#pragma once
#include <standbook/value/unit.h>

typedef enum {
    BOUND_NONE,
    BOUND_BELOW, // `<0.03`: the true value is below the number
    BOUND_ABOVE, // `>0.25`: the true value is above the number
} Bound;

typedef struct {
    Number *number; // in the unit below, as typed
    Number *value;  // in base units
    Number *place;  // one unit of the last place typed, in base units: the graduation implied
    Number *doubt;  // the ± typed (expanded uncertainty, k = 2), in base units; NULL for none
    Unit *unit;     // NULL for a pure number
    char *typed;    // what was typed, without blanks around it
    guint decimals; // typed behind the point
    Bound bound;
} Reading;

// Reads one reading. A number without a unit has `unit` (NULL: a pure number); a unit typed must be
// of the same kind. On failure FALSE, with STANDBOOK_ERROR_MISUSE and the column of the fault in
// *offset (characters from the start of `text`, from 0; NULL allowed). On TRUE the caller clears
// *reading with reading_clear.
gboolean reading_parse(const char *text, const Unit *unit, Reading *reading, gsize *offset,
                       GError **error);
void reading_clear(Reading *reading);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Reading, reading_clear)

// Whether a number begins at `text` (UTF-8), in any of the spellings that reading_parse knows.
gboolean reading_begins(const char *text);
// The bytes of the number, without sign and unit, at the start of `text` (UTF-8), where other words
// may follow: `2⅝` in `2⅝ in with G01`. FALSE and the bytes before the fault in *offset if it is
// none.
gboolean reading_span(const char *text, gsize *length, gsize *offset, GError **error);
