// A bolt that comes out for good: the new one that is fitted in its place.
#pragma once
#include "tightening.h"
#include "view.h"

// Where the plan asks in the same step for a new bolt at that of a turn; NULL where it does not.
const Requirement *new_bolt_fit(Desk *desk, const Turn *turn);
// To the bench, where the new bolt is entered with its lot; that takes the old one out. `over`: the
// bolts were opened over a setting, to which the bench leads again.
Go new_bolt_go(const Requirement *fit, gboolean over);
// Once, as long as nothing more is entered: to the bench, if the bolt of a turn is used up. GO_STAY
// if it is not.
Go new_bolt_ask(Desk *desk, const Turn *turn, gboolean over);
