// Where the signs and words stand in a text by which limits are more than one number (limits.c).
#pragma once
#include <glib.h>

typedef struct {
    const char *at; // NULL: it is not there
    gsize length;   // in bytes
} Mark;

// The first of the marks that is in the text; they end with NULL.
Mark mark_find(const char *text, const char *const marks[]);
// `..`, `...` or `…` between two limits. *doubtful if a third point could be that of the second
// limit: `0.1...5`; in `.1...5` it is, as the first is written so.
Mark mark_dots(const char *text, gboolean *doubtful);
// The hyphen or dash of `0.03-0.065 mm`: behind a number, perhaps with its unit, and before another
// number; a fraction such as `2-5/8` is one number.
Mark mark_dash(const char *text);

// `80 +0.02/-0.01 mm`: without the sign of a plus.
typedef struct {
    Mark middle, one, other;
} Deviations;

// Two deviations behind a number; each has a sign in front of its digits, or is 0.
gboolean mark_deviations(const char *text, const char *end, Deviations *deviations);
// Whether the text is one number and perhaps its unit; *unit is whether it has one.
gboolean mark_quantity(const char *start, const char *end, gboolean *unit);
// The hyphen or dash, with the blanks around it, between two such texts: `1/2 - 3/4 in`. No place
// if there is more than one, or none.
Mark mark_between(const char *start, const char *end);
// What parts the limits of `between 0.03 and 0.065` or `0.03 to 0.065`, and of `min 0.03 max 0.06`:
// *start then goes behind the word in front.
Mark mark_words(const char **start);
Mark mark_both(const char **start);
// A copy in which a decimal comma, the only mark of its number and outside of brackets, is a point.
char *mark_points(const char *start, const char *end) G_GNUC_WARN_UNUSED_RESULT;
