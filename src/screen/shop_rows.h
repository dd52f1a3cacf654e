// The lists of the shop: its builds, the clocks that run in them, what falls due, and what is told
// of one of them at the right of a wide screen.
#pragma once
#include "clock_line.h"
#include "page.h"
#include "shop_card.h"

// The column heads, and the builds (Card) from that one on which have room in so many rows, at
// least one; `next` (NULL: none) is the one NEXT speaks of, by its mark. Returns how many; the row
// behind is put in `*row`.
guint shop_cards(const GPtrArray *cards, guint from, guint room, const Card *next, Canvas *body,
                 guint *row);
typedef struct {
    const char *number; // of its build
    Clock clock;
} ShopClock;

// The clocks (ShopClock), sorted there: the soonest first, whose build it may be. Returns the row
// behind.
guint shop_clocks(GArray *clocks, guint row, Moment now, Canvas *body);
// What falls due: of the builds, and of the tools that builds use which are not done.
void shop_dues(const GPtrArray *cards, guint row, Desk *desk, Canvas *body);
// One build at the right of a wide screen.
void shop_detail(const Card *card, Desk *desk, Page *page);
