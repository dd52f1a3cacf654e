// What find shows: the first place answers in full, below it the lines.
#pragma once
#include "find_list.h"
#include "list_part.h"
#include "page.h"

// The place that the words name best, with what is told of it. Returns the row behind; 0 where no
// place is named.
guint find_paint_answer(const FindList *list, const Desk *desk, Page *page);

// The lines from that row on, as many as there is room for; the one chosen in reverse if `chosen`.
// The remark is already said.
void find_paint_lines(const FindList *list, const Desk *desk, ListPart *part, gboolean chosen,
                      Page *page, guint row);

// At the right of a wide screen: what is known of a line.
void find_paint_detail(const FindList *list, const Desk *desk, guint line, Page *page);
