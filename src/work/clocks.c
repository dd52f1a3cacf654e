#include <standbook/work/clocks.h>

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <string.h>

typedef struct {
    const Plan *plan;
    const Assessment *assessment; // NULL: waits and what is to be fitted in time do not matter
    const Entry *const *entries;
    gsize count;
    GArray *clocks;
} Running;

// A whole number of seconds, rounded up: a clock never ends too soon.
static gint64 seconds_of(const Number *number)
{
    g_autofree char *text = number_decimal_up(number, 0);
    return g_ascii_strtoll(text, NULL, 10);
}

static void add(const Running *running, ClockSort sort, const Entry *laid, Moment at)
{
    const char *set = entry_text(laid, "tightening");
    const Clock clock = {sort, set ? set : "", entry_text(laid, "consumable"), at};
    g_array_append_val(running->clocks, clock);
}

// The first stage closes the joint: it is what has to come in time.
static gboolean is_open(const Requirement *made, const char *set)
{
    return made->asked == ASKED_BOLT && made->stage == 1 && made->verdict == VERDICT_OPEN &&
           strcmp(made->name, set) == 0;
}

// Whether a bolt of the set is still to be taken through it, in the step it was laid in.
static gboolean set_is_open(const Running *running, const Entry *laid)
{
    const char *set = entry_text(laid, "tightening"), *step = entry_text(laid, "step");
    for (guint i = 0; set && i < running->assessment->requirements->len; i++) {
        const Requirement *made = running->assessment->requirements->pdata[i];
        if (is_open(made, set) && (!step || strcmp(made->step->name, step) == 0))
            return TRUE;
    }
    return FALSE;
}

// Whether another laying, of the same consumable or of any, followed on the same bolt set or part,
// in order of rank as all is judged: that one counts then.
static gboolean is_laid_again(const GPtrArray *laid, guint index, gboolean same)
{
    const Entry *entry = laid->pdata[index];
    for (guint i = index + 1; i < laid->len; i++) {
        const Entry *later = laid->pdata[i];
        if (g_strcmp0(entry_text(entry, "tightening"), entry_text(later, "tightening")) == 0 &&
            (!same ||
             strcmp(entry_text(entry, "consumable"), entry_text(later, "consumable")) == 0))
            return TRUE;
    }
    return FALSE;
}

static void add_fit_before(const Running *running, const GPtrArray *all, guint index,
                           const PlanConsumable *consumable)
{
    const Entry *laid = all->pdata[index];
    if (consumable->fit_within && !is_laid_again(all, index, FALSE) && set_is_open(running, laid))
        add(running, CLOCK_FIT_BEFORE, laid,
            entry_moment(laid) + seconds_of(consumable->fit_within));
}

// Until when it may not be filled or run; what is over too.
static void add_afters(const Running *running, const Entry *laid, const PlanConsumable *consumable)
{
    const struct {
        ClockSort sort;
        const Number *after;
    } afters[] = {{CLOCK_NO_FLUID, consumable->fluid_after}, {CLOCK_NO_RUN, consumable->run_after}};
    for (gsize i = 0; i < G_N_ELEMENTS(afters); i++)
        if (afters[i].after)
            add(running, afters[i].sort, laid, entry_moment(laid) + seconds_of(afters[i].after));
}

static void add_laid(const Running *running, const GPtrArray *all, guint index)
{
    const Entry *laid = all->pdata[index];
    const PlanConsumable *consumable =
        plan_consumable(running->plan, entry_text(laid, "consumable"));
    if (!consumable || is_laid_again(all, index, TRUE))
        return;
    if (running->assessment)
        add_fit_before(running, all, index, consumable);
    add_afters(running, laid, consumable);
}

// The wait of a stage that is open while all bolts of the stage in front of it are through: when
// the last of them was done; 0 if it does not run.
static Moment wait_begun(const Running *running, const Requirement *wait)
{
    gint64 last = 0;
    for (guint i = 0; i < running->assessment->requirements->len; i++) {
        const Requirement *made = running->assessment->requirements->pdata[i];
        if (made->asked != ASKED_BOLT || made->step != wait->step ||
            made->stage + 1 != wait->stage || strcmp(made->name, wait->name) != 0)
            continue;
        if (made->verdict == VERDICT_OPEN)
            return 0;
        last = MAX(last, made->entry);
    }
    return last > 0 && (gsize)last <= running->count ? entry_moment(running->entries[last - 1]) : 0;
}

static const Number *wait_of(const Requirement *wait, Number **constant)
{
    const PlanTightening *tightening = plan_tightening(wait->step, wait->name);
    const Stage *stage = tightening ? tightening->stages->pdata[wait->stage - 1] : NULL;
    *constant = stage && stage->formula ? formula_constant(stage->formula) : NULL;
    return *constant;
}

// When the wait is over; 0 if it does not run.
static Moment wait_over(const Running *running, const Requirement *wait)
{
    g_autoptr(Number) constant = NULL;
    gboolean open = wait->asked == ASKED_WAIT && wait->verdict == VERDICT_OPEN && !wait->withdrawn;
    Moment from = open ? wait_begun(running, wait) : 0;
    const Number *length = from ? wait_of(wait, &constant) : NULL;
    return length ? from + seconds_of(length) : 0;
}

