// What became of the gauge or wrench in hand, that it is worked with no more: one digit.
#include "view.h"

#include <string.h>

static const char *const ends[] = {NULL, "scrapped", "lost", "lent", "put aside"};

enum { DIGIT_MISTAKE = G_N_ELEMENTS(ends) }; // behind what became of it

static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)desk;
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "1 to 5");
    page_say(&page->next, "%s out of use: what of it?", (const char *)state);
    page_say(&page->then, "1 scrapped  2 lost  3 lent  4 put aside  5 entered by mistake");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers; what it measured stands"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "stays in use"};
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const char *label = state;
    if (digit == 0 || digit > DIGIT_MISTAKE)
        return go(GO_STAY);
    if (!desk->who)
        return go_open(VIEW_WHO, NULL);
    gboolean mistake = digit == DIGIT_MISTAKE;
    g_autofree char *line = mistake
                                ? g_strdup_printf("strike tool %s \"entered by mistake\"", label)
                                : g_strdup_printf("out of use tool %s %s", label, ends[digit]);
    if (desk_shop_line(desk, line))
        desk_last(desk, "%s %s", label, mistake ? "struck, entered by mistake" : ends[digit]);
    return go(GO_UP);
}

const ViewOps end_view = {
    .name = "out of use", .small = TRUE, .open = open, .close = g_free, .paint = paint, .digit = digit};
