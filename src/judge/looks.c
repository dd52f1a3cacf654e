#include "judge.h"

#include <string.h>

typedef struct {
    CheckState *state;
    gint64 seq;
} Look;

static void look_at(Judge *judge, guint place, gpointer user)
{
    const Look *look = user;
    LookState *at = &look->state->looks[place];
    basis_clear(&at->basis);
    at->seq = look->seq;
    at->first = at->first ? at->first : judge_rank(judge, look->seq);
    at->basis = basis_at(judge, look->state->check, look->state->check->places, place);
}

void walk_look(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    Look look = {state, entry->seq};
    if (!state)
        return;
    judge_touch(judge, state->check);
    judge_each_place(judge, state->check->places, entry, "place", look_at, &look);
}

static void choose_at(Judge *judge, guint place, gpointer user)
{
    const Look *look = user;
    const Axis *axis = plan_axis(judge->plan, look->state->check->choose);
    const char *label = entry_text(judge_entry(judge, look->seq), "label");
    look->state->chosen_by[place] = look->seq;
    look->state->chosen[place] = axis && label ? axis_find(axis, label) : -1;
}

void walk_choose(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    Look look = {state, entry->seq};
    if (!state || !state->check->choose)
        return;
    judge_touch(judge, state->check);
    for (guint i = 0; i < judge->parts->len; i++) // their grade may have to be the one chosen
        judge_touch(judge, ((const PartState *)judge->parts->pdata[i])->part);
    judge_each_place(judge, state->check->places, entry, "place", choose_at, &look);
}

void walk_sign(Judge *judge, const Entry *entry)
{
    const PlanStep *step = plan_step(judge->plan, entry_text(entry, "step"));
    GArray *signatures = step ? g_hash_table_lookup(judge->signatures, step) : NULL;
    gint64 number = entry_number(entry, "signature");
    judge_touch(judge, step);
    if (signatures && number >= 1 && number <= (gint64)signatures->len)
        g_array_index(signatures, Signature, number - 1) = (Signature){.seq = entry->seq};
}

void walk_reopen(Judge *judge, const Entry *entry)
{
    const PlanStep *step = plan_step(judge->plan, entry_text(entry, "step"));
    GArray *signatures = step ? g_hash_table_lookup(judge->signatures, step) : NULL;
    judge_touch(judge, step);
    for (guint i = 0; signatures && i < signatures->len; i++)
        g_array_index(signatures, Signature, i) = (Signature){0};
}

void judge_undo(Judge *judge, const PlanStep *step, guint stood, guint rank)
{
    GArray *signatures = g_hash_table_lookup(judge->signatures, step);
    for (guint i = 0; signatures && i < signatures->len; i++) {
        Signature *signature = &g_array_index(signatures, Signature, i);
        if (signature->seq && judge_rank(judge, signature->seq) > stood)
            signature->undone = rank;
    }
    judge_touch(judge, step);
}

static gboolean answer_fits(const PlanCheck *check, const Limits *limits, const char *answer)
{
    if (check->asks == LIMITS_COUNT) {
        g_autoptr(Number) wanted = number_from_integer((glong)limits_count(limits));
        g_autoptr(Number) given = number_from_text(answer, NULL);
        return given && number_equal(wanted, given);
    }
    return g_strcmp0(limits_wanted(limits), answer) == 0;
}

static void decide_look(const CheckState *state, Requirement *made, const Limits *limits)
{
    if (!limits || state->check->asks == LIMITS_TEXT)
        made->verdict = VERDICT_NOTED;
    else
        made->verdict =
            answer_fits(state->check, limits, made->answer) ? VERDICT_PASS : VERDICT_FAIL;
    made->reason = made->verdict == VERDICT_FAIL ? REASON_LOOK : REASON_NONE;
    made->value_verdict = made->verdict;
    made->value_reason = made->reason;
}

// Another answer wanted in this build.
static void amend_look(Judge *judge, const CheckState *state, guint index)
{
    Requirement *made = judge_requirement(judge, index);
    const Entry *entry = judge_said_last(judge, index, SAID_AMEND, "limits");
    g_autoptr(Limits) limits =
        entry ? limits_parse(entry_text(entry, "limits"), NULL, NULL, NULL) : NULL;
    if (!limits || limits_form(limits) != state->check->asks)
        return;
    Verdict before = made->verdict;
    made->amended = entry->seq;
    decide_look(state, made, limits);
    judge_concede_amended(judge, index, entry, before, REASON_LOOK);
}

