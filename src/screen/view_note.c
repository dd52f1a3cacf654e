// Words on the place in hand: a note, or why a bolt is loosened.
#include "line_words.h"
#include "view.h"

#include <string.h>

// The state is what the note is on, as a log line writes it; "" for the build.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument ? argument : "");
}

static void paint_words(const char *next, const char *on, const char *does, const char *typed,
                        Page *page)
{
    page->ask = FALSE;
    page->field = ASKS_TEXT;
    page->means = FALSE;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", next);
    page_say(&page->then, "%s", on);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", *typed ? does : "leaves, nothing is entered"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const char *on = state;
    g_autofree char *words = g_strconcat("on ", *on ? on : "the build", NULL);
    (void)desk;
    paint_words("note", words, "keeps it", typed, page);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const char *on = state;
    if (!*typed)
        return go(GO_UP);
    g_autofree char *words = line_quoted(typed);
    g_autofree char *line =
        g_strdup_printf("note %s%s%s%s", *on ? "on " : "", on, *on ? " " : "", words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    desk_last(desk, "note: %s", typed);
    return go(GO_UP);
}

const ViewOps note_view = {
    .name = "note", .small = TRUE, .open = open, .close = g_free, .paint = paint, .enter = enter};

static void paint_loosen(gpointer state, Desk *desk, const char *typed, Page *page)
{
    g_autofree char *words =
        g_strconcat((const char *)state, " comes loose; what rests on it falls", NULL);
    (void)desk;
    paint_words("why loosen?", words, "loosens it", typed, page);
}

static Go enter_loosen(gpointer state, Desk *desk, const char *typed)
{
    if (!*typed)
        return go(GO_UP);
    g_autofree char *words = line_quoted(typed);
    g_autofree char *line = g_strdup_printf("slacken %s %s", (const char *)state, words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    desk_last(desk, "loosened %s: %s", (const char *)state, typed);
    return go(GO_UP);
}

const ViewOps loosen_view = {.name = "loosen",
                             .small = TRUE,
                             .open = open,
                             .close = g_free,
                             .paint = paint_loosen,
                             .enter = enter_loosen};
