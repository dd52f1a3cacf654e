// The words behind `.` Enter, each with its digit.
#include "view.h"

#include <string.h>

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    (void)state;
    (void)desk;
    (void)typed;
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 1; i <= 10; i++)
        g_string_append_printf(words, "%s%u %s", i > 1 ? " " : "", i % 10,
                               action_info(action_of_more(i % 10))->word);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, "0 to 9");
    page_say(&page->next, "more");
    page_say(&page->then, "%s", words->str);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "does it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it"};
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    (void)state;
    (void)desk;
    return (Go){.kind = GO_ACT, .action = action_of_more(digit)};
}

const ViewOps more_view = {.name = "more", .small = TRUE, .paint = paint, .digit = digit};
