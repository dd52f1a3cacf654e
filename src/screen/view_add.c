// Work that the plan does not have: a step, a check, a group, a part; or other limits for one
// check. Asked in one line each, and entered with the last.
#include "addition.h"
#include "bench_work.h"
#include "supposed.h"
#include "view.h"
#include "words.h"

#include <string.h>

enum { HINT_ROOM = PAGE_WIDTH - 6 };

static gpointer open(Desk *desk, const char *argument)
{
    BenchWork work = {0};
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    gboolean card = bench_work(desk, parts[0], &work) && agenda_is_card(&work.agenda);
    return addition_new(argument, card);
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
    page_say(&page->next,
             addition->card ? "add to this card?" : "add to this build, beside its plan?");
    page_say(&page->then, "%s", answers->str);
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] =
        (PageKey){ACTION_UP, "Backspace", addition->named ? "to the name" : "leaves it as it is"};
    if (addition->card)
        page->keys[2] = (PageKey){ACTION_TAKE, "a letter", "names a check"};
}

// The build as it stands; FALSE if it cannot be opened, or its plan has no such step.
static gboolean agenda_of(Desk *desk, const Addition *addition, Agenda *agenda)
{
    BenchWork work = {0};
    gboolean stands = bench_work(desk, addition->step, &work);
    *agenda = work.agenda;
    return stands;
}

// Without its step there is nothing to add to.
static Go wants(gpointer state, Desk *desk)
{
    Agenda agenda;
    return go(agenda_of(desk, state, &agenda) ? GO_STAY : GO_UP);
}

// The hint, behind what it is about where there is room for both.
static void say_hint(Page *page, const char *about, const char *hint)
{
    gboolean both = g_utf8_strlen(about, -1) + 2 + g_utf8_strlen(hint, -1) <= HINT_ROOM;
    page_say(&page->then, "%s%s%s", both ? about : "", both ? ": " : "", hint);
}

// The hint, and where it goes if there is room for that; where a name is typed, in which every
// letter and sign is one of its own, how to leave it.
static void say_where(Page *page, const char *hint, const Addition *addition, Desk *desk)
{
    Agenda agenda;
    gboolean behind = strcmp(addition->sort->label, "step") == 0;
    const PlanStep *step =
        behind && agenda_of(desk, addition, &agenda) ? addition_behind(addition, &agenda) : NULL;
    if (addition_is_naming(addition)) {
        page_say(&page->then, "%s; Backspace leaves", hint);
        return;
    }
    g_autofree char *where = g_strdup_printf("%s; %s %s", hint, addition->sort->where,
                                             step ? step->name : addition->step);
    page_say(&page->then, "%s", g_utf8_strlen(where, -1) <= HINT_ROOM ? where : hint);
}

// What was read last and is outside, as long as nothing more is named: how to do something about
// it.
static void say_fault(const Addition *addition, Desk *desk, const char *typed, Page *page)
{
    static const char ways[] = "-Enter goes back to it, and c concedes; or name the next";
    BenchWork work = {0};
    if (!addition_is_naming(addition) || *typed || !desk->last_seq ||
        !bench_work(desk, addition->step, &work))
        return;
    const Requirement *read = bench_requirement(&work, bench_place_of(&work, desk->last_seq));
    if (!read || read->verdict != VERDICT_FAIL)
        return;
    g_autofree char *title = requirement_title(read);
    g_autofree char *front = front_words(title, HINT_ROOM - 2 - g_utf8_strlen(ways, -1));
    page_say(&page->then, "%s: %s", front, ways);
}

static void paint_keys(const Addition *addition, const Desk *desk, gboolean empty, Page *page)
{
    gboolean last = addition_ends(addition, addition->answers->len);
    if (addition_is_naming(addition) && empty) {
        if (desk->last_seq)
            page_key(page, ACTION_STRIKE, NULL);
        page_key(page, ACTION_PUT_DOWN, NULL);
        page_key(page, ACTION_ON, "close");
        page_key(page, ACTION_MORE, "0 help"); // a letter is one of the name
        page_key(page, ACTION_TAKE, "bolts, part or step");
        return;
    }
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", last ? "enters it" : "next"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "on an empty field goes back"};
    page_key(page, ACTION_MORE, NULL);
}

// `limits · main 3 oil clearance`: the question, behind the first one with what it is about.
static void say_question(const Addition *addition, Page *page)
{
    guint at = addition->answers->len;
    const char *about = addition_amends(addition) ? addition->target : addition_answer(addition, 0);
    page_say(&page->next, "%s%s%s", addition->sort->questions[at].next, at ? " · " : "",
             at ? about : "");
}

