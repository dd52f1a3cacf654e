// What entries touch, and what must be decided anew for it: everything the first time, afterwards
// only what the plan makes rest on what was touched.
#include "judge.h"

#include <string.h>

// By what is touched: a PlanCheck, PlanGroup, PlanPart or PlanStep.
struct Links {
    GHashTable
        *users; // GPtrArray of PlanCheck or PlanGroup: whose formula, limits or stages use it
    GHashTable *resting; // of PlanCheck: what rests on it, or is read with it
    GHashTable *settled; // likewise: findings that are answered by it, or by the same
    GHashTable *asked;   // GArray of guint: its requirements
};

// LINKS -----------------------------------------------------------------------------------------

static GHashTable *table_new(void)
{
    return g_hash_table_new_full(NULL, NULL, NULL, (GDestroyNotify)g_ptr_array_unref);
}

static void link_to(GHashTable *table, const void *subject, const void *linked_to)
{
    GPtrArray *linked = subject ? g_hash_table_lookup(table, subject) : NULL;
    if (subject && !linked) {
        linked = g_ptr_array_new();
        g_hash_table_insert(table, (gpointer)subject, linked);
    }
    if (linked)
        g_ptr_array_add(linked, (gpointer)linked_to);
}

static void link_formula(Judge *judge, const void *user, const Formula *formula)
{
    for (gsize i = 0; formula && i < formula_name_count(formula); i++)
        link_to(judge->links->users, plan_check(judge->plan, formula_name(formula, i)), user);
}

static void link_limits(Judge *judge, const PlanCheck *check, const Limits *limits)
{
    if (!limits || limits_form(limits) != LIMITS_VALUE)
        return;
    link_formula(judge, check, limits_lower(limits));
    link_formula(judge, check, limits_upper(limits));
}

static void link_names(GHashTable *table, const PlanCheck *check, const GPtrArray *names)
{
    for (guint i = 0; i < names->len; i++) {
        const PlanName *name = g_ptr_array_index(names, i);
        link_to(table, name->check, check);
        link_to(table, name->group, check);
        link_to(table, name->part, check);
    }
}

// A finding that is answered by another is judged together with it, whichever of them is touched.
static void link_findings(GHashTable *settled, const PlanCheck *check)
{
    link_names(settled, check, check->settled_by);
    for (guint i = 0; i < check->settled_by->len; i++) {
        const PlanName *name = g_ptr_array_index(check->settled_by, i);
        if (name->check->finding)
            link_to(settled, check, name->check);
    }
}

static void link_plan_check(Judge *judge, const PlanCheck *check)
{
    link_formula(judge, check, check->formula);
    for (guint i = 0; i < check->limits->len; i++)
        link_limits(judge, check, ((const PlanLimit *)check->limits->pdata[i])->limits);
    for (guint i = 0; i < check->moved_by->len; i++)
        link_to(judge->links->resting, check->moved_by->pdata[i], check);
    link_names(judge->links->resting, check, check->rests_on);
    link_names(judge->links->resting, check, check->with);
    link_findings(judge->links->settled, check);
}

static void link_stages(Judge *judge, const SetState *set)
{
    for (guint i = 0; i < set->tightenings->len; i++) {
        const TighteningState *state = tightening_at(set, i);
        for (guint stage = 0; stage < state->tightening->stages->len; stage++)
            link_formula(judge, set->group, stage_at(state, stage)->formula);
    }
}

// Limits of this build may use what those of the plan do not.
static void link_amended(Judge *judge, guint index)
{
    const PlanCheck *check = g_array_index(judge->asked, PlanRequirement, index).check;
    const Entry *entry = judge_said_last(judge, index, SAID_AMEND, "limits");
    g_autoptr(Limits) limits =
        entry && check ? limits_parse(entry_text(entry, "limits"), check->unit, NULL, NULL) : NULL;
    link_limits(judge, check, limits);
}

static const void *subject_of(const PlanRequirement *asked)
{
    if (asked->check)
        return asked->check;
    if (asked->tightening)
        return asked->tightening->group;
    if (asked->part)
        return asked->part;
    return asked->group ? (const void *)asked->group : asked->step;
}

