#include "judge.h"

#include <string.h>

TighteningState *tightening_at(const SetState *set, guint index)
{
    return &g_array_index(set->tightenings, TighteningState, index);
}

TickState *tick_at(const Judge *judge, guint index)
{
    return &g_array_index(judge->ticks, TickState, index);
}

const Stage *stage_at(const TighteningState *state, guint stage)
{
    return g_ptr_array_index(state->tightening->stages, stage);
}

// The tightening an entry means: that of its step, else the last one begun.
static gssize tightening_of(const SetState *set, const Entry *entry)
{
    const char *step = entry_text(entry, "step");
    guint force = 0;
    for (guint i = 0; i < set->tightenings->len; i++)
        if (step && strcmp(tightening_at(set, i)->tightening->step->name, step) == 0)
            return (gssize)i;
    for (guint i = 0; i < set->bolts; i++)
        force = MAX(force, set->bolt[i].force);
    return set->tightenings->len ? (gssize)force : -1;
}

// The bolt an item of an entry's `bolts` names, by its labels with a comma between; -1 if none.
static gssize bolt_of(const SetState *set, const char *words)
{
    g_auto(GStrv) labels = g_strsplit(words, ", ", -1);
    return judge_place(set->group->axes, (const char *const *)labels, g_strv_length(labels));
}

// The stage that uses up a single-use bolt: the first by angle, else the last that is no wait.
static guint stage_of_use(const TighteningState *state)
{
    guint last = 0;
    for (guint i = 0; i < state->tightening->stages->len; i++) {
        if (stage_is_angle(stage_at(state, i)->kind))
            return i;
        if (stage_at(state, i)->kind != STAGE_WAIT)
            last = i;
    }
    return last;
}

// Whether this bolt of this stage is not asked for here: not needed or withdrawn.
static gboolean is_left_out(const Judge *judge, const SetState *set, const TighteningState *state,
                            guint stage, guint bolt)
{
    return judge_is_left_out(judge, state->requirement[stage * set->bolts + bolt]);
}

// Whether a bolt has been through a stage, or need not be.
gboolean stage_is_past(const Judge *judge, const SetState *set, const TighteningState *state,
                       guint stage, guint bolt)
{
    return state->ticks[stage * set->bolts + bolt] >= 0 ||
           is_left_out(judge, set, state, stage, bolt);
}

// Whether every bolt of the same run has been through the stage before, waits left out.
static gboolean came_before(const Judge *judge, const SetState *set, const TighteningState *state,
                            guint stage, guint bolt)
{
    const guint *each = state->tightening->each;
    while (stage > 0 && stage_at(state, stage - 1)->kind == STAGE_WAIT)
        stage--;
    if (stage == 0)
        return TRUE;
    for (guint i = 0; i < set->bolts; i++)
        if (each[i] == each[bolt] && !stage_is_past(judge, set, state, stage - 1, i))
            return FALSE;
    return TRUE;
}

static gboolean bolt_is_through(const Judge *judge, const SetState *set,
                                const TighteningState *state, guint bolt)
{
    for (guint i = 0; i < state->tightening->stages->len; i++)
        if (stage_at(state, i)->kind != STAGE_WAIT && !stage_is_past(judge, set, state, i, bolt))
            return FALSE;
    return TRUE;
}

// Whether a bolt is not there at all: no stage of the tightening asks for it.
gboolean bolt_is_left_out(const Judge *judge, const SetState *set, const TighteningState *state,
                          guint bolt)
{
    for (guint i = 0; i < state->tightening->stages->len; i++)
        if (stage_at(state, i)->kind != STAGE_WAIT && !is_left_out(judge, set, state, i, bolt))
            return FALSE;
    return TRUE;
}

Number *judge_wrench_amount(Judge *judge, const Entry *entry, const TighteningState *state,
                            guint stage, guint bolt)
{
    const char *setting = entry_value(entry, "setting", "value");
    g_autoptr(Number) set_to = setting ? number_from_text(setting, NULL) : NULL;
    if (set_to)
        return unit_to_base(judge_unit(judge, entry_value(entry, "setting", "unit")), set_to);
    return judge_amount(judge, state->tightening, stage_at(state, stage), bolt);
}

static guint32 tick_tool_doubt(Judge *judge, const Entry *entry, const TighteningState *state,
                               TickState *tick, guint *evidence)
{
    gboolean torque = stage_is_torque(stage_at(state, tick->stage)->kind);
    g_autoptr(Number) amount =
        torque ? judge_wrench_amount(judge, entry, state, tick->stage, tick->bolt) : NULL;
    const ToolUsed used = {torque, amount, tick->turn};
    return judge_tool_doubt(judge, entry, &used, evidence, &tick->cause);
}

