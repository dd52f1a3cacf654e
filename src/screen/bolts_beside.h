// Where one goes from the bolts of a set.
#pragma once
#include "tightening.h"
#include "view.h"

// To the place of the step in front of the bolts (-1) or behind them (1), from the turn in hand;
// behind the last to the close of the step. In front of the first it stays.
Go bolts_leave(Desk *desk, const Turn *turn, gint direction);
