// The tries of a setting and the advice on them, as they stand at the desk.
#pragma once
#include "desk.h"

#include <standbook/work/next_move.h>

typedef struct {
    char *check, *step;
    Trials *trials; // as of so many entries; NULL before the first
    guint seen;
    NextMove advised; // by those
    GArray *earlier;  // SettingLearned: of the same setting in earlier builds of the family
} SettingTries;

void setting_tries_clear(SettingTries *tries);

// The trials as they stand, judged, and the advice on them in `advised`; NULL if the plan has no
// such setting. Worked out anew only if something was entered.
const Trials *setting_tries_now(SettingTries *tries, Desk *desk);
