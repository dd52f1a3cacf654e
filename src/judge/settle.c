// What people decided about verdicts, once everything is judged: findings answered, checks read
// again, concessions.
#include "judge.h"

#include <string.h>

static Number *bound_of(const Judge *judge, const Entry *entry)
{
    const char *text = entry_value(entry, "bound", "value");
    g_autoptr(Number) number = text ? number_from_text(text, NULL) : NULL;
    return number ? unit_to_base(judge_unit(judge, entry_value(entry, "bound", "unit")), number)
                  : NULL;
}

static gboolean has_reason(const Entry *entry, Reason reason)
{
    for (gsize i = 0; i < entry_list_length(entry, "reasons"); i++)
        if (reason_of_words(entry_list_item(entry, "reasons", i)) == reason)
            return TRUE;
    return FALSE;
}

static gboolean has_reasons(const Entry *entry, guint32 reasons)
{
    for (Reason reason = REASON_LOW; reason <= REASON_CLOCK; reason++)
        if ((reasons & reason_bit(reason)) && !has_reason(entry, reason))
            return FALSE;
    return TRUE;
}

gboolean judge_is_accepted(const Judge *judge, guint index, guint32 reasons)
{
    const Entry *entry;
    for (guint at = 0; (entry = judge_said_next(judge, index, SAID_CONCEDE, &at));)
        if (has_reasons(entry, reasons))
            return TRUE;
    return FALSE;
}

// The side of the limits that is conceded. Where the entry does not say, the reason does, or the
// limit that the bound lies beyond.
static gboolean concedes_low(const Entry *entry, const Requirement *made, const Number *bound)
{
    const char *side = entry_text(entry, "side");
    if (side)
        return strcmp(side, "low") == 0;
    if (has_reason(entry, REASON_LOW) != has_reason(entry, REASON_HIGH))
        return has_reason(entry, REASON_LOW);
    if (has_reason(entry, REASON_BEYOND_WEAR) && made->wear)
        return made->lower && number_compare(made->wear, made->lower) <= 0;
    if (!made->lower || !made->upper || !bound)
        return made->lower != NULL;
    g_autoptr(Number) above_lower = number_subtract(bound, made->lower);
    g_autoptr(Number) below_upper = number_subtract(made->upper, bound);
    return number_compare(above_lower, below_upper) < 0;
}

// Whether the value lies no further out than what was conceded; `>0.25` may lie anywhere above.
static gboolean within_bound(const Requirement *made, const Number *bound, gboolean low)
{
    if (made->bound == (low ? BOUND_BELOW : BOUND_ABOVE))
        return FALSE;
    gint order = number_compare(made->value, bound);
    return low ? order >= 0 : order <= 0;
}

// Whether the reason for which the value itself does not pass is conceded: the reason itself, its
// side up to a bound (but not beyond wear), or a worse reason on the same side. Who accepted it
// beyond wear accepts it high, and who accepted it high accepts that a gauge cannot tell whether it
// is.
static gboolean value_is_conceded(const Judge *judge, const Entry *entry, const Requirement *made)
{
    static const Reason milder[] = {REASON_GAUGE, REASON_LOW, REASON_HIGH, REASON_BEYOND_WEAR};
    if (made->value_reason == REASON_NONE)
        return TRUE;
    if (!made->value)
        return has_reason(entry, made->value_reason);
    g_autoptr(Number) bound = bound_of(judge, entry);
    gboolean low = concedes_low(entry, made, bound);
    if (bound && !within_bound(made, bound, low))
        return FALSE;
    if (has_reason(entry, made->value_reason))
        return TRUE;
    if (bound && made->value_reason != REASON_BEYOND_WEAR)
        return decided_apart_from(made, low);
    for (gsize i = G_N_ELEMENTS(milder); i-- > 0 && milder[i] != made->value_reason;)
        if (has_reason(entry, milder[i]) && milder[i] != (low ? REASON_HIGH : REASON_LOW))
            return decided_apart_from(made, low);
    return FALSE;
}

static gboolean look_means(const Entry *look, const PlanRequirement *asked, const Requirement *made)
{
    const Said said = said_read(look, SAID_CONCEDE);
    gboolean means = said_means(&said, asked, made);
    g_free(said.labels);
    return means;
}

// The answer that stood when a concession was made; NULL if there was none.
static const char *answer_before(const Judge *judge, guint index, gint64 concession)
{
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    const Requirement *made = judge_requirement(judge, index);
    for (gsize i = judge_rank(judge, concession); i-- > 0;) {
        const Entry *entry = judge_entry(judge, judge->ranked[i]);
        if (judge->live[entry->seq - 1] && strcmp(entry->kind->name, "look") == 0 &&
            look_means(entry, asked, made))
            return entry_text(entry, "answer");
    }
    return NULL;
}

// Whether every reason for which the requirement does not pass is among those conceded, and the
// value no further out, or the answer still the same.
static gboolean is_conceded(const Judge *judge, const Entry *entry, guint index)
{
    const Requirement *made = judge_requirement(judge, index);
    if (!has_reasons(entry, made->doubts))
        return FALSE;
    if (made->value_reason == REASON_LOOK &&
        g_strcmp0(answer_before(judge, index, entry->seq), made->answer) != 0)
        return FALSE;
    return value_is_conceded(judge, entry, made);
}

