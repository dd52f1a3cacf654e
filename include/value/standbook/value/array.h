// A value with named axes: at each place an exact number, or open, or not needed, with what it came
// from: the first-order weight of every reading in it, and the doubts it inherits.
// The shape is row-major: the last axis runs fastest. An array without axes has one place.
#pragma once
#include <standbook/value/axis.h>
#include <standbook/value/number.h>
#include <standbook/value/reading.h>

typedef enum {
    PLACE_OPEN, // not read, or an input is missing
    PLACE_VALUE,
    PLACE_NOT_NEEDED,
} PlaceState;

// How strongly one source moves a value: d value / d source, at the value read (JCGM 100:2008,
// 5.1.3). `source` is the caller's id of a reading (0 and up), or of a constant's ± (below 0).
typedef struct {
    gint source;
    Number *weight;
    Number *doubt; // the constant's expanded uncertainty U (k = 2) in base units; NULL: a reading
} Weight;

// The readings that an open place waits for, as far as they were told (array_set_awaited).
typedef struct Awaited Awaited;

typedef struct {
    PlaceState state;
    Number *value;    // in base units; NULL unless state is PLACE_VALUE
    Bound bound;      // `<` or `>` the value
    guint32 doubts;   // the caller's flags, or-ed over everything used
    gint64 cause; // the caller's word for why: of everything used the greatest, 0 if none has one
    GArray *weights;  // of Weight, by source ascending, none twice; NULL when there are none
    guint read;       // readings used that are there …
    guint asked;      // … of those needed: `3 of 6 read`
    const char *note; // why a place is open though everything is read (`divided by 0`), or NULL
    Awaited *awaits;  // of an open place, see place_awaited; else NULL
} Place;

typedef struct Array Array;

enum { ARRAY_LIMIT = 100000 }; // most places of one array

// All places open. `axes` are copied (shared); names differ from one another. NULL if there would
// be more than ARRAY_LIMIT places.
Array *array_new(const Axis *const *axes, gsize count) G_GNUC_WARN_UNUSED_RESULT;
// No axes, one value, nothing in it to doubt.
Array *array_constant(const Number *value) G_GNUC_WARN_UNUSED_RESULT;
Array *array_copy(const Array *array) G_GNUC_WARN_UNUSED_RESULT;
// The same values in an array that nobody shares, for filling. The caller frees.
Array *array_own(const Array *array) G_GNUC_WARN_UNUSED_RESULT;
void array_free(Array *array); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Array, array_free)

// Filling: a reading of weight 1 under the id `source`, an inherited doubt, or not needed.
void array_set_reading(Array *array, gsize place, const Number *value, Bound bound, gint source,
                       guint32 doubts);
// A constant with its ± (U, k = 2, base units; NULL for none) under an id below 0.
void array_set_constant(Array *array, gsize place, const Number *value, const Number *doubt,
                        gint source);
void array_set_not_needed(Array *array, gsize place);
void array_set_open(Array *array, gsize place, const char *note); // note: static text or NULL
// Open for want of the reading `source`: what is worked out of the place waits for it.
void array_set_awaited(Array *array, gsize place, gint source);
// Adds an independent ± (U, k = 2, base units) to a place that holds a value or a bound of one. Its
// source lies below those of all that the value has.
void array_add_doubt(Array *array, gsize place, const Number *doubt, gint source);
// Replaces the doubts, or their cause, of a place that holds a value.
void array_set_doubts(Array *array, gsize place, guint32 doubts);
void array_set_cause(Array *array, gsize place, gint64 cause);

gsize array_axis_count(const Array *array);
const Axis *array_axis(const Array *array, gsize index);
gssize array_find_axis(const Array *array, const char *name); // -1 if it is not there
gsize array_size(const Array *array);                         // number of places, 1 without axes
const Place *array_place(const Array *array, gsize place);
// Adds the sources (gint) told of all that the place waits for, each place told once, in the order
// in which the formula uses them; whether it comes to a value does not matter. Each step takes one
// off *work; FALSE, with some of them added, when that is used up.
gboolean place_awaited(const Place *place, GArray *sources, guint64 *work);
// Place from one label index per axis, and back; `indices` has array_axis_count entries.
gsize array_index(const Array *array, const gsize *indices);
void array_indices(const Array *array, gsize place, gsize *indices);
// The place in words, as the screen and the sheets name it: `main 3, front`. The axis is named
// where its label starts with a digit or stands on another axis too; empty without axes. The
// caller frees.
char *array_place_text(const Array *array, gsize place) G_GNUC_WARN_UNUSED_RESULT;
// The place so named: one pick per axis, in any order (`3, front`, `main 3, front`). -1 and
// STANDBOOK_ERROR_MISUSE if a pick does not fit or an axis is left out.
gssize array_find_place(const Array *array, const char *words, GError **error);
// What lining up left out because one side lacked the label, in words (`cylinder 4, cylinder 5`);
// NULL if nothing.
const char *array_dropped(const Array *array);

typedef enum { ARRAY_ADD, ARRAY_SUBTRACT, ARRAY_MULTIPLY, ARRAY_DIVIDE } ArrayOperation;

typedef enum {
    FOLD_MIN,
    FOLD_MAX,
    FOLD_MEAN,
    FOLD_RANGE,
    FOLD_SUM,
} Fold;

// The variance u² of a place, asked only to settle a tie of min, max or range for the larger doubt.
// The caller of it frees the number. NULL as a function: the first wins.
typedef Number *(*ArrayVariance)(const Place *place, gpointer user);

// Lines axes up by name and label, repeats over a missing axis; result axes in order of first
// appearance, labels in the order of the first that has the axis. NULL and an error when an axis of
// both has no label in common.
Array *array_combine(ArrayOperation operation, const Array *one, const Array *other,
                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
Array *array_negate(const Array *array) G_GNUC_WARN_UNUSED_RESULT;
Array *array_abs(const Array *array) G_GNUC_WARN_UNUSED_RESULT;
Array *array_sqrt(const Array *array) G_GNUC_WARN_UNUSED_RESULT;
Array *array_power(const Array *array, gint exponent) G_GNUC_WARN_UNUSED_RESULT; // -9 to 9
// Folds the named axes (count 0: all). NULL and an error when one of them is not there.
Array *array_fold(Fold fold, const Array *array, const char *const *axes, gsize count,
                  ArrayVariance variance, gpointer user, GError **error) G_GNUC_WARN_UNUSED_RESULT;
// Folds several values place by place, lined up like array_combine.
Array *array_fold_several(Fold fold, const Array *const *arrays, gsize count,
                          ArrayVariance variance, gpointer user,
                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
// `words` is a pick of a formula: a label alone when one axis only has it, or `axis label`; the
// axis falls away. Or `axis - 1`, `axis + 1`: the place n holds n-1 or n+1, places without a
// neighbour fall away.
Array *array_pick(const Array *array, const char *words, GError **error) G_GNUC_WARN_UNUSED_RESULT;
