// The clocks that run on a build: sealants to be fitted before they skin, what may not be filled or
// started yet, waits between stages. Pure: the moment is handed in.
#pragma once
#include <standbook/base/moment.h>
#include <standbook/judge/assess.h>

typedef enum {
    CLOCK_FIT_BEFORE, // LATE once it is past
    CLOCK_NO_FLUID,   // gone once it is past
    CLOCK_NO_RUN,     // likewise
    CLOCK_WAIT,       // done once it is past
} ClockSort;

typedef struct {
    ClockSort sort;
    const char *subject; // the bolt set or part; belongs to the entries
    const char *what;    // the consumable, or NULL for a wait; belongs to the entries
    Moment at;           // when it ends
} Clock;

// The clocks that still matter at `now` (Clock), the soonest first: of what was laid last on a bolt
// set or part and is live, `fit within` until every bolt of that set is through its first stage,
// `fluid after` and `run after` of the newest laying of each consumable there until they have
// passed; of each stage that is a wait, from the last tick of the stage in front of it until it is
// entered as waited. `assessment` is of these entries and this plan. The caller frees with
// g_array_unref.
GArray *clocks_running(const Plan *plan, const Assessment *assessment, const Entry *const *entries,
                       gsize count, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// Of what may not be filled or started before a time the clock that ran out last, by `now`; FALSE
// if there was none.
gboolean clock_over(const Plan *plan, const Entry *const *entries, gsize count, Moment now,
                    Clock *clock);

// When the wait of a stage is over that runs now: all bolts of the stage in front of it are
// through. 0 if it does not run, or was entered as waited. `wait` is of that assessment.
Moment clock_wait_over(const Assessment *assessment, const Entry *const *entries, gsize count,
                       const Requirement *wait);

// When the entry was typed that has the latest time of all, whatever its turn; 0 for none. A clock
// that says less has gone back.
Moment clock_latest(const Entry *const *entries, gsize count);

// `FIT BEFORE`, `LATE`, `no fluid before`, `no run before`, `wait until`. Static.
const char *clock_words(const Clock *clock, Moment now);

// The whole minute that is told for it: of what must not come too soon the next, of what must not
// come too late the one before.
Moment clock_minute(const Clock *clock);

// `no fluid before 13:30`, `FIT BEFORE 11:48`; of another day `Fri 10:31`, beyond a week the date.
// The caller frees with g_free.
char *clock_until(const Clock *clock, Moment now) G_GNUC_WARN_UNUSED_RESULT;

// The clock by which that step, which fills a fluid or runs the engine (begins), is too soon at
// `now`: of several the one that ends last. FALSE if it may begin.
gboolean clock_forbids(const Plan *plan, const PlanStep *step, const Entry *const *entries,
                       gsize count, Moment now, Clock *clock);
