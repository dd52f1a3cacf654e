// A doubt that does not count: at the place or at all of that name, why, and who else says so.
#include "line_words.h"
#include "people.h"
#include "uphold.h"

#include <standbook/sheet/figures.h>
#include <string.h>

typedef enum { AT_WHERE, AT_WHY, AT_SECOND } At;

typedef struct {
    char *name;     // of the requirement (requirement_name)
    At at;          // what is asked
    gboolean whole; // all that are in doubt by its name in that step
    char *why;      // NULL: not said yet
    char *who;      // says so
} Uphold;

static const Requirement *made_of(const Uphold *uphold, Desk *desk)
{
    Session *session = desk_build(desk);
    return session ? requirement_of_name(session_assessment(session), uphold->name) : NULL;
}

static guint count_of(const Uphold *uphold, Desk *desk, gboolean whole)
{
    const Requirement *made = made_of(uphold, desk);
    return made ? uphold_count(session_assessment(desk_build(desk)), made, whole) : 0;
}

// What is asked first: where, if there is more in doubt than at the place.
static At first_asked(const Uphold *uphold, Desk *desk)
{
    return count_of(uphold, desk, TRUE) > count_of(uphold, desk, FALSE) ? AT_WHERE : AT_WHY;
}

static gpointer open(Desk *desk, const char *argument)
{
    Uphold *uphold = g_new0(Uphold, 1);
    uphold->name = g_strdup(argument);
    uphold->at = first_asked(uphold, desk);
    return uphold;
}

static void close(gpointer state)
{
    Uphold *uphold = state;
    g_free(uphold->name);
    g_free(uphold->why);
    g_free(uphold->who);
    g_free(uphold);
}

// PAINT -----------------------------------------------------------------------------------------

// `main clearance 1`, of a bolt in doubt at more than one stage `main caps 3: 2 ticks`; or all:
// `all 3 of main clearance`, of bolts `all 18 ticks of main caps`, for each bolt has one a stage.
static char *what_words(const Uphold *uphold, Desk *desk, gboolean whole)
{
    const Requirement *made = made_of(uphold, desk);
    guint count = count_of(uphold, desk, whole);
    g_autofree char *title = requirement_title(made);
    if (!whole)
        return count < 2 ? g_steal_pointer(&title) : g_strdup_printf("%s: %u ticks", title, count);
    return g_strdup_printf("all %u %sof %s", count, requirement_is_bolted(made) ? "ticks " : "",
                           made->name);
}

static void paint_where(const Uphold *uphold, Desk *desk, Page *page)
{
    g_autofree char *one = what_words(uphold, desk, FALSE);
    g_autofree char *all = what_words(uphold, desk, TRUE);
    page_say(&page->unit, "1 or 2");
    page_say(&page->next, "uphold which?");
    page_say(&page->then, "1 %s%s   2 %s in doubt", one,
             count_of(uphold, desk, FALSE) > 1 ? "" : " alone", all);
}

static void paint_why(const Uphold *uphold, Desk *desk, Page *page)
{
    g_autofree char *what = what_words(uphold, desk, uphold->whole);
    g_autofree char *doubts =
        uphold_doubts(session_assessment(desk_build(desk)), made_of(uphold, desk), uphold->whole);
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "why does it stand?");
    if (uphold->why)
        page_say(&page->then, "Enter keeps %s", uphold->why);
    else
        page_say(&page->then, "%s (%s): the reason, as sheets print it", what, doubts);
}

