// Before a step is signed: what stands and what does not, then a signature, or a reason.
#include "clock_line.h"
#include "line_words.h"
#include "view.h"
#include "widget_groups.h"
#include "words.h"

#include <string.h>

typedef struct {
    char *step;
    gboolean reason; // the reason for closing it all the same is being typed
} Closing;

static gpointer open(Desk *desk, const char *argument)
{
    Closing *closing = g_new0(Closing, 1);
    (void)desk;
    closing->step = g_strdup(argument);
    return closing;
}

static void close(gpointer state)
{
    Closing *closing = state;
    g_free(closing->step);
    g_free(closing);
}

typedef struct {
    const Assessment *assessment;
    const PlanStep *step;
    guint left;              // requirements not settled, signatures apart
    const Requirement *sign; // the next signature that is missing, NULL if none is
    guint signatures;        // how many are missing
} State;

static gboolean state_of(const Closing *closing, Desk *desk, State *state)
{
    Session *session = desk_build(desk);
    if (!session)
        return FALSE;
    *state = (State){.assessment = session_assessment(session),
                     .step = plan_step(session_plan(session), closing->step)};
    for (guint i = 0; i < state->assessment->requirements->len; i++) {
        const Requirement *made = state->assessment->requirements->pdata[i];
        if (made->step != state->step || made->withdrawn || !requirement_is_left(made))
            continue;
        if (made->asked != ASKED_SIGN) {
            state->left++;
            continue;
        }
        state->signatures++;
        if (!state->sign)
            state->sign = made;
    }
    return state->step != NULL;
}

static gboolean is_left(const Group *group)
{
    return group->verdict == VERDICT_FAIL || group->verdict == VERDICT_IN_DOUBT ||
           group->verdict == VERDICT_OPEN;
}

static guint paint_groups(const State *state, GArray *groups, gboolean left, guint row, Page *page)
{
    for (guint i = 0; i < groups->len; i++) {
        const Group *group = &g_array_index(groups, Group, i);
        if (is_left(group) == left)
            group_paint(page->body, row++, state->assessment, group);
    }
    return row;
}

static void paint_body(const State *state, Page *page)
{
    g_autoptr(GArray) groups = groups_of(state->assessment, state->step);
    guint row = 0;
    if (state->step->hides->len) {
        g_autofree char *hides =
            g_strdup_printf("THIS CLOSES: %s.", (const char *)state->step->hides->pdata[0]);
        canvas_put(page->body, row++, 1, 0, style_of(TYPE_BOLD, 0), hides);
        row++;
    }
    row = paint_groups(state, groups, TRUE, row, page);
    row = paint_groups(state, groups, FALSE, row + (row ? 1 : 0), page);
    for (guint i = 0; i < state->step->holds->len; i++) {
        const PlanHold *hold = state->step->holds->pdata[i];
        g_autofree char *words = g_strdup_printf(
            "HOLD: %s (%s)", hold->words, hold->persons > 1 ? "two persons" : "a second person");
        canvas_put(page->body, row + 1 + i, 1, 0, style_of(TYPE_BOLD, 0), words);
    }
}

static void ask(const State *state, Desk *desk, Page *page)
{
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    if (state->left) {
        page_say(&page->next, "%u left: settle, or close with a reason?", state->left);
        page_say(&page->unit, "1 or 2");
        page_say(&page->then, "1 settle: the first that is left     2 close all the same: say why");
    } else if (state->sign) {
        page_say(&page->next, "sign %s?", state->step->name);
        page_say(&page->unit, "1");
        page_say(&page->then, "1 %s signs%s", desk->who ? desk->who : "nobody yet",
                 state->sign->stage > 1 ? ", the second person     / and a digit: another" : "");
    } else {
        page_say(&page->next, "%s is signed", state->step->name);
        page_say(&page->unit, "1");
        page_say(&page->then, "1 on to the build");
    }
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "not yet"};
    page->keys[2] = (PageKey){ACTION_HELP, "?", "help"};
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Closing *closing = state;
    State now;
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk);
    if (!state_of(closing, desk, &now))
        return;
    g_autofree char *head = step_words(now.step);
    page_say(&page->head, "%s: before it is closed", head);
    page_say(&page->count, now.left ? "%u not settled" : "whole", now.left);
    paint_body(&now, page);
    if (!closing->reason) {
        ask(&now, desk, page);
        return;
    }
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "why?");
    page_say(&page->then, "in words; Backspace on an empty field goes back");
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter", "closes the step with this reason"};
}

static gboolean sign(const Closing *closing, Desk *desk)
{
    g_autofree char *line = g_strdup_printf("sign %s", closing->step);
    if (!desk_line(desk, line, NULL))
        return FALSE;
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s signed   %.5s %s", closing->step, time + 11, desk->who ? desk->who : "");
    return TRUE;
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Closing *closing = state;
    State now;
    if (!state_of(closing, desk, &now))
        return go(GO_UP);
    if (now.left && digit == 2) {
        closing->reason = TRUE;
        return go(GO_STAY);
    }
    if (now.left && digit == 1)
        return go_instead(VIEW_BENCH, g_strdup_printf("%s\nleft", closing->step));
    if (digit != 1)
        return go(GO_STAY);
    if (now.sign)
        sign(closing, desk);
    return now.signatures > 1 ? go(GO_STAY) : go_instead(VIEW_STEPS, NULL);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Closing *closing = state;
    if (!*typed)
        return go(GO_KEEP);
    g_autofree char *words = line_quoted(typed);
    g_autofree char *line = g_strdup_printf("close %s %s", closing->step, words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    closing->reason = FALSE;
    return sign(closing, desk) ? go_instead(VIEW_STEPS, NULL) : go(GO_STAY);
}

// The tries of the step's first setting.
static Go look_at_setting(const PlanStep *step)
{
    for (guint i = 0; i < step->checks->len; i++) {
        const PlanCheck *check = step->checks->pdata[i];
        if (check->setting)
            return go_open(VIEW_SETTING, g_strdup_printf("%s\n%s\nlook", check->name, step->name));
    }
    return go(GO_DEFAULT);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Closing *closing = state;
    State now;
    if (action == ACTION_WHY && !closing->reason && state_of(closing, desk, &now))
        return look_at_setting(now.step);
    if (action != ACTION_UP || !closing->reason)
        return go(GO_DEFAULT);
    closing->reason = FALSE;
    return go(GO_STAY);
}

const ViewOps closing_view = {.name = "closing a step",
                              .open = open,
                              .close = close,
                              .paint = paint,
                              .enter = enter,
                              .digit = digit,
                              .act = act};