static void paint_question(const Addition *addition, Desk *desk, Page *page)
{
    Agenda agenda;
    g_autofree char *keeps =
        agenda_of(desk, addition, &agenda) ? addition_keeps(addition, &agenda) : NULL;
    guint at = addition->answers->len;
    gboolean amends = addition_amends(addition);
    const char *hint = addition->sort->questions[at].hint;
    page->ask = FALSE;
    page->field = addition_is_naming(addition) ? ASKS_NAME : ASKS_TEXT;
    page_say(&page->unit, " ");
    say_question(addition, page);
    const PlanStep *again =
        at && agenda_of(desk, addition, &agenda) ? addition_reads_again(addition, &agenda) : NULL;
    if (again)
        page_say(&page->then, "read again here, as in %s; the reason, as the sheet prints it",
                 again->name);
    else if (keeps)
        page_say(&page->then, "Enter keeps %s; others: 0.05 to 0.25 mm, max 0.05 mm, any", keeps);
    else if (amends && at == 0)
        say_hint(page, addition->has, hint);
    else if (at)
        say_hint(page, amends ? addition->target : addition_answer(addition, 0), hint);
    else
        say_where(page, hint, addition, desk);
}

// Whether limits end with a digit: they have no unit.
static gboolean is_bare(const char *limits)
{
    gsize length = strlen(limits);
    while (length && limits[length - 1] == ' ')
        length--;
    return length && g_ascii_isdigit(limits[length - 1]);
}

// Whether the last of the stages is a figure alone.
static gboolean is_bare_torque(const char *stages)
{
    const char *last = strrchr(stages, '>');
    const char *figure = last ? last + 1 : stages;
    figure += strspn(figure, " ");
    return *figure && strspn(figure, "0123456789. ") == strlen(figure);
}

// Whether limits were asked and what is typed is none, but stages of bolts: `20 lbf ft > 40 >
// +90°`.
static gboolean is_of_bolts(const Addition *addition, const char *typed)
{
    gsize offset = 0;
    g_autoptr(Limits) limits = limits_parse(typed, NULL, &offset, NULL);
    g_autoptr(GPtrArray) stages = limits ? NULL : stages_read(typed, &offset, NULL);
    if (!stages || !addition_is_check(addition) || addition->answers->len != 1)
        return FALSE;
    gboolean turned = FALSE;
    for (guint i = 0; i < stages->len; i++)
        turned = turned || stage_is_angle(((const Stage *)stages->pdata[i])->kind);
    return turned || stages->len > 1;
}

// The way from the limits of a check to bolts.
static void warn_of_bolts(const Addition *addition, Desk *desk)
{
    desk_warn(
        desk,
        "these are stages, which bolts have: empty the field, press Backspace, %s, then %u for "
        "bolts",
        addition->card ? "Enter" : "again Backspace", addition_digit_of_bolts(addition));
}

