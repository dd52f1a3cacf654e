// What the ticks of a tightening come to: their order, the waits between, a verdict for each.
#include "judge.h"

#include <standbook/rules/order.h>

static gint tick_index(const SetState *set, const TighteningState *state, guint stage, guint bolt)
{
    return state->ticks[stage * set->bolts + bolt];
}

static gint compare_indexes(gconstpointer one, gconstpointer other)
{
    guint a = *(const guint *)one, b = *(const guint *)other;
    return (a > b) - (a < b);
}

// The ticks that count in one stage, by rank (they were made in that order).
static GArray *ticks_of(const SetState *set, const TighteningState *state, guint stage)
{
    GArray *found = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < set->bolts; i++) {
        gint tick = tick_index(set, state, stage, i);
        if (tick >= 0)
            g_array_append_val(found, tick);
    }
    g_array_sort(found, compare_indexes);
    return found;
}

// Takes out of `ticks` those that stand in one sequence with the first.
static GArray *take_sequence(const Judge *judge, GArray *ticks)
{
    GArray *sequence = g_array_new(FALSE, FALSE, sizeof(guint));
    const TickState *first = tick_at(judge, g_array_index(ticks, guint, 0));
    for (guint i = 0; i < ticks->len;) {
        guint index = g_array_index(ticks, guint, i);
        const TickState *tick = tick_at(judge, index);
        if (tick->episode != first->episode || tick->lap != first->lap) {
            i++;
            continue;
        }
        g_array_append_val(sequence, index);
        g_array_remove_index(ticks, i);
    }
    return sequence;
}

static void mark_sequence(const Judge *judge, const SetState *set, TighteningState *state,
                          const GArray *sequence)
{
    g_autofree guint *ticked = g_new(guint, sequence->len);
    g_autofree gboolean *in_doubt = g_new0(gboolean, sequence->len);
    for (guint i = 0; i < sequence->len; i++)
        ticked[i] = tick_at(judge, g_array_index(sequence, guint, i))->bolt;
    order_mark(state->tightening->order, set->bolts, ticked, sequence->len, in_doubt);
    for (guint i = 0; i < sequence->len; i++) {
        const TickState *tick = tick_at(judge, g_array_index(sequence, guint, i));
        state->disordered[tick->stage * set->bolts + tick->bolt] = in_doubt[i];
    }
}

// Bolts done again run among themselves: they make a sequence of their own. Bolts of different runs
// (`each`) have their place in the order asked all the same.
const gboolean *order_now(const Judge *judge, const SetState *set, TighteningState *state)
{
    guint stages = state->tightening->stages->len;
    if (state->disordered)
        return state->disordered;
    state->disordered = g_new0(gboolean, (gsize)stages * set->bolts);
    for (guint stage = 0; stage < stages; stage++) {
        g_autoptr(GArray) ticks = ticks_of(set, state, stage);
        while (ticks->len > 0) {
            g_autoptr(GArray) sequence = take_sequence(judge, ticks);
            mark_sequence(judge, set, state, sequence);
        }
    }
    return state->disordered;
}

static guint runs_of(const SetState *set, const TighteningState *state)
{
    guint runs = 0;
    for (guint i = 0; i < set->bolts; i++)
        runs = MAX(runs, state->tightening->each[i] + 1);
    return runs;
}

// The newest earlier tick there with a tool that was found wrong and is not that of this one: the
// bolt was done again for it.
static ToolCause redone_for(const Judge *judge, const TickState *tick)
{
    const char *tool = entry_tool(judge_entry(judge, tick->seq));
    for (gint i = tick->before; tool && i >= 0; i = tick_at(judge, (guint)i)->before) {
        const ToolCause cause = cause_unpack(tick_at(judge, (guint)i)->cause);
        if (cause.state == TOOL_WRONG &&
            g_strcmp0(entry_tool(judge_entry(judge, cause.use)), tool) != 0)
            return cause;
    }
    return (ToolCause){0};
}

