// The shop: all builds, what each stands at, and what to go on with.
#include "clock_line.h"
#include "view.h"
#include "words.h"

#include <string.h>

typedef struct {
    char *number;
    gboolean known;    // the rest is filled in
    guint entries;     // how many the build had then
    char *engine, *at; // in words
    char *counts;      // `297 pass  1 conc.`
} Card;

typedef struct {
    GPtrArray *cards; // Card *
    gboolean asked;   // who works here
} Shelf;

static void card_free(gpointer data)
{
    Card *card = data;
    g_free(card->number);
    g_free(card->engine);
    g_free(card->at);
    g_free(card->counts);
    g_free(card);
}

static void fill_shelf(Shelf *shelf, Desk *desk)
{
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    g_ptr_array_set_size(shelf->cards, 0);
    for (guint i = 0; i < numbers->len; i++) {
        Card *card = g_new0(Card, 1);
        card->number = g_strdup(numbers->pdata[i]);
        g_ptr_array_add(shelf->cards, card);
    }
}

static gpointer open(Desk *desk, const char *argument)
{
    Shelf *shelf = g_new0(Shelf, 1);
    (void)argument;
    shelf->cards = g_ptr_array_new_with_free_func(card_free);
    fill_shelf(shelf, desk);
    return shelf;
}

static void close(gpointer state)
{
    Shelf *shelf = state;
    g_ptr_array_unref(shelf->cards);
    g_free(shelf);
}

static void fill_card(Card *card, Desk *desk)
{
    Session *session = desk_session(desk, card->number);
    g_autofree char *title = desk_title(desk, card->number);
    card->known = TRUE;
    g_clear_pointer(&card->engine, g_free);
    g_clear_pointer(&card->at, g_free);
    g_clear_pointer(&card->counts, g_free);
    card->engine =
        g_strdup(strlen(title) > strlen(card->number) + 1 ? title + strlen(card->number) + 1 : "");
    if (!session)
        return;
    card->entries = session_entries(session)->len;
    const PlanStep *step = standing_of(session).step;
    card->at = step ? step_words(step) : g_strdup("");
    card->counts = tally_words(session_assessment(session)->counts);
}

// The cards of builds in which something was entered since they were filled.
static void refresh(Shelf *shelf, Desk *desk)
{
    for (guint i = 0; i < shelf->cards->len; i++) {
        Card *card = shelf->cards->pdata[i];
        Session *session = card->known ? desk_session(desk, card->number) : NULL;
        if (session && session_entries(session)->len != card->entries)
            fill_card(card, desk);
    }
}

static gboolean idle(gpointer state, Desk *desk)
{
    Shelf *shelf = state;
    for (guint i = 0; i < shelf->cards->len; i++) {
        Card *card = shelf->cards->pdata[i];
        if (card->known)
            continue;
        fill_card(card, desk);
        return TRUE;
    }
    return FALSE;
}

static void paint_cards(const Shelf *shelf, Page *page)
{
    static const Style head = {TYPE_UNDERLINE, ROLE_CALM}, plain = {0, 0};
    canvas_put(page->body, 0, 1, 0, head, "no");
    canvas_put(page->body, 0, 5, 0, head, "build");
    canvas_put(page->body, 0, 14, 0, head, "engine");
    canvas_put(page->body, 0, 45, 0, head, "stands at");
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        guint row = 1 + 2 * i;
        g_autofree char *line = g_strdup_printf("%u", i + 1);
        canvas_put_right(page->body, row, 3, plain, line);
        canvas_put(page->body, row, 5, 8, plain, card->number);
        canvas_put(page->body, row, 14, 30, plain, card->engine ? card->engine : "");
        canvas_put(page->body, row, 45, 0, plain, card->at ? card->at : "");
        canvas_put(page->body, row + 1, 14, 0, plain, card->counts ? card->counts : "");
    }
}

// The clocks of the builds that are known by now.
static void paint_clocks(const Shelf *shelf, Desk *desk, Page *page)
{
    guint row = 2 + 2 * shelf->cards->len;
    canvas_put(page->body, row - 1, 1, 0, style_of(0, 0), "");
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        Session *session = card->known ? desk_session(desk, card->number) : NULL;
        if (session)
            row = clocks_paint(page->body, row, session, card->number, desk->now);
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Shelf *shelf = state;
    (void)typed;
    refresh(shelf, desk);
    g_autofree char *day = day_words(desk->now);
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    page_say(&page->status, "%s", name ? name : "standbook");
    page_say(&page->head, "The shop");
    page_say(&page->count, "%s", day);
    paint_cards(shelf, page);
    paint_clocks(shelf, desk, page);
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    page_say(&page->next, "which build?");
    if (shelf->cards->len)
        page_say(&page->then, "its number in the list, then Enter");
    page_key(page, ACTION_TAKE, "number opens");
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_ON, "NEXT");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_HELP, NULL);
    page_key(page, ACTION_UP, NULL);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    (void)state;
    if (action != ACTION_ON)
        return go(GO_DEFAULT);
    if (!desk->number) {
        g_autofree char *latest = desk_latest(desk);
        desk_take_up(desk, latest);
    }
    return desk->number ? go_open(VIEW_STEPS, NULL) : go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const Shelf *shelf = state;
    guint64 line = g_ascii_strtoull(typed, NULL, 10);
    if (line < 1 || line > shelf->cards->len) {
        desk_warn(desk, "there is no line %s; the list has 1 to %u", typed, shelf->cards->len);
        return go(GO_KEEP);
    }
    const Card *card = shelf->cards->pdata[line - 1];
    desk_take_up(desk, card->number);
    return go_open(VIEW_STEPS, NULL);
}

// At the launch: who works here, and goes on where the newest entry was made.
static Go wants(gpointer state, Desk *desk)
{
    Shelf *shelf = state;
    g_autoptr(GPtrArray) people = desk_people(desk);
    if (shelf->asked || people->len == 0)
        return go(GO_STAY);
    shelf->asked = TRUE;
    if (desk->who) // just begun
        return desk->number ? go_open(VIEW_STEPS, NULL) : go(GO_STAY);
    if (!desk->number) {
        g_autofree char *latest = desk_latest(desk);
        desk_take_up(desk, latest);
    }
    return go_open(VIEW_WHO, g_strdup("launch"));
}

const ViewOps shop_view = {.name = "the shop",
                           .open = open,
                           .close = close,
                           .paint = paint,
                           .enter = enter,
                           .idle = idle,
                           .wants = wants,
                           .act = act};
