// Work that the plan does not have: a step, a check, a group, a part; or other limits for one
// check. Asked in one line each, and entered with the last.
#include "line_words.h"
#include "supposed.h"
#include "view.h"

#include <string.h>

enum { QUESTIONS_MOST = 4 };

typedef struct Addition Addition;

typedef struct {
    const char *label; // among the answers
    struct {
        const char *next, *hint;
        const char *sample;                  // fits as long as the answer is not known
    } questions[QUESTIONS_MOST];             // up to the first without words
    char *(*line)(const Addition *addition); // as a log line
} Sort;

struct Addition {
    const Sort *sort; // NULL: still to be chosen
    char *step;
    char *target, *has; // the check in hand and what limits it has, in words; NULL if none is
    GPtrArray *answers; // char *
    gboolean card;      // a blank card: nothing but checks, without a reason
};

// What was answered, else what would do.
static const char *answer_at(const Addition *addition, guint index)
{
    return index < addition->answers->len ? addition->answers->pdata[index]
                                          : addition->sort->questions[index].sample;
}

static char *check_line(const Addition *addition)
{
    g_autofree char *name = line_quoted(answer_at(addition, 0));
    g_autofree char *why =
        line_quoted(addition->card ? "came up at the bench" : answer_at(addition, 2));
    return g_strdup_printf("add check %s %s in %s: %s", name, why, addition->step,
                           answer_at(addition, 1));
}

static char *part_line(const Addition *addition)
{
    g_autofree char *name = line_quoted(answer_at(addition, 0));
    g_autofree char *why = line_quoted(answer_at(addition, 1));
    return g_strdup_printf("add part %s %s in %s", name, why, addition->step);
}

// A bare count of bolts is their positions.
static char *group_line(const Addition *addition)
{
    const char *bolts = answer_at(addition, 1);
    gboolean count = strspn(bolts, "0123456789") == strlen(bolts);
    g_autofree char *name = line_quoted(answer_at(addition, 0));
    g_autofree char *why = line_quoted(answer_at(addition, 3));
    return g_strdup_printf("add group %s %s in %s: {bolts: %s%s, stages: \"%s\"}", name, why,
                           addition->step, count ? "1.." : "", bolts, answer_at(addition, 2));
}

static char *step_line(const Addition *addition)
{
    g_autofree char *name = line_quoted(answer_at(addition, 0));
    g_autofree char *why = line_quoted(answer_at(addition, 1));
    return g_strdup_printf("add step %s %s behind %s", name, why, addition->step);
}

static char *amend_line(const Addition *addition)
{
    g_autofree char *why = line_quoted(answer_at(addition, 1));
    g_autofree char *source = line_quoted(answer_at(addition, 2));
    return g_strdup_printf("amend %s limits %s %s source %s", addition->target,
                           answer_at(addition, 0), why, source);
}

static const Sort sorts[] = {
    {"check",
     {{"what is measured?", "its name in words: main 3 oil clearance", "it"},
      {"limits", "0.05 to 0.25 mm, max 0.05 mm, mm (no limit known), yes, text; any", "any"},
      {"why?", "the reason, as the sheet prints it", "so"}},
     check_line},
    {"part",
     {{"which part?", "its name in words", "it"},
      {"why?", "the reason, as the sheet prints it", "so"}},
     part_line},
    {"group",
     {{"which bolts?", "their name in words", "it"},
      {"how many?", "4, or their positions: L1..L3/R1..R3", "4"},
      {"stages", "10 > 25 N·m, or 30 > +60°", "25 N·m"},
      {"why?", "the reason, as the sheet prints it", "so"}},
     group_line},
    {"step",
     {{"which step?", "its name in words", "it"},
      {"why?", "the reason, as the sheet prints it", "so"}},
     step_line},
    {"other limits",
     {{"other limits", "write others: 255 to 290 N, max 7 mm", "any"},
      {"why?", "the reason, as the sheet prints it", "so"},
      {"whose word?", "the source: a letter, a data sheet, a person", "so"}},
     amend_line},
};

// The argument: the step; behind a line feed the check in hand, perhaps empty, and behind another
// what limits it has. The step alone: a blank card, where a check is named as it is measured.
static gpointer open(Desk *desk, const char *argument)
{
    Addition *addition = g_new0(Addition, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 3);
    (void)desk;
    addition->answers = g_ptr_array_new_with_free_func(g_free);
    addition->step = g_strdup(parts[0]);
    addition->card = !parts[1];
    addition->sort = addition->card ? &sorts[0] : NULL;
    if (parts[1] && *parts[1]) {
        addition->target = g_strdup(parts[1]);
        addition->has = g_strdup(parts[2] ? parts[2] : "");
    }
    return addition;
}

static void close(gpointer state)
{
    Addition *addition = state;
    g_ptr_array_unref(addition->answers);
    g_free(addition->step);
    g_free(addition->target);
    g_free(addition->has);
    g_free(addition);
}

static guint sorts_offered(const Addition *addition)
{
    return (guint)G_N_ELEMENTS(sorts) - (addition->target ? 0 : 1);
}