Moment clock_wait_over(const Assessment *assessment, const Entry *const *entries, gsize count,
                       const Requirement *wait)
{
    const Running running = {.assessment = assessment, .entries = entries, .count = count};
    return wait_over(&running, wait);
}

static void add_wait(const Running *running, const Requirement *wait)
{
    const Clock clock = {CLOCK_WAIT, wait->name, NULL, wait_over(running, wait)};
    if (clock.at)
        g_array_append_val(running->clocks, clock);
}

static gint by_time(gconstpointer one, gconstpointer other)
{
    const Clock *first = one, *second = other;
    return (first->at > second->at) - (first->at < second->at);
}

// All that was laid and counts, in order of rank.
static GPtrArray *laid_entries(const Entry *const *entries, gsize count)
{
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    g_autofree gint64 *ranked = g_new0(gint64, count + 1);
    GPtrArray *laid = g_ptr_array_new();
    live_entries(entries, count, live);
    rank_order(entries, count, ranked);
    for (gsize i = 0; i < count; i++) {
        const Entry *entry = entries[ranked[i] - 1];
        if (live[ranked[i] - 1] && strcmp(entry->kind->name, "laid") == 0)
            g_ptr_array_add(laid, (gpointer)entry);
    }
    return laid;
}

// The soonest first; what may not be filled or run before a time runs until that has passed.
static GArray *clocks_of(const Running *running)
{
    g_autoptr(GPtrArray) laid = laid_entries(running->entries, running->count);
    for (guint i = 0; i < laid->len; i++)
        add_laid(running, laid, i);
    for (guint i = 0; running->assessment && i < running->assessment->requirements->len; i++)
        add_wait(running, running->assessment->requirements->pdata[i]);
    g_array_sort(running->clocks, by_time);
    return running->clocks;
}

static gboolean is_over(const Clock *clock, Moment now)
{
    return (clock->sort == CLOCK_NO_FLUID || clock->sort == CLOCK_NO_RUN) && clock->at <= now;
}

GArray *clocks_running(const Plan *plan, const Assessment *assessment, const Entry *const *entries,
                       gsize count, Moment now)
{
    const Running running = {plan, assessment, entries, count,
                             g_array_new(FALSE, FALSE, sizeof(Clock))};
    GArray *clocks = clocks_of(&running);
    for (guint i = clocks->len; i-- > 0;)
        if (is_over(&g_array_index(clocks, Clock, i), now))
            g_array_remove_index(clocks, i);
    return clocks;
}

gboolean clock_over(const Plan *plan, const Entry *const *entries, gsize count, Moment now,
                    Clock *clock)
{
    g_autoptr(GArray) clocks = g_array_new(FALSE, FALSE, sizeof(Clock));
    const Running running = {plan, NULL, entries, count, clocks};
    clocks_of(&running);
    for (guint i = clocks->len; i-- > 0;) {
        *clock = g_array_index(clocks, Clock, i);
        if (is_over(clock, now))
            return TRUE;
    }
    return FALSE;
}

Moment clock_latest(const Entry *const *entries, gsize count)
{
    Moment latest = 0;
    for (gsize i = 0; i < count; i++) {
        Moment at = 0;
        if (moment_parse(entries[i]->at, &at, NULL))
            latest = MAX(latest, at);
    }
    return latest;
}

const char *clock_words(const Clock *clock, Moment now)
{
    static const char *const words[] = {"FIT BEFORE", "no fluid before", "no run before",
                                        "wait until"};
    return clock->sort == CLOCK_FIT_BEFORE && now > clock->at ? "LATE" : words[clock->sort];
}

gboolean clock_forbids(const Plan *plan, const PlanStep *step, const Entry *const *entries,
                       gsize count, Moment now, Clock *clock)
{
    if (!step->begins)
        return FALSE;
    ClockSort sort = strcmp(step->begins, "run") == 0 ? CLOCK_NO_RUN : CLOCK_NO_FLUID;
    g_autoptr(GArray) clocks = g_array_new(FALSE, FALSE, sizeof(Clock));
    const Running running = {plan, NULL, entries, count, clocks};
    clocks_of(&running);
    for (guint i = clocks->len; i-- > 0;) {
        *clock = g_array_index(clocks, Clock, i);
        if (clock->sort == sort)
            return clock->at > now;
    }
    return FALSE;
}

// `11:48` today, `Fri 10:31` within a week, else `14 Mar`.
static char *when(Moment at, Moment now)
{
    static const gint64 DAY = 86400;
    static const char *const days[] = {"Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"};
    g_autofree char *text = moment_text(at);
    if (at / DAY == now / DAY)
        return g_strdup_printf("%.5s", text + 11);
    if (ABS(at - now) < 7 * DAY) // 1970-01-01 was a Thursday
        return g_strdup_printf("%s %.5s", days[(at / DAY) % 7], text + 11);
    return g_strdup_printf("%.10s", text);
}

Moment clock_minute(const Clock *clock)
{
    enum { MINUTE = 60 };
    Moment late = clock->sort == CLOCK_FIT_BEFORE ? clock->at : clock->at + MINUTE - 1;
    return late - late % MINUTE;
}

char *clock_until(const Clock *clock, Moment now)
{
    g_autofree char *at = when(clock_minute(clock), now);
    return g_strdup_printf("%s %s", clock_words(clock, now), at);
}