// Whether the plan asks for it on that bolt.
static gboolean is_laid_on(const PlanGroup *group, guint bolt, const PlanConsumable *consumable)
{
    for (guint i = 0; i < group->lubricants->len; i++) {
        const PlanLubricant *lubricant = group->lubricants->pdata[i];
        if (lubricant->positions[bolt] && strcmp(lubricant->words, consumable->name) == 0)
            return TRUE;
    }
    return FALSE;
}

// What was laid before a bolt was slackened is broken with it, and is laid anew before it is done
// again. A paste or an oil, which has no clock, stays good.
static gboolean is_broken(const Judge *judge, const SetState *set, guint bolt, const Entry *laid,
                          const PlanConsumable *consumable)
{
    return judge_rank(judge, laid->seq) < set->bolt[bolt].slackened &&
           consumable_has_clock(consumable) && is_laid_on(set->group, bolt, consumable);
}

// Doubts of the consumable laid for this tightening: too late for it, not fit to be used, or broken
// since.
static guint32 laid_doubt(const Judge *judge, const SetState *set, guint bolt, const Entry *entry,
                          guint *evidence)
{
    if (!set->laid)
        return 0;
    const Entry *laid = judge_entry(judge, set->laid);
    const PlanConsumable *consumable = plan_consumable(judge->plan, entry_text(laid, "consumable"));
    guint32 doubts = judge_lot_doubt(judge, laid, evidence);
    if (consumable && consumable->fit_within)
        doubts |= judge_window(judge, laid->seq, entry->seq, TRUE, consumable->fit_within);
    if (consumable && is_broken(judge, set, bolt, laid, consumable))
        doubts |= reason_bit(REASON_PART);
    return doubts;
}

static guint32 bolt_doubt(const Judge *judge, const SetState *set, const BoltState *bolt,
                          guint *evidence)
{
    guint32 doubts = bolt->spent ? reason_bit(REASON_SPENT) : 0;
    if (bolt->fit) {
        const Entry *fit = judge_entry(judge, bolt->fit);
        doubts |= judge_lot_doubt(judge, fit, evidence);
        if ((set->group->new_needed || set->group->once) &&
            g_strcmp0(entry_text(fit, "use"), "new") != 0)
            doubts |= reason_bit(REASON_PART);
    }
    return doubts;
}

static void undo_tick(Judge *judge, const TighteningState *state, gint tick, guint rank)
{
    if (tick >= 0)
        judge_undo(judge, state->tightening->step, tick_at(judge, (guint)tick)->rank, rank);
}

static void clear_ticks(Judge *judge, SetState *set, TighteningState *state, guint bolt, guint rank)
{
    g_clear_pointer(&state->disordered, g_free);
    for (guint i = 0; i < state->tightening->stages->len; i++) {
        undo_tick(judge, state, state->ticks[i * set->bolts + bolt], rank);
        state->ticks[i * set->bolts + bolt] = -1;
        state->laps[i * set->bolts + bolt] = 0;
    }
}

// A bolt whose ticks a foreseen take-down left in force is taken up again. What was done to others
// beside it since it was slackened, beyond their first stage, was done without it.
static void doubt_those_ahead(Judge *judge, const SetState *set, const TighteningState *state,
                              guint bolt)
{
    const guint *each = state->tightening->each;
    const BoltState *of = &set->bolt[bolt];
    judge_touch_resting(judge, set->group);
    for (guint i = 0; i < set->bolts; i++)
        for (guint stage = 1; stage < state->tightening->stages->len; stage++) {
            gint tick = state->ticks[stage * set->bolts + i];
            if (i != bolt && tick >= 0 && each[i] == each[bolt] &&
                set->bolt[i].episode == of->episode &&
                tick_at(judge, (guint)tick)->rank > of->slackened)
                tick_at(judge, (guint)tick)->doubts |= reason_bit(REASON_ORDER);
        }
}

// A bolt taken up again after it was loose begins anew: what it had been through is over.
static void begin_anew(Judge *judge, SetState *set, TighteningState *state, guint bolt, guint rank)
{
    if (!bolt_is_left_out(judge, set, state, bolt) && bolt_is_through(judge, set, state, bolt))
        doubt_those_ahead(judge, set, state, bolt);
    clear_ticks(judge, set, state, bolt, rank);
}

