// One build: its steps, their verdicts, and which to go on with.
#include "clock_line.h"
#include "view.h"
#include "widget_groups.h"
#include "words.h"

#include <stdlib.h>
#include <string.h>

typedef struct {
    guint counts[VERDICTS];
    guint all;
} Tally;

static Tally tally_of(const Assessment *assessment, const PlanStep *step)
{
    Tally tally = {0};
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->step != step || made->withdrawn)
            continue;
        tally.counts[made->verdict]++;
        tally.all++;
    }
    return tally;
}

// `MO 25 Feb`: who signed it first, and when; empty where nobody has.
static char *signed_words(Desk *desk, Session *session, const PlanStep *step)
{
    const Assessment *assessment = session_assessment(session);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->step != step || made->asked != ASKED_SIGN || !made->entry)
            continue;
        const Entry *entry = session_entries(session)->pdata[made->entry - 1];
        const Entry *person = shop_by_id(session_shop(desk->shop), "person", entry->by);
        g_autofree char *day = short_day(entry->done ? entry->done : entry->at);
        return g_strdup_printf("%-2s %s", person ? shop_label(person) : "", day);
    }
    return g_strdup("");
}

// What is wrong first in a step, in a word or two.
static const char *why_words(const Assessment *assessment, const PlanStep *step, Verdict verdict)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->step == step && !made->withdrawn && made->verdict == verdict)
            return reason_words(made->reason);
    }
    return "";
}

// How many of a step's requirements have its verdict; nothing to say where all is well.
static char *tally_shown(const Tally *tally, Verdict verdict)
{
    if (verdict == VERDICT_PASS || verdict == VERDICT_NOTED || verdict == VERDICT_NOT_NEEDED)
        return g_strdup("");
    return g_strdup_printf("%u/%u", tally->counts[verdict], tally->all);
}

static void paint_step(Desk *desk, Session *session, Page *page, guint row, const PlanStep *step,
                       gboolean here)
{
    static const Style plain = {0, 0}, bold = {TYPE_BOLD, 0};
    const Assessment *assessment = session_assessment(session);
    Tally tally = tally_of(assessment, step);
    Verdict verdict = heaviest_verdict(tally.counts);
    g_autofree char *words = step_words(step), *count = tally_shown(&tally, verdict);
    g_autofree char *signature = signed_words(desk, session, step);
    canvas_put(page->body, row, 0, 0, bold, here ? " >" : "");
    canvas_put(page->body, row, 2, 35, plain, words);
    canvas_put(page->body, row, 39, 0, verdict_style(verdict), verdict_mark(verdict, REASON_NONE));
    canvas_put_right(page->body, row, 53, plain, count);
    canvas_put(page->body, row, 56, 0, plain, signature);
    if (verdict == VERDICT_FAIL || verdict == VERDICT_IN_DOUBT)
        canvas_put(page->body, row, 67, 0, plain, why_words(assessment, step, verdict));
}

static gboolean is_left(const Assessment *assessment, const PlanStep *step)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->step == step && !made->withdrawn && requirement_is_left(made))
            return TRUE;
    }
    return FALSE;
}

// The step to go on with: the one worked on last, if something is left in it, else the first that
// has something left; NULL if none has.
static const PlanStep *next_step(Session *session)
{
    const Assessment *assessment = session_assessment(session);
    const Plan *plan = session_plan(session);
    const PlanStep *here = standing_of(session).step;
    if (here && is_left(assessment, here))
        return here;
    for (guint i = 0; i < plan->steps->len; i++)
        if (is_left(assessment, plan->steps->pdata[i]))
            return plan->steps->pdata[i];
    return NULL;
}

