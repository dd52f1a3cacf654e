#include "judge.h"

#include <standbook/judge/other_gauge.h>

// A place that is not read yet: its source follows those of the readings.
typedef struct {
    CheckState *state;
    guint place;
} StandIn;

struct OtherGauge {
    const GaugeTrial *trial;
    Number *size;      // of a place of which nothing is known
    gboolean guessed;  // such a place was used
    GArray *stand_ins; // StandIn
};

static gboolean is_read_with(const OtherGauge *other, const PlanCheck *check)
{
    for (guint i = 0; i < other->trial->checks->len; i++)
        if (other->trial->checks->pdata[i] == check)
            return TRUE;
    return FALSE;
}

static gint stand_in(const View *view, CheckState *state, guint place)
{
    GArray *all = view->other->stand_ins;
    guint index = 0;
    for (; index < all->len; index++) {
        const StandIn *each = &g_array_index(all, StandIn, index);
        if (each->state == state && each->place == place)
            break;
    }
    if (index == all->len)
        g_array_append_val(all, ((StandIn){state, place}));
    return (gint)(view->judge->readings->len + index);
}

// SIZES -----------------------------------------------------------------------------------------

static const Number *any_read(const Array *value)
{
    for (gsize i = 0; i < array_size(value); i++)
        if (array_place(value, i)->state == PLACE_VALUE)
            return array_place(value, i)->value;
    return NULL;
}

// The middle of the limits, or the one there is; NULL where there is none. What is read has as many
// requirements as places.
static Number *middle(const View *view, const CheckState *state, guint place)
{
    const Requirement *made = judge_requirement(view->judge, state->requirement[place]);
    if (!made->lower || !made->upper)
        return made->lower || made->upper ? number_copy(made->lower ? made->lower : made->upper)
                                          : NULL;
    g_autoptr(Number) sum = number_add(made->lower, made->upper);
    g_autoptr(Number) half = number_from_ratio(1, 2);
    return number_multiply(sum, half);
}

static Number *likely_size(const View *view, const CheckState *state, const Number *neighbour,
                           guint place)
{
    if (neighbour)
        return number_copy(neighbour);
    Number *half = middle(view, state, place);
    view->other->guessed |= half == NULL;
    return half ? half : number_copy(view->other->size);
}

// VALUES ----------------------------------------------------------------------------------------

static Array *read_value(const View *view, CheckState *state)
{
    const Array *now = judge_value(view->judge, state);
    g_autoptr(Number) neighbour = any_read(now) ? number_copy(any_read(now)) : NULL;
    Array *value = array_own(now);
    for (guint i = 0; i < array_size(value) && i < state->places; i++) {
        if (array_place(value, i)->state != PLACE_OPEN)
            continue;
        g_autoptr(Number) size = likely_size(view, state, neighbour, i);
        array_set_reading(value, i, size, BOUND_NONE, stand_in(view, state, i), 0);
    }
    return value;
}

Array *other_gauge_value(const View *view, CheckState *state)
{
    return state->check->formula ? judge_formula_value(view, state) : read_value(view, state);
}

// DOUBT -----------------------------------------------------------------------------------------

// The reading of a source; of a stand-in one that has only its check.
static ReadingState reading_of(const View *view, gint source)
{
    guint index = (guint)source, count = view->judge->readings->len;
    if (index < count)
        return *reading_at(view->judge, index);
    return (ReadingState){.state =
                              g_array_index(view->other->stand_ins, StandIn, index - count).state};
}

static const ReadingDoubt *doubt_of(gint source, gpointer user)
{
    const View *view = user;
    ReadingState reading = reading_of(view, source);
    if (is_read_with(view->other, reading.state->check))
        return &view->other->trial->doubt;
    return (guint)source < view->judge->readings->len ? judge_doubt_of(source, view->judge) : NULL;
}

Number *other_gauge_variance(const View *view, const Place *place)
{
    Number *variance = uncertainty_variance(place, doubt_of, (gpointer)view);
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        if (weight->source < 0)
            continue;
        ReadingState reading = reading_of(view, weight->source);
        if (is_read_with(view->other, reading.state->check))
            reading.own = NULL; // typed with the reading that is to be taken anew
        g_autoptr(Number) before = variance;
        variance = reading_add_doubts(&reading, weight->weight, before);
    }
    return variance;
}

// Whether every stand-in is of a check that is read with the gauge.
static gboolean is_whole(const OtherGauge *other)
{
    for (guint i = 0; i < other->stand_ins->len; i++)
        if (!is_read_with(other, g_array_index(other->stand_ins, StandIn, i).state->check))
            return FALSE;
    return TRUE;
}

// With unknown sizes of so many base units.
static Number *variance_with(Judge *judge, guint index, OtherGauge *other, glong size)
{
    CheckState *state = judge->owners[index].check;
    const View view = {.judge = judge, .step = state->step, .other = other};
    guint place = g_array_index(judge->asked, PlanRequirement, index).place;
    number_free(other->size);
    other->size = number_from_integer(size);
    g_autoptr(Array) value = other_gauge_value(&view, state);
    const Place *at = judge_value_chosen(state, value, place, MAX(state->chosen[place], 0));
    return at && at->state == PLACE_VALUE ? other_gauge_variance(&view, at) : NULL;
}

Number *judge_variance_with(Judge *judge, guint index, const GaugeTrial *trial, gboolean *whole)
{
    if (!judge->owners[index].check || judge->owners[index].check->check->asks != LIMITS_VALUE)
        return NULL;
    g_autoptr(GArray) stand_ins = g_array_new(FALSE, FALSE, sizeof(StandIn));
    OtherGauge other = {.trial = trial, .stand_ins = stand_ins};
    g_autoptr(Number) one = variance_with(judge, index, &other, 1);
    g_autoptr(Number) two = one && other.guessed ? variance_with(judge, index, &other, 2) : NULL;
    *whole = is_whole(&other);
    number_free(other.size);
    gboolean depends = one && other.guessed && (!two || !number_equal(one, two));
    return depends ? NULL : g_steal_pointer(&one);
}
