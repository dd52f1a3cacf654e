#include "judge.h"

#include <string.h>

static void check_state_free(gpointer data)
{
    CheckState *state = data;
    for (guint i = 0; i < state->places; i++)
        g_array_unref(state->readings[i]);
    g_free(state->readings);
    g_free(state->requirement);
    for (guint i = 0; i < places_count(state->check->places); i++)
        basis_clear(&state->looks[i].basis);
    g_free(state->looks);
    g_free(state->chosen_by);
    g_free(state->chosen);
    g_free(state->meant);
    g_free(state->evidence);
    g_free(state->upheld);
    g_free(state->argued);
    array_free(state->value);
    g_free(state);
}

static CheckState *check_state_new(const PlanCheck *check, const PlanStep *step)
{
    CheckState *state = g_new0(CheckState, 1);
    guint judged = places_count(check->places);
    state->check = check;
    state->step = step;
    state->places = places_count(check->axes);
    state->readings = g_new0(GArray *, state->places);
    for (guint i = 0; i < state->places; i++)
        state->readings[i] = g_array_new(FALSE, FALSE, sizeof(guint));
    state->requirement = g_new0(guint, judged);
    state->looks = g_new0(LookState, judged);
    state->chosen_by = g_new0(gint64, judged);
    state->chosen = g_new0(gssize, judged);
    for (guint i = 0; i < judged; i++)
        state->chosen[i] = -1;
    state->meant = g_new0(guint, state->places);
    state->evidence = g_new0(guint, state->places);
    state->upheld = g_new0(gint64, state->places);
    state->argued = g_new0(gint64, state->places);
    return state;
}

// The state of this check in this step, made at its first place.
static CheckState *check_state(Judge *judge, const PlanCheck *check, const PlanStep *step)
{
    CheckState *state = g_hash_table_lookup(judge->state_of, check), *last = NULL;
    for (; state && state->step != step; state = state->again)
        last = state;
    if (state)
        return state;
    state = check_state_new(check, step);
    g_ptr_array_add(judge->checks, state);
    if (last)
        last->again = state;
    else
        g_hash_table_insert(judge->state_of, (gpointer)check, state);
    return state;
}

static void set_state_free(gpointer data)
{
    SetState *set = data;
    for (guint i = 0; i < set->tightenings->len; i++) {
        TighteningState *state = &g_array_index(set->tightenings, TighteningState, i);
        g_free(state->ticks);
        g_free(state->laps);
        g_free(state->newest);
        g_free(state->disordered);
        g_free(state->requirement);
        g_free(state->waited);
    }
    g_array_unref(set->tightenings);
    g_free(set->bolt);
    g_free(set);
}

static SetState *set_state(Judge *judge, const PlanGroup *group)
{
    SetState *set = g_hash_table_lookup(judge->state_of, group);
    if (set)
        return set;
    set = g_new0(SetState, 1);
    set->group = group;
    set->bolts = places_count(group->axes);
    set->tightenings = g_array_new(FALSE, TRUE, sizeof(TighteningState));
    set->bolt = g_new0(BoltState, set->bolts);
    for (guint i = 0; i < set->bolts; i++)
        set->bolt[i].requirement = G_MAXUINT;
    g_ptr_array_add(judge->sets, set);
    g_hash_table_insert(judge->state_of, (gpointer)group, set);
    return set;
}

static guint tightening_state(SetState *set, const PlanTightening *tightening)
{
    for (guint i = set->tightenings->len; i-- > 0;)
        if (tightening_at(set, i)->tightening == tightening)
            return i;
    gsize size = (gsize)set->bolts * tightening->stages->len;
    TighteningState state = {.tightening = tightening,
                             .ticks = g_new(gint, size),
                             .laps = g_new0(guint, size),
                             .newest = g_new(gint, size),
                             .requirement = g_new0(guint, size),
                             .waited = g_new0(gint64, tightening->stages->len)};
    for (gsize i = 0; i < size; i++)
        state.ticks[i] = state.newest[i] = -1;
    g_array_append_val(set->tightenings, state);
    return set->tightenings->len - 1;
}

