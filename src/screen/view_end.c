// What became of the gauge or wrench in hand, that it is worked with no more: one digit, then why.
#include "line_words.h"
#include "view.h"

#include <string.h>

static const char *const ends[] = {NULL, "scrapped", "lost", "lent", "put aside"};

enum { DIGIT_MISTAKE = G_N_ELEMENTS(ends) }; // behind what became of it

typedef struct {
    char *label; // of the tool
    guint end;   // of `ends`; 0: not said yet
} End;

static gpointer open(Desk *desk, const char *argument)
{
    End *end = g_new0(End, 1);
    (void)desk;
    end->label = g_strdup(argument);
    return end;
}

static void close(gpointer state)
{
    End *end = state;
    g_free(end->label);
    g_free(end);
}

static void paint_why(const End *end, const char *typed, Page *page)
{
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s %s: why?", end->label, ends[end->end]);
    page_say(&page->then, "in words, as: dropped; Enter alone: no word on it");
    page->keys[0] =
        (PageKey){ACTION_TAKE, "Enter", *typed ? "enters it" : "enters it without a reason"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field goes back"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const End *end = state;
    (void)desk;
    page->ask = end->end == 0;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (end->end) {
        paint_why(end, typed, page);
        return;
    }
    page->field = ASKS_DIGIT;
    page_say(&page->unit, "1 to 5");
    page_say(&page->next, "%s out of use: what of it?", end->label);
    page_say(&page->then, "1 scrapped  2 lost  3 lent  4 put aside  5 entered by mistake");
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers; what it measured stands"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "stays in use"};
}

static Go take_line(const End *end, Desk *desk, const char *line, const char *said)
{
    if (!desk->who)
        return go_open(VIEW_WHO, NULL);
    if (desk_shop_line(desk, line))
        desk_last(desk, "%s %s", end->label, said);
    return go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    End *end = state;
    g_autofree char *line = g_strdup_printf("strike tool %s \"entered by mistake\"", end->label);
    if (digit == DIGIT_MISTAKE)
        return take_line(end, desk, line, "struck, entered by mistake");
    end->end = digit < DIGIT_MISTAKE ? digit : 0;
    return go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const End *end = state;
    g_autofree char *words = g_strstrip(g_strdup(typed));
    g_autofree char *why = line_quoted(words);
    g_autofree char *line = g_strconcat("out of use tool ", end->label, " ", ends[end->end],
                                        *words ? " " : "", *words ? why : "", NULL);
    g_autofree char *said = g_strconcat(ends[end->end], *words ? ": " : "", words, NULL);
    return take_line(end, desk, line, said);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    End *end = state;
    (void)desk;
    if (action != ACTION_UP || !end->end)
        return go(GO_DEFAULT);
    end->end = 0;
    return go(GO_STAY);
}

const ViewOps end_view = {.name = "out of use",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .enter = enter,
                          .digit = digit,
                          .act = act};
