// What can be said about the next move of a setting. Pure.
#pragma once
#include <standbook/work/next_move.h>

typedef struct {
    char *figure;         // how far to move, to be read from the stand: `1/20`; NULL: no advice
    GPtrArray *beside;    // char *: what stands beside the figure, a line each
    GPtrArray *sentences; // char *: what the trials say, a line each
} Advice;

// The advice after those trials, which must be judged (trials_judge): first the next move, what to
// expect of it and what contradicts, then what plain arithmetic has out of the readings. `next` may
// be NULL: then there is only that. `asked` is what is asked now: once it is being tightened, no
// move is advised any more; NULL: nobody is asked. The caller clears it with advice_clear.
Advice advice_of(const Trials *trials, const NextMove *next, const TrialNext *asked);
void advice_clear(Advice *advice);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Advice, advice_clear)

// ` at the smallest`, ` at the greatest`: of several places, the one that is aimed with; "" of one.
const char *advice_where(const Trials *trials, gboolean loosest);
// `The aim is 0.10 at the smallest.`; NULL where there is none, or one for each place. The caller
// frees with g_free.
char *advice_aim(const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;

// `In stock: 1.05, 1.10, 1.18 mm; 1.10 stands in.` Of many sizes those about the one advised, else
// about the one that stands in; NULL where the plan names no stock. `next` may be NULL. The caller
// frees with g_free.
char *advice_stock(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;

// The figure, what stands beside it and the sentences of the next move, put behind those there are.
void next_move_say(const Trials *trials, const NextMove *next, const TrialNext *asked,
                   Advice *advice);
// `turn out 1/20`, `put in the shim of 2.45 mm`: the next move. The caller frees with g_free.
char *next_move_words(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
// `2 earlier builds of the family`: what the advice began with. The caller frees with g_free.
char *next_move_earlier(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
// A value in base units as the gauge shows it, rounded to its graduation; as words, and itself
// (NULL for what is none). The caller frees.
char *next_move_reading(const Trials *trials, const NextMove *next,
                        double value) G_GNUC_WARN_UNUSED_RESULT;
Number *next_move_shown(const NextMove *next, double value) G_GNUC_WARN_UNUSED_RESULT;
// How far to move, below 0 the other way, and where that leads, base units: exact where the plan
// gives steps or a stock, else as far as it is said. The caller frees.
Number *next_move_by(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
Number *next_move_position(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
// Where the move leads: `0.13`. The caller frees with g_free.
char *next_move_to(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;
// `1/20`: how far; of a stock, which one. The caller frees with g_free.
char *next_move_size(const Trials *trials, const NextMove *next) G_GNUC_WARN_UNUSED_RESULT;

// `▼ FAIL at 3: 0.07, 0.01 under`, `√ pass: 0.10 to 0.16`, `2 of 4 read`: how a trial came out. The
// caller frees with g_free.
char *trial_outcome(const Trials *trials, const Trial *trial) G_GNUC_WARN_UNUSED_RESULT;
