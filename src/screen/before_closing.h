// What a step closes, told by itself before the work goes on there (work/closing.h).
#pragma once
#include "view.h"

// The list in place of the view at a place of the step, if it should not go on there without a
// reason; GO_STAY if it may. `made` NULL: no place.
Go go_before_closing(Desk *desk, const PlanStep *step, const Requirement *made);
// The place that such an argument names; AGENDA_NOWHERE where it names none, or none that is there.
guint place_before_closing(const Assessment *assessment, const char *argument);
