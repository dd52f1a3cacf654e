#include "judge.h"

#include <string.h>

const char **judge_labels(const GPtrArray *axes, guint index)
{
    const char **labels = g_new0(const char *, axes->len + 1);
    for (guint i = axes->len; i-- > 0;) {
        const Axis *axis = g_ptr_array_index(axes, i);
        labels[i] = axis_label(axis, index % axis_size(axis));
        index /= (guint)axis_size(axis);
    }
    return labels;
}

gssize judge_place(const GPtrArray *axes, const char *const *labels, gsize count)
{
    gsize place = 0;
    if (count != axes->len)
        return -1;
    for (guint i = 0; i < axes->len; i++) {
        const Axis *axis = g_ptr_array_index(axes, i);
        gssize label = axis_find(axis, labels[i]);
        if (label < 0)
            return -1;
        place = place * axis_size(axis) + (gsize)label;
    }
    return (gssize)place;
}

void judge_each_place(Judge *judge, const GPtrArray *axes, const Entry *entry, const char *field,
                      PlaceVisitor visit, gpointer user)
{
    gsize count = entry_list_length(entry, field);
    if (count == 0 && axes->len > 0) {
        for (guint i = 0; i < places_count(axes); i++)
            visit(judge, i, user);
        return;
    }
    g_autofree const char **labels = g_new0(const char *, count + 1);
    for (gsize i = 0; i < count; i++)
        labels[i] = entry_list_item(entry, field, i);
    gssize place = judge_place(axes, labels, count);
    if (place >= 0)
        visit(judge, (guint)place, user);
}
