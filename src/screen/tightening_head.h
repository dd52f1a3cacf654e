// The head of the page of bolts, its keys, and who tightened which.
#pragma once
#include "bolt_tool.h"
#include "page.h"

// `S31  flywheel bolts, 6 × M10 × 1.0, one-time`; at the right who else is here, and the stage:
// that of the turn in hand, the last one where all are done (`turn` NULL).
void tightening_head(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page);
// The keys of the page with that wrench.
void tightening_keys(const Desk *desk, const BoltTool *tool, Page *page);
// Says which bolts another person tightened.
void tightening_name_others(Desk *desk, Tightening *tightening);
