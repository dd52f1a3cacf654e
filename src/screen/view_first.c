// An empty logbook: a demo shop, an engine with a plan, or an engine without one.
#include "beginning.h"
#include "view.h"
#include "words.h"

#include <standbook/base/text.h>
#include <string.h>

typedef enum { DOOR_NONE, DOOR_DEMO, DOOR_PLAN, DOOR_BLANK } Door;

typedef struct {
    Door door;
    GPtrArray *plans; // char *: files that hold a plan without fault
    Beginning answers;
    guint asked;   // questions answered so far
    gboolean made; // the demo, so that its shop can be opened
} First;

// What is asked behind doors 2 and 3, one line each.
typedef struct {
    Door least;         // doors from this one on do not ask it
    const char *prompt; // what NEXT says
    const char *hint;
    gsize offset;                                         // of the answer in Beginning
    gboolean (*fits)(const char *answer, GError **error); // NULL: anything does
} Question;

static const Question questions[] = {
    {DOOR_BLANK, "which plan?", NULL, G_STRUCT_OFFSET(Beginning, plan), NULL},
    {DOOR_BLANK + 1, "initials, name", "two to four capitals, then your name: TB Tess Bell",
     G_STRUCT_OFFSET(Beginning, person), person_fits},
    {DOOR_BLANK + 1, "engine number", "as it is stamped on the block",
     G_STRUCT_OFFSET(Beginning, serial), NULL},
    {DOOR_BLANK + 1, "whose is it?", "the owner's name", G_STRUCT_OFFSET(Beginning, owner), NULL},
    {DOOR_BLANK + 1, "job number", "what you call this job: the build's number, such as B-1",
     G_STRUCT_OFFSET(Beginning, build), word_fits},
};

static char *const *answer_to(const First *first, const Question *question)
{
    return G_STRUCT_MEMBER_P(&first->answers, question->offset);
}

static gpointer open(Desk *desk, const char *argument)
{
    First *first = g_new0(First, 1);
    (void)desk;
    (void)argument;
    first->plans = plans_found();
    return first;
}

static void close(gpointer state)
{
    First *first = state;
    g_ptr_array_unref(first->plans);
    beginning_clear(&first->answers);
    g_free(first);
}

static const char *const doors[] = {
    "",
    " There is nothing to set up. What is on the stand?",
    "",
    "  1   a demo shop          Three engines and more, one in the middle of a step.",
    "                           Kept apart from your work: you can break nothing.",
    "",
    "  2   an engine, a plan    Steps and limits for its family, read from a file.",
    "",
    "",
    "  3   an engine, no plan   A blank card: measure now, name checks as you go.",
    "",
    " A reading is its digits and Enter. It is judged at once and never lost:",
    "",
    "       0.041 ±.005  √ pass   0.030 ├──▒▒█▒▒────────┤ 0.065",
    "",
    " The maker's current service data governs. This is your workshop's record.",
};

static void paint_doors(const First *first, Page *page)
{
    static const guint found_row = 7;
    for (gsize i = 0; i < G_N_ELEMENTS(doors); i++)
        canvas_put(page->body, (guint)i, 1, 0, style_of(0, 0), doors[i]);
    g_autofree char *base = first->plans->len ? g_path_get_basename(first->plans->pdata[0]) : NULL;
    g_autofree char *found = first->plans->len
                                 ? g_strdup_printf("%u plan%s found: %s%s", first->plans->len,
                                                   first->plans->len > 1 ? "s" : "", base,
                                                   first->plans->len > 1 ? ", …" : "")
                                 : g_strdup("None here; start in the folder where one lies.");
    canvas_put(page->body, found_row, 28, 0, style_of(0, 0), found);
    page->field = ASKS_LINE;
    page_say(&page->next, "1, 2 or 3?");
    page_say(&page->then, "your initials, then the first reading: about a minute");
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "chooses"};
    page->keys[1] = (PageKey){ACTION_UP, "q", "leave, nothing to save"};
    page->keys[2] = (PageKey){ACTION_HELP, "?", "help"};
}

static void paint_plans(const First *first, Page *page)
{
    for (guint i = 0; i < first->plans->len; i++) {
        g_autofree char *line = g_strdup_printf("%3u   %s", i + 1, (char *)first->plans->pdata[i]);
        canvas_put(page->body, 3 + i, 1, 0, style_of(0, 0), line);
    }
}