static void paint_sorts(const Addition *addition, Page *page)
{
    g_autoptr(GString) answers = g_string_new(NULL);
    for (guint i = 0; i < sorts_offered(addition); i++)
        g_string_append_printf(answers, "%u %s   ", i + 1, sorts[i].label);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page_say(&page->unit, "1 to %u", sorts_offered(addition));
    page_say(&page->next, "add to this build, beside its plan?");
    page_say(&page->then, "%s", answers->str);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leaves it as it is"};
}

// Whether that question is the last one.
static gboolean is_last(const Addition *addition, guint at)
{
    return (addition->card && at == 1) || at + 1 == QUESTIONS_MOST ||
           !addition->sort->questions[at + 1].next;
}

// The hint, behind what it is about where there is room for both.
static void say_hint(Page *page, const char *about, const char *hint)
{
    enum { ROOM = PAGE_WIDTH - 6 };
    gboolean both = g_utf8_strlen(about, -1) + 2 + g_utf8_strlen(hint, -1) <= ROOM;
    page_say(&page->then, "%s%s%s", both ? about : "", both ? ": " : "", hint);
}

static void paint_question(const Addition *addition, Page *page)
{
    guint at = addition->answers->len;
    gboolean amends = addition->sort->line == amend_line;
    const char *hint = addition->sort->questions[at].hint;
    page->ask = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", addition->sort->questions[at].next);
    if (amends && at == 0)
        say_hint(page, addition->has, hint);
    else if (at)
        say_hint(page, amends ? addition->target : answer_at(addition, 0), hint);
    else
        page_say(&page->then, "%s; %s %s", hint,
                 addition->sort->line == step_line ? "it comes behind" : "it is added to",
                 addition->step);
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", is_last(addition, at) ? "enters it" : "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field goes back"};
    if (addition->card && at == 0)
        page_key(page, ACTION_BACK, NULL);
    page_key(page, ACTION_MORE, NULL);
}

// Whether limits end with a digit: they have no unit.
static gboolean is_bare(const char *limits)
{
    gsize length = strlen(limits);
    while (length && limits[length - 1] == ' ')
        length--;
    return length && g_ascii_isdigit(limits[length - 1]);
}

// What limits without a unit come to is said before they are taken: a new check has its unit from
// them alone.
static void say_bare(const Addition *addition, const char *typed, Page *page)
{
    if (addition->sort->line != check_line || addition->answers->len != 1 || !is_bare(typed))
        return;
    page->means = TRUE;
    page_say(&page->then, "a bare number, without a unit; a length is %s mm", typed);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Addition *addition = state;
    (void)desk;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (addition->sort) {
        paint_question(addition, page);
        say_bare(addition, typed, page);
    } else
        paint_sorts(addition, page);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Addition *addition = state;
    (void)desk;
    if (digit >= 1 && digit <= sorts_offered(addition))
        addition->sort = &sorts[digit - 1];
    return go(GO_STAY);
}

static void say_last(Desk *desk, const Addition *addition)
{
    if (addition->sort->line == amend_line)
        desk_last(desk, "amended: %s, %s", addition->target, answer_at(addition, 0));
    else if (addition->sort->line == check_line)
        desk_last(desk, "added: %s, %s", answer_at(addition, 0), answer_at(addition, 1));
    else
        desk_last(desk, "added: %s %s", addition->sort->label, answer_at(addition, 0));
}

// Whether the plan's reader would have what was answered so far; if not, it says why.
static gboolean would_do(const Addition *addition, Desk *desk)
{
    Supposed supposed = {0};
    g_autofree char *line = addition->sort->line(addition);
    supposed_take(&supposed, desk, line);
    if (supposed.problem)
        desk_warn(desk, "%s", supposed.problem);
    gboolean good = !supposed.problem;
    supposed_forget(&supposed);
    return good;
}

// What was typed last stays in the field if the plan's reader will not have it.
static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Addition *addition = state;
    guint at = addition->answers->len;
    if (!addition->sort || !*typed)
        return go(GO_KEEP);
    g_ptr_array_add(addition->answers, g_strdup(typed));
    g_autofree char *line = addition->sort->line(addition);
    if (!is_last(addition, at) && would_do(addition, desk))
        return go(GO_STAY);
    if (is_last(addition, at) && desk_line(desk, line, NULL)) {
        say_last(desk, addition);
        return go(GO_UP);
    }
    g_ptr_array_remove_index(addition->answers, at);
    return go(GO_KEEP);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Addition *addition = state;
    gboolean first = addition->card && !addition->answers->len;
    (void)desk;
    if (action == ACTION_BACK && first) // to the place read last, to strike it or to read it again
        return (Go){.kind = GO_ACT, .action = ACTION_BACK};
    if (action != ACTION_UP || !addition->sort || first)
        return go(GO_DEFAULT);
    if (addition->answers->len)
        g_ptr_array_remove_index(addition->answers, addition->answers->len - 1);
    else
        addition->sort = NULL;
    return go(GO_STAY);
}

const ViewOps add_view = {.name = "add",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .enter = enter,
                          .digit = digit,
                          .act = act};
