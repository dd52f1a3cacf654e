#include "read.h"

#include <string.h>

const TreeNode *check_says_itself(const PlanCheck *check, const char *key)
{
    return check->node->kind == TREE_MAP ? schema_get(&schema_of_check, check->node, key) : NULL;
}

const TreeNode *check_says(const Reader *reader, const PlanCheck *check, const char *key)
{
    const TreeNode *said = check_says_itself(check, key);
    if (!said && schema_find(&schema_of_step, key))
        said = schema_get(&schema_of_step, check->step->node, key);
    if (!said && schema_find(&schema_of_plan, key))
        said = schema_get(&schema_of_plan, reader->plan->tree, key);
    return said;
}

static void read_inherited(Reader *reader, PlanCheck *check)
{
    const TreeNode *gauge = check_says(reader, check, "gauge");
    const TreeNode *source = check_says(reader, check, "source");
    check->gauge = gauge ? gauge->text : NULL;
    check->source = source ? source->text : NULL;
}

// The names under a key, to be resolved once all is read.
static GPtrArray *read_names(const TreeNode *node, const char *key)
{
    GPtrArray *names = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) nodes =
        node->kind == TREE_MAP ? nodes_of(&schema_of_check, node, key) : g_ptr_array_new();
    for (guint i = 0; i < nodes->len; i++) {
        PlanName *name = g_new0(PlanName, 1);
        name->node = g_ptr_array_index(nodes, i);
        g_ptr_array_add(names, name);
    }
    return names;
}

static PlanSetting *read_setting(Reader *reader, const TreeNode *node, const char *where)
{
    const TreeNode *set = schema_get(&schema_of_check, node, "set");
    if (!set)
        return NULL;
    schema_check(&schema_of_set, set, where, reader->faults);
    PlanSetting *setting = g_new0(PlanSetting, 1);
    setting->move = text_of(&schema_of_set, set, "move");
    setting->unit_text = text_of(&schema_of_set, set, "unit");
    setting->zero = text_of(&schema_of_set, set, "zero");
    setting->inputs = g_array_new(FALSE, FALSE, sizeof(PlanInput));
    setting->loose = g_strcmp0(text_of(&schema_of_set, set, "loose"), "yes") == 0;
    setting->each = g_strcmp0(text_of(&schema_of_set, set, "each"), "yes") == 0;
    return setting;
}

static void read_choose(Reader *reader, PlanCheck *check, const TreeNode *node, const char *where)
{
    const TreeNode *choose = schema_get(&schema_of_check, node, "choose");
    check->choose = choose ? choose->text : NULL;
    if (choose && !plan_axis(reader->plan, choose->text)) {
        gsize ignored = 0;
        g_autofree const char **names = g_new0(const char *, reader->plan->axes->len + 1);
        for (; ignored < reader->plan->axes->len; ignored++)
            names[ignored] = axis_name(g_ptr_array_index(reader->plan->axes, ignored));
        fault_unknown(reader, choose, where, "axis", names, ignored);
    }
}

static void add_limit(PlanCheck *check, const char *label, const TreeNode *node)
{
    PlanLimit *limit = g_new0(PlanLimit, 1);
    limit->label = label;
    limit->labels = label ? g_strsplit(label, ", ", -1) : NULL;
    limit->node = node;
    g_ptr_array_add(check->limits, limit);
}

static void read_limits(PlanCheck *check, const TreeNode *node)
{
    if (node && node->kind == TREE_SCALAR)
        add_limit(check, NULL, node);
    for (guint i = 0; node && i < tree_count(node); i++)
        add_limit(check, tree_at(node, i)->key->text, tree_at(node, i));
}

static void free_limit(gpointer data)
{
    PlanLimit *limit = data;
    limits_free(limit->limits);
    g_strfreev(limit->labels);
    g_free(limit);
}

