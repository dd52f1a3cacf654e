#include "read.h"

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/plan/requirement.h>
#include <string.h>

enum { REQUIREMENTS_MOST = 100000, COMPARED_MOST = 1000000, SUGGESTED_MOST = 100 };
enum { NAMES_MOST = 1000 }; // axes, constants, consumables, steps: so that time is bounded

void fault_at(Reader *reader, const TreeNode *node, gsize offset, const char *where,
              const char *message)
{
    faults_add(reader->faults, node->line, node->column + (guint)offset, "%s%s", where, message);
}

void late_fault(Reader *reader, guint line, guint column, const char *where, const char *message)
{
    gboolean excused = reader->kept && !reader->hushed;
    reader->plan->excused += excused ? 1 : 0;
    faults_add(excused ? reader->plan->notices : reader->faults, line, column, "%s%s", where,
               message);
}

gboolean can_compare(Reader *reader, const char *word, gsize count)
{
    reader->compared += count;
    return reader->compared < COMPARED_MOST && strlen(word) <= SUGGESTED_MOST;
}

const char *suggest(Reader *reader, const char *word, const char *const *names, gsize count)
{
    return can_compare(reader, word, count) ? text_nearest(word, names, count) : NULL;
}

static void add_keys(GPtrArray *names, GHashTable *table)
{
    g_autoptr(GList) keys = g_hash_table_get_keys(table);
    keys = g_list_sort(keys, (GCompareFunc)strcmp);
    for (GList *key = keys; key; key = key->next)
        g_ptr_array_add(names, key->data);
}

const GPtrArray *names_of(Reader *reader, unsigned kinds)
{
    const Plan *plan = reader->plan;
    if (reader->names[kinds])
        return reader->names[kinds];
    GPtrArray *names = g_ptr_array_new();
    for (guint i = 0; kinds == 0 && i < plan->given->len; i++)
        g_ptr_array_add(names, (gpointer)((PlanGiven *)plan->given->pdata[i])->name);
    if (kinds == 0 || kinds & NAMES_CHECKS)
        add_keys(names, plan->checks);
    if (kinds & NAMES_GROUPS)
        add_keys(names, plan->groups);
    if (kinds & NAMES_PARTS)
        add_keys(names, plan->parts);
    reader->names[kinds] = names;
    return names;
}

char *already_where(const Reader *reader, const PlanStep *step, guint line)
{
    return reader->plan->added ? g_strdup_printf("in step \"%s\"", step->name)
                               : g_strdup_printf("in line %u", line);
}

void hush(Reader *reader, gboolean quiet)
{
    if (quiet == reader->hushed)
        return;
    Faults *faults = reader->faults;
    reader->faults = reader->other;
    reader->other = faults;
    reader->hushed = quiet;
}

gboolean tell_once(Reader *reader, const void *cause)
{
    return !reader->hushed && g_hash_table_add(reader->told, (gpointer)cause);
}

void fault_unknown(Reader *reader, const TreeNode *node, const char *where, const char *kind,
                   const char *const *names, gsize count)
{
    const char *nearest = suggest(reader, node->text, names, count);
    if (nearest)
        faults_add(reader->faults, node->line, node->column,
                   "%sthere is no %s called `%s`; did you mean `%s`?", where, kind, node->text,
                   nearest);
    else
        faults_add(reader->faults, node->line, node->column,
                   "%sthere is no %s called `%s`; write the name of one", where, kind, node->text);
}

const char *text_of(const SchemaMapping *mapping, const TreeNode *node, const char *key)
{
    const TreeNode *value = schema_get(mapping, node, key);
    return value ? value->text : NULL;
}

GPtrArray *nodes_of(const SchemaMapping *mapping, const TreeNode *node, const char *key)
{
    GPtrArray *nodes = g_ptr_array_new();
    const TreeNode *value = schema_get(mapping, node, key);
    if (value && value->kind == TREE_SCALAR)
        g_ptr_array_add(nodes, (gpointer)value);
    for (guint i = 0; value && i < tree_count(value); i++)
        g_ptr_array_add(nodes, (gpointer)tree_at(value, i));
    return nodes;
}

GPtrArray *texts_of(const SchemaMapping *mapping, const TreeNode *node, const char *key)
{
    GPtrArray *texts = nodes_of(mapping, node, key);
    for (guint i = 0; i < texts->len; i++)
        texts->pdata[i] = ((const TreeNode *)texts->pdata[i])->text;
    return texts;
}

