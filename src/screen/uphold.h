// A doubt that is argued away: what can be, and where it is asked why.
#pragma once
#include "view.h"

#include <standbook/judge/assess.h>

// Whether the doubt at a place can be upheld at all: not what a gauge cannot tell, nor a spent
// bolt.
gboolean uphold_can(const Requirement *made);

// The doubt of a step (NULL: none) that is meant by whoever upholds one: that of the place in hand
// (NULL: none is), else the first that can be upheld; NULL if none can.
const Requirement *uphold_meant(Desk *desk, const PlanStep *step, const Requirement *made);

// To the page that asks why a doubt does not count: that of the place in hand (NULL: none is), else
// the first of the step. Where nothing can be upheld a warning says why and it stays.
Go uphold_ask(Desk *desk, const PlanStep *step, const Requirement *made);

// How many stand in a doubt that can be upheld: at that place, of a bolt one a stage, or at all of
// the same name in that step (`whole`).
guint uphold_count(const Assessment *assessment, const Requirement *made, gboolean whole);
// What would be argued away there, or at all of those (`whole`): `tool, order`. The caller frees.
char *uphold_doubts(const Assessment *assessment, const Requirement *made, gboolean whole);