// A finding is answered, not conceded.
static void concede(Judge *judge, const Entry *entry, guint index)
{
    Requirement *made = judge_requirement(judge, index);
    if (made->finding ||
        (made->own_verdict != VERDICT_FAIL && made->own_verdict != VERDICT_IN_DOUBT) ||
        !is_conceded(judge, entry, index))
        return;
    made->verdict = VERDICT_CONCEDED;
    made->conceded = entry->seq;
}

static void keep_own(Judge *judge)
{
    for (guint i = 0; i < judge->stale->len; i++) {
        Requirement *made = judge_requirement(judge, g_array_index(judge->stale, guint, i));
        if (made->conceded) // by amended limits: its own is what the plan's would say
            continue;
        made->own_verdict = made->verdict;
        made->own_reason = made->reason;
    }
}

// "look closer" answers nothing yet.
static void decide_finding(Judge *judge, const Entry *entry, guint index)
{
    Requirement *made = judge_requirement(judge, index);
    if (!made->finding || made->own_verdict == VERDICT_OPEN ||
        judge_rank(judge, entry->seq) < judge_rank(judge, MAX(made->entry, 1)))
        return;
    made->decided = g_strcmp0(entry_text(entry, "decision"), "look closer") == 0 ? 0 : entry->seq;
}

// What has no limits, or was read again since, ends as noted.
static gboolean has_ended(const Requirement *made)
{
    return made->verdict == VERDICT_PASS || made->verdict == VERDICT_CONCEDED ||
           made->verdict == VERDICT_NOTED;
}

// What a name in `settled by` comes to where the places meet.
typedef struct {
    gboolean any, all; // whether there is one; whether all have ended well
} Ending;

static void end_one(const Judge *judge, guint index, const Requirement *found, Ending *ending)
{
    const PlanRequirement *asked = &g_array_index(judge->asked, PlanRequirement, index);
    const Requirement *made = judge_requirement(judge, index);
    const GPtrArray *axes = plan_requirement_axes(asked);
    if (made->withdrawn ||
        (axes && !places_meet(axes, (const char *const *)made->labels, found->check->places,
                              (const char *const *)found->labels)))
        return;
    ending->any = TRUE;
    ending->all = ending->all && (has_ended(made) || made->verdict == VERDICT_NOT_NEEDED);
}

// Whether what a finding's `settled by` names has ended well, where the places meet.
static gboolean name_has_ended(const Judge *judge, const PlanName *name, const Requirement *found)
{
    Ending ending = {FALSE, TRUE};
    const PlanStep *step = name->step ? name->step : name->check->step;
    for (const CheckState *state = g_hash_table_lookup(judge->state_of, name->check); state;
         state = state->again)
        for (guint i = 0; state->step == step && i < places_count(state->check->places); i++)
            end_one(judge, state->requirement[i], found, &ending);
    return ending.any && ending.all;
}

static gboolean is_settled(const Judge *judge, const Requirement *found)
{
    const GPtrArray *names = found->check->settled_by;
    for (guint i = 0; i < names->len; i++)
        if (!name_has_ended(judge, g_ptr_array_index(names, i), found))
            return FALSE;
    return names->len > 0;
}

// A finding outside its limits is open until it is answered, then noted.
static void settle_findings(Judge *judge)
{
    for (guint i = 0; i < judge->stale->len; i++) {
        Requirement *made = judge_requirement(judge, g_array_index(judge->stale, guint, i));
        if (!made->finding ||
            (made->own_verdict != VERDICT_FAIL && made->own_verdict != VERDICT_IN_DOUBT))
            continue;
        gboolean answered = made->decided || is_settled(judge, made);
        made->verdict = answered ? VERDICT_NOTED : VERDICT_OPEN;
        made->reason = REASON_NONE;
    }
}

// Whether a place was read once more in a later step, and passed there.
static gboolean passed_later(const Judge *judge, const CheckState *state, guint place)
{
    for (const CheckState *later = state->again; later; later = later->again)
        if (judge_requirement(judge, later->requirement[place])->own_verdict == VERDICT_PASS)
            return TRUE;
    return FALSE;
}

static void settle_again(Judge *judge)
{
    for (guint i = 0; i < judge->stale->len; i++) {
        guint index = g_array_index(judge->stale, guint, i);
        guint place = g_array_index(judge->asked, PlanRequirement, index).place;
        const CheckState *state = judge->owners[index].check;
        Requirement *made = judge_requirement(judge, index);
        if (!state || made->verdict == VERDICT_OPEN || made->verdict == VERDICT_NOT_NEEDED ||
            made->withdrawn || !passed_later(judge, state, place))
            continue;
        made->verdict = VERDICT_NOTED;
        made->reason = REASON_NONE;
    }
}

void judge_settle(Judge *judge)
{
    keep_own(judge);
    judge_each_said(judge, SAID_DECIDE, decide_finding);
    judge_each_said(judge, SAID_CONCEDE, concede);
    settle_again(judge);
    settle_findings(judge);
}

Reason first_doubt(guint32 doubts)
{
    for (Reason reason = REASON_TOOL; reason <= REASON_CLOCK; reason++)
        if (doubts & reason_bit(reason))
            return reason;
    return REASON_NONE;
}

void requirement_doubt(Requirement *made, guint32 doubts)
{
    made->doubts = doubts;
    if (first_doubt(doubts) == REASON_NONE)
        return;
    made->verdict = VERDICT_IN_DOUBT;
    made->reason = first_doubt(doubts);
    made->conceded = 0; // amended limits concede the value, not this
}

void requirement_note(Requirement *made, char *note)
{
    g_ptr_array_add(made->notes, note);
}
