// From a page that tells of a place to the screen where work is done there.
#pragma once
#include "view.h"

#include <standbook/work/agenda.h>

// Whether work on that step was ever begun.
gboolean step_is_begun(const Agenda *agenda, const PlanStep *step);

// What that place of a build rests on, from where Enter goes on to it.
Go go_tell(const char *build, const Requirement *made);

// Over the view at hand, to where the place is asked for: its cautions where the step was never
// begun, else the page that closes the step for a signature, or the bench, and the step is picked
// up. GO_KEEP with a warning if that is not taken.
Go go_to_place(Desk *desk, const Agenda *agenda, const Requirement *made);
