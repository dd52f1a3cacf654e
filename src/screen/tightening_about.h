// What stands about a tightening beside its bolts: its wait, and when work was put down.
#pragma once
#include "bolt_tool.h"
#include "desk.h"
#include "page.h"
#include "tightening.h"

// When the wait of a turn is over; 0 if that turn is no wait that runs.
Moment tightening_wait_over(Desk *desk, const Turn *turn);
// The wait that runs, and when it is over; NULL if none does.
const Turn *tightening_wait(Desk *desk, const Tightening *tightening, Moment *over);
// `until 10:09`. The caller frees with g_free.
char *until_words(Moment over) G_GNUC_WARN_UNUSED_RESULT;

// Over the figure of the question: `bolt 6 was in hand when work was put down, 15:08`. `seq` is of
// the entry that put it down.
void tightening_left(Desk *desk, gint64 seq, const char *bolt, Page *page);
// Below the stages, from a row on: the wrench, if there is one; what the plan notes; that work was
// put down (`seq` 0: it was not) in front of the turn in hand, and how to begin again.
void tightening_about(Desk *desk, const Tightening *tightening, guint here, gint64 seq,
                      const BoltTool *tool, guint row, Page *page);
