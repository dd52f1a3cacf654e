// What can be said about the next move of a setting. Pure.
#pragma once
#include <standbook/work/trials.h>

typedef struct {
    char *figure;         // how far to move, to be read from the stand: `1/20`; NULL: no advice
    GPtrArray *beside;    // char *: what stands beside the figure, a line each
    GPtrArray *sentences; // char *: what the trials say, a line each
} Advice;

// The advice after those trials, which must be judged (trials_judge). How far to move is not worked
// out yet: there is no figure, and the sentences say what plain arithmetic has out of the readings.
// The caller clears it with advice_clear.
Advice advice_of(const Trials *trials);
void advice_clear(Advice *advice);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Advice, advice_clear)

// `▼ FAIL at 3: 0.07, 0.01 under`, `√ pass: 0.10 to 0.16`, `2 of 4 read`: how a trial came out. The
// caller frees with g_free.
char *trial_outcome(const Trials *trials, const Trial *trial) G_GNUC_WARN_UNUSED_RESULT;
