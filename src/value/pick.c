#include "place.h"
#include "shape.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

char *array_axes_text(const Array *array)
{
    if (array->axes->len == 0) {
        return g_strdup("no axes");
    }
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < array->axes->len; i++) {
        const Axis *axis = array_axis(array, i);
        g_string_append_printf(text, "%s%s", i ? "; " : "", axis_name(axis));
        for (gsize j = 0; j < axis_size(axis) && j < 12; j++) {
            g_string_append_printf(text, "%s %s", j ? "," : "", axis_label(axis, j));
        }
        g_string_append(text, axis_size(axis) > 12 ? ", …" : "");
    }
    return g_string_free(text, FALSE);
}

// One pick resolved: the label of an axis, or a move along it.
typedef struct {
    gsize axis;
    gsize label;
    gssize shift; // 0: the label; else the neighbour looked at
} Pick;

static guint axes_with(const Array *array, const char *label, Pick *pick)
{
    guint count = 0;
    for (guint i = 0; i < array->axes->len; i++) {
        gssize at = axis_find(array_axis(array, i), label);
        if (at >= 0) {
            *pick = (Pick){.axis = i, .label = (gsize)at};
            count++;
        }
    }
    return count;
}

static gboolean find_named(const Array *array, const char *words, Pick *pick)
{
    const char *space = strrchr(words, ' ');
    if (space == NULL) {
        return FALSE;
    }
    g_autofree char *name = g_strchomp(g_strndup(words, (gsize)(space - words)));
    gssize axis = array_find_axis(array, name);
    gssize label = axis < 0 ? -1 : axis_find(array_axis(array, (gsize)axis), space + 1);
    *pick = (Pick){.axis = (gsize)axis, .label = (gsize)label};
    return label >= 0;
}

// `axis - 1`, `axis + 2`.
static gboolean find_shift(const Array *array, const char *words, Pick *pick)
{
    static const struct {
        const char *mark;
        gssize sign;
    } marks[] = {{" - ", -1}, {" − ", -1}, {" + ", 1}};
    for (gsize i = 0; i < G_N_ELEMENTS(marks); i++) {
        const char *mark = strstr(words, marks[i].mark);
        guint64 by = 0;
        if (mark && g_ascii_string_to_unsigned(mark + strlen(marks[i].mark), 10, 1, ARRAY_LIMIT,
                                               &by, NULL)) {
            g_autofree char *name = g_strndup(words, (gsize)(mark - words));
            gssize axis = array_find_axis(array, name);
            *pick = (Pick){.axis = (gsize)axis, .shift = marks[i].sign * (gssize)by};
            return axis >= 0;
        }
    }
    return FALSE;
}

static gboolean resolve(const Array *array, const char *words, Pick *pick, GError **error)
{
    guint count = axes_with(array, words, pick);
    if (count == 1 ||
        (count == 0 && (find_named(array, words, pick) || find_shift(array, words, pick)))) {
        return TRUE;
    }
    g_autofree char *axes = array_axes_text(array);
    g_autofree char *clean = text_clean(words, -1);
    if (count > 1) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "`%s` stands on more than one axis of this value; name the axis too: `%s %s`",
                    clean, axis_name(array_axis(array, pick->axis)), clean);
    } else {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "`%s` is no place of this value; it has %s", clean, axes);
    }
    return FALSE;
}

static Array *pick_label(const Array *array, Pick pick)
{
    g_autofree gboolean *gone = g_new0(gboolean, array->axes->len + 1);
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    gone[pick.axis] = TRUE;
    Array *result = array_without(array, gone);
    for (gsize i = 0; i < array_size(array); i++) {
        array_indices(array, i, indices);
        if (indices[pick.axis] == pick.label) {
            gsize to = array_place_without(array, i, gone);
            array_put(result, to, place_copy(array_place(array, i)));
        }
    }
    return result;
}

