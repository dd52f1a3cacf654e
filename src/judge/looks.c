#include "judge.h"

#include <string.h>

typedef struct {
    CheckState *state;
    gint64 seq;
} Look;

static void look_at(Judge *judge, guint place, gpointer user)
{
    const Look *look = user;
    (void)judge;
    g_array_index(look->state->looks, gint64, place) = look->seq;
}

void walk_look(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    Look look = {state, entry->seq};
    if (state)
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
    if (state && state->check->choose)
        judge_each_place(judge, state->check->places, entry, "place", choose_at, &look);
}

void walk_sign(Judge *judge, const Entry *entry)
{
    const PlanStep *step = plan_step(judge->plan, entry_text(entry, "step"));
    GArray *seqs = step ? g_hash_table_lookup(judge->signatures, step) : NULL;
    gint64 number = entry_number(entry, "signature");
    if (seqs && number >= 1 && number <= (gint64)seqs->len)
        g_array_index(seqs, gint64, number - 1) = entry->seq;
}

void walk_reopen(Judge *judge, const Entry *entry)
{
    const PlanStep *step = plan_step(judge->plan, entry_text(entry, "step"));
    GArray *seqs = step ? g_hash_table_lookup(judge->signatures, step) : NULL;
    for (guint i = 0; seqs && i < seqs->len; i++)
        g_array_index(seqs, gint64, i) = 0;
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

static const Limits *limits_at(const PlanCheck *check, const char *const *labels)
{
    for (guint i = 0; i < check->limits->len; i++) {
        const PlanLimit *limit = g_ptr_array_index(check->limits, i);
        if (!limit->label || g_strv_contains(labels, limit->label))
            return limit->limits;
    }
    return NULL;
}

static void judge_look(const Judge *judge, const CheckState *state, guint place)
{
    Requirement *made = judge_requirement(judge, state->requirement[place]);
    gint64 seq = g_array_index(state->looks, gint64, place);
    if (!seq)
        return;
    const Limits *limits = limits_at(state->check, (const char *const *)made->labels);
    made->entry = seq;
    made->answer = g_strdup(entry_text(judge_entry(judge, seq), "answer"));
    if (!limits || state->check->asks == LIMITS_TEXT) {
        made->verdict = VERDICT_NOTED;
    } else if (answer_fits(state->check, limits, made->answer)) {
        made->verdict = VERDICT_PASS;
    } else {
        made->verdict = VERDICT_FAIL;
        made->reason = REASON_LOOK;
    }
}

void judge_looks(Judge *judge)
{
    for (guint i = 0; i < judge->checks->len; i++) {
        const CheckState *state = g_ptr_array_index(judge->checks, i);
        LimitsForm asks = state->check->asks;
        if (asks == LIMITS_VALUE || asks == LIMITS_ANY)
            continue;
        for (guint j = 0; j < places_count(state->check->places); j++)
            judge_look(judge, state, j);
    }
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
static gboolean is_another(const Judge *judge, const GArray *seqs, guint index)
{
    const char *by = judge_entry(judge, g_array_index(seqs, gint64, index))->by;
    for (guint i = 0; i < index; i++) {
        gint64 seq = g_array_index(seqs, gint64, i);
        if (seq && strcmp(judge_entry(judge, seq)->by, by) == 0)
            return FALSE;
    }
    return TRUE;
}

static void judge_sign(const Judge *judge, const PlanRequirement *asked, Requirement *made)
{
    const GArray *seqs = g_hash_table_lookup(judge->signatures, asked->step);
    gint64 seq = g_array_index(seqs, gint64, asked->number - 1);
    if (!seq)
        return;
    if (!is_another(judge, seqs, asked->number - 1)) {
        requirement_note(made, g_strdup("signed by the same person; another is asked for"));
        return;
    }
    made->entry = seq;
    made->verdict = VERDICT_PASS;
    if (asked->number == 1)
        requirement_doubt(made, begin_doubt(judge, asked->step, seq));
}

void judge_signs(Judge *judge)
{
    for (guint i = 0; i < judge->asked->len; i++) {
        const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, i);
        if (asked->asked == PLAN_SIGN)
            judge_sign(judge, asked, judge_requirement(judge, i));
    }
}