static void link_requirement(Judge *judge, guint index)
{
    const void *subject = subject_of(&g_array_index(judge->asked, PlanRequirement, index));
    GArray *indexes = g_hash_table_lookup(judge->links->asked, subject);
    if (!indexes) {
        indexes = g_array_new(FALSE, FALSE, sizeof(guint));
        g_hash_table_insert(judge->links->asked, (gpointer)subject, indexes);
    }
    g_array_append_val(indexes, index);
}

static void make_links(Judge *judge)
{
    judge->links = g_new(Links, 1);
    *judge->links = (Links){table_new(), table_new(), table_new(),
                            g_hash_table_new_full(NULL, NULL, NULL, (GDestroyNotify)g_array_unref)};
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        if (g_hash_table_lookup(judge->state_of, state->check) == state)
            link_plan_check(judge, state->check);
    }
    for (guint i = 0; i < judge->sets->len; i++)
        link_stages(judge, g_ptr_array_index(judge->sets, i));
    for (guint i = 0; i < judge->asked->len; i++) {
        link_requirement(judge, i);
        link_amended(judge, i);
    }
}

void links_free(Links *links)
{
    if (!links)
        return;
    g_hash_table_unref(links->users);
    g_hash_table_unref(links->resting);
    g_hash_table_unref(links->settled);
    g_hash_table_unref(links->asked);
    g_free(links);
}

// TOUCHING --------------------------------------------------------------------------------------

gboolean judge_is_touched(const Judge *judge, const void *subject)
{
    return !judge->touched || g_hash_table_contains(judge->is_touched, subject);
}

void judge_touch(Judge *judge, const void *subject)
{
    if (judge->touched && subject && g_hash_table_add(judge->is_touched, (gpointer)subject))
        g_ptr_array_add(judge->touched, (gpointer)subject);
}

static void touch_linked(Judge *judge, GHashTable *table, const void *subject)
{
    const GPtrArray *linked = g_hash_table_lookup(table, subject);
    for (guint i = 0; linked && i < linked->len; i++)
        judge_touch(judge, linked->pdata[i]);
}

void judge_touch_resting(Judge *judge, const void *subject)
{
    if (!judge->touched)
        return;
    judge_touch(judge, subject);
    touch_linked(judge, judge->links->resting, subject);
}

// FOLLOWING -------------------------------------------------------------------------------------

static void follow(Judge *judge, GHashTable *table)
{
    for (guint i = 0; i < judge->touched->len; i++) // grows while it is walked through
        touch_linked(judge, table, judge->touched->pdata[i]);
}

void judge_forget_touched(Judge *judge)
{
    for (guint i = 0; i < judge->checks->len; i++) {
        CheckState *state = g_ptr_array_index(judge->checks, i);
        if (judge_is_touched(judge, state->check))
            judge_forget_value(state);
    }
}

static gint compare_indexes(gconstpointer one, gconstpointer other)
{
    guint a = *(const guint *)one, b = *(const guint *)other;
    return (a > b) - (a < b);
}

static void list_touched(Judge *judge)
{
    for (guint i = 0; i < judge->touched->len; i++) {
        const GArray *asked = g_hash_table_lookup(judge->links->asked, judge->touched->pdata[i]);
        if (asked)
            g_array_append_vals(judge->stale, asked->data, asked->len);
    }
    g_array_sort(judge->stale, compare_indexes);
}

static void list_all(Judge *judge)
{
    for (guint i = 0; i < judge->made->len; i++)
        g_array_append_val(judge->stale, i);
}

void judge_follow(Judge *judge)
{
    g_array_set_size(judge->stale, 0);
    if (!judge->touched) {
        judge_uphold_ticks(judge);
        list_all(judge);
        return;
    }
    follow(judge, judge->links->users);
    judge_forget_touched(judge);
    follow(judge, judge->links->settled);
    list_touched(judge);
}

void judge_begin_touching(Judge *judge)
{
    if (!judge->links)
        make_links(judge);
    if (!judge->touched) {
        judge->touched = g_ptr_array_new();
        judge->is_touched = g_hash_table_new(NULL, NULL);
    }
    g_ptr_array_set_size(judge->touched, 0);
    g_hash_table_remove_all(judge->is_touched);
}
