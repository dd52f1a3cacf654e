// Put down, and who picks up: one digit says who works from now on.
#include "people.h"
#include "typing.h"
#include "view.h"
#include "words.h"

#include <standbook/work/ago.h>
#include <string.h>

typedef struct {
    char *stamp;     // `put down 14:13 MO`, NULL if nothing was in hand
    char *work;      // `TL-0418 S18  Crank`, as above
    gboolean launch; // goes on where the newest entry was made
    gboolean known;  // the two above are, as far as there is something
} Who;

static void put_down(Desk *desk)
{
    Session *session = desk_build(desk);
    if (session && desk->who && standing_of(session).in_hand)
        desk_line(desk, "put down", NULL);
}

// Who had which work last; nothing where none was begun, or it is closed.
static void set_stamp(Who *who, Desk *desk)
{
    who->known = TRUE;
    Session *session = desk_build(desk);
    Standing standing = session ? standing_of(session) : (Standing){.step = NULL};
    if (!standing.step || standing.closed)
        return;
    g_autofree char *step = step_words(standing.step);
    const Entry *person = shop_by_id(session_shop(desk->shop), "person", standing.entry->by);
    who->work = g_strdup_printf("%s %s", desk->number, step);
    Moment at = 0;
    moment_parse(standing.entry->at, &at, NULL);
    g_autofree char *day = ago_day(at, desk->now), *today = ago_day(desk->now, desk->now);
    gboolean other = strcmp(day, today) != 0;
    who->stamp = g_strdup_printf("%s %s%s%.5s %s", standing.in_hand ? "in hand" : "put down",
                                 other ? day : "", other ? " " : "", standing.entry->at + 11,
                                 person ? shop_label(person) : "");
}

static gpointer open(Desk *desk, const char *argument)
{
    Who *who = g_new0(Who, 1);
    who->launch = g_strcmp0(argument, "launch") == 0;
    if (g_strcmp0(argument, "put down") == 0)
        put_down(desk);
    who->known = !argument;
    if (argument && !who->launch)
        set_stamp(who, desk);
    return who;
}

// At the launch the question stands there before the build is read.
static gboolean idle(gpointer state, Desk *desk)
{
    Who *who = state;
    if (who->known)
        return FALSE;
    set_stamp(who, desk);
    return TRUE;
}

static void close(gpointer state)
{
    Who *who = state;
    g_free(who->stamp);
    g_free(who->work);
    g_free(who);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Who *who = state;
    g_autoptr(GPtrArray) people = people_listed(desk);
    (void)typed;
    g_autoptr(GString) names = g_string_new(NULL);
    for (guint i = 0; i < MIN(people->len, PEOPLE_DIGITS); i++)
        g_string_append_printf(names, "%u %s  ", i + 1, (const char *)people->pdata[i]);
    g_string_append(names, people_others(people));
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page->means = FALSE;
    page_ask_digit(page, MIN(people->len, PEOPLE_DIGITS));
    page_say(&page->next, "%s%swho picks up?", who->stamp ? who->stamp : "",
             who->stamp ? ": " : "");
    page_say(&page->then, "%s%s%s", names->str, who->work ? "     " : "",
             who->work ? who->work : "");
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "picks up and says who works"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leave it"};
    if (desk->who && who->stamp)
        page->keys[2] = (PageKey){ACTION_NOTE, "n", "a word on why"};
}

static Go go_on(const Who *who, Desk *desk)
{
    Session *session = desk_build(desk);
    const PlanStep *step = standing_of(session).step;
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    if (!desk_line(desk, line, NULL) || !who->launch)
        return go(GO_UP);
    return go_instead(VIEW_BENCH, g_strdup(step->name));
}

// Whoever is there has no work in hand; where the step picked up last is closed, the build has the
// next one.
static Go choose_work(const Who *who, Desk *desk)
{
    Session *session = who->launch ? desk_build(desk) : NULL;
    return session && standing_of(session).closed ? go_instead(VIEW_STEPS, NULL) : go(GO_UP);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Who *who = state;
    g_autoptr(GPtrArray) people = people_listed(desk);
    idle(state, desk);
    if (digit == 0)
        return go_open(VIEW_ENTER, g_strdup("person"));
    if (digit > people->len)
        return go(GO_STAY);
    g_free(desk->who);
    desk->who = g_strdup(people->pdata[digit - 1]);
    desk->unseen = g_get_monotonic_time() + PICK_UP_GAP;
    desk_recall(desk);
    return who->stamp ? go_on(who, desk) : choose_work(who, desk);
}

// Who has put down may say in two words why; then the question stands again.
static Go act(gpointer state, Desk *desk, Action action)
{
    const Who *who = state;
    if (action == ACTION_NOTE && desk->who && who->stamp)
        return go_open(VIEW_NOTE, NULL);
    return go(action == ACTION_PUT_DOWN ? GO_STAY : GO_DEFAULT);
}

const ViewOps who_view = {.name = "who",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .digit = digit,
                          .idle = idle,
                          .act = act,
                          .acts = {ACTION_NOTE}};
