// What is begun: on an empty logbook a demo shop, an engine with a plan, or one without; in a shop
// the next engine, with or without.
#include "beginning.h"
#include "view.h"
#include "words.h"

#include <standbook/base/text.h>
#include <string.h>

typedef enum { DOOR_NONE, DOOR_DEMO, DOOR_PLAN, DOOR_BLANK } Door;

typedef struct {
    Door door;
    gboolean another; // there is a logbook, and somebody who works here
    gboolean in_demo; // which is the demo
    gboolean who;     // that was asked
    GPtrArray *plans; // char *: those that are kept, and files that hold one without fault
    Beginning answers;
    char *odd;     // the answer that is asked about; NULL for none
    guint asked;   // questions answered so far
    guint top;     // the plan listed first, where there are more than fit, from 0
    gboolean kept; // the demo, of an earlier time
    gboolean made; // the demo, so that its shop can be opened
} First;

// An answer that may be left out: what stands for it.
static char *nobody_known(const Desk *desk)
{
    (void)desk;
    return g_strdup("");
}

// What is asked behind doors 2 and 3, one line each.
typedef struct {
    gboolean plan;                        // only with one
    gboolean once;                        // only on an empty logbook
    const char *prompt;                   // what NEXT says
    const char *hint;                     // what is to be written
    gsize offset;                         // of the answer in Beginning
    char *(*otherwise)(const Desk *desk); // for an empty answer; NULL: there must be one
    gboolean (*fits)(const Desk *desk, const char *answer, GError **error); // NULL: anything does
    gboolean (*is_odd)(const char *answer); // taken once Enter is pressed again; NULL: nothing is
    const char *nothing;                    // how an empty answer is shown
} Question;

static const Question questions[] = {
    {TRUE, FALSE, "which plan?", "its line, or the path of its file",
     G_STRUCT_OFFSET(Beginning, plan), NULL, NULL, NULL, NULL},
    {FALSE, TRUE, "initials, name", "two to four capitals, and your name if you like: TB Tess Bell",
     G_STRUCT_OFFSET(Beginning, person), NULL, person_fits, NULL, NULL},
    {FALSE, FALSE, "engine number", "as it is stamped on the block",
     G_STRUCT_OFFSET(Beginning, serial), NULL, NULL, NULL, NULL},
    {FALSE, FALSE, "whose is it?", "the owner's name", G_STRUCT_OFFSET(Beginning, owner),
     nobody_known, NULL, NULL, "customer unknown"},
    {FALSE, FALSE, "job number", "what you call this job", G_STRUCT_OFFSET(Beginning, build),
     build_free, build_fits, build_is_odd, NULL},
    {FALSE, TRUE, "shop's name", "which sheets have at their head",
     G_STRUCT_OFFSET(Beginning, shop), nobody_known, NULL, NULL, "none"},
};

// Whether the door that was chosen leads to that question.
static gboolean is_asked(const First *first, const Question *question)
{
    return !(question->plan && first->door != DOOR_PLAN) && !(question->once && first->another);
}

// As it is shown: nobody is an answer too.
static const char *shown(const Question *question, const char *answer)
{
    return *answer || !question->nothing ? answer : question->nothing;
}

static char *const *answer_to(const First *first, const Question *question)
{
    return G_STRUCT_MEMBER_P(&first->answers, question->offset);
}

static gpointer open(Desk *desk, const char *argument)
{
    First *first = g_new0(First, 1);
    (void)argument;
    first->another = desk->book != NULL;
    first->in_demo = demo_is_open(desk);
    first->plans = plans_found(desk);
    first->kept = demo_is_made(desk);
    return first;
}

static void close(gpointer state)
{
    First *first = state;
    g_ptr_array_unref(first->plans);
    beginning_clear(&first->answers);
    g_free(first->odd);
    g_free(first);
}

typedef struct {
    const char *what, *says, *more;
} DoorWords;

static const DoorWords doors[] = {
    [DOOR_DEMO] = {"a demo shop", "Four engines, one half way through a tightening.",
                   "Kept apart from your work: you can break nothing."},
    [DOOR_PLAN] = {"an engine, a plan", "Steps and limits for its family, read from a file.", NULL},
    [DOOR_BLANK] = {"an engine, no plan", "A blank card: measure now, name checks as you go.",
                    NULL},
};

