#include "judge.h"

#include <standbook/rules/decision.h>
#include <string.h>

static ReadingState *reading_at(const Judge *judge, guint index)
{
    return &g_array_index(judge->readings, ReadingState, index);
}

void judge_readings_clear(Judge *judge)
{
    for (guint i = 0; i < judge->readings->len; i++) {
        ReadingState *reading = reading_at(judge, i);
        number_free(reading->value);
        number_free(reading->graduation);
        g_array_unref(reading->ticks);
    }
}

static Bound bound_of(const char *value)
{
    return *value == '<' ? BOUND_BELOW : *value == '>' ? BOUND_ABOVE : BOUND_NONE;
}

// The exact value of a read entry in base units; NULL if the entry holds none.
static Number *exact_value(const Entry *entry, const Unit *unit, Bound *bound)
{
    const char *text = entry_value(entry, "value", "value");
    if (!text)
        return NULL;
    *bound = bound_of(text);
    g_autoptr(Number) number = number_from_text(text + (*bound != BOUND_NONE), NULL);
    return number ? unit_to_base(unit, number) : NULL;
}

static void suppose(const Judge *judge, const Entry *entry, Number **value)
{
    const Hypothesis *hypothesis = judge->hypothesis;
    if (!hypothesis || g_strcmp0(entry_text(entry, "tool"), hypothesis->tool) != 0)
        return;
    Number *moved = number_add(*value, hypothesis->offset);
    number_free(*value);
    *value = moved;
}

// Notes which bolts the reading was taken with, and whether all of them were final.
static void read_with(Judge *judge, ReadingState *reading)
{
    const PlanCheck *check = reading->state->check;
    if (check->with->len == 0)
        return;
    g_auto(GStrv) labels = judge_labels(check->axes, reading->place);
    for (guint i = 0; i < check->with->len; i++) {
        const PlanName *name = g_ptr_array_index(check->with, i);
        const SetState *set =
            name->group ? g_hash_table_lookup(judge->state_of, name->group) : NULL;
        if (set && !set_is_final(judge, set, name->step, check->axes, (const char *const *)labels,
                                 reading->ticks))
            reading->slack = TRUE;
    }
}

static void take_reading(Judge *judge, guint place, gpointer user)
{
    const Entry *entry = user;
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    const Unit *unit = judge_unit(judge, entry_value(entry, "value", "unit"));
    ReadingState reading = {
        .state = state, .place = place, .seq = entry->seq, .rank = judge_rank(judge, entry->seq)};
    reading.value = exact_value(entry, unit, &reading.bound);
    if (!reading.value)
        return;
    judge_gauge(judge, entry, &reading);
    reading.evidence = reading.rank;
    reading.doubts = judge_tool_doubt(judge, entry, FALSE, reading.value, &reading.evidence);
    suppose(judge, entry, &reading.value);
    if (state->struck_move)
        reading.doubts |= reason_bit(REASON_BASIS);
    reading.ticks = g_array_new(FALSE, FALSE, sizeof(guint));
    read_with(judge, &reading);
    g_array_append_val(state->readings[place], judge->readings->len);
    g_array_append_val(judge->readings, reading);
}

void walk_read(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (!state || state->check->formula || g_strcmp0(entry_text(entry, "state"), "loose") == 0)
        return;
    judge_each_place(judge, state->check->axes, entry, "place", take_reading, (gpointer)entry);
}

void walk_move(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (!state)
        return;
    state->struck_move = 0;
    judge_disturb(judge, entry, state->check, state->check->axes, NULL);
}

// Readings after a struck move were meant for a trial that never was: they join the one before, in
// doubt, until the next move.
void walk_struck_move(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (state)
        state->struck_move = judge_rank(judge, entry->seq);
}

static gboolean falls_with(const PlanCheck *check, const void *subject)
{
    if (subject == check)
        return TRUE;
    for (guint i = 0; i < check->rests_on->len; i++) {
        const PlanName *name = g_ptr_array_index(check->rests_on, i);
        if (subject == name->group || subject == name->part || subject == name->check)
            return TRUE;
    }
    return FALSE;
}

// A finding is never unsettled by later work; a check that a later step asks for once more is
// judged as it stood before that step.
guint judge_disturbed(const Judge *judge, const CheckState *state, guint place)
{
    guint until = state->again ? state->again->step->index : G_MAXUINT;
    g_auto(GStrv) labels = NULL;
    for (guint i = state->check->finding ? 0 : judge->disturbances->len; i-- > 0;) {
        const Disturbance *one = &g_array_index(judge->disturbances, Disturbance, i);
        if (one->step >= until || !falls_with(state->check, one->subject))
            continue;
        if (!labels)
            labels = judge_labels(state->check->axes, place);
        if (judge_places_meet(state->check->axes, (const char *const *)labels, one->axes,
                              (const char *const *)one->labels))
            return one->rank;
    }
    return 0;
}

// The doubt of the bolts a reading was taken with.
static guint32 bolts_doubt(const Judge *judge, const ReadingState *reading, guint *evidence)
{
    guint32 doubts = reading->slack ? reason_bit(REASON_BASIS) : 0;
    for (guint i = 0; i < reading->ticks->len; i++) {
        const TickState *tick =
            &g_array_index(judge->ticks, TickState, g_array_index(reading->ticks, guint, i));
        if (tick->doubts & ~tick->upheld) {
            doubts |= reason_bit(REASON_BASIS);
            *evidence = MAX(*evidence, tick->evidence);
        }
    }
    return doubts;
}

