// At the right of a wide screen: the bolt in hand, what it is pulled to, the newest entries.
#pragma once
#include "desk.h"
#include "page.h"
#include "tightening.h"

// `turn` NULL: none is in hand.
void tightening_beside(Desk *desk, const Tightening *tightening, const Turn *turn, Page *page);
