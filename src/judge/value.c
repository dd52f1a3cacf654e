#include "judge.h"

#include <string.h>

// The ± of formulas' own methods have sources from here on down, apart from all of the plan's.
enum { METHOD_DOUBTS = -(1 << 29) };

const ReadingDoubt *judge_doubt_of(gint source, gpointer user)
{
    const Judge *judge = user;
    return source < 0 ? NULL : &g_array_index(judge->readings, ReadingState, source).doubt;
}

// The reading that a value is, unchanged; NULL if it is worked out from anything else.
static ReadingState *only_reading(const Judge *judge, const Place *place)
{
    const Weight *weight = place->weights && place->weights->len == 1
                               ? &g_array_index(place->weights, Weight, 0)
                               : NULL;
    if (!weight || weight->source < 0 || mpq_cmp_ui(number_rational(weight->weight), 1, 1) != 0)
        return NULL;
    return reading_at(judge, (guint)weight->source);
}

Number *judge_variance(const Place *place, gpointer user)
{
    const Judge *judge = user;
    ReadingState *alone = only_reading(judge, place);
    if (alone)
        return number_copy(reading_variance(alone));
    Number *variance = uncertainty_variance(place, judge_doubt_of, user);
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        if (weight->source < 0)
            continue;
        g_autoptr(Number) before = variance;
        variance =
            reading_add_doubts(reading_at(judge, (guint)weight->source), weight->weight, before);
    }
    return variance;
}

static Array *view_value(const View *view, CheckState *state);

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
    if (check)
        return view_value(view, judge_check_for(view->judge, check, view->step));
    const PlanGiven *given = given_of(view->judge->plan, name);
    return given ? array_copy(given->value) : NULL;
}

static Number *variance_of_place(const Place *place, gpointer user)
{
    const View *view = user;
    return view->other ? other_gauge_variance(view, place) : judge_variance(place, view->judge);
}

static Array *evaluate(const View *view, const Formula *formula, gint first_doubt)
{
    FormulaContext context = {.kind = kind_of_name,
                              .value = value_of_name,
                              .variance = variance_of_place,
                              .first_doubt = first_doubt,
                              .user = (gpointer)view};
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

// Whether an array has these axes, in this order.
static gboolean has_axes(const Array *array, const GPtrArray *axes)
{
    if (array_axis_count(array) != axes->len)
        return FALSE;
    for (guint i = 0; i < axes->len; i++)
        if (array_axis(array, i) != axes->pdata[i])
            return FALSE;
    return TRUE;
}

const Place *judge_value_chosen(const CheckState *state, const Array *value, guint place,
                                gssize chosen)
{
    if (has_axes(value, state->check->places))
        return array_place(value, place);
    g_autofree const char **labels = judge_labels(state->check->places, place);
    gssize at = place_in(value, state->check->places, labels, chosen);
    return at < 0 ? NULL : array_place(value, (gsize)at);
}

const Place *judge_value_at(const CheckState *state, const Array *value, guint place)
{
    return judge_value_chosen(state, value, place, state->chosen[place]);
}

static void leave_out(const Judge *judge, const CheckState *state, Array *value)
{
    for (guint i = 0; i < places_count(state->check->places); i++) {
        if (!judge_is_left_out(judge, state->requirement[i]))
            continue;
        g_autofree const char **labels = judge_labels(state->check->places, i);
        for (guint j = 0; j < array_size(value) && j < state->places; j++) {
            g_autofree const char **at = judge_labels(state->check->axes, j);
            if (places_meet(state->check->places, labels, state->check->axes, at))
                array_set_not_needed(value, j);
        }
    }
}

// The doubt of a formula's own method, independent at each place; what uses the formula has it too.
static void add_method(Judge *judge, const PlanCheck *check, Array *value)
{
    for (gsize i = 0; check->doubt && i < array_size(value); i++)
        array_add_doubt(value, i, check->doubt, METHOD_DOUBTS - judge->methods++);
}

// Whether a formula falls once what it rests on is disturbed behind this reading. Of a setting only
// what each trial reads anew counts.
static gboolean may_fall_by(const PlanCheck *check, const ReadingState *reading)
{
    const GArray *inputs = check->setting ? check->setting->inputs : NULL;
    return !inputs || !inputs->len ||
           g_ptr_array_find(reading->state->check->moved_by, check, NULL);
}

// The rank of the oldest reading by which a place of a formula may fall; G_MAXUINT if there is
// none.
static guint oldest_of(const Judge *judge, const PlanCheck *check, const Place *place)
{
    guint oldest = G_MAXUINT;
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        gint source = g_array_index(place->weights, Weight, i).source;
        if (source >= 0 && may_fall_by(check, reading_at(judge, (guint)source)))
            oldest = MIN(oldest, reading_at(judge, (guint)source)->rank);
    }
    return oldest;
}

// A formula that says `rests on` itself falls with it, whatever its inputs stand on.
static void fall(const Judge *judge, CheckState *state, Array *value)
{
    for (guint i = 0; judge->disturbances->len && i < state->places && i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        guint oldest = oldest_of(judge, state->check, place);
        guint fell =
            oldest == G_MAXUINT || state->check->finding ? 0 : basis_fell(judge, state, i, oldest);
        if (!fell)
            continue;
        state->evidence[i] = fell;
        array_set_doubts(value, i, place->doubts | reason_bit(REASON_BASIS));
    }
}

