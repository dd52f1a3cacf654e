// A bolt that comes out for good: the new one that is fitted in its place.
#pragma once
#include "tightening.h"
#include "view.h"

// Where the plan asks in the same step for a new bolt at that of a turn; NULL where it does not.
const Requirement *new_bolt_fit(Desk *desk, const Turn *turn);
// Whether the bolt of a turn was loosened by the newest entry, and a new one may go in there.
gboolean new_bolt_loosened(Desk *desk, const Turn *turn);
// To the bench, where the new bolt is entered with its lot; that takes the old one out. `over`: the
// bolts were opened over a setting, to which the bench leads again.
Go new_bolt_go(const Requirement *fit, gboolean over);
// Once, as long as nothing more is entered: to the bench, if the bolt of a turn is used up, or one
// of its set was replaced just now and another is in doubt. GO_STAY if neither is.
Go new_bolt_ask(Desk *desk, const Turn *turn, gboolean over);