static void paint_steps(Desk *desk, Session *session, Page *page)
{
    const Assessment *assessment = session_assessment(session);
    const Plan *plan = session_plan(session);
    const PlanStep *here = next_step(session);
    g_autofree char *counts = tally_words(assessment->counts);
    g_autofree char *sum =
        g_strdup_printf("%u requirements = %s",
                        assessment->planned + assessment->added - assessment->withdrawn, counts);
    canvas_put(page->body, 0, 2, 0, style_of(0, 0), sum);
    canvas_put(page->body, 2, 2, 0, style_of(TYPE_UNDERLINE, 0), "step");
    canvas_put(page->body, 2, 39, 0, style_of(TYPE_UNDERLINE, 0), "verdict");
    canvas_put(page->body, 2, 56, 0, style_of(TYPE_UNDERLINE, 0), "signed");
    canvas_put(page->body, 2, 67, 0, style_of(TYPE_UNDERLINE, 0), "why");
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = plan->steps->pdata[i];
        paint_step(desk, session, page, 3 + i, step, step == here);
        if (step == here)
            page->focus = 3 + i + 4;
    }
}

typedef struct {
    guint asked;  // gates whose seal was asked for already
    char *wanted; // the step to open once it is known who works; NULL for none
} Steps;

static gpointer open(Desk *desk, const char *argument)
{
    (void)desk;
    (void)argument;
    return g_new0(Steps, 1);
}

static void close(gpointer state)
{
    Steps *steps = state;
    g_free(steps->wanted);
    g_free(steps);
}

// Before the first work on a step its cautions are read.
static Go open_step(Steps *steps, Desk *desk, const PlanStep *step)
{
    if (!desk->who) {
        g_free(steps->wanted);
        steps->wanted = g_strdup(step->name);
        return go_open(VIEW_WHO, NULL);
    }
    Standing standing = standing_of(desk_build(desk));
    if (standing.in_hand && standing.step == step)
        return go_open(VIEW_BENCH, g_strdup(step->name));
    if (step->cautions->len)
        return go_open(VIEW_CAUTION, g_strdup(step->name));
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    return desk_line(desk, line, NULL) ? go_open(VIEW_BENCH, g_strdup(step->name)) : go(GO_KEEP);
}

// A gate that has become complete is to be sealed; asked once for each.
static Go wants(gpointer state, Desk *desk)
{
    Steps *steps = state;
    Session *session = desk_build(desk);
    g_autofree char *wanted = g_steal_pointer(&steps->wanted);
    const PlanStep *step = wanted && session ? plan_step(session_plan(session), wanted) : NULL;
    if (step && desk->who)
        return open_step(steps, desk, step);
    const GPtrArray *gates = session && desk->who ? session_assessment(session)->gates : NULL;
    for (guint i = steps->asked; gates && i < gates->len; i++) {
        const GateCount *gate = gates->pdata[i];
        if (gate->left || gate->sealed)
            continue;
        steps->asked = i + 1;
        return go_open(VIEW_SEAL, g_strdup(gate->name));
    }
    return go(GO_STAY);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Session *session = desk_build(desk);
    g_autofree char *title = desk_title(desk, desk->number);
    (void)state;
    (void)typed;
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk);
    page_say(&page->head, "Build");
    page->field = ASKS_LINE;
    page_say(&page->unit, "no.");
    if (session)
        paint_steps(desk, session, page);
    const PlanStep *here = session ? next_step(session) : NULL;
    g_autofree char *words = here ? step_words(here) : g_strdup("nothing is left");
    page_say(&page->next, "%s", words);
    page_key(page, ACTION_TAKE, "number opens");
    page_key(page, ACTION_FIND, NULL);
    page_key(page, ACTION_ON, "NEXT");
    page_key(page, ACTION_MORE, NULL);
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_HELP, NULL);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Session *session = desk_build(desk);
    const Plan *plan = session ? session_plan(session) : NULL;
    guint64 number = g_ascii_strtoull(typed, NULL, 10);
    if (!plan || number < 1 || number > plan->steps->len) {
        desk_warn(desk, "there is no step %s; the plan has 1 to %u", typed,
                  plan ? plan->steps->len : 0);
        return go(GO_KEEP);
    }
    return open_step(state, desk, plan->steps->pdata[number - 1]);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Session *session = desk_build(desk);
    const PlanStep *here = session ? next_step(session) : NULL;
    if (action == ACTION_ON && here)
        return open_step(state, desk, here);
    return go(action == ACTION_BUILD ? GO_STAY : GO_DEFAULT);
}

const ViewOps steps_view = {.name = "the build",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .enter = enter,
                            .act = act};
