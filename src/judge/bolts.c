#include "judge.h"

#include <standbook/rules/order.h>
#include <string.h>

static TighteningState *tightening_at(const SetState *set, guint index)
{
    return &g_array_index(set->tightenings, TighteningState, index);
}

static TickState *tick_at(const Judge *judge, guint index)
{
    return &g_array_index(judge->ticks, TickState, index);
}

static const Stage *stage_at(const TighteningState *state, guint stage)
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

static gboolean is_turned(const Stage *stage)
{
    return stage->kind == STAGE_TURN || stage->kind == STAGE_ANGLE;
}

// The stage that uses up a single-use bolt: the first by angle, else the last.
static guint stage_of_use(const TighteningState *state)
{
    guint stages = state->tightening->stages->len;
    for (guint i = 0; i < stages; i++)
        if (is_turned(stage_at(state, i)))
            return i;
    return stages - 1;
}

// Whether every bolt of the same run has been through the stage before, waits left out.
static gboolean came_before(const SetState *set, const TighteningState *state, guint stage,
                            guint bolt)
{
    const guint *each = state->tightening->each;
    while (stage > 0 && stage_at(state, stage - 1)->kind == STAGE_WAIT)
        stage--;
    if (stage == 0)
        return TRUE;
    for (guint i = 0; i < set->bolts; i++)
        if (each[i] == each[bolt] && state->ticks[(stage - 1) * set->bolts + i] < 0)
            return FALSE;
    return TRUE;
}

static Number *stage_amount(const Judge *judge, const Stage *stage)
{
    (void)judge;
    return stage->formula ? formula_constant(stage->formula) : NULL;
}

static guint32 tick_tool_doubt(Judge *judge, const Entry *entry, const Stage *stage,
                               guint *evidence)
{
    gboolean torque = stage->kind == STAGE_TORQUE;
    g_autoptr(Number) amount = torque ? stage_amount(judge, stage) : NULL;
    return judge_tool_doubt(judge, entry, torque, amount, evidence);
}

static const PlanConsumable *consumable_of(const Judge *judge, const Entry *laid)
{
    return plan_consumable(judge->plan, entry_text(laid, "consumable"));
}

// Doubts of the consumable laid for this tightening: too late for it, or not fit to be used.
static guint32 laid_doubt(const Judge *judge, const SetState *set, const Entry *entry)
{
    if (!set->laid)
        return 0;
    const Entry *laid = judge_entry(judge, set->laid);
    const PlanConsumable *consumable = consumable_of(judge, laid);
    guint32 doubts = judge_lot_doubt(judge, laid);
    if (consumable && consumable->fit_within)
        doubts |= judge_window(judge, laid->seq, entry->seq, TRUE, consumable->fit_within);
    return doubts;
}

static guint32 bolt_doubt(const Judge *judge, const SetState *set, const BoltState *bolt)
{
    guint32 doubts = bolt->spent ? reason_bit(REASON_SPENT) : 0;
    if (bolt->fit) {
        const Entry *fit = judge_entry(judge, bolt->fit);
        doubts |= judge_lot_doubt(judge, fit);
        if ((set->group->new_needed || set->group->once) &&
            g_strcmp0(entry_text(fit, "use"), "new") != 0)
            doubts |= reason_bit(REASON_PART);
    }
    return doubts;
}

// A bolt taken up again after it was loose begins anew: what it had been through is over.
static void begin_anew(SetState *set, TighteningState *state, guint bolt)
{
    for (guint i = 0; i < state->tightening->stages->len; i++)
        state->ticks[i * set->bolts + bolt] = -1;
}

static void tick_bolt(Judge *judge, SetState *set, guint index, guint stage, guint bolt,
                      const Entry *entry, guint32 doubts, guint evidence)
{
    TighteningState *state = tightening_at(set, index);
    BoltState *of = &set->bolt[bolt];
    gsize cell = (gsize)stage * set->bolts + bolt;
    if (!of->tight)
        begin_anew(set, state, bolt);
    TickState tick = {.tightening = index,
                      .stage = stage,
                      .bolt = bolt,
                      .seq = entry->seq,
                      .rank = judge_rank(judge, entry->seq),
                      .round = state->rounds[cell]++,
                      .doubts = doubts | bolt_doubt(judge, set, of),
                      .evidence = MAX(evidence, judge_rank(judge, entry->seq))};
    if (!came_before(set, state, stage, bolt))
        tick.doubts |= reason_bit(REASON_ORDER);
    if (stage == 0)
        tick.doubts |= laid_doubt(judge, set, entry);
    state->ticks[cell] = (gint)judge->ticks->len;
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
    guint evidence = 0;
    guint32 doubts = tick_tool_doubt(judge, entry, kind, &evidence);
    for (gsize i = 0; i < entry_list_length(entry, "bolts"); i++) {
        gssize bolt = bolt_of(set, entry_list_item(entry, "bolts", i));
        if (bolt < 0)
            continue;
        tick_bolt(judge, set, (guint)index, (guint)stage, (guint)bolt, entry, doubts, evidence);
        if (kind->kind == STAGE_SLACKEN)
            disturb_bolt(judge, set, (guint)bolt, entry);
    }
}

