// One build: its steps, their verdicts, and which to go on with.
#include "beside.h"
#include "clock_line.h"
#include "step_next.h"
#include "telling.h"
#include "to_place.h"
#include "view.h"
#include "widget_groups.h"
#include "words.h"

#include <standbook/work/gate.h>
#include <standbook/work/summary.h>
#include <stdlib.h>
#include <string.h>

enum { ROW_SUM = 0, ROW_PHASES = 1, ROW_COLUMNS = 3, ROW_STEPS = 4, TURN_ROWS = 10 };

// Columns. Two who signed in another year just fit: `MO JT 19 Mar 2024`.
enum { STEP = 2, VERDICT = 30, SIGNED = 49, WHY = 67 };

typedef struct {
    char *wanted; // what to open once it is known who works; NULL for none
    gint at;      // the step chosen by arrows, from 0; -1: the one to go on with
} Steps;

// What it is that is wrong, in a few words: `W2 is wrong`, `after S05`, `high: piston clearance 4`.
static char *why_words(const Told *told, const Summary *summary)
{
    const Entry *news =
        summary->verdict == VERDICT_IN_DOUBT ? wrong_tool(&told->agenda, summary->first) : NULL;
    return news ? g_strdup_printf("%s is wrong", wrong_tool_label(told->taken, news))
                : summary_why(&told->agenda, summary);
}

static void paint_step(const Told *told, Page *page, guint row, const PlanStep *step, gboolean here)
{
    static const Style plain = {0, 0}, bold = {TYPE_BOLD, 0};
    Summary summary = summary_step(&told->agenda, step);
    g_autofree char *words = step_words(step), *count = summary_count(&summary);
    g_autofree char *signature = summary_signed(&summary, told->taken, told->telling.now);
    g_autofree char *why = why_words(told, &summary);
    gboolean marked = summary.verdict == VERDICT_FAIL || summary.verdict == VERDICT_IN_DOUBT;
    canvas_put(page->body, row, 0, 0, bold, here ? " >" : "");
    canvas_put(page->body, row, STEP, VERDICT - STEP - 1, here ? bold : plain, words);
    canvas_put(page->body, row, VERDICT, 0, verdict_style(summary.verdict),
               verdict_mark(summary.verdict, REASON_NONE, NULL));
    canvas_put_right(page->body, row, SIGNED - 2, plain, count);
    canvas_put(page->body, row, SIGNED, WHY - SIGNED - 1, plain, *signature ? signature : "-");
    canvas_put(page->body, row, WHY, PAGE_WIDTH - WHY, marked ? bold : plain, why);
}

// `A √  B √  C ◆`: the headings of the plan in turn, each by a letter and its heaviest verdict.
static void paint_phases(const Told *told, Page *page)
{
    g_autoptr(GPtrArray) phases = summary_phases(told->agenda.plan);
    guint column = 2;
    for (guint i = 0; i < phases->len && i < 26; i++) {
        Summary phase = summary_phase(&told->agenda, phases->pdata[i]);
        g_autofree char *mark =
            g_utf8_substring(verdict_mark(phase.verdict, REASON_NONE, NULL), 0, 1);
        const char letter[] = {(char)('A' + i), ' ', '\0'};
        column = canvas_put(page->body, ROW_PHASES, column, 0, style_of(0, 0), letter);
        column =
            canvas_put(page->body, ROW_PHASES, column, 0, verdict_style(phase.verdict), mark) + 2;
    }
}

// What the letters of the phases stand for. Returns the row behind.
static guint put_phases(Canvas *canvas, guint row, const Told *told)
{
    enum { NAME = 10 }; // column
    canvas_put(canvas, row, 1, 0, style_of(TYPE_BOLD, 0), "phases");
    canvas_put_right(canvas, row++, canvas->width - 1, style_of(TYPE_BOLD, 0), "steps whole");
    g_autoptr(GPtrArray) phases = summary_phases(told->agenda.plan);
    for (guint i = 0; i < phases->len; i++, row++) {
        Summary phase = summary_phase(&told->agenda, phases->pdata[i]);
        g_autofree char *words = g_strdup_printf("%c  %s", 'A' + (gint)(i % 26), phase.name);
        g_autofree char *done = g_strdup_printf("%u of %u", phase.done, phase.steps);
        canvas_put(canvas, row, 1, 9, verdict_style(phase.verdict),
                   verdict_mark(phase.verdict, REASON_NONE, NULL));
        guint room = canvas->width - 2 - NAME - canvas_text_width(canvas, done);
        canvas_put(canvas, row, NAME, room, style_of(0, 0), words);
        canvas_put_right(canvas, row, canvas->width - 1, style_of(0, 0), done);
    }
    return row;
}

