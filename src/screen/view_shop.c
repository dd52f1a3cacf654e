// The shop: all builds, what each stands at, and what to go on with.
#include "people.h"
#include "shop_rows.h"
#include "view.h"
#include "words.h"

#include <string.h>

enum { REST_COLUMN = 14 }; // under the engines

typedef struct {
    GPtrArray *cards; // Card *
    gint64 seen;      // the shop's last entry when they were listed
    char *latest;     // the build with the newest entry, NULL for none
    gboolean asked;   // who works here
    // Where not all has room: the first build seen, the one behind those seen, and whether clocks
    // and what is due go on after the builds.
    guint from, behind;
    gboolean cut;
} Shelf;

// A build is never taken away: those that are new come in between.
static void fill_shelf(Shelf *shelf, Desk *desk)
{
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    shelf->seen = desk->shop ? shop_last(session_shop(desk->shop)) : 0;
    for (guint i = 0; i < numbers->len; i++) {
        const Card *card = i < shelf->cards->len ? shelf->cards->pdata[i] : NULL;
        if (!card || strcmp(card->number, numbers->pdata[i]) != 0)
            g_ptr_array_insert(shelf->cards, (gint)i, card_new(numbers->pdata[i]));
    }
    g_ptr_array_set_size(shelf->cards, (gint)numbers->len); // of one that changed places
}

static gpointer open(Desk *desk, const char *argument)
{
    Shelf *shelf = g_new0(Shelf, 1);
    (void)argument;
    shelf->cards = g_ptr_array_new_with_free_func(card_free);
    shelf->latest = desk_latest(desk);
    fill_shelf(shelf, desk);
    return shelf;
}

static void close(gpointer state)
{
    Shelf *shelf = state;
    g_ptr_array_unref(shelf->cards);
    g_free(shelf->latest);
    g_free(shelf);
}

static gboolean idle(gpointer state, Desk *desk)
{
    Shelf *shelf = state;
    for (guint i = 0; i < shelf->cards->len; i++) {
        Card *card = shelf->cards->pdata[i];
        if (card->known)
            continue;
        card_fill(card, desk);
        return TRUE;
    }
    return FALSE;
}

static const Card *card_of(const Shelf *shelf, const char *number)
{
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        if (g_strcmp0(card->number, number) == 0)
            return card;
    }
    return NULL;
}

// The line of that number in the list; NULL if there is none.
static const Card *line_of(const Shelf *shelf, const char *typed)
{
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    return line < 1 || line > shelf->cards->len ? NULL : shelf->cards->pdata[line - 1];
}

// The build that NEXT goes on with.
static const char *next_number(const Shelf *shelf, const Desk *desk)
{
    return desk->number ? desk->number : shelf->latest;
}

// Those of the builds that are known by now (ShopClock).
static GArray *clocks_of_known(const Shelf *shelf, Desk *desk)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(ShopClock));
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        Session *session = card->known ? desk_session(desk, card->number) : NULL;
        g_autoptr(GArray) clocks = session ? clocks_of(session, desk->now) : NULL;
        for (guint j = 0; clocks && j < clocks->len; j++) {
            ShopClock one = {card->number, g_array_index(clocks, Clock, j)};
            g_array_append_val(all, one);
        }
    }
    return all;
}

static void say_next(const Card *next, Page *page)
{
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which build?");
    if (next)
        page_say(&page->next, "%s%s%s", next->number, next->next ? " · " : "",
                 next->next ? next->next : "");
    if (next && next->progress)
        page_say(&page->then, "%s", next->progress);
}

static void say_rest(guint count, const char *what, const char *where, guint row, Canvas *body)
{
    g_autofree char *words =
        g_strdup_printf("%u more %s%s%s: 0 Enter", count, what, count == 1 ? "" : "s", where);
    canvas_put(body, row, REST_COLUMN, 0, style_of(TYPE_PLAIN, 0), words);
}

// Clocks, and what falls due.
static Canvas *paint_below(const Shelf *shelf, Desk *desk, gboolean ascii)
{
    Canvas *below = canvas_new_growing(PAGE_WIDTH, ascii);
    g_autoptr(GArray) clocks = clocks_of_known(shelf, desk);
    guint row = shop_clocks(clocks, 0, desk->now, below);
    shop_dues(shelf->cards, row, desk, below);
    return below;
}

// Puts it from that row on as far as there is room, and else how many lines follow.
static void put_below(const Canvas *below, guint row, guint rows, Canvas *body)
{
    guint most = row + below->height > rows ? rows - row - 1 : below->height;
    canvas_copy(body, row, 0, below, 0, most);
    if (most < below->height)
        say_rest(below->height - most, "line", ", behind the builds", row + most, body);
}

