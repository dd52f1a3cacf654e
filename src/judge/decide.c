// A value against its limits: those of the plan, or as amended.
#include "judge.h"

#include <standbook/rules/decision.h>
#include <string.h>

enum { LIMIT_DOUBTS = G_MININT / 2 }; // sources of the ± that limits write

// What is known of the limits in force at a place.
typedef struct {
    gboolean missing; // a limit is asked for, but uses something not read yet
    gboolean gone;    // or something not needed here
    guint32 doubts;   // of the readings that limits use
    gint64 upheld;    // seq of the uphold that argued one of them away, 0 if none
    gint64 cause;     // of those doubts, argued away or not
} LimitsState;

static AtPlace limit_seen(const View *view, const CheckState *state, const Formula *formula,
                          const Requirement *made)
{
    return judge_formula_at(view, formula, LIMIT_DOUBTS, state->check->places,
                            (const char *const *)made->labels);
}

// Whether the doubt came to a limit after it was upheld: then it is a new one.
static gboolean came_after(View view, const CheckState *state, const Formula *formula, guint index,
                           const Entry *entry)
{
    view.newer = judge_rank(view.judge, entry->seq);
    AtPlace then = limit_seen(&view, state, formula, judge_requirement(view.judge, index));
    number_free(then.value);
    return (then.doubts & doubt_upheld(entry)) != 0;
}

// The doubts of a limit that were not argued away where it is judged.
static guint32 doubts_left(View view, const CheckState *state, const Formula *formula, guint index,
                           guint32 doubts, LimitsState *found)
{
    const Entry *entry;
    for (guint at = 0; (entry = judge_said_next(view.judge, index, SAID_UPHOLD, &at));) {
        if (!(doubts & doubt_upheld(entry)) || came_after(view, state, formula, index, entry))
            continue;
        doubts &= ~doubt_upheld(entry);
        found->upheld = entry->seq;
    }
    return doubts;
}

// A limit of a finding is of what was found, too.
static Number *limit_at(Judge *judge, const CheckState *state, const Formula *formula, guint index,
                        LimitsState *found)
{
    if (!formula)
        return NULL;
    View view = {.judge = judge, .step = state->step, .as_found = state->check->finding};
    AtPlace at = limit_seen(&view, state, formula, judge_requirement(judge, index));
    found->missing |= at.state == PLACE_OPEN;
    found->gone |= at.state == PLACE_NOT_NEEDED;
    found->cause = MAX(found->cause, at.cause);
    found->doubts |= doubts_left(view, state, formula, index, at.doubts, found);
    return at.value;
}

const Limits *judge_limits(const PlanCheck *check, const char *const *labels)
{
    const PlanLimit *limit = check_limit_at(check, labels);
    return limit ? limit->limits : NULL;
}

static LimitsState set_limits(Judge *judge, const CheckState *state, guint index,
                              const Limits *limits)
{
    Requirement *made = judge_requirement(judge, index);
    LimitsState found = {0};
    g_clear_pointer(&made->lower, number_free);
    g_clear_pointer(&made->upper, number_free);
    if (limits && limits_form(limits) == LIMITS_VALUE) {
        made->lower = limit_at(judge, state, limits_lower(limits), index, &found);
        made->upper = limit_at(judge, state, limits_upper(limits), index, &found);
    }
    return found;
}

static void set_wear(Requirement *made, const Number *wear)
{
    number_free(made->wear);
    made->wear = wear ? number_copy(wear) : NULL;
}

// Indexed by Decision.
static const struct {
    Verdict verdict;
    Reason reason;
} outcomes[] = {
    [DECISION_PASS] = {VERDICT_PASS, REASON_NONE},
    [DECISION_FAIL_LOW] = {VERDICT_FAIL, REASON_LOW},
    [DECISION_FAIL_HIGH] = {VERDICT_FAIL, REASON_HIGH},
    [DECISION_BEYOND_WEAR] = {VERDICT_FAIL, REASON_BEYOND_WEAR},
    [DECISION_IN_DOUBT_GAUGE] = {VERDICT_IN_DOUBT, REASON_GAUGE},
    [DECISION_NO_LIMIT] = {VERDICT_NOTED, REASON_NONE},
};

static Decision decide_between(const Requirement *made, const Number *lower, const Number *upper)
{
    static const DecisionReading readings[] = {READ_AS_IS, READ_LESS_THAN, READ_MORE_THAN};
    DecisionLimits limits = {number_rational(lower), number_rational(upper),
                             number_rational(made->wear)};
    return decide(readings[made->bound], number_rational(made->value),
                  number_rational(made->variance), &limits);
}

gboolean decided_apart_from(const Requirement *made, gboolean low)
{
    Decision rest = decide_between(made, low ? NULL : made->lower, low ? made->upper : NULL);
    return rest == DECISION_PASS || rest == DECISION_NO_LIMIT;
}

