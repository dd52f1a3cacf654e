// What is done about a finding that waits for its answer: which, why, how the customer was told,
// who decides. The last makes the entry.
#include "line_words.h"
#include "people.h"
#include "view.h"
#include "words.h"

#include <standbook/sheet/figures.h>
#include <standbook/work/finding.h>
#include <string.h>

typedef enum { AT_WHAT, AT_WHY, AT_TOLD, AT_DECIDES } At;

typedef struct {
    char *name; // of the requirement (requirement_name)
    At at;      // what is asked
    guint what; // of `decisions`
    char *why;  // NULL: not said yet
    guint told; // of `ways`, from 1; 0: the customer was not told
} Decide;

static const char *const decisions[] = {"keep", "rework", "replace", "look closer"};
static const char *const ways[] = {"present", "telephone", "letter", "mail"};

static gpointer open(Desk *desk, const char *argument)
{
    Decide *decide = g_new0(Decide, 1);
    (void)desk;
    decide->name = g_strdup(argument);
    return decide;
}

static void close(gpointer state)
{
    Decide *decide = state;
    g_free(decide->name);
    g_free(decide->why);
    g_free(decide);
}

// NULL once it waits no more, as when it was decided at another stand.
static const Requirement *made_of(const Decide *decide, Desk *desk)
{
    Session *session = desk_build(desk);
    const Requirement *made =
        session ? requirement_of_name(session_assessment(session), decide->name) : NULL;
    return made && finding_waits(made) ? made : NULL;
}

static Go wants(gpointer state, Desk *desk)
{
    const Decide *decide = state;
    if (!made_of(decide, desk))
        return go(GO_UP);
    return desk->who ? go(GO_STAY) : go_open(VIEW_WHO, NULL);
}

// PAINT -----------------------------------------------------------------------------------------

// `1 keep   2 rework   3 replace   4 look closer`
static char *numbered(const char *const *words, guint count)
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < count; i++)
        g_string_append_printf(text, "%s%u %s", i ? "   " : "", i + 1, words[i]);
    return g_string_free(text, FALSE);
}

static char *people_words(Desk *desk)
{
    g_autoptr(GPtrArray) people = people_listed(desk);
    guint count = MIN(people->len, PEOPLE_DIGITS);
    return numbered((const char *const *)people->pdata, count);
}

// `cam gear noise, some`
static char *found_words(const Requirement *made)
{
    g_autofree char *title = requirement_title(made), *value = figure_value(made);
    const char *unit = figure_unit(made);
    const char *found = made->answer ? made->answer : value;
    gboolean number = !made->answer && *value;
    return g_strconcat(title, ", ", found, number && *unit ? " " : "", number ? unit : "", NULL);
}

static void say_question(const Decide *decide, Desk *desk, Page *page)
{
    g_autofree char *all = numbered(decisions, G_N_ELEMENTS(decisions));
    g_autofree char *told = numbered(ways, G_N_ELEMENTS(ways));
    g_autofree char *people = people_words(desk);
    switch (decide->at) {
    case AT_WHAT:
        page_say(&page->then, "%s", all);
        break;
    case AT_WHY:
        page_say(&page->next, "%s: why?", decisions[decide->what]);
        page_say(&page->then,
                 decide->why ? "Enter keeps: %s"
                             : "in words, as the customer's sheet prints them%s",
                 decide->why ? decide->why : "");
        break;
    case AT_TOLD:
        page_say(&page->next, "customer's consent, how?");
        page_say(&page->then, "%s   Enter alone: not asked", told);
        break;
    case AT_DECIDES:
        page_say(&page->next, "who decides?");
        page_say(&page->then, "%s   Enter alone: %s", people, desk->who ? desk->who : "");
        break;
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Decide *decide = state;
    const Requirement *made = made_of(decide, desk);
    (void)typed;
    page->ask = decide->at == AT_WHAT;
    page->field = page->ask ? ASKS_DIGIT : ASKS_TEXT;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    page->keys[0] = page->ask ? (PageKey){ACTION_TAKE, "one digit", "answers"}
                              : (PageKey){ACTION_TAKE, "Enter",
                                          decide->at == AT_DECIDES ? "makes the entry" : "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace",
                              page->ask ? "leaves it as it is" : "on an empty field goes back"};
    if (!made)
        return;
    g_autofree char *found = found_words(made);
    page_say(&page->unit, page->ask ? "1 to 4" : " ");
    page_say(&page->next, "%s: what is decided?", found);
    say_question(decide, desk, page);
}

// KEYS ------------------------------------------------------------------------------------------

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Decide *decide = state;
    (void)desk;
    if (digit < 1 || digit > G_N_ELEMENTS(decisions))
        return go(GO_STAY);
    decide->what = digit - 1;
    decide->at = AT_WHY;
    return go(GO_STAY);
}

