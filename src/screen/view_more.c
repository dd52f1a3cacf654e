// The words behind `.` Enter, each with its digit: those that something is done at where it stands.
#include "view.h"

#include <string.h>

// The argument is the name of the view below.
static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return g_strdup(argument);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Actions works = view_actions(state, desk->book != NULL);
    (void)typed;
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 1; i <= 10; i++) {
        Action action = action_of_more(i % 10);
        if (works & action_bit(action))
            g_string_append_printf(words, "%s%u %s", words->len ? " " : "", i % 10,
                                   action_info(action)->word);
    }
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

const ViewOps more_view = {
    .name = "more", .small = TRUE, .open = open, .close = g_free, .paint = paint, .digit = digit};