static PartState *part_state(Judge *judge, const PlanPart *part)
{
    PartState *state = g_hash_table_lookup(judge->state_of, part);
    if (state)
        return state;
    state = g_new0(PartState, 1);
    state->part = part;
    state->places = places_count(part->axes);
    state->fit = g_new0(gint64, state->places);
    state->requirement = g_new0(guint, state->places);
    g_ptr_array_add(judge->parts, state);
    g_hash_table_insert(judge->state_of, (gpointer)part, state);
    return state;
}

static void part_state_free(gpointer data)
{
    PartState *state = data;
    g_free(state->fit);
    g_free(state->requirement);
    g_free(state);
}

static void link_check(Judge *judge, const PlanRequirement *asked, guint index)
{
    CheckState *state = check_state(judge, asked->check, asked->step);
    state->requirement[asked->place] = index;
    judge->owners[index].check = state;
}

static void link_tightening(Judge *judge, const PlanRequirement *asked, guint index)
{
    SetState *set = set_state(judge, asked->tightening->group);
    guint tightening = tightening_state(set, asked->tightening);
    guint bolt = asked->asked == PLAN_WAIT ? 0 : asked->place;
    tightening_at(set, tightening)->requirement[(asked->number - 1) * set->bolts + bolt] = index;
    judge->owners[index] = (Owner){.set = set, .tightening = tightening};
}

static void link_fit(Judge *judge, const PlanRequirement *asked, guint index)
{
    Owner *owner = &judge->owners[index];
    if (asked->part) {
        owner->part = part_state(judge, asked->part);
        owner->part->requirement[asked->place] = index;
    } else {
        owner->set = set_state(judge, asked->group);
        owner->set->bolt[asked->place].requirement = index;
    }
}

static void link_sign(Judge *judge, const PlanRequirement *asked, guint index)
{
    GArray *signatures = g_hash_table_lookup(judge->signatures, asked->step);
    (void)index;
    if (!signatures) {
        signatures = g_array_new(FALSE, TRUE, sizeof(Signature));
        g_hash_table_insert(judge->signatures, (gpointer)asked->step, signatures);
    }
    if (signatures->len < asked->number)
        g_array_set_size(signatures, asked->number);
}

// Indexed by PlanAsked.
static void (*const links[])(Judge *, const PlanRequirement *, guint) = {
    link_check, link_check, link_tightening, link_tightening, link_fit, link_sign,
};

// Everything the plan asks for, with what it is judged from.
static void ask(Judge *judge)
{
    judge->asked = plan_requirements(judge->plan);
    guint count = judge->asked->len;
    judge->made = g_ptr_array_sized_new(count);
    judge->owners = g_new0(Owner, count + 1);
    judge->not_needed = g_new0(gboolean, count + 1);
    judge->evidence = g_new0(guint, count + 1);
    judge->said_of = g_new0(GArray *, count + 1);
    for (guint i = 0; i < count; i++) {
        const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, i);
        g_ptr_array_add(judge->made, requirement_new(asked, NULL));
        links[asked->asked](judge, asked, i);
    }
}

