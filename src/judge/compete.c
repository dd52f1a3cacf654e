// Several readings of one place: which of them counts, and whether they agree (record.md §4).
#include "judge.h"

#include <standbook/rules/decision.h>

ReadingState *reading_at(const Judge *judge, guint index)
{
    return &g_array_index(judge->readings, ReadingState, index);
}

static const ReadingDoubt *same_doubt(gint source, gpointer doubt)
{
    (void)source;
    return doubt;
}

Number *doubt_variance(const ReadingDoubt *doubt)
{
    g_autoptr(Number) nothing = number_from_integer(0);
    g_autoptr(Array) one = array_new(NULL, 0);
    array_set_reading(one, 0, nothing, BOUND_NONE, 0, 0);
    return uncertainty_variance(array_place(one, 0), same_doubt, (gpointer)doubt);
}

const Number *reading_variance(ReadingState *reading)
{
    if (reading->variance)
        return reading->variance;
    g_autoptr(Number) variance =
        reading->gauge ? number_copy(reading->gauge) : doubt_variance(&reading->doubt);
    g_autoptr(Number) one = number_from_integer(1);
    reading->variance = reading_add_doubts(reading, one, variance);
    return reading->variance;
}

Number *reading_add_doubts(const ReadingState *reading, const Number *weight,
                           const Number *variance)
{
    const Number *const doubts[] = {reading->state->check->doubt, reading->own};
    Number *sum = number_copy(variance);
    for (gsize i = 0; i < G_N_ELEMENTS(doubts); i++) {
        if (!doubts[i])
            continue;
        g_autoptr(Number) before = sum;
        g_autoptr(Number) moved = number_multiply(weight, doubts[i]);
        sum = uncertainty_add(before, moved);
    }
    return sum;
}

// By how much two readings differ at the least: `<0.03` and 0.10 by 0.07, `<0.03` and 0.01 not.
static Number *least_difference(const ReadingState *one, const ReadingState *other)
{
    Number *difference = number_subtract(one->value, other->value);
    gboolean one_above = number_sign(difference) > 0;
    const ReadingState *above = one_above ? one : other, *below = one_above ? other : one;
    if (above->bound != BOUND_BELOW && below->bound != BOUND_ABOVE)
        return difference;
    number_free(difference);
    return number_from_integer(0);
}

static gboolean readings_disagree(ReadingState *one, ReadingState *other)
{
    g_autoptr(Number) difference = least_difference(one, other);
    return decision_disagree(number_rational(difference), number_rational(reading_variance(one)),
                             number_rational(reading_variance(other)));
}

// Whether `one` counts before `other`, which is later: the least u, of equals the later.
static gboolean is_finer(ReadingState *one, ReadingState *other)
{
    return number_compare(reading_variance(one), reading_variance(other)) < 0;
}

static const char *gauge_named(const Judge *judge, const ReadingState *reading)
{
    return entry_text(judge_entry(judge, reading->seq), "tool");
}

static guint32 evidence_of(const Judge *judge, guint index, guint *evidence, gint64 *cause)
{
    const ReadingState *reading = reading_at(judge, index);
    *evidence = MAX(*evidence, reading->evidence);
    *cause = MAX(*cause, reading->cause);
    return reading->doubts | basis_doubt(judge, &reading->basis, evidence, cause);
}

// The same of the reading that counts. A hypothesis says how its tool was out: the doubt of that
// tool is then laid aside.
static guint32 evidence_counting(const Judge *judge, guint index, guint *evidence, gint64 *cause)
{
    const ReadingState *reading = reading_at(judge, index);
    const char *tool = gauge_named(judge, reading);
    if (!judge->hypothesis || g_strcmp0(tool, judge->hypothesis->tool) != 0)
        return evidence_of(judge, index, evidence, cause);
    return (reading->doubts & ~reason_bit(REASON_TOOL)) |
           basis_doubt(judge, &reading->basis, evidence, cause);
}

static guint rank_of(const Judge *judge, const GArray *readings, guint at)
{
    return reading_at(judge, g_array_index(readings, guint, at))->rank;
}

// Those between two ranks; `all` are by rank.
static GArray *those_between(const Judge *judge, const GArray *all, guint after, guint before)
{
    GArray *between = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; i < all->len; i++)
        if (rank_of(judge, all, i) > after && rank_of(judge, all, i) < before)
            g_array_append_val(between, g_array_index(all, guint, i));
    return between;
}

// Leaves out what was read in doubt (a gauge found wrong, bolts that were slack) and read again
// since without: the later reading is what redoes the earlier.
static GArray *those_not_redone(const Judge *judge, const GArray *all)
{
    GArray *kept = g_array_new(FALSE, FALSE, sizeof(guint));
    gboolean redone = FALSE;
    for (guint i = all->len; i-- > 0;) {
        guint evidence = 0, index = g_array_index(all, guint, i);
        gint64 cause = 0;
        gboolean clean = all->len == 1 || !evidence_of(judge, index, &evidence, &cause);
        if (clean || !redone)
            g_array_prepend_val(kept, index);
        redone |= clean;
    }
    return kept;
}