// The axis with only the labels whose neighbour `shift` away is there; NULL if none has one.
static Axis *shifted_axis(const Axis *axis, gssize shift)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (gssize i = 0; i < (gssize)axis_size(axis); i++) {
        if (i + shift >= 0 && i + shift < (gssize)axis_size(axis)) {
            g_ptr_array_add(labels, (gpointer)axis_label(axis, (gsize)i));
        }
    }
    if (labels->len == 0) {
        return NULL;
    }
    g_ptr_array_add(labels, NULL);
    return axis_new(axis_name(axis), (const char *const *)labels->pdata);
}

static Array *shifted_shape(const Array *array, Pick pick, Axis *moved)
{
    g_autoptr(GPtrArray) axes = g_ptr_array_new();
    for (guint i = 0; i < array->axes->len; i++) {
        g_ptr_array_add(axes, i == pick.axis ? moved : array->axes->pdata[i]);
    }
    Array *result = array_new((const Axis *const *)axes->pdata, axes->len);
    result->dropped = g_strdup(array->dropped);
    result->shifted = TRUE;
    return result;
}

static Array *pick_shift(const Array *array, Pick pick, GError **error)
{
    const Axis *axis = array_axis(array, pick.axis);
    g_autoptr(Axis) moved = shifted_axis(axis, pick.shift);
    if (moved == NULL) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "no place of `%s` has a neighbour that far away", axis_name(axis));
        return NULL;
    }
    Array *result = shifted_shape(array, pick, moved);
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    for (gsize i = 0; i < array_size(result); i++) {
        array_indices(result, i, indices);
        gssize own = axis_find(axis, axis_label(moved, indices[pick.axis]));
        indices[pick.axis] = (gsize)(own + pick.shift);
        array_put(result, i, place_copy(array_place(array, array_index(array, indices))));
    }
    return result;
}

Array *array_pick(const Array *array, const char *words, GError **error)
{
    Pick pick;
    if (!resolve(array, words, &pick, error)) {
        return NULL;
    }
    return pick.shift ? pick_shift(array, pick, error) : pick_label(array, pick);
}

char *array_place_text(const Array *array, gsize place)
{
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    array_indices(array, place, indices);
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < array->axes->len; i++) {
        const Axis *axis = array_axis(array, i);
        const char *label = axis_label(axis, indices[i]);
        Pick ignored;
        gboolean named = g_ascii_isdigit(label[0]) || axes_with(array, label, &ignored) > 1;
        g_string_append_printf(text, "%s%s%s%s", i ? ", " : "", named ? axis_name(axis) : "",
                               named ? " " : "", label);
    }
    return g_string_free(text, FALSE);
}

static gboolean place_pick(const Array *array, const char *words, gsize *indices, gboolean *set,
                           GError **error)
{
    Pick pick;
    if (!resolve(array, words, &pick, error)) {
        return FALSE;
    }
    if (set[pick.axis] || pick.shift) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "`%s` does not name one place; write one label for each axis", words);
        return FALSE;
    }
    set[pick.axis] = TRUE;
    indices[pick.axis] = pick.label;
    return TRUE;
}

gssize array_find_place(const Array *array, const char *words, GError **error)
{
    g_autofree gsize *indices = g_new0(gsize, array->axes->len + 1);
    g_autofree gboolean *set = g_new0(gboolean, array->axes->len + 1);
    g_auto(GStrv) picks = g_strsplit(words, ",", -1);
    for (gsize i = 0; picks[i] && (i > 0 || *g_strstrip(picks[0])); i++) {
        if (!place_pick(array, g_strstrip(picks[i]), indices, set, error)) {
            return -1;
        }
    }
    for (guint i = 0; i < array->axes->len; i++) {
        if (!set[i]) {
            g_autofree char *clean = text_clean(words, -1);
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        "`%s` does not say which place of `%s`; add it, as in `%s %s`", clean,
                        axis_name(array_axis(array, i)), axis_name(array_axis(array, i)),
                        axis_label(array_axis(array, i), 0));
            return -1;
        }
    }
    return (gssize)array_index(array, indices);
}