static void judge_bolt(Judge *judge, const SetState *set, TighteningState *state, guint cell)
{
    Requirement *made = judge_requirement(judge, state->requirement[cell]);
    if (state->ticks[cell] < 0)
        return;
    const TickState *tick = tick_at(judge, (guint)state->ticks[cell]);
    guint32 doubts = tick->doubts;
    if (order_now(judge, set, state)[cell])
        doubts |= reason_bit(REASON_ORDER);
    made->entry = tick->seq;
    made->verdict = made->value_verdict = VERDICT_PASS;
    char *note = NULL;
    made->reason = made->value_reason = judge_shown(judge, state, tick, &note);
    made->answer = g_strdup(note ? note : stage_at(state, tick->stage)->text);
    if (note) {
        made->verdict = made->value_verdict = VERDICT_FAIL;
        requirement_note(made, note);
    }
    made->pulled_again = tick->behind;
    if (tick->behind)
        requirement_note(made, g_strdup(requirement_pulled_said()));
    made->upheld = doubts & tick->upheld ? tick->upheld_by : 0;
    requirement_doubt(made, doubts & ~tick->upheld);
    requirement_set_tool(made, tick->cause);
    made->redone = redone_for(judge, tick);
}

// The newest tick of a stage over one run; NULL while a bolt of it is missing.
static const TickState *last_through(const Judge *judge, const SetState *set,
                                     const TighteningState *state, guint stage, guint run)
{
    const TickState *last = NULL;
    for (guint i = 0; i < set->bolts; i++) {
        if (state->tightening->each[i] != run)
            continue;
        gint index = tick_index(set, state, stage, i);
        if (!stage_is_past(judge, set, state, stage, i))
            return NULL;
        const TickState *tick = index < 0 ? NULL : tick_at(judge, (guint)index);
        if (tick && (!last || tick->rank > last->rank))
            last = tick;
    }
    return last;
}

// The entry that ends a wait begun at rank `from`: the one that says so, or the first bolt taken up
// again before that; 0 if there is none yet.
static gint64 wait_end(const Judge *judge, const SetState *set, const TighteningState *state,
                       guint stage, guint run, guint from)
{
    gint64 waited = state->waited[stage];
    gint64 end = waited && judge_rank(judge, waited) > from ? waited : 0;
    for (guint i = 0; stage + 1 < state->tightening->stages->len && i < set->bolts; i++) {
        gint index = tick_index(set, state, stage + 1, i);
        if (index < 0 || state->tightening->each[i] != run)
            continue;
        const TickState *tick = tick_at(judge, (guint)index);
        if (tick->rank > from && (!end || tick->rank < judge_rank(judge, end)))
            end = tick->seq;
    }
    return end;
}

static gboolean run_is_left_out(const Judge *judge, const SetState *set,
                                const TighteningState *state, guint run)
{
    for (guint i = 0; i < set->bolts; i++)
        if (state->tightening->each[i] == run && !bolt_is_left_out(judge, set, state, i))
            return FALSE;
    return TRUE;
}

// A wait runs from the last bolt of the stage before to its end, in each run; all must have waited.
static void judge_wait(Judge *judge, const SetState *set, const TighteningState *state, guint stage)
{
    guint index = state->requirement[stage * set->bolts];
    Requirement *made = judge_requirement(judge, index);
    g_autoptr(Number) limit = formula_constant(stage_at(state, stage)->formula);
    guint32 doubts = 0;
    gint64 newest = 0;
    for (guint run = 0; stage > 0 && run < runs_of(set, state); run++) {
        if (run_is_left_out(judge, set, state, run))
            continue;
        const TickState *from = last_through(judge, set, state, stage - 1, run);
        gint64 to = from ? wait_end(judge, set, state, stage, run, from->rank) : 0;
        if (!to)
            return;
        if (limit)
            doubts |= judge_window(judge, from->seq, to, FALSE, limit);
        if (!newest || judge_rank(judge, to) > judge_rank(judge, newest))
            newest = to;
    }
    if (!newest)
        return;
    made->entry = newest;
    made->verdict = made->value_verdict = VERDICT_PASS;
    judge->evidence[index] = judge_rank(judge, newest);
    requirement_doubt(made, doubts);
}

void judge_bolt_requirement(Judge *judge, guint index)
{
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    const Owner *owner = &judge->owners[index];
    TighteningState *state = tightening_at(owner->set, owner->tightening);
    guint stage = asked->number - 1;
    if (asked->asked == PLAN_WAIT)
        judge_wait(judge, owner->set, state, stage);
    else
        judge_bolt(judge, owner->set, state, stage * owner->set->bolts + asked->place);
}