// A step as the list has it, uncut. Returns the row behind.
static guint put_step(Canvas *canvas, const Told *told, const PlanStep *step)
{
    Summary summary = summary_step(&told->agenda, step);
    guint optional = gate_optional(summary.counts, summary.left);
    g_autofree char *words = step_words(step), *counts = tally_words(summary.counts, optional);
    g_autofree char *signature = summary_signed(&summary, told->taken, told->telling.now);
    g_autofree char *signing = *signature ? g_strconcat("signed ", signature, NULL) : g_strdup("");
    g_autofree char *why = why_words(told, &summary);
    const char *const lines[] = {counts, why, signing};
    guint row = 2;
    canvas_put(canvas, 0, 1, 0, style_of(TYPE_BOLD, 0), words);
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
        if (*lines[i])
            row = canvas_wrap(canvas, row, 1, canvas->width - 2, style_of(0, 0), lines[i]);
    return row;
}

// At the right of a wide screen: the step chosen, the phases, the newest entries.
static void paint_detail(const Told *told, Desk *desk, const PlanStep *here, Page *page)
{
    g_autoptr(Canvas) canvas = beside_begin(page);
    if (!canvas)
        return;
    guint row = here ? put_step(canvas, told, here) + 1 : 0;
    row = put_phases(canvas, row, told);
    beside_end(page, canvas, row, desk_build(desk), desk->now);
}

// What `after` or HELD means: of the step chosen, else of the first that waits for one; NULL where
// none is.
static char *held_words(const Told *told, const PlanStep *here)
{
    const GPtrArray *steps = told->agenda.plan->steps;
    char *words = here ? summary_held(&told->agenda, here) : NULL;
    for (guint i = 0; i < steps->len && !words; i++)
        words = summary_held(&told->agenda, steps->pdata[i]);
    return words;
}

// The story of a tool that was found wrong, as long as it puts something in doubt; else of one that
// is late for its calibration; else of what is held.
static void say_remark(const Told *told, const PlanStep *here, Page *page)
{
    const GPtrArray *all = told->agenda.assessment->requirements;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        const Entry *news = !made->withdrawn && made->verdict == VERDICT_IN_DOUBT
                                ? wrong_tool(&told->agenda, i)
                                : NULL;
        if (!news)
            continue;
        g_autofree char *words = wrong_tool_words(told->taken, news, told->telling.now);
        page_say(&page->remark,
                 "%s\nDo again what it was used for, or uphold it: u where it is in doubt.", words);
        return;
    }
    for (guint i = 0; i < all->len && !page->remark; i++)
        page->remark = late_tool_words(&told->agenda, told->taken, i, told->telling.now);
    if (!page->remark)
        page->remark = held_words(told, here);
}

static const PlanStep *chosen(const Steps *steps, const Agenda *agenda)
{
    const GPtrArray *all = agenda->plan->steps;
    const PlanStep *next = step_next(agenda);
    if (steps->at >= 0 && (guint)steps->at < all->len)
        return all->pdata[steps->at];
    return next || !agenda_is_card(agenda) ? next : all->pdata[all->len - 1]; // more is named there
}

static void paint_heads(const Told *told, Page *page)
{
    static const struct {
        guint column;
        const char *word;
    } heads[] = {{STEP, "step"}, {VERDICT, "verdict"}, {SIGNED, "signed"}, {WHY, "why"}};
    const Assessment *assessment = told->agenda.assessment;
    g_autofree char *counts = build_tally_words(assessment);
    guint asked = assessment->planned + assessment->added - assessment->withdrawn;
    g_autofree char *sum = g_strdup_printf("%u asked = %s", asked, counts);
    canvas_put(page->body, ROW_SUM, 2, 0, style_of(0, 0), sum);
    paint_phases(told, page);
    for (gsize i = 0; i < G_N_ELEMENTS(heads); i++)
        canvas_put(page->body, ROW_COLUMNS, heads[i].column, 0, style_of(TYPE_UNDERLINE, 0),
                   heads[i].word);
    canvas_put_right(page->body, ROW_COLUMNS, SIGNED - 2, style_of(TYPE_UNDERLINE, 0), "asked");
    page->heads = ROW_STEPS;
}

