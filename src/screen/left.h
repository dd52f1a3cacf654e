// How the work on a step was left, and by whom it was taken up.
#pragma once
#include "desk.h"

// The seq of the newest time that work on this step of the build in hand was put down, unless a
// bolt of this set was ticked or loosened since; 0 if there is none.
gint64 left_interrupted(Desk *desk, const char *step, const char *set);

// Whether the person who picked the step up last works at this terminal: of several terminals, one
// enters that a wait is over.
gboolean left_picked_up_here(Desk *desk, const char *step);