static const DoorWords demo_again = {"the demo shop", "Made before: it opens as you left it.",
                                     "Kept apart in demo.db; without that it is made anew."};

static const char *const welcome[] = {
    " A reading is its digits and Enter. It is judged at once and never lost:",
    "",
    "       0.041 ±.005  √ pass   0.030 ├──▒▒█▒▒────────┤ 0.065",
    "",
    " The maker's current service data governs. This is your workshop's record.",
};

static Door first_door(const First *first)
{
    return first->another ? DOOR_PLAN : DOOR_DEMO;
}

// `2 plans found: hathersey-h23.yaml, …`
static char *found_words(const First *first)
{
    guint count = first->plans->len;
    const char *name = count ? first->plans->pdata[0] : NULL;
    return count ? g_strdup_printf("%u plan%s found: %s%s", count, count > 1 ? "s" : "", name,
                                   count > 1 ? ", …" : "")
                 : g_strdup("None found here: its path is asked for.");
}

enum { DOOR_COLUMN = 3, WHAT_COLUMN = 7, SAYS_COLUMN = 28 };

static guint paint_door(const First *first, Door door, guint row, Page *page)
{
    static const Style plain = {0, 0};
    g_autofree char *number = g_strdup_printf("%d", (int)door - (int)first_door(first) + 1);
    const DoorWords *words = door == DOOR_DEMO && first->kept ? &demo_again : &doors[door];
    g_autofree char *found = door == DOOR_PLAN ? found_words(first) : g_strdup(words->more);
    canvas_put(page->body, row, DOOR_COLUMN, 0, plain, number);
    canvas_put(page->body, row, WHAT_COLUMN, 0, plain, words->what);
    canvas_put(page->body, row, SAYS_COLUMN, 0, plain, words->says);
    if (found)
        canvas_put(page->body, ++row, SAYS_COLUMN, PAGE_WIDTH - SAYS_COLUMN, plain, found);
    return row + 2;
}

static void paint_doors(const First *first, Page *page)
{
    guint row = 3;
    canvas_put(page->body, 1, 2, 0, style_of(0, 0),
               first->in_demo ? "This is the demo: a real engine does not belong here. What comes "
                                "to try?"
               : first->another ? "What comes onto the stand?"
                                : "There is nothing to set up. What is on the stand?");
    for (Door door = first_door(first); door <= DOOR_BLANK; door++)
        row = paint_door(first, door, row, page);
    for (gsize i = 0; i < G_N_ELEMENTS(welcome) && !first->another; i++)
        canvas_put(page->body, row++, 1, 0, style_of(0, 0), welcome[i]);
    page->field = ASKS_LINE;
    page_say(&page->next, first->another ? "1 or 2?" : "1, 2 or 3?");
    page_say(&page->then, "%s, then the first reading: about a minute",
             first->another ? "its number" : "your initials");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "chooses"};
    page->keys[1] =
        (PageKey){ACTION_UP, "q", first->another ? "back to the shop" : "leave, nothing to save"};
    page->keys[2] = (PageKey){ACTION_HELP, "?", "help"};
}

enum {
    PLANS_ROW = 3,
    PLANS_TURN = 12,
    BODY_ROWS = 16
}; // the row of the first; lines by which the list turns

// More plans than fit are turned to by `0`, as in any list.
static void paint_plans(const First *first, Page *page)
{
    if (first->plans->len == 0)
        canvas_put(page->body, 1, 2, 0, style_of(0, 0),
                   "No plan lies here, nor in the folders plans and demo-data of this one.");
    for (guint i = 0; i < first->plans->len; i++) {
        g_autofree char *line = g_strdup_printf("%3u   %s", i + 1, (char *)first->plans->pdata[i]);
        canvas_put(page->body, PLANS_ROW + i, 1, 0, style_of(0, 0), line);
    }
    page->heads = PLANS_ROW;
    page->focus = first->top ? first->top + BODY_ROWS - 2 : 0;
    if (first->plans->len > BODY_ROWS - PLANS_ROW)
        page_say(&page->then, "its line, or the path of its file; 0 Enter: more of the %u plans",
                 first->plans->len);
}

