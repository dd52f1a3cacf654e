// What the page of tools says of those that were found wrong.
#pragma once
#include "desk.h"

// A line for each of the labels (char *; of a wrench with its adapter) that was found wrong and not
// put right since: ` W2 was found wrong on 11 Mar (KF-118): 28 in doubt; Backspace, f, W2: where`.
// It counts the readings, and each bolt at each stage, of the build in hand. "" for none. The
// caller frees with g_free.
char *tool_wrong_lines(Desk *desk, const GPtrArray *labels) G_GNUC_WARN_UNUSED_RESULT;
