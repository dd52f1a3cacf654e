// Clocks: a sealant's windows and any other wait. Times are minutes, exact, between entries of one
// ledger; nothing here asks what time it is.
#pragma once
#include <glib.h>
#include <gmp.h>
#include <standbook/base/moment.h>

typedef enum {
    WINDOW_OK,
    WINDOW_LATE,      // done after the time allowed
    WINDOW_EARLY,     // done before the wait was over
    WINDOW_WENT_BACK, // the clock went back between the two: nobody can tell
} WindowAnswer;

// Words for an answer: "in time", "late", "early", "the clock went back". Never NULL.
const char *window_words(WindowAnswer answer);

// Sets `minutes` (initialised) to the time from the first moment to the last. `moments` are those
// of the entries from the one that starts the clock to the one asked about, in rank order, at
// least one. FALSE when one of them lies before the one above it: the clock went back on the way,
// and `minutes` is then negative even if the last lies after the first.
gboolean window_elapsed(const Moment *moments, gsize count, mpq_ptr minutes);

// Done within the time allowed, the last instant included (`fit within`).
WindowAnswer window_within(mpq_srcptr elapsed, mpq_srcptr allowed);

// Done after the wait, its last instant included (`fluid after`, `run after`, `wait`).
WindowAnswer window_after(mpq_srcptr elapsed, mpq_srcptr wait);

// The three clocks of a consumable, all counted from laying it, in minutes; NULL where there is
// none. (Common practice, no published source; the maker's sheet gives the times.)
typedef struct {
    mpq_srcptr fit_within, fluid_after, run_after;
} ConsumableClocks;

// Where a consumable stands, in the order in which its clocks run.
typedef enum {
    CONSUMABLE_FIT_BEFORE,      // laid; parts must come together in time
    CONSUMABLE_LATE,            // not fitted in time: strip, clean, start again
    CONSUMABLE_NO_FLUID_BEFORE, // fitted; no fluid yet, and no running
    CONSUMABLE_NO_RUN_BEFORE,   // fluid may come, running not yet
    CONSUMABLE_CURED,           // no clock runs any more
    CONSUMABLE_WENT_BACK,       // elapsed is negative: the clock went back
} ConsumableState;

// Words as a screen shows them: "FIT BEFORE", "LATE", "no fluid before", … Never NULL.
const char *consumable_words(ConsumableState state);

// `elapsed` since laying; `fitted` whether the group it was laid for has been tightened in time (a
// group tightened too late is the caller's to keep apart: its answer is window_within's). Without
// `fit within`, what is not fitted waits as if it were.
ConsumableState consumable_state(const ConsumableClocks *clocks, mpq_srcptr elapsed,
                                 gboolean fitted);

// The clock that runs in this state (a member of `clocks`), or NULL when none does; LATE gives the
// one that was missed.
mpq_srcptr consumable_clock(const ConsumableClocks *clocks, ConsumableState state);