static void paint_steps(const Told *told, Page *page, const PlanStep *here)
{
    const GPtrArray *steps = told->agenda.plan->steps;
    guint is_signed = 0;
    paint_heads(told, page);
    for (guint i = 0; i < steps->len; i++) {
        const PlanStep *step = steps->pdata[i];
        is_signed += agenda_is_signed(&told->agenda, step) ? 1 : 0;
        paint_step(told, page, ROW_STEPS + i, step, step == here);
        if (step == here)
            page->focus = ROW_STEPS + i + 3;
    }
    page_say(&page->count, "%u of %u steps signed", is_signed, steps->len);
    say_remark(told, here, page);
}

// What is next in the step; then how far it has come there.
static void say_next(const Told *told, const PlanStep *here, Page *page)
{
    guint place;
    g_autofree char *words = step_next_words(&told->agenda, here, &place);
    g_autofree char *progress =
        place == AGENDA_NOWHERE ? NULL : summary_progress(&told->agenda, place);
    page_say(&page->next, "%s", words);
    if (progress)
        page_say(&page->then, "%s", progress);
}

// What keeps the next gate from being complete is a key away; what stands in front gives way.
static void say_gate(const Told *told, Page *page)
{
    enum { ROOM = PAGE_WIDTH - 6 }; // columns of the row
    const GateCount *gate = told->agenda.assessment->gates->pdata[gate_next(&told->agenda)];
    g_autofree char *left = gate_left_words(gate), *then = g_steal_pointer(&page->then);
    g_autofree char *proof = g_strconcat(then ? "     " : "", "w proof: ", left, NULL);
    g_autofree char *front = front_words(then ? then : "", ROOM - g_utf8_strlen(proof, -1));
    page_say(&page->then, "%s%s", front, proof);
}

// On a blank card nothing was planned that could be missing; what is measured is named there.
static void say_card(const Told *told, const PlanStep *here, Page *page)
{
    if (step_next(&told->agenda) && agenda_has_work(&told->agenda, here)) {
        say_next(told, here, page);
        g_autofree char *then = g_steal_pointer(&page->then);
        page_say(&page->then, "%s     a names one more check", then ? then : "");
        return;
    }
    page_say(&page->next, "a: name what you measure");
    page_say(&page->then, "such as main 3 oil clearance; its limits, then its reading");
}

static gpointer open(Desk *desk, const char *argument)
{
    Steps *steps = g_new0(Steps, 1);
    (void)desk;
    (void)argument;
    steps->at = -1;
    return steps;
}

static void close(gpointer state)
{
    Steps *steps = state;
    g_free(steps->wanted);
    g_free(steps);
}

// Whether nothing of it is left: who opens it looks at it, and enters nothing.
static gboolean is_whole(const Agenda *agenda, const PlanStep *step)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->step == step && !made->withdrawn && requirement_is_left(made))
            return FALSE;
    }
    return !agenda_is_card(agenda);
}

// Opens the bench, or first what is needed before it: who works, the cautions. `there`: the step;
// behind a line feed the place to begin at, else what is open.
static Go open_at(Steps *steps, Desk *desk, const char *there)
{
    g_auto(GStrv) parts = g_strsplit(there, "\n", 2);
    const PlanStep *step = plan_step(session_plan(desk_build(desk)), parts[0]);
    if (!step)
        return go(GO_STAY);
    if (!desk->who) {
        g_free(steps->wanted);
        steps->wanted = g_strdup(there);
        return go_open(VIEW_WHO, NULL);
    }
    Standing standing = standing_of(desk_build(desk));
    if (standing.in_hand && standing.step == step)
        return go_open(VIEW_BENCH, g_strdup(there));
    g_auto(Told) told = {0};
    gboolean known = told_init(&told, desk);
    if (known && is_whole(&told.agenda, step))
        return go_open(VIEW_CLOSING, g_strdup(step->name));
    if (known && step_is_cautioned(&told.agenda, step, desk->now))
        return go_open(VIEW_CAUTION, g_strdup(there));
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    return desk_line(desk, line, NULL) ? go_open(VIEW_BENCH, g_strdup(there)) : go(GO_KEEP);
}

// Where NEXT says: what is to be done again there, else what is open in the step.
static Go open_next(Steps *steps, Desk *desk, const Agenda *agenda, const PlanStep *step)
{
    g_autofree char *again = step_again(agenda, step);
    g_autofree char *there = g_strconcat(step->name, again ? "\n" : NULL, again, NULL);
    return open_at(steps, desk, there);
}

// Work beside the plan in that step; on a blank card the bench asks for it by itself.
static Go add(Steps *steps, Desk *desk, const Agenda *agenda, const PlanStep *step)
{
    if (!desk->who || agenda_is_card(agenda))
        return open_at(steps, desk, step->name);
    return go_open(VIEW_ADD, g_strdup_printf("%s\n\n", step->name));
}

