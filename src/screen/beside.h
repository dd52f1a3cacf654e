// The right of a wide screen: what is told of one place or line; beside it, or below where there is
// no third column, the newest entries of a build.
#pragma once
#include "desk.h"
#include "page.h"

// What is told is painted on this, from its row 0 on; NULL where the page is not wide.
Canvas *beside_begin(const Page *page) G_GNUC_WARN_UNUSED_RESULT;
// Puts what was told, up to row `row`, on the page, and the entries of the build (NULL: none) as
// they are said at `now`.
void beside_end(Page *page, const Canvas *told, guint row, const Session *session, Moment now);
// The entries of the build in hand alone, under these words: where no one place is in hand.
void beside_entries(Desk *desk, const char *title, Page *page);