static const ReadingDoubt *same_doubt(gint source, gpointer doubt)
{
    (void)source;
    return doubt;
}

// u² of a single reading with the doubt of its method.
static Number *reading_variance(const ReadingState *reading)
{
    g_autoptr(Array) one = array_new(NULL, 0);
    array_set_reading(one, 0, reading->value, BOUND_NONE, 0, 0);
    g_autoptr(Number) variance =
        uncertainty_variance(array_place(one, 0), same_doubt, (gpointer)&reading->doubt);
    return reading->state->check->doubt ? uncertainty_add(variance, reading->state->check->doubt)
                                        : number_copy(variance);
}

static gboolean readings_disagree(const ReadingState *one, const ReadingState *other)
{
    if (one->bound != BOUND_NONE || other->bound != BOUND_NONE)
        return FALSE;
    g_autoptr(Number) difference = number_subtract(one->value, other->value);
    g_autoptr(Number) u_one = reading_variance(one);
    g_autoptr(Number) u_other = reading_variance(other);
    return decision_disagree(number_rational(difference), number_rational(u_one),
                             number_rational(u_other));
}

// Whether `one` counts before `other`, which is later: the least u, of equals the later.
static gboolean is_finer(const ReadingState *one, const ReadingState *other)
{
    g_autoptr(Number) u_one = reading_variance(one);
    g_autoptr(Number) u_other = reading_variance(other);
    return number_compare(u_one, u_other) < 0;
}

// The readings of a place that still compete: those since the last disturbance, or all if none is;
// of these the ones whose evidence is not in doubt, if there are any.
typedef struct {
    GArray *of; // guint
    guint32 doubts;
    guint evidence;
} Competitors;

static guint32 evidence_of(const Judge *judge, guint index, guint *evidence)
{
    const ReadingState *reading = reading_at(judge, index);
    *evidence = MAX(*evidence, reading->evidence);
    return reading->doubts | bolts_doubt(judge, reading, evidence);
}

static GArray *those_since(const Judge *judge, const GArray *all, guint rank)
{
    GArray *since = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < all->len; i++)
        if (reading_at(judge, g_array_index(all, guint, i))->rank > rank)
            g_array_append_val(since, g_array_index(all, guint, i));
    return since;
}

static GArray *those_clean(const Judge *judge, const GArray *all)
{
    GArray *clean = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < all->len; i++) {
        guint evidence = 0;
        if (!evidence_of(judge, g_array_index(all, guint, i), &evidence))
            g_array_append_val(clean, g_array_index(all, guint, i));
    }
    return clean;
}

static void prefer(GArray **readings, GArray *others)
{
    if (others->len > 0) {
        g_array_unref(*readings);
        *readings = others;
    } else {
        g_array_unref(others);
    }
}

static Competitors competitors_at(const Judge *judge, const CheckState *state, guint place)
{
    guint rank = judge_disturbed(judge, state, place);
    Competitors compete = {.of = g_array_ref(state->readings[place]), .evidence = rank};
    GArray *since = those_since(judge, compete.of, rank);
    if (since->len == 0)
        compete.doubts = reason_bit(REASON_BASIS);
    prefer(&compete.of, since);
    if (compete.of->len > 1)
        prefer(&compete.of, those_clean(judge, compete.of));
    return compete;
}

static guint counting_reading(const Judge *judge, const GArray *of)
{
    guint best = g_array_index(of, guint, 0);
    for (guint i = 1; i < of->len; i++) {
        guint next = g_array_index(of, guint, i);
        if (!is_finer(reading_at(judge, best), reading_at(judge, next)))
            best = next;
    }
    return best;
}

static void fill_place(Judge *judge, CheckState *state, guint place, Array *value)
{
    if (state->readings[place]->len == 0)
        return;
    Competitors compete = competitors_at(judge, state, place);
    guint best = counting_reading(judge, compete.of);
    const ReadingState *reading = reading_at(judge, best);
    compete.doubts |= evidence_of(judge, best, &compete.evidence);
    for (guint i = 0; i < compete.of->len; i++) {
        const ReadingState *other = reading_at(judge, g_array_index(compete.of, guint, i));
        if (other != reading && readings_disagree(reading, other)) {
            compete.doubts |= reason_bit(REASON_DISAGREE);
            compete.evidence = MAX(compete.evidence, other->rank);
        }
    }
    array_set_reading(value, place, reading->value, reading->bound, (gint)best, compete.doubts);
    state->evidence[place] = compete.evidence;
    g_array_unref(compete.of);
}

Array *judge_read_value(Judge *judge, CheckState *state)
{
    Array *value =
        array_new((const Axis *const *)state->check->axes->pdata, state->check->axes->len);
    for (guint i = 0; i < state->places; i++) {
        if (judge_is_left_out(judge_requirement(judge, state->requirement[i])))
            array_set_not_needed(value, i);
        else
            fill_place(judge, state, i, value);
    }
    return value;
}