// All that was answered, also behind the question that one went back to.
static void paint_answers(const First *first, Page *page)
{
    for (guint i = 0; i < G_N_ELEMENTS(questions); i++) {
        const char *answer = *answer_to(first, &questions[i]);
        g_autofree char *line = g_strdup_printf(" %-16s %s", questions[i].prompt,
                                                answer ? shown(&questions[i], answer) : "");
        if (answer && is_asked(first, &questions[i]))
            canvas_put(page->body, 1 + i, 1, 0, style_of(0, 0), line);
    }
}

// What Enter does, or what is to be written.
static char *answer_hint(const First *first, const Desk *desk, const Question *question)
{
    const char *before = *answer_to(first, question);
    if (before)
        return g_strconcat("Enter keeps ", shown(question, before), NULL);
    g_autofree char *otherwise = question->otherwise ? question->otherwise(desk) : NULL;
    return g_strconcat(question->hint, otherwise ? "; Enter alone: " : "",
                       otherwise ? shown(question, otherwise) : "", NULL);
}

static void paint_question(const First *first, const Desk *desk, Page *page)
{
    const Question *question = &questions[first->asked];
    g_autofree char *hint = answer_hint(first, desk, question);
    page->field = ASKS_TEXT;
    page_say(&page->next, "%s", question->prompt);
    page_say(&page->then, "%s", hint);
    if (question->plan)
        paint_plans(first, page);
    else
        paint_answers(first, page);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field goes back"};
}

static void paint_making(const First *first, Page *page)
{
    canvas_put(page->body, 1, 1, 0, style_of(0, 0),
               first->kept
                   ? "The demo shop is being opened."
                   : "The demo shop is being entered, some 750 lines of work: a second or two.");
    page_say(&page->next, "wait a moment");
    page_say(&page->then, "who are you today?");
}

