// A number read with no gauge in hand, where one was to be expected.
#pragma once
#include "bench_field.h"

// `no gauge: by its digits, ±.001; Enter again keeps it; erased, g names one`: what is asked of the
// first number of a check that is typed without a gauge, where the plan asks for a sort that the
// shop has or had, or where the check was read with one before. `made` is the place as the number
// would leave it. NULL where nothing is to be asked: also after `no gauge` was said. The caller
// frees with g_free.
char *no_gauge_words(const Desk *desk, const Agenda *agenda, const Requirement *made,
                     const char *gauge) G_GNUC_WARN_UNUSED_RESULT;
