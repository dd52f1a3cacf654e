// The clock of the build in hand that counts, for the status row, and the words of any.
#pragma once
#include "desk.h"

#include <standbook/work/clocks.h>

// `sump FIT BEFORE 11:48, 6 min`; NULL if none runs. Of several the one by which the step in hand
// (NULL: none) is too soon, else what is to be fitted in time, else that of the bolts of the step,
// else the soonest. The caller frees with g_free.
char *clock_line(Desk *desk, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;
// The same of the soonest clock of all builds that are open by now, behind the number of its build:
// `B-2: sump FIT BEFORE 11:48, 6 min`.
char *clock_line_of_all(const Desk *desk);

// The clocks of a build that still matter (Clock), the soonest first. The caller frees with
// g_array_unref.
GArray *clocks_of(Session *session, Moment now) G_GNUC_WARN_UNUSED_RESULT;
// `6 min left`, `2 h late`. The caller frees with g_free.
char *clock_left(const Clock *clock, Moment now) G_GNUC_WARN_UNUSED_RESULT;
