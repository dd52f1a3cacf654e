// How a tightening looks: its bolts where they sit, the far view, the questions. Pure.
#pragma once
#include "bolt_tool.h"
#include "page.h"
#include "tightening.h"

// The bolts of the stage in hand (`here` NULL: of the last), the figure for the wrench, the line of
// stages. `question`: nobody knows how the bolt in hand was left, and the figure is the bolt.
// Returns the row behind.
guint tightening_bolts(const Tightening *tightening, const Plan *plan, const Turn *here,
                       gboolean question, const BoltTool *tool, Page *page);
// The bolt in hand and its figure over the whole body.
void tightening_far(const Tightening *tightening, const Turn *here, const BoltTool *tool,
                    Page *page);
// Asks how the bolt in hand was left.
void tightening_question(const Tightening *tightening, const Turn *turn, Page *page);
// Asks whether the stage is begun again at `first`, or the bolt in hand loosened, or where one
// `fits`, a new one put in.
void tightening_ask_again(const Tightening *tightening, const Turn *first, const Turn *here,
                          gboolean fits, Page *page);
