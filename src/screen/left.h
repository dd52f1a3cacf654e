// How the work on a step was left, and by whom it was taken up.
#pragma once
#include "desk.h"
#include "tightening.h"

// The seq of the newest time that work on this step of the build in hand was put down, unless a
// bolt of this set was ticked or loosened since; 0 if there is none. Work that broke off without a
// word (the plug was pulled, the window closed) and was picked up here again: that of the last
// bolt, unless another did it who has the step in hand at a program that is still running.
gint64 left_interrupted(Desk *desk, const char *step, const char *set);
// Whether that was a putting down.
gboolean left_put_down(Desk *desk, gint64 seq);

// Whether the person who picked the step up last works at this terminal: of several terminals, one
// enters that a wait is over.
gboolean left_picked_up_here(Desk *desk, const char *step);

// How the bolt in hand was found, 1 done, 2 not begun, 3 nobody can tell: stands in the record, in
// front of what is done about it: nobody who answers saw it tightened. FALSE with a warning if that
// is refused.
gboolean left_note(Desk *desk, const Tightening *tightening, const Turn *turn, guint digit);
