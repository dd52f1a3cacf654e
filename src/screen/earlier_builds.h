// What the builds open at the desk have shown of a setting.
#pragma once
#include "desk.h"

#include <standbook/work/earlier.h>

// SettingLearned of the other places of the build where each is set by itself, then of the same
// setting in the other builds of the family, the newest first, at most EARLIER_MOST. The builds are
// opened for it. The caller frees with g_array_unref.
GArray *earlier_builds(Desk *desk, const Trials *trials) G_GNUC_WARN_UNUSED_RESULT;
