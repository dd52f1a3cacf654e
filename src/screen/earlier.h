// What earlier builds of the family have shown of a setting.
#pragma once
#include "desk.h"

#include <standbook/work/next_move.h>

// SettingLearned of the same setting in the other builds of the family, the newest first, few. The
// builds are opened for it. The caller frees with g_array_unref.
GArray *earlier_settings(Desk *desk, const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;
