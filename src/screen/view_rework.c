// A place is read once more and gives another value: it was worked on since, or misread before.
#include "line_words.h"
#include "view.h"

#include <string.h>

typedef struct {
    char *target; // as a log line writes it
    char *as;     // what was done at another place of it a while ago; "" for nothing
    char *seq;    // of the reading that stands
    char *values; // `0.20 before, 0.30 now`; NULL: it was said that it is worked on
    gboolean worked;
} Rework;

// The argument: those, a line each; the first two alone where nothing was read once more yet.
static gpointer open(Desk *desk, const char *argument)
{
    Rework *rework = g_new0(Rework, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 4);
    (void)desk;
    rework->target = g_strdup(parts[0]);
    rework->as = g_strdup(parts[1]);
    rework->worked = parts[2] == NULL;
    rework->seq = rework->worked ? NULL : g_strdup(parts[2]);
    rework->values = rework->worked ? NULL : g_strdup(parts[3]);
    return rework;
}

static void close(gpointer state)
{
    Rework *rework = state;
    g_free(rework->target);
    g_free(rework->as);
    g_free(rework->seq);
    g_free(rework->values);
    g_free(rework);
}

// Whether Enter alone, or the first answer, says that the same was done here.
static gboolean is_as_before(const Rework *rework)
{
    return *rework->as && (!rework->worked || !rework->values);
}

// Behind the question there is something to be said, and a value that waits.
static void paint_work(const Rework *rework, const char *typed, Page *page)
{
    gboolean as = is_as_before(rework);
    const char *empty = as               ? "enters the same"
                        : rework->values ? "waits for words"
                                         : "leaves, nothing is entered";
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "what was done?");
    if (as)
        page_say(&page->then, "Enter alone: %s, as before; else in words", rework->as);
    else
        page_say(&page->then, "filed, honed, run 500 km; what was read before stays, and %s",
                 rework->values ? "Enter takes the new" : "is read again");
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", *typed ? "enters it" : empty};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

enum { WORDS_MOST = 17 }; // that fit into row 22 beside the other answers

static void paint_answers(const Rework *rework, Page *page)
{
    gboolean sealed = strstr(rework->values, "before the seal") != NULL;
    gboolean fits = g_utf8_strlen(rework->as, -1) <= WORDS_MOST;
    if (is_as_before(rework))
        page_say(&page->then, "1 %s, as before   2 misread   3 both stand%s   4 other work",
                 fits ? rework->as : "worked on", sealed ? "" : ", in doubt");
    else
        page_say(&page->then,
                 sealed ? "1 run or worked on since   2 misread then   3 both stand"
                        : "1 worked on since   2 misread before   3 both stand, in doubt");
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Rework *rework = state;
    (void)desk;
    page->ask = !rework->worked;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (rework->worked) {
        paint_work(rework, typed, page);
        return;
    }
    page->field = ASKS_DIGIT;
    page_say(&page->unit, is_as_before(rework) ? "1 to 4" : "1 to 3");
    page_say(&page->next, "%s: why?", rework->values);
    paint_answers(rework, page);
    page->keys[0] =
        (PageKey){ACTION_TAKE, "one digit", "answers; the value waits behind it for its Enter"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "goes back"};
}

static gboolean take(const Rework *rework, Desk *desk, const char *said)
{
    g_autofree char *words = line_quoted(said);
    g_autofree char *line = g_strdup_printf("rework %s %s", rework->target, words);
    if (!desk_line(desk, line, NULL))
        return FALSE;
    desk_last_entry(desk, "%s · %s", rework->target, said);
    return TRUE;
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Rework *rework = state;
    g_autofree char *strike =
        rework->worked ? NULL : g_strdup_printf("strike #%s \"misread\"", rework->seq);
    gboolean as = is_as_before(rework);
    if (digit == 1 && as)
        return go(take(rework, desk, rework->as) ? GO_UP : GO_STAY);
    if (digit == (as ? 4 : 1))
        rework->worked = TRUE;
    if (digit == 3) {
        g_free(desk->both_stand);
        desk->both_stand = g_strdup(rework->values);
    }
    if (digit == 2 && !desk_line(desk, strike, NULL))
        return go(GO_STAY);
    return go(digit == 2 || digit == 3 ? GO_UP : GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const Rework *rework = state;
    const char *said = !*typed && is_as_before(rework) ? rework->as : typed;
    if (!*said && rework->values) {
        desk_warn(desk, "say in words what was done, or leave it with Backspace");
        return go(GO_KEEP);
    }
    return go(!*said || take(rework, desk, said) ? GO_UP : GO_KEEP);
}

const ViewOps rework_view = {.name = "worked on",
                             .small = TRUE,
                             .open = open,
                             .close = close,
                             .paint = paint,
                             .enter = enter,
                             .digit = digit};
