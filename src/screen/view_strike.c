// Why an entry is struck: one digit. The last one of who works here, or the one that is said.
#include "struck.h"
#include "view.h"
#include "words.h"

static const char *const causes[] = {NULL,      "misread", "wrong place",
                                     "slipped", "typo",    "part changed"};

enum { DIGIT_UNPLACED = G_N_ELEMENTS(causes) }; // behind the causes

// The state is the number of the entry, 0 for none.
static gint64 seq_of(gconstpointer state)
{
    return *(const gint64 *)state;
}

static gpointer open(Desk *desk, const char *argument)
{
    gint64 *seq = g_new(gint64, 1);
    *seq = argument ? g_ascii_strtoll(argument, NULL, 10) : struck_next(desk);
    return seq;
}

enum { ROOM = 46 }; // columns between `strike ` and the field

// `top ring gap 3 · 3.6`: its place and what was entered; a long place gives way.
static char *short_words(Desk *desk, gint64 seq)
{
    g_autofree char *words = struck_words(desk, seq);
    g_auto(GStrv) parts = g_strsplit(words, " · ", 3);
    g_autofree char *end = parts[0] && parts[1] ? g_strconcat(" · ", parts[1], NULL) : g_strdup("");
    g_autofree char *place =
        front_words(parts[0] ? parts[0] : "", MAX(ROOM - g_utf8_strlen(end, -1), ROOM / 2));
    g_autofree char *both = g_strconcat(place, end, NULL);
    return front_words(both, ROOM);
}

static void say_causes(Desk *desk, gint64 seq, Page *page)
{
    gboolean unplaced = desk->unplaced->len > 0;
    g_autofree char *words = short_words(desk, seq);
    page_say(&page->unit, unplaced ? "1 to 6" : "1 to 5");
    page_say(&page->next, "strike %s?", words);
    page_say(&page->then, "%s",
             unplaced ? "1 misread  2 wrong place  3 slipped  4 typo  5 part changed  6 UNPLACED"
                      : "1 misread   2 wrong place   3 slipped   4 typo   5 part changed");
}

static void say_nothing_left(const Desk *desk, Page *page)
{
    gboolean unplaced = desk->unplaced->len > 0;
    page_say(&page->unit, unplaced ? "0 or 6" : "0");
    page_say(&page->next, "nothing%s%s is left to strike", desk->who ? " of " : "",
             desk->who ? desk->who : "");
    page_say(&page->then, "%s", unplaced ? "6 UNPLACED" : "");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    gint64 seq = seq_of(state);
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    if (seq)
        say_causes(desk, seq, page);
    else
        say_nothing_left(desk, page);
    memset(page->keys, 0, sizeof page->keys);
    page_key(page, ACTION_TAKE, NULL);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page_key(page, ACTION_UP, NULL);
    page->keys[1] =
        (PageKey){ACTION_UP, "Backspace", "leaves it as it is; 0 takes back the last strike"};
}

// What came of one line is struck as one, the newest first.
static Go strike(Desk *desk, gint64 seq, guint digit)
{
    gint64 first = seq == desk->last_seq && desk->last_first ? desk->last_first : seq;
    g_autofree char *was = short_words(desk, seq);
    for (gint64 each = seq; each >= first; each--) {
        g_autofree char *line =
            g_strdup_printf("strike #%" G_GINT64_FORMAT " \"%s\"", each, causes[digit]);
        if (!desk_line(desk, line, NULL))
            return go(GO_UP);
    }
    desk_last(desk, "struck, %s: #%" G_GINT64_FORMAT " %s", causes[digit], seq, was);
    return go(GO_UP);
}

static Go take_back(Desk *desk)
{
    gint64 seq = struck_last(desk);
    if (!seq) {
        desk_warn(desk, "no strike of %s stands that could be taken back",
                  desk->who ? desk->who : "anybody");
        return go(GO_UP);
    }
    g_autofree char *line =
        g_strdup_printf("strike #%" G_GINT64_FORMAT " \"stands after all\"", seq);
    if (desk_line(desk, line, NULL))
        desk_last(desk, "the last strike is taken back");
    return go(GO_UP);
}

// The oldest burst that came with no field open; it never was an entry.
static Go strike_unplaced(Desk *desk)
{
    if (!desk->unplaced->len)
        return go(GO_STAY);
    desk_last(desk, "struck, never entered: %s", unplaced_text(desk->unplaced, 0));
    g_ptr_array_remove_index(desk->unplaced, 0);
    return go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    if (digit == 0)
        return take_back(desk);
    if (digit == DIGIT_UNPLACED)
        return strike_unplaced(desk);
    return seq_of(state) && digit < G_N_ELEMENTS(causes) ? strike(desk, seq_of(state), digit)
                                                         : go(GO_STAY);
}

const ViewOps strike_view = {
    .name = "strike", .small = TRUE, .open = open, .close = g_free, .paint = paint, .digit = digit};
