#include "judge.h"

#include <standbook/rules/decision.h>
#include <string.h>

const ReadingDoubt *judge_doubt_of(gint source, gpointer user)
{
    const Judge *judge = user;
    return source < 0 ? NULL : &g_array_index(judge->readings, ReadingState, source).doubt;
}

Number *judge_variance(const Place *place, gpointer user)
{
    const Judge *judge = user;
    Number *variance = uncertainty_variance(place, judge_doubt_of, user);
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        const Number *method =
            weight->source < 0
                ? NULL
                : g_array_index(judge->readings, ReadingState, weight->source).state->check->doubt;
        if (!method)
            continue;
        g_autoptr(Number) moved = number_multiply(weight->weight, method);
        Number *sum = uncertainty_add(variance, moved);
        number_free(variance);
        variance = sum;
    }
    return variance;
}

// What a formula is worked out with: the judgement, and the step from which it looks.
typedef struct {
    Judge *judge;
    const PlanStep *step;
} View;

static const PlanGiven *given_of(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->given->len; i++) {
        const PlanGiven *given = g_ptr_array_index(plan->given, i);
        if (strcmp(given->name, name) == 0)
            return given;
    }
    return NULL;
}

static gboolean kind_of_name(const char *name, Kind *kind, gpointer user)
{
    const View *view = user;
    const PlanCheck *check = plan_check(view->judge->plan, name);
    const PlanGiven *given = check ? NULL : given_of(view->judge->plan, name);
    if (check)
        *kind = check->kind;
    else if (given)
        *kind = given->kind;
    return check || given;
}

static Array *value_of_name(const char *name, gpointer user)
{
    const View *view = user;
    const PlanCheck *check = plan_check(view->judge->plan, name);
    if (check) {
        CheckState *state = judge_check_for(view->judge, check, view->step);
        return array_copy(judge_value(view->judge, state));
    }
    const PlanGiven *given = given_of(view->judge->plan, name);
    return given ? array_copy(given->value) : NULL;
}

static Number *variance_of_place(const Place *place, gpointer user)
{
    const View *view = user;
    return judge_variance(place, view->judge);
}

static Array *evaluate(View *view, const Formula *formula, gint first_doubt)
{
    FormulaContext context = {.kind = kind_of_name,
                              .value = value_of_name,
                              .variance = variance_of_place,
                              .first_doubt = first_doubt,
                              .user = view};
    return formula_evaluate(formula, &context, NULL, NULL);
}

// The index of a place of an array by labels of some axes; an axis that is not among them has
// `chosen`. -1 if it is not there.
static gssize place_in(const Array *array, const GPtrArray *axes, const char *const *labels,
                       gssize chosen)
{
    gsize count = array_axis_count(array);
    g_autofree gsize *indices = g_new(gsize, count + 1);
    for (gsize i = 0; i < count; i++) {
        const Axis *axis = array_axis(array, i);
        gssize index = chosen;
        for (guint j = 0; j < axes->len; j++)
            if (strcmp(axis_name(axes->pdata[j]), axis_name(axis)) == 0)
                index = axis_find(axis, labels[j]);
        if (index < 0)
            return -1;
        indices[i] = (gsize)index;
    }
    return (gssize)array_index(array, indices);
}

const Place *judge_value_at(const CheckState *state, const Array *value, guint place)
{
    g_auto(GStrv) labels = judge_labels(state->check->places, place);
    gssize at =
        place_in(value, state->check->places, (const char *const *)labels, state->chosen[place]);
    return at < 0 ? NULL : array_place(value, (gsize)at);
}

// The rank of the evidence behind each place: the newest of all readings in it.
static void find_evidence(const Judge *judge, CheckState *state, const Array *value)
{
    for (guint i = 0; i < state->places && i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        for (guint j = 0; place->weights && j < place->weights->len; j++) {
            const Weight *weight = &g_array_index(place->weights, Weight, j);
            if (weight->source < 0)
                continue;
            const ReadingState *reading =
                &g_array_index(judge->readings, ReadingState, weight->source);
            state->evidence[i] = MAX(state->evidence[i], reading->state->evidence[reading->place]);
        }
    }
}

