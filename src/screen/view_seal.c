// Fixes the assessment at a gate that has become complete.
#include "view.h"

#include <string.h>

// The state is the gate's name.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "1");
    page_say(&page->next, "%s is complete: seal it?", (const char *)state);
    page_say(&page->then, "1 %s seals it: the verdicts stand as of now, and print so",
             desk->who ? desk->who : "nobody yet");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "seals"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "not yet"};
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    if (digit != 1)
        return go(GO_STAY);
    g_autofree char *line = g_strdup_printf("seal %s", (const char *)state);
    if (desk_line(desk, line, NULL))
        desk_last(desk, "%s sealed by %s", (const char *)state, desk->who ? desk->who : "");
    return go(GO_UP);
}

const ViewOps seal_view = {
    .name = "seal", .small = TRUE, .open = open, .close = g_free, .paint = paint, .digit = digit};
