// Formulas as a plan writes them: `max(range(bore over height) over direction)`. Parsed once,
// checked against kinds and shapes, and evaluated on arrays. Offsets are characters from the start
// of the text, from 0.
#pragma once
#include <standbook/value/array.h>
#include <standbook/value/unit.h>

enum { FORMULA_DEPTH = 64, FORMULA_LENGTH = 1024 };

typedef struct Formula Formula;

// NULL, STANDBOOK_ERROR_MISUSE and the offset of the fault in *offset (NULL allowed) if the text
// is no formula. A number without a unit is a pure number.
Formula *formula_parse(const char *text, gsize *offset, GError **error) G_GNUC_WARN_UNUSED_RESULT;
Formula *formula_copy(const Formula *formula) G_GNUC_WARN_UNUSED_RESULT;
void formula_free(Formula *formula); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Formula, formula_free)

const char *formula_text(const Formula *formula);
// Gives the unit to every number without one that stands as a whole term of the result: `75`,
// `60 + run-down torque`, `min(5, x)`; not to a factor (`2 * x`).
void formula_give_unit(Formula *formula, const Unit *unit);
// The last unit written at such a term, but this one (NULL: any), and the most decimals; NULL and 0
// if there are none. The unit lives as long as the formula.
const Unit *formula_term_unit(const Formula *formula, const Unit *but);
// The first number at such a term without a unit, as digits, and the offset in the formula at which
// it stands (characters, from 0); NULL if there is none. The caller frees with g_free.
char *formula_bare_term(const Formula *formula, gsize *offset) G_GNUC_WARN_UNUSED_RESULT;
// The first unit written at such a term: the one in which the whole is said. NULL if there is none;
// it lives as long as the formula.
const Unit *formula_first_unit(const Formula *formula);
guint formula_term_decimals(const Formula *formula);
// Whether any number in it has a unit.
gboolean formula_has_unit(const Formula *formula);
// One unit of the last place typed, of the number typed most coarsely among those with digits
// behind a point or a fraction (whole numbers count only if all are), and with a unit if any has
// one. In base units. The caller frees.
Number *formula_place(const Formula *formula) G_GNUC_WARN_UNUSED_RESULT;
// The value in base units if the formula uses no names, else NULL. The caller frees.
Number *formula_constant(const Formula *formula) G_GNUC_WARN_UNUSED_RESULT;

// The names used, each once, in order of appearance, with the offset of the first use.
gsize formula_name_count(const Formula *formula);
const char *formula_name(const Formula *formula, gsize index);
gsize formula_name_offset(const Formula *formula, gsize index);
// Whether the name is used at all.
gboolean formula_uses(const Formula *formula, const char *name);
// Whether it takes that label of the name alone somewhere: `length[tight]`, `length[state tight]`.
gboolean formula_picks(const Formula *formula, const char *name, const char *label);
// One term of a sum: `- pick-up depth`. The text of its formula is what was written of it.
typedef struct {
    gboolean subtracted;
    Formula *formula; // to be worked out with the `first_doubt` of the whole
} FormulaTerm;

// The terms (FormulaTerm) of a formula in the order written: `a - b + c` has three, `a - (b + c)`
// two; what is no sum is its only one. The caller frees with g_array_unref.
GArray *formula_terms(const Formula *formula) G_GNUC_WARN_UNUSED_RESULT;

// How many ± the formula itself writes; each is a source of its own in the weights.
guint formula_doubt_count(const Formula *formula);

// What a formula is worked out with. The functions get `user`.
typedef struct {
    // The kind of a name. FALSE if there is nothing of that name.
    gboolean (*kind)(const char *name, Kind *kind, gpointer user);
    // The value of a name, a new reference for the evaluation to free. NULL if there is nothing of
    // that name. For a check of the shape alone an array with all places open will do.
    Array *(*value)(const char *name, gpointer user);
    // All names there are, NULL-terminated, for suggestions; NULL for none.
    const char *const *names;
    ArrayVariance variance; // see array.h; may be NULL
    // The formula's first ± has this source, the next one less: give every formula that can meet
    // another its own run below 0.
    gint first_doubt;
    gpointer user;
} FormulaContext;

// The sentence for a name that is not there, with what may have been meant: a near name, or a minus
// without spaces (`bore-skirt`). `names` is NULL-terminated, or NULL. The caller frees.
char *formula_unknown_name(const char *name, const char *const *names) G_GNUC_WARN_UNUSED_RESULT;

// The kind of the result. FALSE, an error and its offset when a name is unknown, kinds do not fit
// (`bore - 89`), or a root has no kind.
gboolean formula_kind(const Formula *formula, const FormulaContext *context, Kind *kind,
                      gsize *offset, GError **error);
// The value, in base units. NULL, an error and its offset when a name is unknown or axes do not
// fit. Places that cannot be worked out are open, with a note.
Array *formula_evaluate(const Formula *formula, const FormulaContext *context, gsize *offset,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
