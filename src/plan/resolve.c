// Names to what they name, once all steps are read.
#include "read.h"

#include <string.h>

static void resolve_after(Reader *reader, PlanStep *step, const char *where)
{
    GPtrArray *steps = reader->plan->steps;
    g_autoptr(GPtrArray) nodes = nodes_of(&schema_of_step, step->node, "after");
    if (nodes->len == 0 && step->index > 0)
        g_ptr_array_add(step->after, g_ptr_array_index(steps, step->index - 1));
    for (guint i = 0; i < nodes->len; i++) {
        const TreeNode *node = g_ptr_array_index(nodes, i);
        const PlanStep *before = plan_step(reader->plan, node->text);
        if (!before && g_str_equal(node->text, "nothing") && nodes->len == 1)
            continue;
        if (before) {
            g_ptr_array_add(step->after, (gpointer)before);
            continue;
        }
        g_autofree const char **names = g_new0(const char *, steps->len);
        for (guint j = 0; j < steps->len; j++)
            names[j] = ((const PlanStep *)g_ptr_array_index(steps, j))->name;
        fault_unknown(reader, node, where, "step", names, steps->len);
    }
}

// All names of checks, and of groups where `groups` asks for them.
static GPtrArray *all_names(const Plan *plan, gboolean groups)
{
    GPtrArray *names = g_ptr_array_new();
    GHashTable *tables[] = {plan->checks, groups ? plan->groups : NULL};
    for (gsize i = 0; i < G_N_ELEMENTS(tables) && tables[i]; i++) {
        g_autoptr(GList) keys = g_hash_table_get_keys(tables[i]);
        keys = g_list_sort(keys, (GCompareFunc)strcmp);
        for (GList *key = keys; key; key = key->next)
            g_ptr_array_add(names, key->data);
    }
    return names;
}

static void resolve_names(Reader *reader, GPtrArray *names, gboolean groups, const char *where)
{
    for (guint i = 0; i < names->len; i++) {
        PlanName *name = g_ptr_array_index(names, i);
        name->check = plan_check(reader->plan, name->node->text);
        name->group = groups && !name->check ? plan_group(reader->plan, name->node->text) : NULL;
        if (name->check || name->group)
            continue;
        g_autoptr(GPtrArray) all = all_names(reader->plan, groups);
        fault_unknown(reader, name->node, where, groups ? "check or group" : "check",
                      (const char *const *)all->pdata, all->len);
    }
}

static void resolve_check(Reader *reader, PlanCheck *check)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", check->step->name, check->name);
    resolve_names(reader, check->with, TRUE, where);
    resolve_names(reader, check->rests_on, TRUE, where);
    const PlanName *only = check->settled_by->len == 1 ? check->settled_by->pdata[0] : NULL;
    check->by_decision =
        only && g_str_equal(only->node->text, "decision") && !plan_check(reader->plan, "decision");
    if (check->by_decision)
        g_ptr_array_set_size(check->settled_by, 0);
    resolve_names(reader, check->settled_by, FALSE, where);
}

static void resolve_uses(Reader *reader, PlanStep *step, const char *where)
{
    GPtrArray *all = reader->plan->consumables;
    g_autoptr(GPtrArray) nodes = nodes_of(&schema_of_step, step->node, "uses");
    for (guint i = 0; i < nodes->len; i++) {
        const TreeNode *node = g_ptr_array_index(nodes, i);
        const PlanConsumable *consumable = plan_consumable(reader->plan, node->text);
        if (consumable) {
            g_ptr_array_add(step->uses, (gpointer)consumable);
            continue;
        }
        g_autofree const char **names = g_new0(const char *, all->len + 1);
        for (guint j = 0; j < all->len; j++)
            names[j] = ((const PlanConsumable *)g_ptr_array_index(all, j))->name;
        fault_unknown(reader, node, where, "consumable", names, all->len);
    }
}

static void resolve_step(Reader *reader, PlanStep *step)
{
    g_autofree char *where = g_strdup_printf("step \"%s\": ", step->name);
    resolve_after(reader, step, where);
    resolve_uses(reader, step, where);
    resolve_names(reader, step->closes, TRUE, where);
    resolve_names(reader, step->read_again, FALSE, where);
    for (guint i = 0; i < step->checks->len; i++)
        resolve_check(reader, g_ptr_array_index(step->checks, i));
}

// A step that must come before itself, told once for each circle at its first step.
static void find_circles(Reader *reader)
{
    GPtrArray *steps = reader->plan->steps;
    g_autoptr(GHashTable) told = g_hash_table_new(NULL, NULL);
    for (guint i = 0; i < steps->len; i++) {
        PlanStep *step = g_ptr_array_index(steps, i);
        if (g_hash_table_contains(told, step) || !plan_step_follows(step, step))
            continue;
        for (guint j = i; j < steps->len; j++) {
            PlanStep *other = g_ptr_array_index(steps, j);
            if (plan_step_follows(step, other) && plan_step_follows(other, step))
                g_hash_table_add(told, other);
        }
        const TreeNode *after = tree_get(step->node, "after");
        g_autofree char *where = g_strdup_printf("step \"%s\": ", step->name);
        fault_at(reader, after ? after : step->node->key, 0, where,
                 "by `after` this step would have to come before itself; take out one of them");
    }
}

void resolve_plan(Reader *reader)
{
    GPtrArray *steps = reader->plan->steps;
    for (guint i = 0; i < steps->len; i++)
        resolve_step(reader, g_ptr_array_index(steps, i));
    find_circles(reader);
}
