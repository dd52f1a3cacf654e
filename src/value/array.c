#include "awaited.h"
#include "place.h"
#include "shape.h"
#include <standbook/base/error.h>
#include <string.h>

static void place_destroy(gpointer data)
{
    place_clear(data);
}

Array *array_new(const Axis *const *axes, gsize count)
{
    gsize size = 1;
    for (gsize i = 0; i < count; i++) {
        size *= axis_size(axes[i]);
        if (size > ARRAY_LIMIT) {
            return NULL;
        }
    }
    Array *array = g_new0(Array, 1);
    array->references = 1;
    array->axes = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    for (gsize i = 0; i < count; i++) {
        g_ptr_array_add(array->axes, axis_copy(axes[i]));
    }
    array->places = g_array_sized_new(FALSE, TRUE, sizeof(Place), (guint)size);
    g_array_set_clear_func(array->places, place_destroy);
    g_array_set_size(array->places, (guint)size);
    for (gsize i = 0; i < size; i++) {
        array_put(array, i, place_open(NULL));
    }
    return array;
}

Array *array_constant(const Number *value)
{
    Array *array = array_new(NULL, 0);
    array_set_constant(array, 0, value, NULL, 0);
    return array;
}

Array *array_copy(const Array *array)
{
    Array *shared = (Array *)array; // only the count is written
    shared->references++;
    return shared;
}

Array *array_own(const Array *array)
{
    Array *own = array_new((const Axis *const *)array->axes->pdata, array->axes->len);
    for (gsize i = 0; i < array->places->len; i++)
        array_put(own, i, place_copy(&g_array_index(array->places, Place, i)));
    return own;
}

void array_free(Array *array)
{
    if (array == NULL || --array->references > 0) {
        return;
    }
    g_ptr_array_unref(array->axes);
    g_array_unref(array->places);
    g_free(array->dropped);
    g_free(array);
}

void array_put(Array *array, gsize place, Place value)
{
    g_return_if_fail(place < array->places->len);
    Place *there = &g_array_index(array->places, Place, place);
    place_clear(there);
    *there = value;
}

void array_set_reading(Array *array, gsize place, const Number *value, Bound bound, gint source,
                       guint32 doubts)
{
    array_put(array, place, place_reading(value, bound, source, doubts));
}

void array_set_constant(Array *array, gsize place, const Number *value, const Number *doubt,
                        gint source)
{
    array_put(array, place, place_constant(value, doubt, source));
}

void array_set_not_needed(Array *array, gsize place)
{
    array_put(array, place, (Place){.state = PLACE_NOT_NEEDED});
}

void array_add_doubt(Array *array, gsize place, const Number *doubt, gint source)
{
    place_add_doubt(&g_array_index(array->places, Place, place), doubt, source);
}

void array_set_doubts(Array *array, gsize place, guint32 doubts)
{
    Place *at = &g_array_index(array->places, Place, place);
    if (at->state == PLACE_VALUE)
        at->doubts = doubts;
}

void array_set_cause(Array *array, gsize place, gint64 cause)
{
    Place *at = &g_array_index(array->places, Place, place);
    if (at->state == PLACE_VALUE)
        at->cause = cause;
}

void array_set_open(Array *array, gsize place, const char *note)
{
    array_put(array, place, place_open(note));
}

void array_set_awaited(Array *array, gsize place, gint source)
{
    Place open = place_open(NULL);
    open.awaits = awaited_one(source);
    array_put(array, place, open);
}

gsize array_axis_count(const Array *array)
{
    return array->axes->len;
}

const Axis *array_axis(const Array *array, gsize index)
{
    return g_ptr_array_index(array->axes, index);
}

gssize array_find_axis(const Array *array, const char *name)
{
    for (guint i = 0; i < array->axes->len; i++) {
        if (strcmp(axis_name(array_axis(array, i)), name) == 0) {
            return (gssize)i;
        }
    }
    return -1;
}

gsize array_size(const Array *array)
{
    return array->places->len;
}

const Place *array_place(const Array *array, gsize place)
{
    g_return_val_if_fail(place < array->places->len, NULL);
    return &g_array_index(array->places, Place, place);
}

gsize array_index(const Array *array, const gsize *indices)
{
    gsize place = 0;
    for (guint i = 0; i < array->axes->len; i++) {
        place = place * axis_size(array_axis(array, i)) + indices[i];
    }
    return place;
}

