// The tries of a setting and the advice on them, as they stand at the desk.
#pragma once
#include "desk.h"

#include <standbook/work/next_move.h>

typedef struct {
    char *check, *step;
    guint place;    // where each place is set by itself: which of the check's
    Trials *trials; // as of so many entries; NULL before the first
    guint seen;
    NextMove advised; // by those
    GArray *earlier;  // SettingLearned: of the same setting in earlier builds of the family
} SettingTries;

// Fills in which setting it is by the lines that a screen was opened with: check, step, place.
// Returns what stands in the line behind them; NULL if there is none.
const char *setting_tries_open(SettingTries *tries, const char *argument);
// Those lines: the caller frees with g_free. `behind` is NULL for none.
char *setting_tries_argument(const char *check, const char *step, guint place,
                             const char *behind) G_GNUC_WARN_UNUSED_RESULT;
void setting_tries_clear(SettingTries *tries);

// The trials as they stand, judged, and the advice on them in `advised`; NULL if the plan has no
// such setting. Worked out anew only if something was entered.
const Trials *setting_tries_now(SettingTries *tries, Desk *desk);
