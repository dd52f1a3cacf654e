// The shop: all builds, what each stands at, and what to go on with.
#include "clock_line.h"
#include "view.h"
#include "words.h"

#include <standbook/work/waits.h>
#include <string.h>

// Where the columns begin, and how many cells they have.
enum {
    ENGINE = 14,
    ENGINE_CELLS = 19,
    STANDS = 34,
    STANDS_CELLS = 26,
    WAITS = 61,
    WAITS_CELLS = 19
};

typedef struct {
    char *number;
    gboolean known; // the rest is filled in
    guint entries;  // so many the build had then
    char *engine;   // in words
    char *counts;   // `297 pass  1 conc.`
    Waits waits;
    GArray *dues; // Due; NULL if the build cannot be opened
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
    g_free(card->counts);
    waits_clear(&card->waits);
    g_clear_pointer(&card->dues, g_array_unref);
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

// What is told of the build as it stands now.
static void tell_card(Card *card, Session *session, Moment now)
{
    const GPtrArray *entries = session_entries(session);
    const Agenda agenda = {session_plan(session), session_assessment(session),
                           (const Entry *const *)entries->pdata, entries->len};
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    const Telling telling = {&agenda, taken, now};
    g_free(card->counts);
    waits_clear(&card->waits);
    g_clear_pointer(&card->dues, g_array_unref);
    card->entries = entries->len;
    card->counts = tally_words(agenda.assessment->counts);
    card->waits = waits_of(&telling);
    card->dues = dues_of_build(&telling);
}

static void fill_card(Card *card, Desk *desk)
{
    Session *session = desk_session(desk, card->number);
    g_autofree char *title = desk_title(desk, card->number);
    card->known = TRUE;
    gsize behind = strlen(card->number) + 1;
    g_auto(GStrv) parts = g_strsplit(strlen(title) > behind ? title + behind : "", "  ", 2);
    card->engine = g_strstrip(g_strdup(parts[0] ? parts[0] : "")); // without its serial
    if (session)
        tell_card(card, session, desk->now);
}

// What was entered since the cards were filled is told anew.
static void refresh(const Shelf *shelf, Desk *desk)
{
    for (guint i = 0; i < shelf->cards->len; i++) {
        Card *card = shelf->cards->pdata[i];
        Session *session = card->dues ? desk_session(desk, card->number) : NULL;
        if (session && session_entries(session)->len != card->entries)
            tell_card(card, session, desk->now);
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

static void put(Page *page, guint row, guint column, guint cells, const char *text)
{
    canvas_put(page->body, row, column, cells, style_of(0, 0), text ? text : "");
}

static void paint_cards(const Shelf *shelf, Page *page)
{
    static const Style head = {TYPE_UNDERLINE, ROLE_CALM}, plain = {0, 0};
    canvas_put(page->body, 0, 1, 0, head, "no");
    canvas_put(page->body, 0, 5, 0, head, "build");
    canvas_put(page->body, 0, ENGINE, 0, head, "engine");
    canvas_put(page->body, 0, STANDS, 0, head, "stands at");
    canvas_put(page->body, 0, WAITS, 0, head, "waits for");
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        guint row = 1 + 2 * i;
        g_autofree char *line = g_strdup_printf("%u", i + 1);
        canvas_put_right(page->body, row, 3, plain, line);
        put(page, row, 5, 8, card->number);
        put(page, row, ENGINE, ENGINE_CELLS, card->engine);
        put(page, row, STANDS, STANDS_CELLS, card->waits.stands);
        put(page, row, WAITS, WAITS_CELLS, card->waits.waits);
        put(page, row + 1, ENGINE, WAITS - ENGINE - 1, card->counts);
        put(page, row + 1, WAITS, WAITS_CELLS, card->waits.since);
    }
}

// The clocks of the builds that are known by now.
static guint paint_clocks(const Shelf *shelf, guint row, Desk *desk, Page *page)
{
    guint first = row;
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        Session *session = card->known ? desk_session(desk, card->number) : NULL;
        if (session)
            row = clocks_paint(page->body, row, session, card->number, desk->now);
    }
    if (row > first)
        put(page, first, 1, 0, "clocks");
    return row > first ? row + 1 : row;
}

static guint paint_dues(const GArray *dues, guint row, const char *number, Page *page)
{
    for (guint i = 0; i < dues->len; i++, row++) {
        const Due *due = &g_array_index(dues, Due, i);
        g_autofree char *what = g_strconcat(number, *number ? " " : "", due->what, NULL);
        put(page, row, ENGINE, ENGINE_CELLS, what);
        put(page, row, STANDS, STANDS_CELLS, due->why);
        put(page, row, WAITS, WAITS_CELLS, due->when);
    }
    return row;
}

// The ids of the tools that builds use which are not done at their last gate.
static void add_used(GHashTable *used, Session *session)
{
    const GPtrArray *gates = session_assessment(session)->gates;
    if (((const GateCount *)gates->pdata[gates->len - 1])->left == 0)
        return;
    const GPtrArray *entries = session_entries(session);
    for (guint i = 0; i < entries->len; i++) {
        const char *tool = entry_text(entries->pdata[i], "tool");
        if (tool)
            g_hash_table_add(used, (gpointer)tool);
    }
}

static void paint_due(const Shelf *shelf, guint row, Desk *desk, Page *page)
{
    guint first = row;
    g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
    for (guint i = 0; i < shelf->cards->len; i++) {
        const Card *card = shelf->cards->pdata[i];
        if (!card->dues)
            continue;
        row = paint_dues(card->dues, row, card->number, page);
        add_used(used, desk_session(desk, card->number));
    }
    g_autoptr(GArray) tools =
        desk->shop ? dues_of_tools(session_shop(desk->shop), used, desk->now) : NULL;
    if (tools)
        row = paint_dues(tools, row, "", page);
    if (row > first)
        put(page, first, 1, 0, "due");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Shelf *shelf = state;
    (void)typed;
    g_autofree char *day = day_words(desk->now);
    const char *name = desk->shop ? shop_name(session_shop(desk->shop)) : NULL;
    page_say(&page->status, "%s", name ? name : "standbook");
    page_say(&page->head, "The shop");
    page_say(&page->count, "%s", day);
    refresh(shelf, desk);
    paint_cards(shelf, page);
    paint_due(shelf, paint_clocks(shelf, 2 + 2 * shelf->cards->len, desk, page), desk, page);
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