static gboolean bolt_is_through(const SetState *set, const TighteningState *state, guint bolt)
{
    for (guint i = 0; i < state->tightening->stages->len; i++)
        if (stage_at(state, i)->kind != STAGE_WAIT && state->ticks[i * set->bolts + bolt] < 0)
            return FALSE;
    return TRUE;
}

// Whether the plan foresees that this bolt is taken down here: a mock-up that was done, or the
// start of a later tightening.
static gboolean is_foreseen(const SetState *set, guint bolt, const Entry *entry)
{
    guint force = set->bolt[bolt].force;
    const TighteningState *state = tightening_at(set, force);
    if (set->group->then_off && force == 0 && bolt_is_through(set, state, bolt))
        return TRUE;
    const char *step = entry_text(entry, "step");
    for (guint i = force + 1; step && i < set->tightenings->len; i++)
        if (strcmp(tightening_at(set, i)->tightening->step->name, step) == 0)
            return TRUE;
    return FALSE;
}

static void slacken_bolt(Judge *judge, SetState *set, guint bolt, const Entry *entry)
{
    BoltState *of = &set->bolt[bolt];
    if (set->tightenings->len && !is_foreseen(set, bolt, entry))
        begin_anew(set, tightening_at(set, of->force), bolt);
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
            slacken_bolt(judge, set, (guint)bolt, entry);
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
    if (stage >= 1 && stage <= (gint64)state->tightening->stages->len)
        state->waited[stage - 1] = entry->seq;
}

void walk_laid(Judge *judge, const Entry *entry)
{
    SetState *set = judge_set(judge, entry_text(entry, "tightening"));
    if (set)
        set->laid = entry->seq;
}

gboolean set_is_final(const Judge *judge, const SetState *set, const PlanStep *step,
                      const GPtrArray *axes, const char *const *labels, GArray *ticks)
{
    gboolean final = set->tightenings->len > 0;
    (void)judge;
    for (guint i = 0; i < set->bolts; i++) {
        g_auto(GStrv) at = judge_labels(set->group->axes, i);
        if (!judge_places_meet(set->group->axes, (const char *const *)at, axes, labels))
            continue;
        const TighteningState *state = tightening_at(set, set->bolt[i].force);
        if (!set->bolt[i].tight || !bolt_is_through(set, state, i) ||
            (step && state->tightening->step != step))
            final = FALSE;
        for (guint j = 0; j < state->tightening->stages->len; j++)
            if (state->ticks[j * set->bolts + i] >= 0)
                g_array_append_val(ticks, state->ticks[j * set->bolts + i]);
    }
    return final;
}

// One round of one stage over the bolts of one run, against the order asked.
static void order_round(Judge *judge, const SetState *set, const TighteningState *state,
                        guint stage, guint run, guint round)
{
    g_autofree guint *asked = g_new(guint, set->bolts);
    g_autofree guint *ticked = g_new(guint, set->bolts);
    g_autofree gboolean *in_doubt = g_new0(gboolean, set->bolts);
    g_autoptr(GArray) found = g_array_new(FALSE, FALSE, sizeof(guint));
    gsize asked_count = 0;
    for (guint i = 0; i < set->bolts; i++) {
        guint bolt = state->tightening->order[i];
        if (state->tightening->each[bolt] != run)
            continue;
        asked[asked_count++] = bolt;
        gint tick = state->ticks[stage * set->bolts + bolt];
        if (tick >= 0 && tick_at(judge, (guint)tick)->round == round) {
            guint index = (guint)tick;
            guint at = found->len;
            while (at > 0 && g_array_index(found, guint, at - 1) > index)
                at--;
            g_array_insert_val(found, at, index);
        }
    }
    for (guint i = 0; i < found->len; i++)
        ticked[i] = tick_at(judge, g_array_index(found, guint, i))->bolt;
    order_mark(asked, asked_count, ticked, found->len, in_doubt);
    for (guint i = 0; i < found->len; i++)
        if (in_doubt[i])
            tick_at(judge, g_array_index(found, guint, i))->doubts |= reason_bit(REASON_ORDER);
}