void judge_init(Judge *judge, const Plan *plan, const Entry *const *entries, gsize count,
                const Hypothesis *hypothesis, guint below, gboolean hindsight)
{
    *judge = (Judge){.plan = plan, .entries = entries, .count = count, .hypothesis = hypothesis};
    judge->known =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_ptr_array_unref);
    judge->consulted = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    judge->checks = g_ptr_array_new_with_free_func(check_state_free);
    judge->sets = g_ptr_array_new_with_free_func(set_state_free);
    judge->parts = g_ptr_array_new_with_free_func(part_state_free);
    judge->state_of = g_hash_table_new(NULL, NULL);
    judge->readings = g_array_new(FALSE, TRUE, sizeof(ReadingState));
    judge->ticks = g_array_new(FALSE, TRUE, sizeof(TickState));
    judge->disturbances = g_array_new(FALSE, TRUE, sizeof(Disturbance));
    judge->stale = g_array_new(FALSE, FALSE, sizeof(guint));
    judge->signatures = g_hash_table_new_full(NULL, NULL, NULL, (GDestroyNotify)g_array_unref);
    judge->tools = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, judge_tool_free);
    judge->units =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)unit_free);
    judge->sealed = g_new0(gint64, plan->gates->len + 1);
    ask(judge);
    judge_read_entries(judge, below, hindsight);
    judge_gather_said(judge);
    for (guint i = 0; i < judge->made->len; i++)
        judge_mark(judge, i);
}

void judge_clear(Judge *judge)
{
    judge_drop_readings(judge, 0);
    judge_entries_clear(judge);
    judge_said_clear(judge);
    links_free(judge->links);
    g_free(judge->owners);
    g_free(judge->not_needed);
    g_free(judge->evidence);
    g_free(judge->sealed);
    g_array_unref(judge->asked);
    g_ptr_array_unref(judge->made);
    g_ptr_array_unref(judge->checks);
    g_ptr_array_unref(judge->sets);
    g_ptr_array_unref(judge->parts);
    g_hash_table_unref(judge->state_of);
    g_array_unref(judge->readings);
    g_array_unref(judge->ticks);
    for (guint i = 0; i < judge->disturbances->len; i++)
        g_free(g_array_index(judge->disturbances, Disturbance, i).labels);
    g_array_unref(judge->disturbances);
    g_array_unref(judge->stale);
    g_hash_table_unref(judge->tools);
    g_hash_table_unref(judge->units);
    g_hash_table_unref(judge->signatures);
    g_clear_pointer(&judge->touched, g_ptr_array_unref);
    g_clear_pointer(&judge->is_touched, g_hash_table_unref);
    g_clear_pointer(&judge->before, g_hash_table_unref);
}

const Entry *judge_entry(const Judge *judge, gint64 seq)
{
    return judge->entries[seq - 1];
}

guint judge_rank(const Judge *judge, gint64 seq)
{
    return judge->rank[seq - 1];
}

Requirement *judge_requirement(const Judge *judge, guint index)
{
    return g_ptr_array_index(judge->made, index);
}

CheckState *judge_check(const Judge *judge, const char *name, const char *step)
{
    const PlanCheck *check = name ? plan_check(judge->plan, name) : NULL;
    CheckState *first = check ? g_hash_table_lookup(judge->state_of, check) : NULL;
    for (CheckState *state = first; state && step; state = state->again)
        if (strcmp(state->step->name, step) == 0)
            return state;
    return first;
}

CheckState *judge_check_for(const Judge *judge, const PlanCheck *check, const PlanStep *step)
{
    CheckState *state = g_hash_table_lookup(judge->state_of, check);
    while (state && state->again && state->again->step->index <= step->index)
        state = state->again;
    return state;
}

SetState *judge_set(const Judge *judge, const char *name)
{
    const PlanGroup *group = name ? plan_group(judge->plan, name) : NULL;
    return group ? g_hash_table_lookup(judge->state_of, group) : NULL;
}

PartState *judge_part(const Judge *judge, const char *name)
{
    const PlanPart *part = name ? plan_part(judge->plan, name) : NULL;
    return part ? g_hash_table_lookup(judge->state_of, part) : NULL;
}

const Unit *judge_unit(const Judge *judge, const char *words)
{
    if (!words || !*words)
        return NULL;
    Unit *unit = g_hash_table_lookup(judge->units, words);
    if (!unit) {
        unit = unit_parse(words, NULL);
        if (unit)
            g_hash_table_insert(judge->units, g_strdup(words), unit);
    }
    return unit;
}