void array_indices(const Array *array, gsize place, gsize *indices)
{
    for (guint i = array->axes->len; i-- > 0;) {
        gsize size = axis_size(array_axis(array, i));
        indices[i] = place % size;
        place /= size;
    }
}

const char *array_dropped(const Array *array)
{
    return array->dropped;
}

// Adds words to what was left out, each once.
static void note_dropped(Array *array, const char *words)
{
    if (words == NULL || (array->dropped && strstr(array->dropped, words))) {
        return;
    }
    char *before = array->dropped;
    array->dropped = before ? g_strconcat(before, ", ", words, NULL) : g_strdup(words);
    g_free(before);
}

// The labels that both have, in the order of the first. What only one has is noted for `result`.
static Axis *meet(const Axis *one, const Axis *other, GPtrArray *lost)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (gsize i = 0; i < axis_size(one); i++) {
        const char *label = axis_label(one, i);
        if (axis_find(other, label) >= 0) {
            g_ptr_array_add(labels, (gpointer)label);
        } else {
            g_ptr_array_add(lost, g_strdup_printf("%s %s", axis_name(one), label));
        }
    }
    for (gsize i = 0; i < axis_size(other); i++) {
        if (axis_find(one, axis_label(other, i)) < 0) {
            g_ptr_array_add(lost, g_strdup_printf("%s %s", axis_name(one), axis_label(other, i)));
        }
    }
    g_ptr_array_add(labels, NULL);
    return axis_new(axis_name(one), (const char *const *)labels->pdata);
}

static gint find_axis(const GPtrArray *axes, const char *name)
{
    for (guint i = 0; i < axes->len; i++) {
        if (strcmp(axis_name(axes->pdata[i]), name) == 0) {
            return (gint)i;
        }
    }
    return -1;
}

static gboolean merge_axis(GPtrArray *axes, const Axis *axis, GPtrArray *lost, GError **error)
{
    gint at = find_axis(axes, axis_name(axis));
    if (at < 0) {
        g_ptr_array_add(axes, axis_copy(axis));
        return TRUE;
    }
    if (axes->pdata[at] != axis) { // the same one meets itself in all its labels
        Axis *met = meet(axes->pdata[at], axis, lost);
        axis_free(axes->pdata[at]);
        axes->pdata[at] = met;
    }
    if (axis_size(axes->pdata[at]) > 0) {
        return TRUE;
    }
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "these values have no place of `%s` in common; pick a place of each first",
                axis_name(axis));
    return FALSE;
}

Array *array_line_up(const Array *const *arrays, gsize count, GError **error)
{
    g_autoptr(GPtrArray) axes = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    g_autoptr(GPtrArray) lost = g_ptr_array_new_with_free_func(g_free);
    gboolean shifted = FALSE;
    for (gsize i = 0; i < count; i++) {
        shifted = shifted || arrays[i]->shifted;
        for (gsize j = 0; j < array_axis_count(arrays[i]); j++) {
            if (!merge_axis(axes, array_axis(arrays[i], j), lost, error)) {
                return NULL;
            }
        }
    }
    Array *shape = array_new((const Axis *const *)axes->pdata, axes->len);
    if (shape == NULL) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "lined up these values have more than %d places; fold an axis first",
                    ARRAY_LIMIT);
        return NULL;
    }
    shape->shifted = shifted;
    for (gsize i = 0; i < count; i++) {
        note_dropped(shape, arrays[i]->dropped);
    }
    for (guint i = 0; i < lost->len && !shifted; i++) {
        note_dropped(shape, lost->pdata[i]);
    }
    return shape;
}

const Place *array_seen(const Array *array, const Array *shape, gsize place)
{
    g_autofree gsize *at = g_new0(gsize, shape->axes->len + 1);
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    array_indices(shape, place, at);
    for (guint i = 0; i < array->axes->len; i++) {
        const Axis *axis = array_axis(array, i);
        gssize there = array_find_axis(shape, axis_name(axis));
        const Axis *seen = array_axis(shape, (gsize)there);
        indices[i] = seen == axis ? at[there] : (gsize)axis_find(axis, axis_label(seen, at[there]));
    }
    return array_place(array, array_index(array, indices));
}