static guint most_rounds(const SetState *set, const TighteningState *state, guint stage)
{
    guint most = 0;
    for (guint i = 0; i < set->bolts; i++)
        most = MAX(most, state->rounds[stage * set->bolts + i]);
    return most;
}

static guint runs_of(const SetState *set, const TighteningState *state)
{
    guint runs = 0;
    for (guint i = 0; i < set->bolts; i++)
        runs = MAX(runs, state->tightening->each[i] + 1);
    return runs;
}

// Bolts done again run among themselves: each round of a stage has its own order.
void judge_order(Judge *judge)
{
    for (guint i = 0; i < judge->sets->len; i++) {
        const SetState *set = g_ptr_array_index(judge->sets, i);
        for (guint j = 0; j < set->tightenings->len; j++) {
            const TighteningState *state = tightening_at(set, j);
            for (guint stage = 0; stage < state->tightening->stages->len; stage++)
                for (guint run = 0; run < runs_of(set, state); run++)
                    for (guint round = 0; round < most_rounds(set, state, stage); round++)
                        order_round(judge, set, state, stage, run, round);
        }
    }
}

static void judge_bolt(Judge *judge, const SetState *set, const TighteningState *state, guint cell)
{
    Requirement *made = judge_requirement(judge, state->requirement[cell]);
    (void)set;
    if (state->ticks[cell] < 0)
        return;
    const TickState *tick = tick_at(judge, (guint)state->ticks[cell]);
    made->entry = tick->seq;
    made->verdict = VERDICT_PASS;
    made->answer = g_strdup(stage_at(state, tick->stage)->text);
    requirement_doubt(made, tick->doubts & ~tick->upheld);
}

// The seq of the newest tick that counts in a stage, or of the oldest; 0 if there is none.
static gint64 stage_end(const Judge *judge, const SetState *set, const TighteningState *state,
                        guint stage, gboolean newest)
{
    gint64 seq = 0;
    guint rank = 0;
    for (guint i = 0; i < set->bolts; i++) {
        gint tick = state->ticks[stage * set->bolts + i];
        if (tick < 0)
            continue;
        const TickState *of = tick_at(judge, (guint)tick);
        if (!seq || (newest ? of->rank > rank : of->rank < rank)) {
            seq = of->seq;
            rank = of->rank;
        }
    }
    return seq;
}

static gboolean stage_is_through(const SetState *set, const TighteningState *state, guint stage)
{
    for (guint i = 0; i < set->bolts; i++)
        if (state->ticks[stage * set->bolts + i] < 0)
            return FALSE;
    return TRUE;
}

// A wait runs from the last bolt of the stage before to the entry that ends it, or to the first
// bolt of the stage behind.
static void judge_wait(Judge *judge, const SetState *set, const TighteningState *state, guint stage)
{
    Requirement *made = judge_requirement(judge, state->requirement[stage * set->bolts]);
    if (stage == 0 || !stage_is_through(set, state, stage - 1))
        return;
    gint64 from = stage_end(judge, set, state, stage - 1, TRUE);
    gint64 to = state->waited[stage];
    if ((!to || judge_rank(judge, to) < judge_rank(judge, from)) &&
        stage + 1 < state->tightening->stages->len)
        to = stage_end(judge, set, state, stage + 1, FALSE);
    if (!to || judge_rank(judge, to) < judge_rank(judge, from))
        return;
    g_autoptr(Number) limit = formula_constant(stage_at(state, stage)->formula);
    made->entry = to;
    made->verdict = VERDICT_PASS;
    if (limit)
        requirement_doubt(made, judge_window(judge, from, to, FALSE, limit));
}

void judge_bolts(Judge *judge)
{
    for (guint i = 0; i < judge->sets->len; i++) {
        const SetState *set = g_ptr_array_index(judge->sets, i);
        for (guint j = 0; j < set->tightenings->len; j++) {
            const TighteningState *state = tightening_at(set, j);
            for (guint stage = 0; stage < state->tightening->stages->len; stage++) {
                if (stage_at(state, stage)->kind == STAGE_WAIT)
                    judge_wait(judge, set, state, stage);
                else
                    for (guint bolt = 0; bolt < set->bolts; bolt++)
                        judge_bolt(judge, set, state, stage * set->bolts + bolt);
            }
        }
    }
}
