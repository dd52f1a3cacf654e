#include <standbook/rules/order.h>

static gsize turn_of(guint bolt, const guint *asked, gsize asked_count)
{
    gsize turn = 0;
    while (turn < asked_count && asked[turn] != bolt)
        turn++;
    return turn;
}

// For each tick the length of the longest run that begins with it; 0 for a bolt not asked for.
static void measure_runs(const gsize *turns, gsize count, gsize unasked, gsize *runs)
{
    for (gsize i = count; i-- > 0;) {
        runs[i] = turns[i] == unasked ? 0 : 1;
        for (gsize j = i + 1; runs[i] && j < count; j++) {
            if (turns[j] > turns[i]) // an unasked tick adds nothing: its own run is 0 long
                runs[i] = MAX(runs[i], runs[j] + 1);
        }
    }
}

// The tick that begins the rest of the run: `length` long, after tick `from` and turn `beyond`, of
// these the earliest turn. Any such tick completes a longest run, so the first choice needs no
// second thought.
static gsize earliest_turn(const gsize *turns, const gsize *runs, gsize count, gsize from,
                           gssize beyond, gsize length)
{
    gsize best = count;
    for (gsize i = from; i < count; i++) {
        if (runs[i] == length && (gssize)turns[i] > beyond &&
            (best == count || turns[i] < turns[best]))
            best = i;
    }
    return best;
}

void order_mark(const guint *asked, gsize asked_count, const guint *ticked, gsize ticked_count,
                gboolean *in_doubt)
{
    g_autofree gsize *turns = g_new(gsize, ticked_count);
    g_autofree gsize *runs = g_new(gsize, ticked_count);
    gsize longest = 0;
    for (gsize i = 0; i < ticked_count; i++) {
        turns[i] = turn_of(ticked[i], asked, asked_count);
        in_doubt[i] = TRUE;
    }
    measure_runs(turns, ticked_count, asked_count, runs);
    for (gsize i = 0; i < ticked_count; i++)
        longest = MAX(longest, runs[i]);
    gsize from = 0;
    gssize beyond = -1;
    for (; longest > 0; longest--) {
        gsize next = earliest_turn(turns, runs, ticked_count, from, beyond, longest);
        in_doubt[next] = FALSE;
        beyond = (gssize)turns[next];
        from = next + 1;
    }
}