static Go take_why(Decide *decide, Desk *desk, const char *words)
{
    if (!*words && !decide->why) {
        desk_warn(desk, "a decision has a reason; write it in words");
        return go(GO_KEEP);
    }
    if (*words) {
        g_free(decide->why);
        decide->why = g_strdup(words);
    }
    decide->at = AT_TOLD;
    return go(GO_STAY);
}

// Its digit, or the word itself.
static Go take_told(Decide *decide, Desk *desk, const char *words)
{
    guint told = *words ? G_N_ELEMENTS(ways) + 1 : 0;
    for (guint i = 0; *words && i < G_N_ELEMENTS(ways); i++)
        if (g_ascii_strcasecmp(words, ways[i]) == 0 || (*words == (char)('1' + i) && !words[1]))
            told = i + 1;
    if (told > G_N_ELEMENTS(ways)) {
        desk_warn(desk, "present, telephone, letter or mail; Enter alone: not asked");
        return go(GO_KEEP);
    }
    decide->told = told;
    decide->at = AT_DECIDES;
    return go(GO_STAY);
}

// Entered by who decides, who need not be who types.
static Go decide_it(const Decide *decide, Desk *desk, const char *who)
{
    const Requirement *made = made_of(decide, desk);
    if (!made)
        return go(GO_UP);
    g_autofree char *found = found_words(made);
    g_autofree char *target = line_target(session_plan(desk_build(desk)), made);
    g_autofree char *why = line_quoted(decide->why);
    g_autofree char *line = g_strdup_printf("decide %s %s %s%s%s", target, decisions[decide->what],
                                            why, decide->told ? " customer " : "",
                                            decide->told ? ways[decide->told - 1] : "");
    if (!desk_line_as(desk, who, line))
        return go(GO_KEEP);
    desk_last(desk, "decided: %s: %s", found, decisions[decide->what]);
    return go(GO_UP);
}

// A lone digit is that person's, initials are in capitals.
static Go take_decides(const Decide *decide, Desk *desk, const char *words)
{
    g_autoptr(GPtrArray) people = people_listed(desk);
    guint which = g_ascii_isdigit(*words) && !words[1] ? (guint)(*words - '0') : 0;
    g_autofree char *who = !*words                         ? g_strdup(desk->who)
                           : which && which <= people->len ? g_strdup(people->pdata[which - 1])
                                                           : initials_typed(words);
    return who ? decide_it(decide, desk, who) : go_open(VIEW_WHO, NULL);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Decide *decide = state;
    g_autofree char *words = g_strstrip(g_strdup(typed));
    return decide->at == AT_WHY    ? take_why(decide, desk, words)
           : decide->at == AT_TOLD ? take_told(decide, desk, words)
                                   : take_decides(decide, desk, words);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Decide *decide = state;
    (void)desk;
    if (action != ACTION_UP || decide->at == AT_WHAT)
        return go(GO_DEFAULT);
    decide->at--;
    return go(GO_STAY);
}

const ViewOps decide_view = {.name = "decide",
                             .small = TRUE,
                             .open = open,
                             .close = close,
                             .wants = wants,
                             .paint = paint,
                             .enter = enter,
                             .digit = digit,
                             .act = act};