static const PlanStep *last_step(const Plan *plan)
{
    return plan->steps->pdata[plan->steps->len - 1];
}

// The step of a blank card that was never taken up: there is nothing to choose. NULL for any other
// build.
static char *card_step(Desk *desk)
{
    g_auto(Told) told = {0};
    if (standing_of(desk_build(desk)).step || !told_init(&told, desk) ||
        !agenda_is_card(&told.agenda))
        return NULL;
    const PlanStep *step = step_next(&told.agenda);
    return step ? g_strdup(step->name) : NULL;
}

// A gate that has become complete by what was entered here is to be sealed; asked once. Later it is
// asked on the page of its proof.
static Go wants(gpointer state, Desk *desk)
{
    Steps *steps = state;
    Session *session = desk_build(desk);
    if (session && desk->who && !steps->wanted)
        steps->wanted = card_step(desk);
    g_autofree char *wanted = g_steal_pointer(&steps->wanted);
    if (wanted && session && desk->who)
        return open_at(steps, desk, wanted);
    guint known = session ? session_entries(session)->len : 0;
    gboolean asks = desk->who && desk->last_first && desk->seal_asked != known;
    const GPtrArray *gates = asks ? session_assessment(session)->gates : NULL;
    for (guint i = 0; gates && i < gates->len; i++) {
        const GateCount *gate = gates->pdata[i];
        if (gate->left || gate_is_sealed(gate))
            continue;
        desk->seal_asked = known;
        return go_open(VIEW_SEAL, g_strdup(gate->name));
    }
    return go(GO_STAY);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Steps *steps = state;
    g_auto(Told) told = {0};
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk, NULL);
    page_say(&page->head, "Build");
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    if (told_init(&told, desk)) {
        const PlanStep *here = chosen(steps, &told.agenda);
        paint_steps(&told, page, here);
        paint_detail(&told, desk, here, page);
        if (agenda_is_card(&told.agenda))
            say_card(&told, here, page);
        else {
            say_next(&told, here, page);
            say_gate(&told, page);
        }
    }
    page->keys[0] = (PageKey){ACTION_TAKE, "number Enter", "opens step"};
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_ON, "NEXT");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_HELP, NULL);
}

static Go move(gpointer state, Desk *desk, gint direction)
{
    Steps *steps = state;
    g_auto(Told) told = {0};
    if (!told_init(&told, desk))
        return go(GO_STAY);
    const PlanStep *here = chosen(steps, &told.agenda);
    gint last = (gint)told.agenda.plan->steps->len - 1;
    gint from = here ? (gint)here->index : direction > 0 ? -1 : last + 1;
    steps->at = CLAMP(from + direction, 0, last);
    return go(GO_STAY);
}

// More of the list, and behind its end the beginning again.
static Go turn(Steps *steps, Desk *desk, const Plan *plan)
{
    gint before = steps->at;
    move(steps, desk, TURN_ROWS);
    if (steps->at == before || before == (gint)plan->steps->len - 1)
        steps->at = 0;
    return go(GO_STAY);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Session *session = desk_build(desk);
    const Plan *plan = session ? session_plan(session) : NULL;
    guint64 number = g_ascii_strtoull(typed, NULL, 10);
    if (plan && strcmp(typed, "0") == 0)
        return turn(state, desk, plan);
    if (!plan || number < 1 || number > plan->steps->len) {
        desk_warn(desk, "there is no step %s; the plan has 1 to %u", typed,
                  plan ? plan->steps->len : 0);
        return go(GO_KEEP);
    }
    return open_at(state, desk, ((const PlanStep *)plan->steps->pdata[number - 1])->name);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    g_auto(Told) told = {0};
    if (!told_init(&told, desk))
        return go(GO_DEFAULT);
    const PlanStep *here = chosen(state, &told.agenda);
    switch (action) {
    case ACTION_ON:
        return here ? open_next(state, desk, &told.agenda, here) : go(GO_DEFAULT);
    case ACTION_ADD: // of a build that is whole, at its end
        return add(state, desk, &told.agenda, here ? here : last_step(told.agenda.plan));
    case ACTION_NOTE:
        return go_open(VIEW_NOTE, NULL);
    case ACTION_WHY:
        return go_open(VIEW_PROOF, NULL);
    case ACTION_BUILD:
        return go(GO_STAY);
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps steps_view = {.name = "the build",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .enter = enter,
                            .move = move,
                            .act = act,
                            .acts = {ACTION_ON, ACTION_NOTE, ACTION_ADD, ACTION_WHY}};