// `1 JT  3 EV  0 nobody`: all but who works here, by the digits that they have everywhere.
static void paint_second(Desk *desk, Page *page)
{
    g_autoptr(GPtrArray) people = people_listed(desk);
    g_autoptr(GString) others = g_string_new(NULL);
    for (guint i = 0; i < MIN(people->len, PEOPLE_DIGITS); i++)
        if (g_strcmp0(people->pdata[i], desk->who) != 0)
            g_string_append_printf(others, "%u %s  ", i + 1, (const char *)people->pdata[i]);
    page_say(&page->unit, "a digit");
    page_say(&page->next, "who else says so?");
    page_say(&page->then, "%s0 nobody", others->str);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Uphold *uphold = state;
    (void)typed;
    page->ask = uphold->at != AT_WHY;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = page->ask ? (PageKey){ACTION_TAKE, "one digit", "answers"}
                              : (PageKey){ACTION_TAKE, "Enter", "next"};
    page->keys[1] =
        (PageKey){ACTION_UP, "Backspace", page->ask ? "goes back" : "on an empty field goes back"};
    if (!made_of(uphold, desk))
        return;
    if (uphold->at == AT_WHERE)
        paint_where(uphold, desk, page);
    else if (uphold->at == AT_WHY)
        paint_why(uphold, desk, page);
    else
        paint_second(desk, page);
}

// KEYS ------------------------------------------------------------------------------------------

static Go uphold_it(const Uphold *uphold, Desk *desk, const char *second)
{
    const Requirement *made = made_of(uphold, desk);
    if (!made)
        return go(GO_UP);
    g_autofree char *place = line_target(session_plan(desk_build(desk)), made);
    g_autofree char *what = what_words(uphold, desk, uphold->whole);
    g_autofree char *whole = g_strdup_printf("%s in %s", made->name, made->step->name);
    g_autofree char *why = line_quoted(uphold->why);
    g_autofree char *line = g_strdup_printf("uphold %s %s%s%s", uphold->whole ? whole : place, why,
                                            second ? " second " : "", second ? second : "");
    if (!desk_line(desk, line, NULL))
        return go(GO_STAY);
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "upheld: %s · %.5s %s%s%s", what, time + 11, desk->who, second ? ", " : "",
              second ? second : "");
    return go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Uphold *uphold = state;
    if (uphold->at == AT_WHERE) {
        uphold->whole = digit == 2;
        uphold->at = digit == 1 || digit == 2 ? AT_WHY : AT_WHERE;
        return go(GO_STAY);
    }
    g_autoptr(GPtrArray) people = people_listed(desk);
    const char *second = digit && digit <= people->len ? people->pdata[digit - 1] : NULL;
    gboolean same = second && g_strcmp0(second, desk->who) == 0;
    if (same)
        desk_warn(desk, "%u is you; somebody else says so too, or 0: nobody", digit);
    else if (digit && !second)
        desk_warn(desk, "%u is nobody's digit; one of those above, or 0: nobody", digit);
    if (same || (digit && !second))
        return go(GO_STAY);
    return uphold_it(uphold, desk, second);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Uphold *uphold = state;
    g_autofree char *why = g_strstrip(g_strdup(typed));
    if (!*why && !uphold->why) {
        desk_warn(desk, "a doubt is upheld for a reason; write it in words");
        return go(GO_KEEP);
    }
    if (*why) {
        g_free(uphold->why);
        uphold->why = g_steal_pointer(&why);
    }
    g_free(uphold->who);
    uphold->who = g_strdup(desk->who);
    uphold->at = AT_SECOND;
    return go(GO_STAY);
}

// Who picks up in the middle of it says why himself: a reason is that of the person whose initials
// it bears.
static Go wants(gpointer state, Desk *desk)
{
    Uphold *uphold = state;
    if (uphold->at == AT_SECOND && g_strcmp0(uphold->who, desk->who) != 0) {
        g_clear_pointer(&uphold->why, g_free);
        uphold->at = AT_WHY;
        desk_warn(desk, "the reason was %s's; say your own", uphold->who);
    }
    return go(GO_STAY);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Uphold *uphold = state;
    if (action != ACTION_UP || uphold->at == first_asked(uphold, desk))
        return go(GO_DEFAULT);
    uphold->at--;
    return go(GO_STAY);
}

const ViewOps uphold_view = {.name = "uphold",
                             .small = TRUE,
                             .open = open,
                             .close = close,
                             .wants = wants,
                             .paint = paint,
                             .enter = enter,
                             .digit = digit,
                             .act = act};