static void leave_out(const Judge *judge, const CheckState *state, Array *value)
{
    for (guint i = 0; i < places_count(state->check->places); i++) {
        if (!judge_is_left_out(judge_requirement(judge, state->requirement[i])))
            continue;
        g_auto(GStrv) labels = judge_labels(state->check->places, i);
        for (guint j = 0; j < array_size(value) && j < state->places; j++) {
            g_auto(GStrv) at = judge_labels(state->check->axes, j);
            if (judge_places_meet(state->check->places, (const char *const *)labels,
                                  state->check->axes, (const char *const *)at))
                array_set_not_needed(value, j);
        }
    }
}

// Its own array: what a formula gives may be shared with one of its inputs.
static Array *formula_value(Judge *judge, CheckState *state)
{
    View view = {judge, state->step};
    g_autoptr(Array) shared = evaluate(&view, state->check->formula, state->check->first_doubt);
    if (!shared)
        return array_new((const Axis *const *)state->check->axes->pdata, state->check->axes->len);
    Array *value = array_own(shared);
    leave_out(judge, state, value);
    return value;
}

const Array *judge_value(Judge *judge, CheckState *state)
{
    if (state->value)
        return state->value;
    if (state->working) // a plan without fault has no rings
        return NULL;
    state->working = TRUE;
    Array *value =
        state->check->formula ? formula_value(judge, state) : judge_read_value(judge, state);
    if (state->check->formula)
        find_evidence(judge, state, value);
    judge_uphold_value(judge, state, value);
    state->value = value;
    return value;
}

static const Limits *limits_for(const PlanCheck *check, const char *const *labels)
{
    for (guint i = 0; i < check->limits->len; i++) {
        const PlanLimit *limit = g_ptr_array_index(check->limits, i);
        if (!limit->label || g_strv_contains(labels, limit->label))
            return limit->limits;
    }
    return NULL;
}

// The value of one limit at a place; NULL where there is none or it cannot be worked out yet.
static Number *limit_at(Judge *judge, const CheckState *state, const Formula *formula,
                        const char *const *labels)
{
    if (!formula)
        return NULL;
    Number *constant = formula_constant(formula);
    if (constant)
        return constant;
    View view = {judge, state->step};
    g_autoptr(Array) array = evaluate(&view, formula, G_MININT / 2);
    gssize at = array ? place_in(array, state->check->places, labels, -1) : -1;
    const Place *place = at < 0 ? NULL : array_place(array, (gsize)at);
    return place && place->state == PLACE_VALUE ? number_copy(place->value) : NULL;
}

