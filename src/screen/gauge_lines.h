// What each gauge of the shop can tell at a place, in lines.
#pragma once
#include <standbook/work/gauge_choice.h>

// What the value read needs, if one is in doubt, then a line for each gauge with the digit that
// takes it in hand, its place in `labels` (char *): `   1   G06   caliper 150   ±.3   settles it`.
// The caller frees with g_free.
char *gauge_lines(const GaugeChoices *choices, const GPtrArray *labels) G_GNUC_WARN_UNUSED_RESULT;
