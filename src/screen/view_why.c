// What a verdict rests on: its figures, its notes, and the entries about it.
#include "about.h"
#include "view.h"

#include <string.h>

// The state is the requirement's name (requirement_name).
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
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
    if (made)
        about_entries(page->body, about_figures(page->body, 0, made), session, made);
}

const ViewOps why_view = {.name = "why", .open = open, .close = g_free, .paint = paint};