// The path of the store, as a shell takes it: `~/standbook.db`.
static char *store_words(const char *store)
{
    g_autofree char *home = g_strconcat(g_get_home_dir(), G_DIR_SEPARATOR_S, NULL);
    gboolean below = g_str_has_prefix(store, home);
    g_autofree char *path = text_path(below ? store + strlen(home) : store);
    return g_strconcat(below ? "~" G_DIR_SEPARATOR_S : "", path, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const First *first = state;
    (void)typed;
    g_autofree char *store = store_words(desk->book ? book_path(desk->book) : desk->options->store);
    page_say(&page->status, "standbook");
    page_say(&page->head, first->in_demo   ? "Another engine, in the demo"
                          : first->another ? "Another engine"
                                           : "An empty logbook");
    page_say(&page->count, "%s", strlen(store) > 60 ? "" : store);
    if (first->door == DOOR_DEMO)
        paint_making(first, page);
    else if (first->door)
        paint_question(first, desk, page);
    else
        paint_doors(first, page);
}

// Without an error the desk has warned.
static void refuse(First *first, Desk *desk, const GError *error)
{
    if (error || !desk->warning)
        desk_warn(desk, "%s", error ? error->message : "it could not be begun");
    first->door = DOOR_NONE;
    first->asked = 0;
}

// What is entered: who, and of what build; then its first step.
static Go begin(First *first, Desk *desk)
{
    g_autoptr(GError) error = NULL;
    if (begin_engine(desk, &first->answers, &error))
        return go_instead(first->another ? VIEW_STEPS : VIEW_SHOP, NULL);
    refuse(first, desk, error);
    return go(GO_STAY);
}

// The demo takes a moment, in which the screen says so.
static gboolean idle(gpointer state, Desk *desk)
{
    First *first = state;
    g_autoptr(GError) error = NULL;
    if (first->door != DOOR_DEMO || first->made)
        return FALSE;
    first->made = begin_demo(desk, &error);
    if (first->made) {
        g_autofree char *file = demo_path(desk), *shown = text_path(file);
        desk_last(desk, "the demo is kept in %s", shown);
    } else
        refuse(first, desk, error);
    return TRUE;
}

// The demo's shop once it is made; who works here, before the next engine is begun.
static Go wants(gpointer state, Desk *desk)
{
    First *first = state;
    if (first->made)
        return go_instead(VIEW_SHOP, NULL);
    if (!first->another || desk->who)
        return go(GO_STAY);
    if (first->who)
        return go(GO_UP);
    first->who = TRUE;
    return go_open(VIEW_WHO, NULL);
}

// Goes to the next question that this door asks; behind the last one it begins.
static Go ask(First *first, Desk *desk)
{
    while (first->asked < G_N_ELEMENTS(questions) && !is_asked(first, &questions[first->asked]))
        first->asked++;
    return first->asked < G_N_ELEMENTS(questions) ? go(GO_STAY) : begin(first, desk);
}

static Go choose_door(First *first, Desk *desk, const char *typed)
{
    Door door = g_ascii_isdigit(*typed) && !typed[1] ? (Door)(*typed - '1' + (int)first_door(first))
                                                     : DOOR_NONE;
    if (door < first_door(first) || door > DOOR_BLANK)
        desk_warn(desk, first->another ? "there are two doors: 1 or 2"
                                       : "there are three doors: 1, 2 or 3");
    else
        first->door = door;
    return first->door > DOOR_DEMO ? ask(first, desk) : go(GO_STAY);
}

// Whether an odd answer is asked about, which is done once.
static gboolean asks_about(First *first, Desk *desk, const Question *question, const char *text)
{
    gboolean asks = question->is_odd && question->is_odd(text) && g_strcmp0(first->odd, text) != 0;
    if (!asks)
        return FALSE;
    g_free(first->odd);
    first->odd = g_strdup(text);
    g_autofree char *unused = build_free(desk);
    desk_warn(desk,
              "%s looks like a reading, and the %s is asked, such as %s; Enter again takes it",
              text, question->prompt, unused);
    return TRUE;
}

// What was typed as an answer; NULL, perhaps with a warning, if it is none.
static char *read_answer(First *first, Desk *desk, const Question *question, const char *text)
{
    if (!*text)
        return question->otherwise ? question->otherwise(desk) : NULL;
    if (asks_about(first, desk, question, text))
        return NULL;
    g_autoptr(GError) error = NULL;
    g_autofree char *said = question->plan                  ? plan_typed(first->plans, text, &error)
                            : question->fits == person_fits ? initials_typed(text)
                                                            : g_strdup(text);
    if (said && (!question->fits || question->fits(desk, said, &error)))
        return g_steal_pointer(&said);
    desk_warn(desk, "%s", error->message);
    return NULL;
}

// On an empty field what was answered before stays.
static Go answer(First *first, Desk *desk, const char *typed)
{
    const Question *question = &questions[first->asked];
    if (question->plan && strcmp(typed, "0") == 0) {
        guint top = first->top + PLANS_TURN;
        first->top = top < first->plans->len ? top : 0;
        return go(GO_STAY);
    }
    char **answer = G_STRUCT_MEMBER_P(&first->answers, question->offset);
    g_autofree char *text = g_strstrip(g_strdup(typed));
    char *read = !*text && *answer ? g_strdup(*answer) : read_answer(first, desk, question, text);
    if (!read)
        return go(GO_KEEP);
    g_free(*answer);
    *answer = read;
    first->asked++;
    return ask(first, desk);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    First *first = state;
    return first->door ? answer(first, desk, typed) : choose_door(first, desk, typed);
}

// The question before this one; in front of the first, the doors.
static void go_back(First *first)
{
    guint before = first->asked;
    while (before > 0 && !is_asked(first, &questions[before - 1]))
        before--;
    if (before > 0)
        first->asked = before - 1;
    else
        first->door = DOOR_NONE;
    first->asked = first->door ? first->asked : 0;
}

static Go act(gpointer state, Desk *desk, Action action)
{
    First *first = state;
    (void)desk;
    if (action != ACTION_UP || !first->door)
        return go(action == ACTION_UP || action == ACTION_HELP ? GO_DEFAULT : GO_STAY);
    go_back(first);
    return go(GO_STAY);
}

const ViewOps first_view = {.name = "first run",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .enter = enter,
                            .act = act,
                            .idle = idle,
                            .wants = wants};
