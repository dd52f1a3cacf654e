// How a tightening looks: its bolts where they sit, the far view, the question after an angle
// stage. Pure.
#pragma once
#include "page.h"
#include "tightening.h"

// The bolts of the stage in hand (`here` NULL: of the last), the figure for the wrench (`tool` may
// be NULL), the line of stages. `question`: nobody knows how the bolt in hand was left. Returns the
// row behind.
guint tightening_bolts(const Tightening *tightening, const Turn *here, gboolean question,
                       const char *tool, Page *page);
// The bolt in hand and its figure over the whole body. `tool` may be NULL.
void tightening_far(const Tightening *tightening, const Turn *here, const char *tool, Page *page);
// Asks how the bolt in hand was left.
void tightening_question(const Tightening *tightening, const Turn *turn, Page *page);
