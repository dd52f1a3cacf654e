// Work that the plan does not have: a step, a check, a group, a part; or other limits for one
// check. Asked in one line each, and entered with the last.
#include "addition.h"
#include "bench_work.h"
#include "supposed.h"
#include "view.h"

#include <string.h>

enum { HINT_ROOM = PAGE_WIDTH - 6 };

static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    return addition_new(argument);
}

static void close(gpointer state)
{
    addition_free(state);
}

static void paint_sorts(const Addition *addition, Page *page)
{
    g_autoptr(GString) answers = g_string_new(NULL);
    guint offered = 0;
    for (const Sort *sort; (sort = addition_sort(addition, offered));)
        g_string_append_printf(answers, "%u %s   ", ++offered, sort->label);
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    page_say(&page->unit, "1 to %u", offered);
    page_say(&page->next, "add to this build, beside its plan?");
    page_say(&page->then, "%s", answers->str);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "leaves it as it is"};
}

// The build as it stands; its plan must have the step.
static Agenda agenda_of(Desk *desk, const Addition *addition)
{
    BenchWork work = {0};
    bench_work(desk, addition->step, &work);
    return work.agenda;
}

// The hint, behind what it is about where there is room for both.
static void say_hint(Page *page, const char *about, const char *hint)
{
    gboolean both = g_utf8_strlen(about, -1) + 2 + g_utf8_strlen(hint, -1) <= HINT_ROOM;
    page_say(&page->then, "%s%s%s", both ? about : "", both ? ": " : "", hint);
}

// The hint, and where it goes if there is room for that.
static void say_where(Page *page, const char *hint, const Addition *addition)
{
    g_autofree char *where =
        g_strdup_printf("%s; %s %s", hint, addition->sort->where, addition->step);
    page_say(&page->then, "%s", g_utf8_strlen(where, -1) <= HINT_ROOM ? where : hint);
}

static void paint_question(const Addition *addition, Desk *desk, Page *page)
{
    const Agenda agenda = agenda_of(desk, addition);
    g_autofree char *keeps = addition_keeps(addition, &agenda);
    guint at = addition->answers->len;
    gboolean amends = addition_amends(addition);
    const char *hint = addition->sort->questions[at].hint;
    page->ask = FALSE;
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "%s", addition->sort->questions[at].next);
    if (keeps)
        page_say(&page->then, "Enter keeps %s; others: 0.05 to 0.25 mm, max 0.05 mm, any", keeps);
    else if (amends && at == 0)
        say_hint(page, addition->has, hint);
    else if (at)
        say_hint(page, amends ? addition->target : addition_answer(addition, 0), hint);
    else
        say_where(page, hint, addition);
    page->keys[0] =
        (PageKey){ACTION_TAKE, "Enter", addition_ends(addition, at) ? "enters it" : "next"};
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
    if (!addition_is_check(addition) || addition->answers->len != 1 || !is_bare(typed))
        return;
    page->means = TRUE;
    page_say(&page->then, "a bare number, without a unit; a length is %s mm", typed);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Addition *addition = state;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (addition->sort) {
        paint_question(addition, desk, page);
        say_bare(addition, typed, page);
    } else
        paint_sorts(addition, page);
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Addition *addition = state;
    (void)desk;
    if (digit)
        addition->sort = addition_sort(addition, digit - 1);
    return go(GO_STAY);
}

// Whether the plan's reader would have what was answered so far; if not, it says why.
static gboolean would_do(Desk *desk, const char *line)
{
    Supposed supposed = {0};
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
    const Agenda agenda = agenda_of(desk, addition);
    char *answer = *typed ? g_strdup(typed) : addition_alone(addition, &agenda);
    if (!addition->sort || !answer) {
        g_free(answer);
        return go(GO_KEEP);
    }
    g_ptr_array_add(addition->answers, answer);
    g_autofree char *line = addition->sort->line(addition, &agenda);
    if (!addition_ends(addition, at) && would_do(desk, line))
        return go(GO_STAY);
    if (addition_ends(addition, at) && desk_line(desk, line, NULL)) {
        g_autofree char *said = addition_said(addition);
        desk_last(desk, "%s", said);
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