// What a figure without a unit comes to is said before it is taken: a new check has its unit from
// its limits alone, a torque that of the plan.
static void say_bare(const Addition *addition, Desk *desk, const char *typed, Page *page)
{
    Agenda agenda;
    if (addition_is_check(addition) && addition->answers->len == 1 && is_bare(typed)) {
        page->means = TRUE;
        page_say(&page->then, "a bare number, without a unit; a length is %s mm", typed);
    }
    if (addition_asks_stages(addition) && is_bare_torque(typed) &&
        agenda_of(desk, addition, &agenda)) {
        g_autoptr(Unit) torque = plan_torque_unit(agenda.plan);
        page->means = TRUE;
        page_say(&page->then, "a torque without its unit is in %s here", unit_text(torque));
    }
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Addition *addition = state;
    page->means = FALSE;
    memset(page->keys, 0, sizeof page->keys);
    if (addition->sort) {
        paint_question(addition, desk, page);
        paint_keys(addition, desk, !*typed, page);
        say_bare(addition, desk, typed, page);
        say_fault(addition, desk, typed, page);
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

// Whether a lot was said where it is asked which sort of number is.
static gboolean is_lot_itself(Addition *addition, Desk *desk)
{
    static const char *const sorts[] = {"lot", "serial", "neither", NULL};
    const char *said = addition_answer(addition, addition->answers->len - 1);
    if (strcmp(addition->sort->label, "part") != 0 || addition->answers->len != 2 ||
        g_strv_contains(sorts, said))
        return FALSE;
    desk_warn(desk, "lot or serial, Enter: neither; which one is asked when it is fitted");
    g_ptr_array_set_size(addition->answers, 1);
    return TRUE;
}

static const char read_again[] = "read again"; // instead of limits

// A name that the build has already, and that cannot be asked for once more here: the way to it.
static gboolean is_known(Addition *addition, Desk *desk, const Agenda *agenda)
{
    const PlanCheck *check = addition_is_check(addition) && addition->answers->len == 1
                                 ? addition_named_check(addition, agenda)
                                 : NULL;
    if (!check || addition_reads_again(addition, agenda))
        return FALSE;
    if (strcmp(check->step->name, addition->step) == 0)
        desk_warn(desk, "%s is a check of this step already; %s back to it", check->name,
                  addition->card ? "-Enter goes" : "Backspace leaves, then go");
    else
        desk_warn(desk, "%s is a check of S%02u %s already; e, %u Enter opens it", check->name,
                  check->step->index + 1, check->step->name, check->step->index + 1);
    g_ptr_array_set_size(addition->answers, 0);
    return TRUE;
}

// What was typed last stays in the field if the plan's reader will not have it.
static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Addition *addition = state;
    guint at = addition->answers->len;
    Agenda agenda;
    if (!agenda_of(desk, addition, &agenda))
        return go(GO_UP);
    if (is_of_bolts(addition, typed)) {
        warn_of_bolts(addition, desk);
        return go(GO_KEEP);
    }
    if (addition_is_naming(addition) && !*typed) { // not a check: what else is added
        addition->sort = NULL;
        return go(GO_STAY);
    }
    char *answer = *typed ? g_strdup(typed) : addition_alone(addition, &agenda);
    if (!addition->sort || !answer) {
        g_free(answer);
        return go(GO_KEEP);
    }
    g_ptr_array_add(addition->answers, answer);
    if (is_lot_itself(addition, desk) || is_known(addition, desk, &agenda))
        return go(GO_KEEP);
    guint before = at;
    if (at == 0 && addition_reads_again(addition, &agenda)) {
        g_ptr_array_add(addition->answers, g_strdup(read_again));
        at++;
    }
    g_autofree char *line = addition->sort->line(addition, &agenda);
    if (!addition_ends(addition, at) && would_do(desk, line))
        return go(GO_STAY);
    if (addition_ends(addition, at) && desk_line(desk, line, NULL)) {
        g_autofree char *said = addition_said(addition);
        desk_last(desk, "%s", said);
        return go(GO_UP);
    }
    g_ptr_array_set_size(addition->answers, (gint)before);
    return go(GO_KEEP);
}

// What is done at the place read last, or to the card as a whole, is done there.
static gboolean is_of_the_bench(Action action)
{
    static const Action there[] = {ACTION_STRIKE, ACTION_BACK,    ACTION_ON,
                                   ACTION_NOTE,   ACTION_WHY,     ACTION_GAUGE,
                                   ACTION_AGAIN,  ACTION_CONCEDE, ACTION_BUILD};
    for (gsize i = 0; i < G_N_ELEMENTS(there); i++)
        if (there[i] == action)
            return TRUE;
    return FALSE;
}

// The answer before; of what is read again its name, for nothing else was asked.
static void take_back(Addition *addition, Desk *desk)
{
    Agenda agenda;
    gboolean again = agenda_of(desk, addition, &agenda) && addition->answers->len == 2 &&
                     addition_reads_again(addition, &agenda);
    g_ptr_array_set_size(addition->answers, again ? 0 : (gint)addition->answers->len - 1);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Addition *addition = state;
    if (addition_is_naming(addition) && is_of_the_bench(action))
        return (Go){.kind = GO_ACT, .action = action};
    gboolean sorts = !addition->sort;
    if (action != ACTION_UP || (sorts && !addition->named) || addition_is_naming(addition))
        return go(GO_DEFAULT);
    if (sorts)
        addition_begin_naming(addition);
    else if (addition->answers->len)
        take_back(addition, desk);
    else
        addition->sort = NULL;
    return go(GO_STAY);
}

// A check of a card is what is measured most: who types its name where sorts are offered means it.
static gboolean letter(gpointer state)
{
    Addition *addition = state;
    gboolean begins = addition->card && !addition->sort;
    if (begins)
        addition_begin_naming(addition);
    return begins;
}

const ViewOps add_view = {.name = "add",
                          .small = TRUE,
                          .open = open,
                          .close = close,
                          .paint = paint,
                          .wants = wants,
                          .enter = enter,
                          .digit = digit,
                          .letter = letter,
                          .act = act,
                          .acts = {ACTION_ON, ACTION_GAUGE, ACTION_NOTE, ACTION_CONCEDE, ACTION_WHY,
                                   ACTION_AGAIN, ACTION_BUILD}};