void judge_against(const Requirement *made, Bound bound, const Number *value,
                   const Number *variance, Verdict *verdict, Reason *reason)
{
    Requirement as = {.value = (Number *)value,
                      .variance = (Number *)variance,
                      .bound = bound,
                      .wear = made->wear};
    Decision decision = decide_between(&as, made->lower, made->upper);
    *verdict = outcomes[decision].verdict;
    *reason = outcomes[decision].reason;
}

static void decide_requirement(Requirement *made)
{
    judge_against(made, made->bound, made->value, made->variance, &made->value_verdict,
                  &made->value_reason);
    made->verdict = made->value_verdict;
    made->reason = made->value_reason;
}

// Puts the limits of this build in place of the plan's, which stay beside them. Returns the newest
// entry that did so, NULL if none did.
static const Entry *amend_limits(Judge *judge, const CheckState *state, guint index,
                                 LimitsState *found)
{
    Requirement *made = judge_requirement(judge, index);
    const Entry *limited = judge_said_last(judge, index, SAID_AMEND, "limits");
    const Entry *worn = judge_said_last(judge, index, SAID_AMEND, "wear");
    if (!limited && !worn)
        return NULL;
    made->plan_lower = made->lower ? number_copy(made->lower) : NULL;
    made->plan_upper = made->upper ? number_copy(made->upper) : NULL;
    made->plan_wear = made->wear ? number_copy(made->wear) : NULL;
    g_autoptr(Limits) limits =
        limited ? limits_parse(entry_text(limited, "limits"), state->check->unit, NULL, NULL)
                : NULL;
    Reading reading;
    if (limits)
        *found = set_limits(judge, state, index, limits);
    if (worn && reading_parse(entry_text(worn, "wear"), state->check->unit, &reading, NULL, NULL)) {
        set_wear(made, reading.value);
        reading_clear(&reading);
    }
    if (!limited || !worn)
        return limited ? limited : worn;
    return judge_rank(judge, limited->seq) > judge_rank(judge, worn->seq) ? limited : worn;
}

void judge_concede_amended(Judge *judge, guint index, const Entry *entry, Verdict before,
                           Reason reason)
{
    Requirement *made = judge_requirement(judge, index);
    gboolean faulty = before == VERDICT_FAIL || before == VERDICT_IN_DOUBT;
    if (!faulty || made->verdict != VERDICT_PASS)
        return;
    Verdict then = judge_verdict_before(judge, index, judge_rank(judge, entry->seq));
    if (then != VERDICT_FAIL && then != VERDICT_IN_DOUBT && then != VERDICT_CONCEDED)
        return;
    made->own_verdict = before;
    made->own_reason = reason;
    made->verdict = VERDICT_CONCEDED;
    made->reason = reason;
    made->conceded = entry->seq;
}

static gint64 newest_source(const Judge *judge, const Place *place)
{
    const ReadingState *newest = NULL;
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        const ReadingState *reading =
            weight->source < 0 ? NULL : reading_at(judge, (guint)weight->source);
        if (reading && (!newest || reading->rank > newest->rank))
            newest = reading;
    }
    return newest ? newest->seq : 0;
}

// How many decimals stand in what was typed in the unit of the check.
static guint decimals_typed(const Judge *judge, const PlanCheck *check, gint64 seq)
{
    enum { DECIMALS_MOST = 12 };
    const Entry *entry = seq && !check->formula ? judge->entries[seq - 1] : NULL;
    const char *typed = entry ? entry_value(entry, "value", "typed") : NULL;
    const char *unit = typed ? entry_value(entry, "value", "unit") : NULL;
    const char *point = typed ? strpbrk(typed, ".,") : NULL;
    if (!point || g_strcmp0(unit, check->unit ? unit_text(check->unit) : "") != 0)
        return 0;
    return (guint)MIN(strspn(point + 1, "0123456789"), DECIMALS_MOST);
}

static gboolean is_without_gauge(const Judge *judge, const Place *place)
{
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        gint source = g_array_index(place->weights, Weight, i).source;
        if (source >= 0 && !reading_at(judge, (guint)source)->doubt.gauge)
            return TRUE;
    }
    return FALSE;
}

// Whether a value read with no gauge named has the doubt of one with which it was read before.
static gboolean is_taken_over(const CheckState *state, const Place *place)
{
    return !state->check->formula && (place->doubts & reason_bit(REASON_TOOL));
}

