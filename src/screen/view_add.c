// Work that the plan does not have: a check of this step, named and limited in two lines.
#include "line_words.h"
#include "view.h"

#include <string.h>

typedef struct {
    char *step;
    char *name; // NULL: still to be typed
} Addition;

static gpointer open(Desk *desk, const char *argument)
{
    Addition *addition = g_new0(Addition, 1);
    (void)desk;
    addition->step = g_strdup(argument);
    return addition;
}

static void close(gpointer state)
{
    Addition *addition = state;
    g_free(addition->step);
    g_free(addition->name);
    g_free(addition);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Addition *addition = state;
    (void)desk;
    (void)typed;
    page->ask = FALSE;
    page->means = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, addition->name ? "limits" : "what is measured?");
    if (addition->name)
        page_say(&page->then, "%s: 0.05..0.25 mm, at most 0.05 mm, yes, text; any", addition->name);
    else
        page_say(&page->then, "its name in words; it is added to %s", addition->step);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", addition->name ? "adds it" : "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Addition *addition = state;
    if (!*typed)
        return go(GO_KEEP);
    if (!addition->name) {
        addition->name = g_strdup(typed);
        return go(GO_STAY);
    }
    g_autofree char *name = line_quoted(addition->name);
    g_autofree char *line = g_strdup_printf("add check %s \"came up at the bench\" in %s: %s", name,
                                            addition->step, typed);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    desk_last(desk, "added: %s, %s", addition->name, typed);
    return go(GO_UP);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Addition *addition = state;
    (void)desk;
    if (action != ACTION_UP || !addition->name)
        return go(GO_DEFAULT);
    g_clear_pointer(&addition->name, g_free);
    return go(GO_STAY);
}

const ViewOps add_view = {.name = "add",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .enter = enter,
                          .act = act};
