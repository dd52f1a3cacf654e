// Put down, and who picks up: one digit says who works from now on.
#include "view.h"

#include <string.h>

typedef struct {
    GPtrArray *people; // const char *
    char *stamp;       // `put down 14:13 by MO`, NULL if nothing was in hand
} Who;

static void put_down(Who *who, Desk *desk)
{
    Session *session = desk_build(desk);
    if (!session || !desk->who || !session_step(session))
        return;
    g_autofree char *time = moment_text(desk->now);
    if (desk_line(desk, "put down", NULL))
        who->stamp = g_strdup_printf("put down %.5s by %s", time + 11, desk->who);
}

static gpointer open(Desk *desk, const char *argument)
{
    Who *who = g_new0(Who, 1);
    who->people = desk_people(desk);
    if (g_strcmp0(argument, "put down") == 0)
        put_down(who, desk);
    return who;
}

static void close(gpointer state)
{
    Who *who = state;
    g_ptr_array_unref(who->people);
    g_free(who->stamp);
    g_free(who);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Who *who = state;
    (void)desk;
    (void)typed;
    g_autoptr(GString) names = g_string_new(NULL);
    for (guint i = 0; i < who->people->len && i < 9; i++)
        g_string_append_printf(names, "%s%u %s", i ? "  " : "", i + 1,
                               (const char *)who->people->pdata[i]);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, who->people->len > 1 ? "1 to %u" : "%u", MIN(who->people->len, 9));
    page_say(&page->next, "%s%swho picks up?", who->stamp ? who->stamp : "",
             who->stamp ? ": " : "");
    page_say(&page->then, "%s", names->str);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "picks up and says who works"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it"};
}

static gboolean pick_up(Desk *desk)
{
    Session *session = desk_build(desk);
    const PlanStep *step = session ? session_step(session) : NULL;
    if (!step)
        return TRUE;
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    return desk_line(desk, line, NULL);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const Who *who = state;
    if (digit < 1 || digit > who->people->len)
        return go(GO_STAY);
    g_free(desk->who);
    desk->who = g_strdup(who->people->pdata[digit - 1]);
    pick_up(desk);
    desk->picked_up = g_get_monotonic_time();
    return go(GO_UP);
}

const ViewOps who_view = {
    .name = "who", .small = TRUE, .open = open, .close = close, .paint = paint, .digit = digit};
