// Why the last entry of this terminal is struck: one digit.
#include "view.h"

static const char *const causes[] = {NULL,      "misread", "wrong place",
                                     "slipped", "typo",    "part changed"};

// What the entry to be struck says, whatever was done since.
static char *entry_words(const Desk *desk)
{
    return desk->entered_seq == desk->last_seq
               ? g_strdup(desk->entered)
               : g_strdup_printf("entry #%" G_GINT64_FORMAT, desk->last_seq);
}

enum { ROOM = 46 }; // columns between `strike ` and the field

// The front of a text that is too long for so many columns.
static char *shortened(const char *text, glong room)
{
    if (g_utf8_strlen(text, -1) <= room)
        return g_strdup(text);
    g_autofree char *front = g_utf8_substring(text, 0, MAX(room - 1, 0));
    return g_strconcat(g_strchomp(front), "…", NULL);
}

// `top ring gap 3 · 3.6`: its place and what was entered; a long place gives way.
static char *short_words(const Desk *desk)
{
    g_autofree char *words = entry_words(desk);
    g_auto(GStrv) parts = g_strsplit(words, " · ", 3);
    g_autofree char *end = parts[0] && parts[1] ? g_strconcat(" · ", parts[1], NULL) : g_strdup("");
    g_autofree char *place =
        shortened(parts[0] ? parts[0] : "", MAX(ROOM - g_utf8_strlen(end, -1), ROOM / 2));
    g_autofree char *both = g_strconcat(place, end, NULL);
    return shortened(both, ROOM);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)state;
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "1 to 5");
    g_autofree char *words = short_words(desk);
    page_say(&page->next, "strike %s?", words);
    page_say(&page->then, "1 misread   2 wrong place   3 slipped   4 typo   5 part changed");
    memset(page->keys, 0, sizeof page->keys);
    page_key(page, ACTION_TAKE, NULL);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page_key(page, ACTION_UP, NULL);
    page->keys[1] =
        (PageKey){ACTION_UP, "Backspace", "leaves it as it is; 0 takes back the last strike"};
}

static Go strike(Desk *desk, guint digit)
{
    g_autofree char *line =
        g_strdup_printf("strike #%" G_GINT64_FORMAT " \"%s\"", desk->last_seq, causes[digit]);
    gint64 struck = desk->last_seq;
    g_autofree char *was = short_words(desk);
    if (!desk_line(desk, line, NULL))
        return go(GO_UP);
    desk_last(desk, "struck, %s: #%" G_GINT64_FORMAT " %s", causes[digit], struck, was);
    return go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    (void)state;
    if (digit >= 1 && digit < G_N_ELEMENTS(causes))
        return strike(desk, digit);
    if (digit != 0)
        return go(GO_STAY);
    g_autofree char *line =
        g_strdup_printf("strike #%" G_GINT64_FORMAT " \"stands after all\"", desk->last_seq);
    if (desk_line(desk, line, NULL))
        desk_last(desk, "the last strike is taken back");
    return go(GO_UP);
}

const ViewOps strike_view = {.name = "strike", .small = TRUE, .paint = paint, .digit = digit};
