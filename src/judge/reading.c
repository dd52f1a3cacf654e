#include "judge.h"

#include <standbook/record/live.h>
#include <string.h>

void judge_drop_readings(Judge *judge, guint count)
{
    for (guint i = judge->readings->len; i-- > count;) {
        ReadingState *reading = reading_at(judge, i);
        GArray *of = reading->state->readings[reading->place];
        g_array_set_size(of, of->len - 1);
        number_free(reading->value);
        number_free(reading->graduation);
        number_free(reading->own);
        number_free(reading->variance);
        basis_clear(&reading->basis);
    }
    g_array_set_size(judge->readings, count);
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

static void suppose(const Judge *judge, const Entry *entry, Kind kind, Number **value)
{
    const Hypothesis *hypothesis = judge->hypothesis;
    if (!hypothesis || g_strcmp0(entry_text(entry, "tool"), hypothesis->tool) != 0 ||
        !kind_equal(kind, hypothesis->kind))
        return;
    Number *moved = number_add(*value, hypothesis->offset);
    number_free(*value);
    *value = moved;
}

typedef struct {
    const Entry *entry;
    CheckState *state;
} Taking;

static void take_reading(Judge *judge, guint place, gpointer user)
{
    const Taking *taking = user;
    const Entry *entry = taking->entry;
    CheckState *state = taking->state;
    const Unit *unit = judge_unit(judge, entry_value(entry, "value", "unit"));
    ReadingState reading = {
        .state = state, .place = place, .seq = entry->seq, .rank = judge_rank(judge, entry->seq)};
    reading.value = exact_value(entry, unit, &reading.bound);
    if (!reading.value)
        return;
    judge_gauge(judge, entry, &reading);
    reading.evidence = reading.rank;
    const ToolUsed used = {FALSE, reading.value, 0};
    reading.doubts = judge_tool_doubt(judge, entry, &used, &reading.evidence, &reading.cause);
    suppose(judge, entry, state->check->kind, &reading.value);
    if (reading.rank < state->meant[place])
        reading.doubts |= reason_bit(REASON_BASIS);
    reading.basis = basis_at(judge, state->check, state->check->axes, place);
    g_array_append_val(state->readings[place], judge->readings->len);
    g_array_append_val(judge->readings, reading);
}

void walk_read(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (!state || state->check->formula || g_strcmp0(entry_text(entry, "state"), "loose") == 0)
        return;
    Taking taking = {entry, state};
    judge_touch(judge, state->check);
    judge_each_place(judge, state->check->axes, entry, "place", take_reading, &taking);
}

// A move, or one that was struck: up to which rank readings were meant for a trial that never was.
typedef struct {
    const PlanCheck *setting;
    const Entry *entry;
    const char **labels; // of the setting's place; NULL for all
    guint until;
} Meant;

static void mean_at(Judge *judge, const Meant *meant, const PlanCheck *check)
{
    CheckState *state = judge_check(judge, check->name, entry_text(meant->entry, "step"));
    for (guint i = 0; i < state->places; i++) {
        g_autofree const char **at = judge_labels(check->axes, i);
        if (places_meet(meant->setting->axes, meant->labels, check->axes, at))
            state->meant[i] = meant->until;
    }
}

// Says so of all that the setting moves, where the move meets it.
static void mean(Judge *judge, const PlanCheck *setting, const Entry *entry, guint until)
{
    const GPtrArray *checks = setting->step->checks;
    g_autofree const char **labels = entry_labels(entry, setting->axes->len);
    Meant meant = {setting, entry, labels, until};
    for (guint i = 0; i < checks->len; i++) {
        const PlanCheck *check = g_ptr_array_index(checks, i);
        if (g_ptr_array_find(check->moved_by, setting, NULL))
            mean_at(judge, &meant, check);
    }
}

void walk_move(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (!state)
        return;
    const GPtrArray *axes = state->check->axes;
    mean(judge, state->check, entry, 0);
    judge_disturb(judge, entry, state->check, axes, entry_labels(entry, axes->len));
}

// Readings between a struck move and its strike were meant for a trial that never was: they join
// the one before, in doubt. What is read after the strike, or the next move, knows better.
void walk_struck_move(Judge *judge, const Entry *entry)
{
    CheckState *state = judge_check(judge, entry_text(entry, "check"), entry_text(entry, "step"));
    if (!state)
        return;
    gint64 strike = live_strike_of(judge->entries, judge->count, judge->live, entry->seq);
    mean(judge, state->check, entry, strike ? judge_rank(judge, strike) : 0);
}
