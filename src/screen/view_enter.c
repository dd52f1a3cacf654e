// Entered where it is missed: a person, what a gauge was zeroed on.
#include "beginning.h"
#include "line_words.h"
#include "people.h"
#include "view.h"
#include "words.h"

#include <string.h>

typedef struct {
    guint at; // in things
    char *of; // the gauge; may be empty
} Thing;

// `MO Mab Orrin` as the shop's line has it; who is the first to work here enters himself. NULL with
// an error if that is no person.
static char *person_line(const Desk *desk, const Thing *thing, const char *typed, GError **error)
{
    g_autofree char *person = initials_typed(typed);
    (void)thing;
    if (!person_fits(desk, person, error))
        return NULL;
    g_autofree char *words = person_words(person);
    gsize initials = strcspn(person, " ");
    return desk->who ? g_steal_pointer(&words)
                     : g_strdup_printf("%.*s %s", (int)initials, person, words);
}

// Of the gauge in hand: `90.000 in G02`.
static char *zero_line(const Desk *desk, const Thing *thing, const char *typed, GError **error)
{
    (void)desk;
    (void)error;
    return g_strdup_printf("zero %s at %s", thing->of, typed);
}

// Gives a digit to who is known by these initials; FALSE if nobody is.
static gboolean call_person(Desk *desk, const char *typed)
{
    g_autofree char *person = initials_typed(typed);
    return people_call(desk, g_strstrip(person));
}

static char *person_hint(const Thing *thing)
{
    (void)thing;
    return g_strdup("initials, and the name if you like: TB Tess Bell");
}

static char *zero_hint(const Thing *thing)
{
    return g_strdup_printf("%s: the size, and in what: 90.000 in G02; then +27 is 27 marks over it",
                           thing->of);
}

static const struct {
    const char *what, *prompt;
    char *(*hint)(const Thing *thing);
    char *(*line)(const Desk *desk, const Thing *thing, const char *typed, GError **error);
    gboolean build; // it is entered in the build, not in the shop
    gboolean (*known)(Desk *desk, const char *typed); // it need not be entered; NULL: never
} things[] = {
    {"person", "who?", person_hint, person_line, FALSE, call_person},
    {"zero", "zeroed on?", zero_hint, zero_line, TRUE, NULL},
};

// The argument: what, and what it is of behind a line feed.
static gpointer open(Desk *desk, const char *argument)
{
    Thing *thing = g_new0(Thing, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    (void)desk;
    while (thing->at + 1 < G_N_ELEMENTS(things) && strcmp(things[thing->at].what, parts[0]) != 0)
        thing->at++;
    thing->of = g_strdup(parts[1] ? parts[1] : "");
    return thing;
}

static void close(gpointer state)
{
    Thing *thing = state;
    g_free(thing->of);
    g_free(thing);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Thing *thing = state;
    g_autofree char *hint = things[thing->at].hint(thing);
    (void)desk;
    (void)typed;
    page->ask = FALSE;
    page->means = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", things[thing->at].prompt);
    page_say(&page->then, "%s", hint);
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "enters it"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field leaves"};
}

static void say_last(Desk *desk, const Thing *thing, const char *typed)
{
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s zeroed on %s · %.5s %s", thing->of, typed, time + 11,
              desk->who ? desk->who : "");
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    const Thing *thing = state;
    GError *error = NULL;
    if (!*typed || (things[thing->at].known && things[thing->at].known(desk, typed)))
        return go(GO_UP);
    g_autofree char *line = things[thing->at].line(desk, thing, typed, &error);
    if (error)
        desk_warn_error(desk, error);
    gboolean build = things[thing->at].build;
    g_autofree char *first = g_strndup(typed, strcspn(typed, " "));
    if (!line || !(build ? desk_line(desk, line, NULL) : desk_shop_line(desk, line)))
        return go(GO_KEEP);
    if (build)
        say_last(desk, thing, typed);
    else
        call_person(desk, first);
    return go(GO_UP);
}

const ViewOps enter_view = {
    .name = "enter", .small = TRUE, .open = open, .close = close, .paint = paint, .enter = enter};