// Whether a bolt that was turned, and not slackened since, is pulled once more.
static gboolean is_behind_turn(const SetState *set, const TighteningState *state, guint stage,
                               guint bolt)
{
    const GPtrArray *stages = state->tightening->stages;
    for (guint i = stage; i < stages->len; i++)
        if (state->ticks[i * set->bolts + bolt] >= 0 && stages_turn_past(stages, i, stage))
            return TRUE;
    return FALSE;
}

// Whether the bolt at this stage is what the tightening was last taken up at.
static gboolean is_newest(const SetState *set, const TighteningState *state, gsize cell)
{
    gsize cells = (gsize)state->tightening->stages->len * set->bolts;
    gint last = state->ticks[cell];
    for (gsize i = 0; i < cells; i++)
        if (state->ticks[i] > last)
            return FALSE;
    return last >= 0;
}

// Which time the bolt is done at this stage. Pulled twice in a row it is done once, in its turn; out
// of turn, it is done again.
static void count_tick(const Judge *judge, const SetState *set, TighteningState *state, gsize cell,
                       TickState *tick)
{
    if (is_newest(set, state, cell) && !order_now(judge, set, state)[cell]) {
        const TickState *last = tick_at(judge, (guint)state->ticks[cell]);
        tick->episode = last->episode;
        tick->lap = last->lap;
    } else {
        tick->episode = state->newest[cell] >= 0 ? set->bolt[tick->bolt].episode : 0;
        tick->lap = state->laps[cell]++;
    }
}

// Adds the tick, of which stage, bolt and turn are given.
static void tick_bolt(Judge *judge, SetState *set, guint index, TickState tick, const Entry *entry)
{
    TighteningState *state = tightening_at(set, index);
    guint stage = tick.stage, bolt = tick.bolt;
    BoltState *of = &set->bolt[bolt];
    gsize cell = (gsize)stage * set->bolts + bolt;
    guint rank = judge_rank(judge, entry->seq), evidence = rank;
    gboolean was_loose = !of->tight;
    judge_touch(judge, set->group);
    if (was_loose)
        begin_anew(judge, set, state, bolt, rank);
    undo_tick(judge, state, state->ticks[cell], rank);
    tick.requirement = state->requirement[cell];
    tick.seq = entry->seq;
    tick.rank = rank;
    count_tick(judge, set, state, cell, &tick);
    tick.before = state->newest[cell];
    tick.doubts = tick_tool_doubt(judge, entry, state, &tick, &evidence) |
                  bolt_doubt(judge, set, of, &evidence);
    tick.behind = is_behind_turn(set, state, stage, bolt);
    if (tick.behind || !came_before(judge, set, state, stage, bolt))
        tick.doubts |= reason_bit(REASON_ORDER);
    if (stage == 0 && was_loose)
        tick.doubts |= laid_doubt(judge, set, bolt, entry, &evidence);
    tick.fails = judge_shown(judge, state, &tick, NULL);
    tick.evidence = evidence;
    g_clear_pointer(&state->disordered, g_free);
    state->ticks[cell] = state->newest[cell] = (gint)judge->ticks->len;
    g_array_append_val(judge->ticks, tick);
    of->tight = TRUE;
    of->force = index;
    of->used_up |= stage >= stage_of_use(state);
}

static void disturb_bolt(Judge *judge, const SetState *set, guint bolt, const Entry *entry)
{
    judge_disturb(judge, entry, set->group, set->group->axes, judge_labels(set->group->axes, bolt));
}

void walk_tick(Judge *judge, const Entry *entry)
{
    SetState *set = judge_set(judge, entry_text(entry, "tightening"));
    gssize index = set ? tightening_of(set, entry) : -1;
    gint64 stage = entry_number(entry, "stage") - 1;
    if (index < 0 || stage < 0 ||
        stage >= (gint64)tightening_at(set, (guint)index)->tightening->stages->len)
        return;
    const Stage *kind = stage_at(tightening_at(set, (guint)index), (guint)stage);
    for (gsize i = 0; i < entry_list_length(entry, "bolts"); i++) {
        gssize bolt = bolt_of(set, entry_list_item(entry, "bolts", i));
        if (bolt < 0)
            continue;
        const TickState tick = {.stage = (guint)stage, .bolt = (guint)bolt, .turn = (guint)i};
        tick_bolt(judge, set, (guint)index, tick, entry);
        if (kind->kind == STAGE_SLACKEN)
            disturb_bolt(judge, set, (guint)bolt, entry);
    }
}