Array *array_combine(ArrayOperation operation, const Array *one, const Array *other, GError **error)
{
    const Array *both[] = {one, other};
    Array *result = array_line_up(both, 2, error);
    for (gsize i = 0; result && i < array_size(result); i++) {
        const Place *left = array_seen(one, result, i);
        const Place *right = array_seen(other, result, i);
        array_put(result, i, place_combine(operation, left, right));
    }
    return result;
}

// An array of the same shape and history, all places open.
static Array *same_shape(const Array *array)
{
    Array *result = array_new((const Axis *const *)array->axes->pdata, array->axes->len);
    result->shifted = array->shifted;
    note_dropped(result, array->dropped);
    return result;
}

static Array *each(const Array *array, Place (*function)(const Place *))
{
    Array *result = same_shape(array);
    for (gsize i = 0; i < array_size(array); i++) {
        array_put(result, i, function(array_place(array, i)));
    }
    return result;
}

Array *array_negate(const Array *array)
{
    return each(array, place_negate);
}

Array *array_abs(const Array *array)
{
    return each(array, place_abs);
}

Array *array_sqrt(const Array *array)
{
    return each(array, place_sqrt);
}

Array *array_power(const Array *array, gint exponent)
{
    Array *result = same_shape(array);
    for (gsize i = 0; i < array_size(array); i++) {
        array_put(result, i, place_power(array_place(array, i), exponent));
    }
    return result;
}

Array *array_fold_several(Fold fold, const Array *const *arrays, gsize count,
                          ArrayVariance variance, gpointer user, GError **error)
{
    Array *result = array_line_up(arrays, count, error);
    g_autofree const Place **members = g_new0(const Place *, count + 1);
    for (gsize i = 0; result && i < array_size(result); i++) {
        for (gsize j = 0; j < count; j++) {
            members[j] = array_seen(arrays[j], result, i);
        }
        array_put(result, i, place_fold(fold, members, count, variance, user));
    }
    return result;
}

Array *array_without(const Array *array, const gboolean *gone)
{
    g_autoptr(GPtrArray) kept = g_ptr_array_new();
    for (guint i = 0; i < array->axes->len; i++) {
        if (!gone[i]) {
            g_ptr_array_add(kept, array->axes->pdata[i]);
        }
    }
    Array *result = array_new((const Axis *const *)kept->pdata, kept->len);
    result->shifted = array->shifted;
    note_dropped(result, array->dropped);
    return result;
}

// Which axes are folded; FALSE with an error when a named one is not there.
static gboolean mark_axes(const Array *array, const char *const *axes, gsize count, gboolean *gone,
                          GError **error)
{
    for (guint i = 0; i < array->axes->len; i++) {
        gone[i] = count == 0;
    }
    for (gsize i = 0; i < count; i++) {
        gssize at = array_find_axis(array, axes[i]);
        if (at < 0) {
            g_autofree char *there = array_axes_text(array);
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "this value has no axis `%s` to fold over; it has %s", axes[i], there);
            return FALSE;
        }
        gone[at] = TRUE;
    }
    return TRUE;
}

Array *array_fold(Fold fold, const Array *array, const char *const *axes, gsize count,
                  ArrayVariance variance, gpointer user, GError **error)
{
    g_autofree gboolean *gone = g_new0(gboolean, array->axes->len + 1);
    if (!mark_axes(array, axes, count, gone, error)) {
        return NULL;
    }
    Array *result = array_without(array, gone);
    gsize results = array_size(result);
    gsize each_size = array_size(array) / results;
    g_autofree const Place **members = g_new0(const Place *, array_size(array) + 1);
    g_autofree gsize *filled = g_new0(gsize, results);
    for (gsize i = 0; i < array_size(array); i++) {
        gsize to = array_place_without(array, i, gone);
        members[to * each_size + filled[to]++] = array_place(array, i);
    }
    for (gsize i = 0; i < results; i++) {
        array_put(result, i, place_fold(fold, members + i * each_size, each_size, variance, user));
    }
    return result;
}

gsize array_place_without(const Array *array, gsize place, const gboolean *gone)
{
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    array_indices(array, place, indices);
    gsize to = 0;
    for (guint i = 0; i < array->axes->len; i++) {
        to = gone[i] ? to : to * axis_size(array_axis(array, i)) + indices[i];
    }
    return to;
}