static void note_fitness(Requirement *made)
{
    static const struct {
        guint most; // tenths that this may show: what lies under a bound is not rounded up to it
        const char *words;
    } words[] = {
        [FITNESS_USABLE] = {39, "under 4: cannot tell close to a limit"},
        [FITNESS_POOR] = {19, "under 2: the wrong gauge by the rule"},
        [FITNESS_NEVER] = {19, "under 2: this gauge can never pass this"},
    };
    g_autoptr(Number) width = number_subtract(made->upper, made->lower);
    mpq_srcptr tolerance = number_rational(width), variance = number_rational(made->variance);
    DecisionFitness fitness = decision_fitness(tolerance, variance);
    if (fitness == FITNESS_GOOD)
        return;
    guint tenths = MIN(decision_fitness_tenths(tolerance, variance), words[fitness].most);
    requirement_note(made,
                     g_strdup_printf("limits only %u.%u times the gauge's doubt (2U) apart, %s",
                                     tenths / 10, tenths % 10, words[fitness].words));
}

// The index of a place among those of the check's value.
static gsize index_of(const CheckState *state, const Place *place)
{
    return (gsize)(place - array_place(state->value, 0));
}

static void take_value(Judge *judge, const CheckState *state, Requirement *made, guint index,
                       const Place *place)
{
    gsize at = index_of(state, place);
    made->value = number_copy(place->value);
    made->bound = place->bound;
    made->variance = judge_variance(place, judge);
    made->entry = newest_source(judge, place);
    made->decimals = decimals_typed(judge, state->check, made->entry);
    if (at < state->places) {
        made->upheld = state->upheld[at];
        made->beside = judge_beside(judge, state, (guint)at);
    }
    gboolean unnamed = is_without_gauge(judge, place);
    if (unnamed)
        requirement_note(made,
                         g_strdup("no gauge named: its doubt is taken from the last place typed"));
    if (unnamed && is_taken_over(state, place))
        requirement_note(made, g_strdup("no gauge named: that does not answer for the gauge in "
                                        "doubt with which it was read before"));
    if (state->chosen[index] < 0)
        return;
    const Axis *axis = plan_axis(judge->plan, state->check->choose);
    made->answer = g_strdup(axis_label(axis, (gsize)state->chosen[index]));
    if (!made->entry || judge_rank(judge, state->chosen_by[index]) > judge_rank(judge, made->entry))
        made->entry = state->chosen_by[index];
}

// The value alone decides first; a doubt about its evidence comes before whatever it decides.
static void judge_value_here(Judge *judge, const CheckState *state, guint index, const Place *place,
                             LimitsState found)
{
    Requirement *made = judge_requirement(judge, state->requirement[index]);
    decide_requirement(made);
    Verdict before = found.missing || found.gone ? VERDICT_OPEN : made->verdict;
    Reason reason = made->reason;
    if (found.doubts && before != VERDICT_OPEN) {
        before = VERDICT_IN_DOUBT;
        reason = first_doubt(found.doubts);
    }
    const Entry *amended = amend_limits(judge, state, state->requirement[index], &found);
    if (amended) {
        made->amended = amended->seq;
        decide_requirement(made);
    }
    if (made->lower && made->upper)
        note_fitness(made);
    if (found.missing || found.gone) {
        made->verdict = made->value_verdict = VERDICT_OPEN;
        made->reason = made->value_reason = REASON_NONE;
        requirement_note(made, g_strdup(found.gone ? "its limit uses something that is not needed "
                                                     "here; amend the limits"
                                                   : "its limit uses something that is not read "
                                                     "yet"));
        return;
    }
    if (amended)
        judge_concede_amended(judge, state->requirement[index], amended, before, reason);
    if (!made->upheld)
        made->upheld = found.upheld;
    requirement_doubt(made, place->doubts | found.doubts);
    gsize at = index_of(state, place);
    gint64 argued = at < state->places ? state->argued[at] : 0;
    requirement_set_tool(made, MAX(MAX(place->cause, argued), found.cause));
}

static void judge_check_place(Judge *judge, CheckState *state, guint index)
{
    Requirement *made = judge_requirement(judge, state->requirement[index]);
    const Array *value = judge_value(judge, state);
    const Place *place = judge_value_at(state, value, index);
    LimitsState found = set_limits(judge, state, state->requirement[index],
                                   judge_limits(state->check, (const char *const *)made->labels));
    set_wear(made, state->check->wear);
    if (!place)
        return;
    made->read = place->read;
    made->asked_for = place->asked;
    if (place->note)
        requirement_note(made, g_strdup(place->note));
    if (place->state == PLACE_NOT_NEEDED)
        made->verdict = VERDICT_NOT_NEEDED;
    if (place->state != PLACE_VALUE) { // what it will be judged by
        const Entry *amended = amend_limits(judge, state, state->requirement[index], &found);
        made->amended = amended ? amended->seq : 0;
        return;
    }
    take_value(judge, state, made, index, place);
    judge_value_here(judge, state, index, place, found);
}

void judge_check_requirement(Judge *judge, guint index)
{
    guint place = g_array_index(judge->asked, PlanRequirement, index).place;
    judge_check_place(judge, judge->owners[index].check, place);
}
