// The digits by which the shop's tools are taken in hand: as they stand in the shop, so that one
// tool has one digit at every place that asks for its sort, whatever is fit there.
#pragma once
#include "toolbox.h"

#include <standbook/work/gauge_choice.h>

enum { TOOL_DIGITS = 9 };

// The labels (char *) by their digits, from 1 on: first all that serve the need, in the order in
// which the shop has them, a wrench with an adapter behind the wrenches alone; then what else is
// among the choices (NULL: none). Of more than nine those are left out that are the least fit. The
// caller frees with g_ptr_array_unref.
GPtrArray *tool_digits(Desk *desk, const ToolNeed *need,
                       const GaugeChoices *choices) G_GNUC_WARN_UNUSED_RESULT;
