// What a verdict rests on: its figures, its notes, and the entries about it.
#include "about.h"
#include "telling.h"
#include "view.h"

#include <string.h>

// The state is the requirement's name (requirement_name).
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

// Why its tool puts it in doubt, if that is late for its calibration; returns the row behind.
static guint paint_late(Desk *desk, const Requirement *made, guint row, Page *page)
{
    g_auto(Told) told = {0};
    guint index = 0;
    if (!told_init(&told, desk) ||
        !g_ptr_array_find(told.agenda.assessment->requirements, made, &index))
        return row;
    g_autofree char *words = late_tool_words(&told.agenda, told.taken, index, told.telling.now);
    g_auto(GStrv) lines = g_strsplit(words ? words : "", "\n", -1);
    for (guint i = 0; lines[i]; i++)
        canvas_put(page->body, row - 1 + i, 1, 0, style_of(0, 0), lines[i]);
    return row + g_strv_length(lines);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Session *session = desk_build(desk);
    const Requirement *made =
        session ? requirement_of_name(session_assessment(session), state) : NULL;
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page_say(&page->head, "Why: %s", (const char *)state);
    page->field = ASKS_KEY;
    page_say(&page->next, "any key goes back");
    page->keys[0] = (PageKey){ACTION_UP, "any key", "goes back and does nothing else"};
    if (!made)
        return;
    guint row = about_figures(page->body, 0, made);
    about_entries(page->body, paint_late(desk, made, row, page), session, made);
}

const ViewOps why_view = {.name = "why", .open = open, .close = g_free, .paint = paint};
