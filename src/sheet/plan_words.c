#include "plan_words.h"

#include <standbook/sheet/figures.h>

#include <string.h>

enum { LONG_LABELS = 20 }; // characters that still stand without a blank between them

char *node_words(const TreeNode *node)
{
    if (node->kind == TREE_SCALAR)
        return g_strdup(node->text);
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *child = tree_at(node, i);
        g_autofree char *value = node_words(child);
        g_string_append_printf(words, "%s%s%s%s", i ? ", " : "", child->key ? child->key->text : "",
                               child->key ? ": " : "", value);
    }
    return g_string_free(words, FALSE);
}

json_t *node_json(const TreeNode *node)
{
    if (!node || node->kind == TREE_SCALAR)
        return node ? json_string(node->text) : json_null();
    json_t *all = node->kind == TREE_MAP ? json_object() : json_array();
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *child = tree_at(node, i);
        if (node->kind == TREE_MAP)
            json_object_set_new(all, child->key->text, node_json(child));
        else
            json_array_append_new(all, node_json(child));
    }
    return all;
}

const char *const *check_columns(void)
{
    static const char *const columns[] = {"at", "limits", "gauge", NULL};
    return columns;
}

const char *const *group_columns(void)
{
    static const char *const columns[] = {"bolts", "stages", "order", NULL};
    return columns;
}

static gboolean is_rest(const TreeNode *child, const char *const *columns)
{
    return child->key && !g_strv_contains(columns, child->key->text);
}

char *rest_words(const TreeNode *node, const char *const *columns)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *child = tree_at(node, i);
        if (!is_rest(child, columns))
            continue;
        g_autofree char *value = node_words(child);
        gboolean map = child->kind == TREE_MAP;
        g_string_append_printf(words, "%s%s", words->len ? "; " : "", child->key->text);
        if (strcmp(value, "yes") != 0)
            g_string_append_printf(words, " %s%s%s", map ? "(" : "", value, map ? ")" : "");
    }
    return g_string_free(words, FALSE);
}

json_t *rest_json(const TreeNode *node, const char *const *columns)
{
    json_t *rest = json_object();
    for (guint i = 0; i < tree_count(node); i++) {
        const TreeNode *child = tree_at(node, i);
        if (is_rest(child, columns))
            json_object_set_new(rest, child->key->text, node_json(child));
    }
    return rest;
}

// Whether the labels count up by one: `1..4`.
static gboolean counts_up(const Axis *axis)
{
    for (gsize i = 0; i < axis_size(axis); i++) {
        const char *label = axis_label(axis, i);
        if (strspn(label, "0123456789") != strlen(label) ||
            (i > 0 && g_ascii_strtoull(label, NULL, 10) !=
                          g_ascii_strtoull(axis_label(axis, i - 1), NULL, 10) + 1))
            return FALSE;
    }
    return axis_size(axis) > 1;
}

static void append_labels(GString *words, const Axis *axis)
{
    if (counts_up(axis)) {
        g_string_append_printf(words, "%s..%s", axis_label(axis, 0),
                               axis_label(axis, axis_size(axis) - 1));
        return;
    }
    gsize length = 0;
    for (gsize i = 0; i < axis_size(axis); i++)
        length += strlen(axis_label(axis, i)) + 1;
    for (gsize i = 0; i < axis_size(axis); i++)
        g_string_append_printf(words, "%s%s",
                               i == 0                 ? ""
                               : length > LONG_LABELS ? " "
                                                      : "/",
                               axis_label(axis, i));
}

// Labels that stand in place are what their axis is called, and plain labels of bolts need no name.
char *axes_words(const GPtrArray *axes)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < axes->len; i++) {
        const Axis *axis = g_ptr_array_index(axes, i);
        const char *name = axis_name(axis);
        gboolean plain = strcmp(name, "bolt") == 0 || strchr(name, '/') || strstr(name, "..");
        g_string_append_printf(words, "%s%s%s", i ? ", " : "", plain ? "" : name, plain ? "" : " ");
        append_labels(words, axis);
    }
    return g_string_free(words, FALSE);
}

// A unit stands behind a limit that names none itself.
static void append_limit(GString *words, const PlanCheck *check, const PlanLimit *limit)
{
    const char *text = limits_text(limit->limits);
    const char *unit = check->unit ? unit_text(check->unit) : NULL;
    g_string_append_printf(words, "%s%s%s%s", words->len ? "; " : "",
                           limit->label ? limit->label : "", limit->label ? ": " : "", text);
    if (unit && check->asks == LIMITS_VALUE && !g_str_has_suffix(text, unit))
        g_string_append_printf(words, " %s", unit);
}

char *check_limits_words(const PlanCheck *check)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < check->limits->len; i++)
        append_limit(words, check, g_ptr_array_index(check->limits, i));
    if (check->limits->len == 0 && check->unit)
        g_string_append_printf(words, "in %s", unit_said(unit_text(check->unit)));
    return g_string_free(words, FALSE);
}

char *stages_words(const PlanTightening *tightening)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < tightening->stages->len; i++)
        g_string_append_printf(words, "%s%s", i ? " > " : "",
                               ((const Stage *)g_ptr_array_index(tightening->stages, i))->text);
    return g_string_free(words, FALSE);
}
