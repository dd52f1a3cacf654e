// Places: `at:` of checks and parts, `bolts:` of groups.
#include "read.h"

#include <string.h>

enum { PLACES_MOST = 100000 }; // of all checks, parts and groups, so that memory is bounded

// An axis that stands in place, kept by the plan.
static const Axis *keep_axis(Reader *reader, const char *name, const char *const *labels)
{
    Axis *axis = axis_new(name, labels);
    reader->plan->places += (guint)axis_size(axis);
    g_ptr_array_add(reader->plan->pairs, axis);
    return axis;
}

// `main 2`: the axis with one label kept. NULL if the text is not that.
static const Axis *read_kept_label(Reader *reader, const char *text)
{
    const char *space = strrchr(text, ' ');
    if (!space)
        return NULL;
    g_autofree char *name = g_strndup(text, (gsize)(space - text));
    const Axis *axis = plan_axis(reader->plan, name);
    gsize offset = 0;
    g_auto(GStrv) labels = axis ? labels_read(space + 1, &offset, NULL) : NULL;
    for (gsize i = 0; labels && labels[i]; i++)
        if (axis_find(axis, labels[i]) < 0)
            return NULL;
    return labels ? keep_axis(reader, name, (const char *const *)labels) : NULL;
}

static void fault_place(Reader *reader, const TreeNode *node, const char *where)
{
    GPtrArray *axes = reader->plan->axes;
    g_autofree const char **names = g_new0(const char *, axes->len + 1);
    for (guint i = 0; i < axes->len; i++)
        names[i] = axis_name(g_ptr_array_index(axes, i));
    fault_unknown(reader, node, where, "axis", names, axes->len);
}

// One axis. NULL with a fault.
static const Axis *read_place(Reader *reader, const TreeNode *node, const char *noun,
                              const char *where)
{
    const Axis *axis = plan_axis(reader->plan, node->text);
    if (reader->plan->places > PLACES_MOST) {
        if (tell_once(reader, &reader->plan->places))
            fault_at(reader, node, 0, where,
                     "the plan has more than 100,000 places; check its ranges");
        return NULL;
    }
    if (!axis)
        axis = read_kept_label(reader, node->text);
    if (axis)
        return axis;
    if (!noun && !strchr(node->text, '/') && !strstr(node->text, "..")) {
        fault_place(reader, node, where);
        return NULL;
    }
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_auto(GStrv) labels = labels_read(node->text, &offset, &error);
    if (!labels) {
        fault_at(reader, node, offset, where, error->message);
        return NULL;
    }
    return keep_axis(reader, noun ? noun : node->text, (const char *const *)labels);
}

// Whether one of the first `count` has the name.
static gboolean has_axis(const GPtrArray *axes, guint count, const char *name)
{
    for (guint i = 0; i < count; i++)
        if (g_str_equal(axis_name(g_ptr_array_index(axes, i)), name))
            return TRUE;
    return FALSE;
}

// The axes that an item names: those of a group's bolts, or one. A group is no place of bolts
// (`noun`), and an axis of the name goes before it.
static void add_places(Reader *reader, const TreeNode *item, const char *noun, const char *where,
                       GPtrArray *axes)
{
    const PlanGroup *group =
        noun || plan_axis(reader->plan, item->text) ? NULL : plan_group(reader->plan, item->text);
    guint before = axes->len;
    if (group)
        g_ptr_array_extend(axes, group->axes, NULL, NULL);
    else {
        const Axis *axis = read_place(reader, item, noun, where);
        if (axis)
            g_ptr_array_add(axes, (gpointer)axis);
    }
    for (guint i = before; i < axes->len; i++)
        if (has_axis(axes, i, axis_name(axes->pdata[i]))) {
            fault_at(reader, item, 0, where, "this axis stands here twice; write it once");
            g_ptr_array_set_size(axes, (gint)before);
        }
}

GPtrArray *read_places(Reader *reader, const TreeNode *node, const char *noun, const char *where)
{
    GPtrArray *axes = g_ptr_array_new();
    for (guint i = 0; node && i < MAX(1, tree_count(node)); i++) {
        const TreeNode *item =
            node->kind == TREE_LIST && tree_count(node) ? tree_at(node, i) : node;
        if (item->kind != TREE_SCALAR)
            break;
        add_places(reader, item, noun, where, axes);
    }
    reader->plan->places += MIN(places_count(axes), LABELS_MOST + 1);
    if (places_count(axes) > LABELS_MOST) {
        fault_at(reader, node, 0, where, "these axes make more than 1,000 places; check them");
        g_ptr_array_set_size(axes, 0);
    }
    return axes;
}
