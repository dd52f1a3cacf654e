#include "clock_line.h"

static const gint64 MINUTE = 60, HOUR = 3600;

GArray *clocks_of(Session *session, Moment now)
{
    const GPtrArray *entries = session_entries(session);
    return clocks_running(session_plan(session), session_assessment(session),
                          (const Entry *const *)entries->pdata, entries->len, now);
}

// `6 min`, `1 h 59 min`, `24 h`: how long it still runs, or how late it is; of many hours the
// nearest.
static char *span(gint64 seconds)
{
    gint64 length = ABS(seconds), minutes = length / MINUTE;
    const char *late = seconds < 0 ? " late" : "";
    if (length < 90 * MINUTE)
        return g_strdup_printf("%" G_GINT64_FORMAT " min%s", minutes, late);
    if (length < 10 * HOUR && minutes % 60)
        return g_strdup_printf("%" G_GINT64_FORMAT " h %" G_GINT64_FORMAT " min%s", minutes / 60,
                               minutes % 60, late);
    return g_strdup_printf("%" G_GINT64_FORMAT " h%s", (length + HOUR / 2) / HOUR, late);
}

static char *line_of(const Clock *clock, Moment now)
{
    g_autofree char *until = clock_until(clock, now), *left = span(clock->at - now);
    return g_strdup_printf("%s %s, %s", clock->subject, until, left);
}

// What cannot wait comes before what the step in hand waits for.
static const Clock *of_step(const GArray *clocks, const PlanStep *step)
{
    const Clock *first = clocks->len ? &g_array_index(clocks, Clock, 0) : NULL;
    for (guint i = 0; step && first && first->sort != CLOCK_FIT_BEFORE && i < clocks->len; i++) {
        const Clock *clock = &g_array_index(clocks, Clock, i);
        if (clock->sort == CLOCK_FIT_BEFORE || plan_tightening(step, clock->subject))
            return clock;
    }
    return first;
}

static char *line_for(Session *session, const PlanStep *step, Moment now)
{
    const GPtrArray *entries = session_entries(session);
    Clock forbids;
    if (step && clock_forbids(session_plan(session), step, (const Entry *const *)entries->pdata,
                              entries->len, now, &forbids))
        return line_of(&forbids, now);
    g_autoptr(GArray) clocks = clocks_of(session, now);
    const Clock *clock = of_step(clocks, step);
    return clock ? line_of(clock, now) : NULL;
}

// It is looked for once a second, and after an entry or in another step.
char *clock_line(Desk *desk, const PlanStep *step)
{
    Session *session = desk_build(desk);
    if (!session)
        return NULL;
    guint known = session_entries(session)->len;
    if (desk->clock_of != session || desk->clock_at != desk->now || desk->clock_known != known ||
        desk->clock_step != step) {
        g_free(desk->clock);
        desk->clock = line_for(session, step, desk->now);
        desk->clock_step = step;
        desk->clock_of = session;
        desk->clock_at = desk->now;
        desk->clock_known = known;
    }
    return g_strdup(desk->clock);
}

char *clock_line_of_all(const Desk *desk)
{
    g_autofree char *line = NULL;
    Moment soonest = 0;
    GHashTableIter iterator;
    gpointer number, session;
    g_hash_table_iter_init(&iterator, desk->sessions);
    while (g_hash_table_iter_next(&iterator, &number, &session)) {
        g_autoptr(GArray) clocks = session ? clocks_of(session, desk->now) : NULL;
        const Clock *clock = clocks && clocks->len ? &g_array_index(clocks, Clock, 0) : NULL;
        if (!clock || (line && clock->at >= soonest))
            continue;
        soonest = clock->at;
        g_autofree char *words = line_of(clock, desk->now);
        g_free(line);
        line = g_strdup_printf("%s: %s", (const char *)number, words);
    }
    return g_steal_pointer(&line);
}

char *clock_left(const Clock *clock, Moment now)
{
    g_autofree char *left = span(clock->at - now);
    return g_strconcat(left, clock->at < now ? "" : " left", NULL);
}
