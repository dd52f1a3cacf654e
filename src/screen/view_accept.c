// Whether a doubt is conceded or upheld: one digit.
#include "uphold.h"

#include <string.h>

typedef struct {
    char *conceded; // by its name; "" where there is nothing to concede
    char *target;   // of that, as a line has it
    char *upheld;   // by its name
} Accept;

// The argument: those three, a line each.
static gpointer open(Desk *desk, const char *argument)
{
    Accept *accept = g_new0(Accept, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    (void)desk;
    accept->conceded = g_strdup(parts[0]);
    accept->target = g_strdup(parts[1]);
    accept->upheld = g_strdup(parts[2]);
    return accept;
}

static void close(gpointer state)
{
    Accept *accept = state;
    g_free(accept->conceded);
    g_free(accept->target);
    g_free(accept->upheld);
    g_free(accept);
}

static const Requirement *made_of(Desk *desk, const char *name)
{
    Session *session = desk_build(desk);
    return session ? requirement_of_name(session_assessment(session), name) : NULL;
}

static char *title_of(Desk *desk, const char *name)
{
    const Requirement *made = made_of(desk, name);
    return made ? requirement_title(made) : g_strdup(name);
}

// `1 concede main caps 3     2 uphold main caps 3: the doubt does not count`
static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Accept *accept = state;
    gboolean both = *accept->conceded != '\0';
    g_autofree char *one = title_of(desk, accept->conceded), *two = title_of(desk, accept->upheld);
    (void)typed;
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_say(&page->unit, both ? "1 or 2" : "2");
    page_say(&page->next, both ? "concede it, or uphold it?" : "uphold it?");
    page_say(&page->then, "%s%s%s2 uphold %s", both ? "1 concede " : "", both ? one : "",
             both ? "     " : "", two);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leaves it as it is"};
}

static Go uphold(const Accept *accept, Desk *desk)
{
    const Requirement *made = made_of(desk, accept->upheld);
    Go there = made ? uphold_ask(desk, made->step, made) : go(GO_UP);
    there.kind = there.kind == GO_OPEN ? GO_INSTEAD : GO_UP;
    return there;
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    const Accept *accept = state;
    if (digit == 1 && *accept->conceded)
        return go_instead(VIEW_CONCEDE,
                          g_strdup_printf("%s\n%s", accept->conceded, accept->target));
    return digit == 2 ? uphold(accept, desk) : go(GO_STAY);
}

const ViewOps accept_view = {.name = "concede or uphold",
                             .small = TRUE,
                             .open = open,
                             .close = close,
                             .paint = paint,
                             .digit = digit};