static void judge_look(Judge *judge, const CheckState *state, guint place)
{
    guint index = state->requirement[place];
    Requirement *made = judge_requirement(judge, index);
    const LookState *look = &state->looks[place];
    if (!look->seq)
        return;
    guint rank = judge_rank(judge, look->seq);
    guint fell = state->check->finding ? 0 : basis_fell(judge, state, place, rank);
    guint32 doubts = fell ? reason_bit(REASON_BASIS) : 0;
    judge->evidence[index] = MAX(rank, fell);
    gint64 cause = 0;
    doubts |= basis_doubt(judge, &look->basis, &judge->evidence[index], &cause);
    made->entry = look->seq;
    made->answer = g_strdup(entry_text(judge_entry(judge, look->seq), "answer"));
    decide_look(state, made, judge_limits(state->check, (const char *const *)made->labels));
    amend_look(judge, state, index);
    requirement_doubt(made, doubts);
    requirement_set_tool(made, cause);
}

void judge_look_requirement(Judge *judge, guint index)
{
    guint place = g_array_index(judge->asked, PlanRequirement, index).place;
    judge_look(judge, judge->owners[index].check, place);
}

// No fluid and no running before the consumables laid up to here allow it.
static guint32 begin_doubt(const Judge *judge, const PlanStep *step, gint64 sign)
{
    guint32 doubts = 0;
    for (gsize i = 0; step->begins && i < judge->count; i++) {
        const Entry *laid = judge->entries[i];
        if (!judge->live[i] || strcmp(laid->kind->name, "laid") != 0 ||
            judge_rank(judge, laid->seq) > judge_rank(judge, sign))
            continue;
        const PlanConsumable *consumable =
            plan_consumable(judge->plan, entry_text(laid, "consumable"));
        gboolean run = strcmp(step->begins, "run") == 0;
        const Number *wait = !consumable ? NULL
                             : run       ? consumable->run_after
                                         : consumable->fluid_after;
        if (wait)
            doubts |= judge_window(judge, laid->seq, sign, FALSE, wait);
    }
    return doubts;
}

// Whether this signature is by somebody who did not sign this step before.
static gboolean is_another(const Judge *judge, const GArray *signatures, guint index)
{
    const char *by = judge_entry(judge, g_array_index(signatures, Signature, index).seq)->by;
    for (guint i = 0; i < index; i++) {
        gint64 seq = g_array_index(signatures, Signature, i).seq;
        if (seq && strcmp(judge_entry(judge, seq)->by, by) == 0)
            return FALSE;
    }
    return TRUE;
}

// The rank of the first reading or answer there ever was at a place of check->axes; 0 if none.
static guint first_taken(const Judge *judge, const CheckState *state, guint place)
{
    const GArray *readings = state->readings[place];
    if (readings->len)
        return reading_at(judge, g_array_index(readings, guint, 0))->rank;
    return state->check->choose ? 0 : state->looks[place].first;
}

// When what was read or answered in the step before it was signed last fell since by work in that
// step; 0 if it did not. What falls by work elsewhere is in doubt by itself.
static guint fell_since(const Judge *judge, const CheckState *state, guint signed_at)
{
    guint newest = 0;
    for (guint i = 0; !state->check->finding && i < state->places; i++) {
        guint first = first_taken(judge, state, i);
        if (first && first < signed_at)
            newest = MAX(newest, basis_undone(judge, state, i, signed_at));
    }
    return newest;
}

// The newest that undid, or did again, what the step asks for and what was signed; 0 if nothing
// did.
static guint undone_since(const Judge *judge, const PlanStep *step, const Signature *signature)
{
    guint newest = signature->undone;
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        if (state->step == step)
            newest = MAX(newest, fell_since(judge, state, judge_rank(judge, signature->seq)));
    }
    return newest;
}

void judge_sign_requirement(Judge *judge, guint index)
{
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    Requirement *made = judge_requirement(judge, index);
    const GArray *signatures = g_hash_table_lookup(judge->signatures, asked->step);
    const Signature *signature = &g_array_index(signatures, Signature, asked->number - 1);
    if (!signature->seq)
        return;
    if (!is_another(judge, signatures, asked->number - 1)) {
        requirement_note(made, g_strdup("signed by the same person; another is asked for"));
        return;
    }
    guint undone = undone_since(judge, asked->step, signature);
    guint32 doubts = undone ? reason_bit(REASON_BASIS) : 0;
    if (asked->number == 1)
        doubts |= begin_doubt(judge, asked->step, signature->seq);
    made->entry = signature->seq;
    made->verdict = made->value_verdict = VERDICT_PASS;
    judge->evidence[index] = MAX(judge_rank(judge, signature->seq), undone);
    if (undone)
        requirement_note(made, g_strdup(requirement_undone_said()));
    requirement_doubt(made, doubts);
}