// What only the long form can say.
static void read_long_form(Reader *reader, PlanCheck *check, const TreeNode *node,
                           const char *where)
{
    schema_check(&schema_of_check, node, where, reader->faults);
    g_ptr_array_unref(check->axes);
    const TreeNode *at = schema_get(&schema_of_check, node, "at");
    check->axes = read_places(reader, at, NULL, where);
    if (at && check->formula_text)
        fault_at(reader, at, 0, where,
                 "a check with a formula has the places of its formula; leave `at` out");
    read_limits(check, schema_get(&schema_of_check, node, "limits"));
    check->setting = read_setting(reader, node, where);
    read_choose(reader, check, node, where);
    check->optional = g_strcmp0(text_of(&schema_of_check, node, "optional"), "yes") == 0;
    const char *feature = text_of(&schema_of_check, node, "feature");
    check->feature = feature ? feature : check->name;
    check->formerly = text_of(&schema_of_check, node, "formerly");
}

// Splits `name = formula`.
static void read_name(Reader *reader, PlanCheck *check, const TreeNode *key)
{
    const char *equals = strstr(key->text, " = ");
    g_autofree char *name =
        equals ? g_strndup(key->text, (gsize)(equals - key->text)) : g_strdup(key->text);
    check->name = g_string_chunk_insert_const(reader->plan->words, g_strstrip(name));
    check->feature = check->name;
    check->line = key->line;
    check->column = key->column;
    if (!equals)
        return;
    const char *formula = equals + 3 + strspn(equals + 3, " ");
    check->formula_text = g_string_chunk_insert_const(reader->plan->words, formula);
    check->formula_column = key->column + (guint)g_utf8_pointer_to_offset(key->text, formula);
}

// A bolt set may not have the name of a check: entries would not know which is meant.
static void check_no_group(Reader *reader, const PlanCheck *check, const TreeNode *key,
                           const char *where)
{
    const PlanGroup *group = plan_group(reader->plan, check->name);
    if (!group)
        return;
    g_autofree char *there = already_where(reader, group->step, group->node->key->line);
    g_autofree char *message = g_strdup_printf(
        "there is a group of this name already, %s; give this check another name", there);
    fault_at(reader, key, 0, where, message);
}

// A name twice keeps the first; the second is read for its faults all the same.
static void keep_check(Reader *reader, PlanStep *step, PlanCheck *check, const TreeNode *key,
                       const char *where)
{
    const PlanCheck *other = plan_check(reader->plan, check->name);
    check_check_name(reader, key, check->name, where);
    check_no_group(reader, check, key, where);
    if (other) {
        g_autofree char *there = already_where(reader, other->step, other->line);
        g_autofree char *message = g_strdup_printf(
            "there is a check of this name already, %s; give this one another name", there);
        fault_at(reader, key, 0, where, message);
        free_check(check);
        return;
    }
    g_hash_table_insert(reader->plan->checks, (gpointer)check->name, check);
    g_ptr_array_add(step->checks, check);
}

static void read_check(Reader *reader, PlanStep *step, const TreeNode *node)
{
    PlanCheck *check = g_new0(PlanCheck, 1);
    check->step = step;
    check->node = node;
    check->axes = g_ptr_array_new();
    check->places = g_ptr_array_new();
    check->moved_by = g_ptr_array_new();
    check->limits = g_ptr_array_new_with_free_func(free_limit);
    read_name(reader, check, node->key);
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", step->name, check->name);
    read_inherited(reader, check);
    check->with = read_names(node, "with");
    check->rests_on = read_names(node, "rests on");
    check->settled_by = read_names(node, "settled by");
    check->finding = check->settled_by->len > 0;
    if (node->kind == TREE_MAP)
        read_long_form(reader, check, node, where);
    else if (node->kind == TREE_LIST)
        fault_at(reader, node, 0, where, "a check is limits, or a mapping such as {limits: 1..2}");
    else if (*node->text)
        read_limits(check, node);
    keep_check(reader, step, check, node->key, where);
}

void read_checks(Reader *reader, PlanStep *step, const TreeNode *node)
{
    for (guint i = 0; node && i < tree_count(node); i++)
        read_check(reader, step, tree_at(node, i));
}
