// What find shows: the first place answers in full, below it the lines.
#pragma once
#include "find_list.h"
#include "page.h"

// The place that the words name best, with what is told of it. Returns the row behind; 0 where no
// place is named.
guint find_paint_answer(const FindList *list, const Desk *desk, Page *page);

// The lines, `chosen` in reverse (G_MAXUINT: none), with `seen` the last one that must be seen.
void find_paint_lines(const FindList *list, const Desk *desk, guint chosen, guint seen, Page *page,
                      guint row);

// At the right of a wide screen: what is known of a line.
void find_paint_detail(const FindList *list, const Desk *desk, guint line, Page *page);
