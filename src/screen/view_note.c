// Words on the place in hand.
#include "line_words.h"
#include "view.h"

#include <string.h>

// The state is what the note is on, as a log line writes it; "" for the build.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument ? argument : "");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)desk;
    (void)typed;
    page->field = ASKS_TEXT;
    page->means = FALSE;
    page_say(&page->unit, " ");
    page_say(&page->next, "note");
    page_say(&page->then, "on %s", *(const char *)state ? (const char *)state : "the build");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "keeps it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
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