static void read_axis(Reader *reader, const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("axis \"%s\": ", node->key->text);
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    if (node->kind != TREE_SCALAR || !is_name(node->key->text)) {
        fault_at(reader, node->key, 0, where,
                 "an axis is a name in words and its labels, such as `cylinder: 1..4`");
        return;
    }
    g_auto(GStrv) labels = labels_read(node->text, &offset, &error);
    if (!labels)
        fault_at(reader, node, offset, where, error->message);
    // A faulty axis still counts as there.
    const char *const none[] = {"1", NULL};
    g_ptr_array_add(reader->plan->axes,
                    axis_new(node->key->text, labels ? (const char *const *)labels : none));
}

static Number *read_time(Reader *reader, const TreeNode *node, const char *key, const char *where)
{
    const TreeNode *value = schema_get(&schema_of_consumable, node, key);
    const Kind time = {.time = 1};
    return value ? read_amount(reader, value, NULL, time, where) : NULL;
}

static void free_consumable(gpointer data)
{
    PlanConsumable *consumable = data;
    number_free(consumable->fit_within);
    number_free(consumable->fluid_after);
    number_free(consumable->run_after);
    g_free(consumable);
}

static void free_given(gpointer data)
{
    PlanGiven *given = data;
    array_free(given->value);
    g_free(given);
}

static void read_consumable(Reader *reader, const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("consumable \"%s\": ", node->key->text);
    schema_check(&schema_of_consumable, node, where, reader->faults);
    PlanConsumable *consumable = g_new0(PlanConsumable, 1);
    consumable->name = node->key->text;
    consumable->kind = text_of(&schema_of_consumable, node, "kind");
    consumable->fit_within = read_time(reader, node, "fit within", where);
    consumable->fluid_after = read_time(reader, node, "fluid after", where);
    consumable->run_after = read_time(reader, node, "run after", where);
    consumable->node = node;
    g_ptr_array_add(reader->plan->consumables, consumable);
}

// The axis that has all the labels of the mapping; NULL if none has.
static const Axis *axis_of_labels(const Plan *plan, const TreeNode *node)
{
    for (guint i = 0; i < plan->axes->len; i++) {
        const Axis *axis = g_ptr_array_index(plan->axes, i);
        gboolean all = TRUE;
        for (guint j = 0; j < tree_count(node); j++)
            all = all && axis_find(axis, tree_at(node, j)->key->text) >= 0;
        if (all)
            return axis;
    }
    return NULL;
}

static void read_given(Reader *reader, const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("given \"%s\": ", node->key->text);
    PlanGiven *given = g_new0(PlanGiven, 1);
    given->name = node->key->text;
    given->node = node;
    if (!is_name(given->name))
        fault_at(reader, node->key, 0, where,
                 "a name is words that begin with a letter, such as `pan gasket`");
    if (node->kind == TREE_LIST || (node->kind == TREE_SCALAR && !*node->text))
        fault_at(reader, node->key, 0, where, "write a value, or {label: value} along an axis");
    if (node->kind == TREE_MAP) {
        given->axis = axis_of_labels(reader->plan, node);
        if (!given->axis)
            fault_at(reader, node, 0, where, "no axis has these labels; name one under `axes`");
    }
    g_ptr_array_add(reader->plan->given, given);
}

static void read_each(Reader *reader, const TreeNode *top, const char *key,
                      void (*read)(Reader *reader, const TreeNode *node))
{
    const TreeNode *node = schema_get(&schema_of_plan, top, key);
    if (node && tree_count(node) > NAMES_MOST)
        fault_at(reader, node, 0, "", "there are more than 1,000 names here; make two plans of it");
    for (guint i = 0; node && i < MIN(tree_count(node), NAMES_MOST); i++)
        read(reader, tree_at(node, i));
}

static gboolean names_a_gate(const TreeNode *top)
{
    const TreeNode *steps = schema_get(&schema_of_plan, top, "steps");
    for (guint i = 0; steps && i < tree_count(steps); i++)
        if (tree_get(tree_at(steps, i), "gate"))
            return TRUE;
    return FALSE;
}

// language.md §4: a plan that never names a gate has the single gate hand over.
static void read_gates(Reader *reader, const TreeNode *top)
{
    static const char *const usual[] = {"first start", "hand over", "follow-up"};
    reader->plan->gates = texts_of(&schema_of_plan, top, "gates");
    if (reader->plan->gates->len)
        return;
    gboolean named = names_a_gate(top);
    for (gsize i = 0; i < G_N_ELEMENTS(usual); i++)
        if (named || i == 1)
            g_ptr_array_add(reader->plan->gates, (gpointer)usual[i]);
}

static void read_units(Reader *reader, const TreeNode *top)
{
    g_autoptr(GPtrArray) nodes = nodes_of(&schema_of_plan, top, "units");
    for (guint i = 0; i < nodes->len; i++) {
        const TreeNode *node = g_ptr_array_index(nodes, i);
        g_autoptr(GError) error = NULL;
        g_autoptr(Unit) unit = unit_parse(node->text, &error);
        if (!unit)
            fault_at(reader, node, 0, "", error->message);
        else if (plan_unit(reader->plan, unit_kind(unit)))
            fault_at(reader, node, 0, "", "there is a unit of this kind already; keep one");
        else
            g_ptr_array_add(reader->plan->units, g_steal_pointer(&unit));
    }
}

