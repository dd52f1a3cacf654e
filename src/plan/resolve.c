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

static const char *kinds_in_words(unsigned kinds)
{
    return kinds & NAMES_PARTS    ? "check, group or part"
           : kinds & NAMES_GROUPS ? "check or group"
                                  : "check";
}

static gboolean look_up(const Plan *plan, PlanName *name, const char *text, unsigned kinds)
{
    name->check = plan_check(plan, text);
    name->group = !name->check && kinds & NAMES_GROUPS ? plan_group(plan, text) : NULL;
    name->part = !name->check && !name->group && kinds & NAMES_PARTS ? plan_part(plan, text) : NULL;
    return name->check || name->group || name->part;
}

static gboolean is_done_in(const PlanName *name, const PlanStep *step)
{
    gboolean done =
        name->check ? name->check->step == step : name->part && name->part->step == step;
    for (guint i = 0; name->check && i < step->read_again->len; i++) {
        const PlanName *again = g_ptr_array_index(step->read_again, i);
        done = done || g_str_equal(again->node->text, name->check->name);
    }
    for (guint i = 0; name->group && i < step->tightenings->len; i++)
        done = done || ((const PlanTightening *)step->tightenings->pdata[i])->group == name->group;
    return done;
}

// `NAME in STEP`, at each ` in ` of the text. A name that this step does not have stays unknown.
static gboolean look_up_in_step(const Plan *plan, PlanName *name, unsigned kinds)
{
    const char *text = name->node->text;
    for (const char *in = strstr(text, " in "); in; in = strstr(in + 1, " in ")) {
        g_autofree char *before = g_strndup(text, (gsize)(in - text));
        const PlanStep *step = plan_step(plan, in + 4);
        if (step && look_up(plan, name, before, kinds) && is_done_in(name, step)) {
            name->step = step;
            return TRUE;
        }
    }
    name->check = NULL;
    name->group = NULL;
    name->part = NULL;
    return FALSE;
}

static void resolve_names(Reader *reader, GPtrArray *names, unsigned kinds, const char *where)
{
    for (guint i = 0; i < names->len; i++) {
        PlanName *name = g_ptr_array_index(names, i);
        if (look_up(reader->plan, name, name->node->text, kinds) ||
            look_up_in_step(reader->plan, name, kinds))
            continue;
        const GPtrArray *all = names_of(reader, kinds);
        fault_unknown(reader, name->node, where, kinds_in_words(kinds),
                      (const char *const *)all->pdata, all->len);
    }
}

static void resolve_check(Reader *reader, PlanCheck *check)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", check->step->name, check->name);
    resolve_names(reader, check->with, NAMES_CHECKS | NAMES_GROUPS | NAMES_PARTS, where);
    resolve_names(reader, check->rests_on, NAMES_CHECKS | NAMES_GROUPS | NAMES_PARTS, where);
    const PlanName *only = check->settled_by->len == 1 ? check->settled_by->pdata[0] : NULL;
    check->by_decision =
        only && g_str_equal(only->node->text, "decision") && !plan_check(reader->plan, "decision");
    if (check->by_decision)
        g_ptr_array_set_size(check->settled_by, 0);
    resolve_names(reader, check->settled_by, NAMES_CHECKS, where);
    for (guint i = 0; i < check->settled_by->len; i++) {
        const PlanName *name = g_ptr_array_index(check->settled_by, i);
        if (name->check == check)
            fault_at(reader, name->node, 0, where,
                     "a check cannot settle itself; name a later one");
    }
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

// What is done again is of an earlier step, so that each time has a name of its own.
static void check_again(Reader *reader, const PlanStep *step)
{
    g_autofree char *where = g_strdup_printf("step \"%s\": ", step->name);
    for (guint i = 0; i < step->read_again->len; i++) {
        const PlanName *name = g_ptr_array_index(step->read_again, i);
        if (name->check && !plan_step_follows(step, name->check->step))
            fault_at(reader, name->node, 0, where,
                     "only a check of a step that comes before this one is read again");
    }
    for (guint i = 0; i < step->tightenings->len; i++) {
        const PlanTightening *again = g_ptr_array_index(step->tightenings, i);
        if (again->again && !plan_step_follows(step, again->group->step))
            faults_add(reader->faults, again->line, again->column,
                       "%sonly a group of a step that comes before this one is tightened again",
                       where);
    }
}

static void resolve_step(Reader *reader, PlanStep *step)
{
    g_autofree char *where = g_strdup_printf("step \"%s\": ", step->name);
    resolve_after(reader, step, where);
    resolve_uses(reader, step, where);
    resolve_names(reader, step->closes, NAMES_CHECKS | NAMES_GROUPS, where);
    resolve_names(reader, step->read_again, NAMES_CHECKS, where);
    for (guint i = 0; i < step->checks->len; i++)
        resolve_check(reader, g_ptr_array_index(step->checks, i));
}

static void note_before(PlanStep *step, guint index)
{
    step->before[index / 64] |= (guint64)1 << (index % 64);
}

// What comes before each step, over any number of others (Warshall's closure: Warshall 1962,
// J. ACM 9(1), 11). Steps are few enough for its n³ / 64.
static void find_before(GPtrArray *steps)
{
    guint words = steps->len / 64 + 1;
    for (guint i = 0; i < steps->len; i++) {
        PlanStep *step = g_ptr_array_index(steps, i);
        step->before = g_new0(guint64, words);
        for (guint j = 0; j < step->after->len; j++)
            note_before(step, ((const PlanStep *)step->after->pdata[j])->index);
    }
    for (guint middle = 0; middle < steps->len; middle++) {
        const PlanStep *through = g_ptr_array_index(steps, middle);
        for (guint i = 0; i < steps->len; i++) {
            PlanStep *step = g_ptr_array_index(steps, i);
            for (guint j = 0; j < words && plan_step_follows(step, through); j++)
                step->before[j] |= through->before[j];
        }
    }
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

// The groups that a `rests on` of the plan names.
static GHashTable *rested_on(const Plan *plan)
{
    GHashTable *groups = g_hash_table_new(NULL, NULL);
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const GPtrArray *names = ((const PlanCheck *)step->checks->pdata[j])->rests_on;
            for (guint k = 0; k < names->len; k++)
                g_hash_table_add(groups, (gpointer)((const PlanName *)names->pdata[k])->group);
        }
    }
    return groups;
}

// What a setting is read with holds it where it is tightened first in the same step, to stay, and
// the plan says of nothing that it rests on it: then the setting does.
static void find_holds(PlanCheck *check, GHashTable *rested)
{
    for (guint i = 0; check->setting && i < check->with->len; i++) {
        const PlanName *name = check->with->pdata[i];
        if (name->group && name->group->step == check->step && !name->group->then_off &&
            (!name->step || name->step == check->step) &&
            !g_hash_table_contains(rested, name->group))
            g_ptr_array_add(check->rests_on, g_memdup2(name, sizeof *name));
    }
}

static void find_all_holds(const Plan *plan)
{
    g_autoptr(GHashTable) rested = rested_on(plan);
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++)
            find_holds(step->checks->pdata[j], rested);
    }
}

void resolve_plan(Reader *reader)
{
    GPtrArray *steps = reader->plan->steps;
    for (guint i = 0; i < steps->len; i++)
        resolve_step(reader, g_ptr_array_index(steps, i));
    find_before(steps);
    find_circles(reader);
    for (guint i = 0; i < steps->len; i++)
        check_again(reader, g_ptr_array_index(steps, i));
    find_all_holds(reader->plan);
}