static Decision decide_with(const Requirement *made)
{
    static const DecisionReading readings[] = {READ_AS_IS, READ_LESS_THAN, READ_MORE_THAN};
    DecisionLimits limits = {number_rational(made->lower), number_rational(made->upper),
                             number_rational(made->wear)};
    return decide(readings[made->bound], number_rational(made->value),
                  number_rational(made->variance), &limits);
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

static void set_limits(Judge *judge, const CheckState *state, Requirement *made,
                       const Limits *limits)
{
    const char *const *labels = (const char *const *)made->labels;
    g_clear_pointer(&made->lower, number_free);
    g_clear_pointer(&made->upper, number_free);
    if (limits && limits_form(limits) == LIMITS_VALUE) {
        made->lower = limit_at(judge, state, limits_lower(limits), labels);
        made->upper = limit_at(judge, state, limits_upper(limits), labels);
    }
}

static void decide_requirement(Requirement *made)
{
    Decision decision = decide_with(made);
    made->verdict = outcomes[decision].verdict;
    made->reason = outcomes[decision].reason;
}

static void set_wear(Requirement *made, const Number *wear)
{
    number_free(made->wear);
    made->wear = wear ? number_copy(wear) : NULL;
}

// Amended limits count from now on; where they turn what stood as a fail or a doubt of the gauge
// into a pass, that is a concession.
static void amend(Judge *judge, const CheckState *state, Requirement *made, const Entry *entry,
                  guint evidence)
{
    Verdict before = made->verdict;
    Reason reason = made->reason;
    const char *words = entry_text(entry, "limits"), *wear = entry_text(entry, "wear");
    g_autoptr(Limits) limits = words ? limits_parse(words, state->check->unit, NULL, NULL) : NULL;
    Reading reading;
    if (limits)
        set_limits(judge, state, made, limits);
    if (wear && reading_parse(wear, state->check->unit, &reading, NULL, NULL)) {
        set_wear(made, reading.value);
        reading_clear(&reading);
    }
    made->amended = entry->seq;
    decide_requirement(made);
    if (made->verdict == VERDICT_PASS && before != VERDICT_PASS && before != VERDICT_NOTED &&
        judge_rank(judge, entry->seq) > evidence) {
        made->verdict = VERDICT_CONCEDED;
        made->reason = reason;
        made->conceded = entry->seq;
    }
}

static gint64 newest_source(const Judge *judge, const Place *place)
{
    gint64 newest = 0;
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        if (weight->source >= 0)
            newest = MAX(newest, g_array_index(judge->readings, ReadingState, weight->source).seq);
    }
    return newest;
}

static void take_value(Judge *judge, const CheckState *state, Requirement *made, const Place *place)
{
    made->value = number_copy(place->value);
    made->bound = place->bound;
    made->variance = judge_variance(place, judge);
    if (state->check->formula && state->check->doubt) {
        Number *sum = uncertainty_add(made->variance, state->check->doubt);
        number_free(made->variance);
        made->variance = sum;
    }
    made->entry = newest_source(judge, place);
}

static guint evidence_at(const CheckState *state, const Array *value, const Place *place)
{
    gsize index = (gsize)(place - array_place(value, 0));
    return index < state->places ? state->evidence[index] : 0;
}

static void judge_check_place(Judge *judge, CheckState *state, guint index)
{
    Requirement *made = judge_requirement(judge, state->requirement[index]);
    const PlanRequirement *asked =
        &g_array_index(judge->asked, PlanRequirement, state->requirement[index]);
    const Array *value = judge_value(judge, state);
    const Place *place = judge_value_at(state, value, index);
    set_limits(judge, state, made, limits_for(state->check, (const char *const *)made->labels));
    set_wear(made, state->check->wear);
    if (!place)
        return;
    made->read = place->read;
    made->asked_for = place->asked;
    if (place->state == PLACE_NOT_NEEDED)
        made->verdict = VERDICT_NOT_NEEDED;
    if (place->note)
        requirement_note(made, g_strdup(place->note));
    if (place->state != PLACE_VALUE)
        return;
    take_value(judge, state, made, place);
    guint evidence = evidence_at(state, value, place);
    if (evidence_at(state, value, place) && state->upheld[place - array_place(value, 0)])
        made->upheld = state->upheld[place - array_place(value, 0)];
    if (state->chosen[index] >= 0) {
        const Axis *axis = plan_axis(judge->plan, state->check->choose);
        made->answer = g_strdup(axis_label(axis, (gsize)state->chosen[index]));
        made->entry = MAX(made->entry, state->chosen_by[index]);
    }
    decide_requirement(made);
    const Entry *amended = judge_said(judge, "amend", asked, made);
    if (amended)
        amend(judge, state, made, amended, evidence);
    requirement_doubt(made, place->doubts);
}

void judge_checks(Judge *judge)
{
    for (guint i = 0; i < judge->checks->len; i++) {
        CheckState *state = g_ptr_array_index(judge->checks, i);
        if (state->check->asks != LIMITS_VALUE && state->check->asks != LIMITS_ANY)
            continue;
        for (guint j = 0; j < places_count(state->check->places); j++)
            judge_check_place(judge, state, j);
    }
}