static Plan *plan_new(TreeNode *top)
{
    Plan *plan = g_new0(Plan, 1);
    plan->tree = top;
    plan->words = g_string_chunk_new(256);
    plan->axes = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    plan->pairs = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    plan->given = g_ptr_array_new_with_free_func(free_given);
    plan->consumables = g_ptr_array_new_with_free_func(free_consumable);
    plan->units = g_ptr_array_new_with_free_func((GDestroyNotify)unit_free);
    plan->notices = faults_new();
    plan->next_doubt = -1;
    plan->steps = g_ptr_array_new_with_free_func(free_step);
    plan->checks = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, free_check);
    plan->parts = g_hash_table_new(g_str_hash, g_str_equal);
    plan->groups = g_hash_table_new_full(g_str_hash, g_str_equal, NULL, free_group);
    return plan;
}

static void read_heading(Reader *reader, const TreeNode *top)
{
    Plan *plan = reader->plan;
    plan->name = text_of(&schema_of_plan, top, "plan");
    plan->revision = text_of(&schema_of_plan, top, "revision");
    plan->family = text_of(&schema_of_plan, top, "family");
    plan->source = text_of(&schema_of_plan, top, "source");
    const TreeNode *format = schema_get(&schema_of_plan, top, "format");
    if (format && !g_str_equal(format->text, "1"))
        fault_at(reader, format, 0, "", "this program reads format 1 only; it is too old for this");
}

// Every requirement has a name of its own: entries know it by that name.
static void check_requirements(Reader *reader)
{
    if (plan_requirement_count(reader->plan) > REQUIREMENTS_MOST) {
        fault_at(reader, reader->plan->tree, 0, "",
                 "the plan asks for more than 100,000 things; check its ranges");
        return;
    }
    g_autoptr(GArray) all = plan_requirements(reader->plan);
    g_autoptr(GHashTable) names = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (guint i = 0; i < all->len; i++) {
        const PlanRequirement *requirement = &g_array_index(all, PlanRequirement, i);
        char *name = plan_requirement_name(requirement);
        const TreeNode *place = requirement->step->node->key;
        if (g_hash_table_contains(names, name))
            faults_add(reader->faults, place->line, place->column,
                       "step \"%s\": two things are called `%s` here; give one another name",
                       requirement->step->name, name);
        g_hash_table_add(names, name);
    }
}

static void read_all(Reader *reader)
{
    const TreeNode *top = reader->plan->tree;
    read_heading(reader, top);
    read_units(reader, top);
    read_gates(reader, top);
    read_each(reader, top, "axes", read_axis);
    read_each(reader, top, "given", read_given);
    read_each(reader, top, "consumables", read_consumable);
    read_each(reader, top, "steps", read_steps);
    resolve_plan(reader);
    bind_plan(reader);
}

Plan *plan_read_tree(TreeNode *top, guint added, gboolean kept, Faults *faults)
{
    guint before = faults_count(faults);
    schema_check(&schema_of_plan, top, "", faults);
    Reader reader = {.plan = plan_new(top),
                     .faults = faults,
                     .other = faults_new(),
                     .kept = kept,
                     .told = g_hash_table_new(NULL, NULL)};
    reader.plan->added = added;
    read_all(&reader);
    g_hash_table_unref(reader.told);
    faults_free(reader.other);
    for (gsize i = 0; i < G_N_ELEMENTS(reader.names); i++)
        g_clear_pointer(&reader.names[i], g_ptr_array_unref);
    if (faults_count(faults) == before)
        check_requirements(&reader);
    faults_sort(faults);
    if (faults_count(faults) > before)
        g_clear_pointer(&reader.plan, plan_free);
    return reader.plan;
}

static Plan *read_bytes(const char *bytes, gsize length, gboolean kept, Faults *faults)
{
    guint before = faults_count(faults);
    TreeNode *top = tree_read(bytes, length, faults);
    if (!top)
        return NULL;
    gboolean whole = faults_count(faults) == before;
    Plan *plan = plan_read_tree(top, 0, kept, faults);
    if (!whole)
        g_clear_pointer(&plan, plan_free);
    return plan;
}

Plan *plan_read(const char *bytes, gsize length, Faults *faults)
{
    return read_bytes(bytes, length, FALSE, faults);
}

Plan *plan_read_kept(const char *bytes, gsize length, Faults *faults)
{
    return read_bytes(bytes, length, TRUE, faults);
}