// Whether the plan foresees that this bolt is taken down here: a mock-up that was done, or the
// start of a later tightening.
static gboolean is_foreseen(const Judge *judge, const SetState *set, guint bolt, const Entry *entry)
{
    guint force = set->bolt[bolt].force;
    const TighteningState *state = tightening_at(set, force);
    if (set->group->then_off && force == 0 && bolt_is_through(judge, set, state, bolt))
        return TRUE;
    const char *step = entry_text(entry, "step");
    for (guint i = force + 1; step && i < set->tightenings->len; i++)
        if (strcmp(tightening_at(set, i)->tightening->step->name, step) == 0)
            return TRUE;
    return FALSE;
}

// Bolts that are loose at the same time are done again together and run their stages among
// themselves; one slackened when all others are through again is done by itself.
static guint episode_of(const Judge *judge, SetState *set)
{
    for (guint i = 0; set->episodes && i < set->bolts; i++) {
        const BoltState *of = &set->bolt[i];
        if (of->episode == set->episodes &&
            !(of->tight && bolt_is_through(judge, set, tightening_at(set, of->force), i)))
            return set->episodes;
    }
    return ++set->episodes;
}

void judge_slacken_bolt(Judge *judge, SetState *set, guint bolt, const Entry *entry)
{
    BoltState *of = &set->bolt[bolt];
    if (of->tight) {
        of->episode = episode_of(judge, set);
        of->slackened = judge_rank(judge, entry->seq);
    }
    if (set->tightenings->len && !is_foreseen(judge, set, bolt, entry))
        clear_ticks(judge, set, tightening_at(set, of->force), bolt, judge_rank(judge, entry->seq));
    of->tight = FALSE;
    of->spent |= of->used_up && set->group->once;
    disturb_bolt(judge, set, bolt, entry);
}

void walk_slacken(Judge *judge, const Entry *entry)
{
    SetState *set = judge_set(judge, entry_text(entry, "tightening"));
    for (gsize i = 0; set && i < entry_list_length(entry, "bolts"); i++) {
        gssize bolt = bolt_of(set, entry_list_item(entry, "bolts", i));
        if (bolt >= 0)
            judge_slacken_bolt(judge, set, (guint)bolt, entry);
    }
}

void walk_waited(Judge *judge, const Entry *entry)
{
    SetState *set = judge_set(judge, entry_text(entry, "tightening"));
    gssize index = set ? tightening_of(set, entry) : -1;
    gint64 stage = entry_number(entry, "stage");
    if (index < 0)
        return;
    TighteningState *state = tightening_at(set, (guint)index);
    judge_touch(judge, set->group);
    if (stage >= 1 && stage <= (gint64)state->tightening->stages->len)
        state->waited[stage - 1] = entry->seq;
}

void walk_laid(Judge *judge, const Entry *entry)
{
    SetState *set = judge_set(judge, entry_text(entry, "tightening"));
    PartState *part = judge_part(judge, entry_text(entry, "tightening"));
    if (set) {
        set->laid = entry->seq;
    } else if (part) {
        part->laid = entry->seq;
        judge_touch(judge, part->part);
    }
}

static void add_ticks(const Judge *judge, const SetState *set, TighteningState *state, guint bolt,
                      GArray *ticks)
{
    const gboolean *disordered = order_now(judge, set, state);
    for (guint i = 0; i < state->tightening->stages->len; i++) {
        gsize cell = (gsize)i * set->bolts + bolt;
        BasisTick tick = {(guint)state->ticks[cell], disordered[cell]};
        if (state->ticks[cell] >= 0)
            g_array_append_val(ticks, tick);
    }
}

gboolean set_is_final(const Judge *judge, SetState *set, const PlanStep *step,
                      const GPtrArray *axes, const char *const *labels, GArray *ticks)
{
    gboolean final = set->tightenings->len > 0;
    for (guint i = 0; i < set->bolts; i++) {
        g_autofree const char **at = judge_labels(set->group->axes, i);
        if (!places_meet(set->group->axes, at, axes, labels))
            continue;
        TighteningState *state = tightening_at(set, set->bolt[i].force);
        if (bolt_is_left_out(judge, set, state, i))
            continue;
        if (!set->bolt[i].tight || !bolt_is_through(judge, set, state, i) ||
            (step && state->tightening->step != step))
            final = FALSE;
        add_ticks(judge, set, state, i, ticks);
    }
    return final;
}