// All that was answered, also behind the question that one went back to.
static void paint_answers(const First *first, Page *page)
{
    for (guint i = 0; i < G_N_ELEMENTS(questions); i++) {
        const char *answer = *answer_to(first, &questions[i]);
        g_autofree char *line =
            g_strdup_printf(" %-16s %s", questions[i].prompt, answer ? answer : "");
        if (answer && first->door < questions[i].least)
            canvas_put(page->body, 1 + i, 1, 0, style_of(0, 0), line);
    }
}

static void paint_question(const First *first, Page *page)
{
    const Question *question = &questions[first->asked];
    page->field = question->hint ? ASKS_TEXT : ASKS_LINE;
    page_say(&page->next, "%s", question->prompt);
    if (!question->hint) {
        page_say(&page->then, "the line of a plan");
        paint_plans(first, page);
    } else {
        const char *before = *answer_to(first, question);
        page_say(&page->then, "%s%s", before ? "Enter keeps " : "",
                 before ? before : question->hint);
        paint_answers(first, page);
    }
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field goes back"};
}

static void paint_making(Page *page)
{
    canvas_put(page->body, 1, 1, 0, style_of(0, 0),
               "The demo shop is being entered, some 750 lines of work: it takes a second or two.");
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
    g_autofree char *store = store_words(desk->options->store);
    page_say(&page->status, "standbook");
    page_say(&page->head, "An empty logbook");
    page_say(&page->count, "%s", strlen(store) > 60 ? "" : store);
    if (first->door == DOOR_DEMO)
        paint_making(page);
    else if (first->door)
        paint_question(first, page);
    else
        paint_doors(first, page);
}

static void refuse(First *first, Desk *desk, const GError *error)
{
    desk_warn(desk, "%s", error ? error->message : "it could not be begun");
    first->door = DOOR_NONE;
    first->asked = 0;
}

// What is entered: who, and of what build; then its first step.
static Go begin(First *first, Desk *desk)
{
    g_autoptr(GError) error = NULL;
    if (begin_engine(desk, &first->answers, &error))
        return go_instead(VIEW_SHOP, NULL);
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
        g_autofree char *folder = g_path_get_dirname(desk->options->store);
        g_autofree char *file = g_build_filename(folder, "demo.db", NULL), *shown = text_path(file);
        desk_last(desk, "the demo is kept in %s", shown);
    } else
        refuse(first, desk, error);
    return TRUE;
}

static Go wants(gpointer state, Desk *desk)
{
    const First *first = state;
    (void)desk;
    return first->made ? go_instead(VIEW_SHOP, NULL) : go(GO_STAY);
}

// Goes to the next question that this door asks; behind the last one it begins.
static Go ask(First *first, Desk *desk)
{
    while (first->asked < G_N_ELEMENTS(questions) && first->door >= questions[first->asked].least)
        first->asked++;
    return first->asked < G_N_ELEMENTS(questions) ? go(GO_STAY) : begin(first, desk);
}

static Go choose_door(First *first, Desk *desk, const char *typed)
{
    if (strlen(typed) != 1 || *typed < '1' || *typed > '3') {
        desk_warn(desk, "there are three doors: 1, 2 or 3");
        return go(GO_STAY);
    }
    first->door = (Door)(*typed - '0');
    if (first->door == DOOR_PLAN && first->plans->len == 0) {
        first->door = DOOR_NONE;
        desk_warn(desk, "no plan lies in this folder; take 3, or start where one lies");
        return go(GO_STAY);
    }
    return first->door == DOOR_DEMO ? go(GO_STAY) : ask(first, desk);
}

static Go answer(First *first, Desk *desk, const char *typed)
{
    const Question *question = &questions[first->asked];
    char **answer = G_STRUCT_MEMBER_P(&first->answers, question->offset);
    g_autofree char *text = g_strstrip(g_strdup(typed));
    if (!*text && *answer) { // it was answered before
        first->asked++;
        return ask(first, desk);
    }
    guint line = question->hint ? 0 : (guint)g_ascii_strtoull(text, NULL, 10);
    if (!*text)
        return go(GO_KEEP);
    if (!question->hint && (line < 1 || line > first->plans->len)) {
        desk_warn(desk, "there is no line %s; the list has 1 to %u", text, first->plans->len);
        return go(GO_KEEP);
    }
    g_autoptr(GError) error = NULL;
    g_autofree char *person = question->fits == person_fits ? initials_typed(text) : NULL;
    if (question->fits && !question->fits(person ? person : text, &error)) {
        desk_warn(desk, "%s", error->message);
        return go(GO_KEEP);
    }
    g_free(*answer);
    *answer = g_strdup(line ? first->plans->pdata[line - 1] : person ? person : text);
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
    while (before > 0 && first->door >= questions[before - 1].least)
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
