// Which bolts of one stage were tightened out of turn.
#pragma once
#include <glib.h>

// `asked` names every bolt once, in the order asked for (any numbers will do as names). `ticked`
// names the bolts whose last live tick of the stage is there, in rank order, each once; bolts still
// open are simply not in it. Sets in_doubt[i] (room for `ticked_count`) to whether ticked[i] lies
// outside the longest run of ticks that keeps the asked order: exactly the skipped, early or
// swapped bolt, and not all that follow it. A bolt that nobody asked for is always in doubt.
//
// Of several longest runs the one whose bolts come first in the asked order counts (compared turn
// by turn). So of two neighbours swapped it is the early one that is in doubt: it was tightened
// while the bolt before it was still loose, the other had all it needs.
//
// Rule of the trade: common practice, no published source. Takes time in ticked_count² and
// ticked_count · asked_count.
void order_mark(const guint *asked, gsize asked_count, const guint *ticked, gsize ticked_count,
                gboolean *in_doubt);