// Its own array: what a formula gives may be shared with one of its inputs.
Array *judge_formula_value(const View *view, const CheckState *state)
{
    const PlanCheck *check = state->check;
    g_autoptr(Array) shared = evaluate(view, check->formula, check->first_doubt);
    if (!shared)
        return array_new((const Axis *const *)check->axes->pdata, check->axes->len);
    Array *value = array_own(shared);
    add_method(view->judge, check, value);
    leave_out(view->judge, state, value);
    return value;
}

const Array *judge_value(Judge *judge, CheckState *state)
{
    if (state->value)
        return state->value;
    if (state->working) // a plan without fault has no rings
        return NULL;
    state->working = TRUE;
    gboolean as_found = state->check->finding;
    Array *value = NULL;
    if (state->check->formula) {
        View view = {.judge = judge, .step = state->step, .as_found = as_found};
        value = judge_formula_value(&view, state);
        fall(judge, state, value);
    } else {
        value = judge_read_value(judge, state, as_found, state->evidence);
    }
    judge_uphold_value(judge, state, value, state->evidence);
    state->value = value;
    state->working = FALSE;
    return value;
}

// Takes away the doubts that had come to a value by a rank.
static void keep_newer(const CheckState *state, Array *value, const guint *evidence, guint rank)
{
    for (guint i = 0; i < state->places && i < array_size(value); i++)
        if (evidence[i] <= rank)
            array_set_doubts(value, i, 0);
}

// An input of a finding before any later work on it.
static Array *found_value(const View *view, CheckState *state)
{
    if (state->check->formula)
        return judge_formula_value(view, state);
    g_autofree guint *evidence = g_new0(guint, state->places);
    Array *value = judge_read_value(view->judge, state, TRUE, evidence);
    judge_uphold_value(view->judge, state, value, evidence);
    if (view->newer)
        keep_newer(state, value, evidence, view->newer);
    return value;
}

// A value with only the doubts that came to it after a rank.
static Array *newer_value(const View *view, CheckState *state)
{
    Array *value = array_own(judge_value(view->judge, state));
    View inner = {.judge = view->judge,
                  .step = state->step,
                  .as_found = state->check->finding,
                  .newer = view->newer};
    g_autoptr(Array) inputs = state->check->formula ? judge_formula_value(&inner, state) : NULL;
    for (gsize i = 0; i < array_size(value); i++) {
        guint32 doubts = array_place(value, i)->doubts;
        guint32 below = inputs ? array_place(inputs, i)->doubts : 0;
        if (doubts && (i >= state->places || state->evidence[i] <= view->newer))
            array_set_doubts(value, i, doubts & below);
    }
    return value;
}

static Array *view_value(const View *view, CheckState *state)
{
    if (view->other)
        return other_gauge_value(view, state);
    if (view->as_found)
        return found_value(view, state);
    return view->newer ? newer_value(view, state) : array_copy(judge_value(view->judge, state));
}

guint32 judge_newer_doubts(Judge *judge, CheckState *state, guint place, guint rank)
{
    View view = {
        .judge = judge, .step = state->step, .as_found = state->check->finding, .newer = rank};
    g_autoptr(Array) value = judge_formula_value(&view, state);
    return place < array_size(value) ? array_place(value, place)->doubts : 0;
}

void judge_forget_value(CheckState *state)
{
    if (!state->value)
        return;
    g_clear_pointer(&state->value, array_free);
    memset(state->evidence, 0, state->places * sizeof *state->evidence);
    memset(state->upheld, 0, state->places * sizeof *state->upheld);
    memset(state->argued, 0, state->places * sizeof *state->argued);
}

// Values worked out in the middle of the walk hold only for that moment, and those worked out
// before do not hold there.
static void judge_forget(Judge *judge)
{
    for (guint i = 0; i < judge->checks->len; i++)
        judge_forget_value(g_ptr_array_index(judge->checks, i));
}

AtPlace judge_formula_at(const View *view, const Formula *formula, gint first_doubt,
                         const GPtrArray *axes, const char *const *labels)
{
    AtPlace found = {.state = PLACE_VALUE, .value = formula_constant(formula)};
    if (found.value)
        return found;
    g_autoptr(Array) array = evaluate(view, formula, first_doubt);
    gssize at = array ? place_in(array, axes, labels, -1) : -1;
    const Place *place = at < 0 ? NULL : array_place(array, (gsize)at);
    found.state = place ? place->state : PLACE_OPEN;
    if (found.state == PLACE_VALUE) {
        found.value = number_copy(place->value);
        found.doubts = place->doubts;
        found.cause = place->cause;
    }
    return found;
}

Number *judge_amount(Judge *judge, const PlanTightening *tightening, const Stage *stage, guint bolt)
{
    if (!stage->formula)
        return NULL;
    Number *constant = formula_constant(stage->formula);
    if (constant)
        return constant;
    g_autofree const char **labels = judge_labels(tightening->group->axes, bolt);
    View view = {.judge = judge, .step = tightening->step};
    if (judge->walking)
        judge_forget(judge);
    AtPlace found = judge_formula_at(&view, stage->formula, stage->first_doubt,
                                     tightening->group->axes, labels);
    if (judge->walking)
        judge_forget(judge);
    return found.value;
}