// A part of the builds over the first of the clocks and of what is due; behind the last build all
// of these.
static void paint_part(Shelf *shelf, const Canvas *below, const Card *next, Page *page)
{
    enum { BELOW_PART = 3 }; // of the rows, for clocks and what is due
    const guint rows = page_rows(page), count = shelf->cards->len;
    guint kept = below->height ? MIN(below->height, rows / BELOW_PART) + 1 : 0, row;
    shelf->from = MIN(shelf->from, count);
    shelf->cut = kept < below->height;
    if (shelf->from == count) {
        shelf->behind = 0;
        put_below(below, 0, rows, page->body);
        return;
    }
    shelf->behind = shelf->from +
                    shop_cards(shelf->cards, shelf->from, rows - kept - 1, next, page->body, &row);
    if (shelf->behind < count)
        say_rest(count - shelf->behind, "build", "", row, page->body);
    if (kept)
        put_below(below, rows - kept + 1, rows, page->body);
}

static void paint_lists(Shelf *shelf, Desk *desk, const Card *next, Page *page)
{
    g_autoptr(Canvas) below = paint_below(shelf, desk, page->body->ascii);
    g_autoptr(Canvas) all = canvas_new_growing(PAGE_WIDTH, page->body->ascii);
    guint row;
    shelf->behind = shop_cards(shelf->cards, 0, G_MAXUINT, next, all, &row);
    canvas_copy(all, row + 1, 0, below, 0, below->height);
    if (all->height > page_rows(page)) {
        paint_part(shelf, below, next, page);
        return;
    }
    shelf->from = 0;
    canvas_copy(page->body, 0, 0, all, 0, all->height);
}

// More of it; behind its end the beginning again.
static Go turn(Shelf *shelf)
{
    guint count = shelf->cards->len;
    gboolean is_last = shelf->behind == count;
    shelf->from = !is_last ? shelf->behind : shelf->cut && shelf->from < count ? count : 0;
    return go(GO_STAY);
}

static void paint_keys(Page *page)
{
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "opens"};
    page_key(page, ACTION_ADD, "add an engine");
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_ON, "NEXT");
    page_key(page, ACTION_HELP, NULL);
    page_key(page, ACTION_UP, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Shelf *shelf = state;
    g_autofree char *day = day_words(desk->now);
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    page_say(&page->status, "%s", name ? name : "standbook");
    page_say(&page->head, "The shop");
    page_say(&page->count, "%s", day);
    // As long as a number is typed it means the line that stood there when it was begun.
    if (!*typed && desk->shop && shelf->seen != shop_last(session_shop(desk->shop)))
        fill_shelf(shelf, desk);
    for (guint i = 0; i < shelf->cards->len; i++)
        card_refresh(shelf->cards->pdata[i], desk);
    const Card *next = card_of(shelf, next_number(shelf, desk)), *line = line_of(shelf, typed);
    paint_lists(shelf, desk, next, page);
    say_next(next, page);
    paint_keys(page);
    if (line || next)
        shop_detail(line ? line : next, desk, page);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    if (action == ACTION_ADD && desk->shop)
        return go_open(VIEW_FIRST, NULL);
    if (action != ACTION_ON)
        return go(GO_DEFAULT);
    if (!desk->number)
        desk_take_up(desk, next_number(state, desk));
    return desk->number ? go_open(VIEW_STEPS, NULL) : go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Shelf *shelf = state;
    if (strcmp(typed, "0") == 0)
        return turn(shelf);
    const Card *card = line_of(shelf, typed);
    if (!card) {
        desk_warn(desk, "there is no line %s; the list has 1 to %u", typed, shelf->cards->len);
        return go(GO_KEEP);
    }
    desk_take_up(desk, card->number);
    return go_open(VIEW_STEPS, NULL);
}

// At the launch: who works here, and goes on where the newest entry was made.
static Go wants(gpointer state, Desk *desk)
{
    Shelf *shelf = state;
    g_autoptr(GPtrArray) people = people_listed(desk);
    if (shelf->asked || people->len == 0)
        return go(GO_STAY);
    shelf->asked = TRUE;
    if (desk->who) // just begun
        return desk->number ? go_open(VIEW_STEPS, NULL) : go(GO_STAY);
    if (!desk->number)
        desk_take_up(desk, next_number(shelf, desk));
    return go_open(VIEW_WHO, g_strdup("launch"));
}

const ViewOps shop_view = {.name = "the shop",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .idle = idle,
                           .wants = wants,
                           .act = act,
                           .acts = {ACTION_ON, ACTION_ADD}};