// A reading that names no gauge may have been taken with any: it has the doubt of a gauge that the
// place was read with, unless one that is named has answered for that since. `all` are by rank.
static guint32 taken_over(const Judge *judge, const GArray *all, guint counting, guint *evidence,
                          gint64 *cause)
{
    gboolean named = gauge_named(judge, reading_at(judge, counting)) != NULL;
    for (guint i = named ? 0 : all->len; i-- > 0;) {
        guint since = 0, index = g_array_index(all, guint, i);
        const ReadingState *reading = reading_at(judge, index);
        gint64 why = 0;
        if (!gauge_named(judge, reading))
            continue;
        if (!evidence_of(judge, index, &since, &why))
            return 0;
        if (!(reading->doubts & reason_bit(REASON_TOOL)))
            continue;
        *evidence = MAX(*evidence, reading->evidence);
        *cause = MAX(*cause, reading->cause);
        return reason_bit(REASON_TOOL);
    }
    return 0;
}

// The newest of those below a rank.
static guint newest_before(const Judge *judge, const GArray *all, guint below)
{
    guint newest = 0;
    for (guint i = 0; i < all->len; i++)
        if (rank_of(judge, all, i) < below)
            newest = MAX(newest, rank_of(judge, all, i));
    return newest;
}

// The readings in company: those since the basis was last disturbed before the newest of them (a
// reading taken with bolts that were slackened since keeps its value but not its company). As
// found: those that were when later work first disturbed them, so that nothing unsettles a finding.
static GArray *company(const Judge *judge, const CheckState *state, guint place, gboolean as_found,
                       guint *fell)
{
    const GArray *all = state->readings[place];
    guint first = rank_of(judge, all, 0), last = rank_of(judge, all, all->len - 1);
    guint end = as_found ? basis_fell_first(judge, state, place, first) : 0;
    guint begin = basis_parted(judge, state, place, end ? newest_before(judge, all, end) : last);
    *fell = as_found ? 0 : basis_fell(judge, state, place, last);
    return those_between(judge, all, begin, end ? end : G_MAXUINT);
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

static void fill_place(const Judge *judge, const CheckState *state, guint place, gboolean as_found,
                       Array *value, guint *evidence)
{
    if (state->readings[place]->len == 0)
        return;
    guint fell = 0;
    g_autoptr(GArray) all = company(judge, state, place, as_found, &fell);
    g_autoptr(GArray) of = those_not_redone(judge, all);
    guint best = counting_reading(judge, of);
    ReadingState *reading = reading_at(judge, best);
    guint32 doubts = fell ? reason_bit(REASON_BASIS) : 0;
    *evidence = fell;
    gint64 cause = 0;
    doubts |= evidence_counting(judge, best, evidence, &cause);
    doubts |= taken_over(judge, all, best, evidence, &cause);
    for (guint i = 0; i < of->len; i++) {
        ReadingState *other = reading_at(judge, g_array_index(of, guint, i));
        if (other == reading || !readings_disagree(reading, other))
            continue;
        doubts |= reason_bit(REASON_DISAGREE);
        *evidence = MAX(*evidence, other->rank);
    }
    array_set_reading(value, place, reading->value, reading->bound, (gint)best, doubts);
    array_set_cause(value, place, cause);
}

Array *judge_read_value(const Judge *judge, const CheckState *state, gboolean as_found,
                        guint *evidence)
{
    Array *value =
        array_new((const Axis *const *)state->check->axes->pdata, state->check->axes->len);
    for (guint i = 0; i < state->places; i++) {
        if (judge_is_left_out(judge, state->requirement[i]))
            array_set_not_needed(value, i);
        else
            fill_place(judge, state, i, as_found, value, &evidence[i]);
    }
    return value;
}

static gboolean is_among(const GArray *of, guint index)
{
    for (guint i = 0; i < of->len; i++)
        if (g_array_index(of, guint, i) == index)
            return TRUE;
    return FALSE;
}

static ReadingBeside beside(ReadingState *best, ReadingState *other, gboolean competes)
{
    WhyBeside why = is_finer(best, other) ? BESIDE_COARSER : BESIDE_EARLIER;
    return (ReadingBeside){.entry = other->seq,
                           .why = competes ? why : BESIDE_DOUBTED,
                           .gauge = cause_unpack(other->cause).state};
}

GArray *judge_beside(const Judge *judge, const CheckState *state, guint place)
{
    guint fell = 0;
    if (state->check->formula || state->readings[place]->len < 2)
        return NULL;
    g_autoptr(GArray) all = company(judge, state, place, state->check->finding, &fell);
    g_autoptr(GArray) of = those_not_redone(judge, all);
    guint best = counting_reading(judge, of);
    GArray *others = g_array_new(FALSE, FALSE, sizeof(ReadingBeside));
    for (guint i = 0; i < all->len; i++) {
        guint index = g_array_index(all, guint, i);
        const ReadingBeside other =
            beside(reading_at(judge, best), reading_at(judge, index), is_among(of, index));
        if (index != best)
            g_array_append_val(others, other);
    }
    return others;
}
