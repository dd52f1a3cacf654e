// From a page that tells of a place to the screen where work is done there.
#pragma once
#include "view.h"

#include <standbook/work/agenda.h>

// Whether work on that step was ever begun.
gboolean step_is_begun(const Agenda *agenda, const PlanStep *step);

// Whether something is to be read before that step is begun: what may hurt, or that a clock says not
// before.
gboolean step_is_cautioned(const Agenda *agenda, const PlanStep *step, Moment now);

// What that place of a build rests on, from where Enter goes on to it.
Go go_tell(const char *build, const Requirement *made);

// Over the view at hand, to where the place is asked for: its cautions where the step was never
// begun, else the page that closes the step for a signature, or the bench, and the step is picked
// up. GO_KEEP with a warning if that is not taken.
Go go_to_place(Desk *desk, const Agenda *agenda, const Requirement *made);
