// What stands and what does not, then a signature, or a reason: before a step is signed, and, of
// what it closes, before it goes on at a place where that can no longer be seen.
#include "before_closing.h"
#include "bench_work.h"
#include "beside.h"
#include "clock_line.h"
#include "closing_state.h"
#include "concede.h"
#include "decide.h"
#include "line_words.h"
#include "people.h"
#include "setting_tries.h"
#include "slip.h"
#include "to_lay.h"
#include "uphold.h"
#include "view.h"
#include "widget_groups.h"
#include "widget_subjects.h"
#include "words.h"

#include <standbook/work/closing.h>
#include <standbook/work/finding.h>
#include <standbook/work/too_soon.h>
#include <string.h>

typedef struct {
    char *step;
    char *before;    // the requirement in front of which it is asked, NULL: before it is signed
    gboolean reason; // the reason for closing it all the same is being typed
    gboolean reopens; // or, of one that is signed, for signing it again
    Slip slip;        // a signature that was asked about once
} Closing;

static gpointer open(Desk *desk, const char *argument)
{
    Closing *closing = g_new0(Closing, 1);
    (void)desk;
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 2);
    closing->step = g_strdup(parts[0]);
    closing->before = g_strdup(parts[1]);
    return closing;
}

static void close(gpointer state)
{
    Closing *closing = state;
    slip_forget(&closing->slip);
    g_free(closing->before);
    g_free(closing->step);
    g_free(closing);
}

static gboolean state_of(const Closing *closing, Desk *desk, ClosingState *state)
{
    return closing_state(state, desk, closing->step, closing->before);
}

// `9 checks = 7 pass  1 DOUBT  1 open`
static char *sum_words(const ClosingState *state)
{
    guint counts[VERDICTS] = {0};
    for (guint i = 0; i < state->subjects->len; i++)
        counts[g_array_index(state->subjects, Subject, i).verdict]++;
    counts[VERDICT_OPEN] += state->layings->len;
    guint lines = state->subjects->len + state->layings->len;
    g_autofree char *words = tally_words(counts, 0);
    return g_strdup_printf("%u line%s = %s", lines, lines == 1 ? "" : "s", words);
}

// What cannot be seen afterwards; returns the row behind.
static guint paint_closes(const PlanStep *step, Page *page)
{
    const char *what = step->hides->len    ? step->hides->pdata[0]
                       : step->closes->len ? "what stands here"
                                           : NULL;
    if (!what)
        return 0;
    g_autofree char *words = g_strdup_printf("THIS CLOSES %s.", what);
    canvas_put(page->body, 0, 1, 0, style_of(TYPE_BOLD, 0), words);
    canvas_put(page->body, 1, 1, 0, style_of(0, 0), "Afterwards each costs this work undone.");
    return 3;
}

static void paint_body(const ClosingState *state, Page *page)
{
    g_autofree char *sum = sum_words(state);
    guint row = paint_closes(state->step, page);
    for (guint i = 0; i < state->layings->len; i++) {
        g_autofree char *words = laying_words(&g_array_index(state->layings, Laying, i));
        line_paint(page->body, row++, VERDICT_OPEN, words, "not laid");
    }
    for (guint i = 0; i < state->subjects->len; i++) {
        const Subject *subject = &g_array_index(state->subjects, Subject, i);
        row += i + state->layings->len == state->left && state->left ? 1 : 0;
        subject_paint(page->body, row++, &state->told.agenda, subject);
    }
    canvas_put(page->body, row + 1, 1, 0, style_of(0, 0), sum);
    for (guint i = 0; i < state->step->holds->len; i++) {
        const PlanHold *hold = state->step->holds->pdata[i];
        g_autofree char *words = g_strdup_printf(
            "HOLD: %s (%s)", hold->words, hold->persons > 1 ? "two persons" : "a second person");
        canvas_put(page->body, row + 3 + i, 1, 0, style_of(TYPE_BOLD, 0), words);
    }
}

// `1 settle: pan depth again`: where one begins.
static char *settle_words(const ClosingState *state)
{
    if (state->layings->len) {
        g_autofree char *words = laying_words(&g_array_index(state->layings, Laying, 0));
        return g_strdup_printf("1 lay %s", words);
    }
    const Subject *first = &g_array_index(state->subjects, Subject, 0);
    guint input = agenda_input(&state->told.agenda, state->first);
    const Requirement *made = input != AGENDA_NOWHERE ? closing_made(state, input) : NULL;
    gboolean other = made && made->check && made != closing_made(state, state->first);
    g_autofree char *name = other ? requirement_title(made) : g_strdup(first->name);
    return g_strdup_printf("1 settle: %s%s", name, made && made->value ? " again" : "");
}

// Whether what is left is asked about: not of another person, once it was closed with a reason.
static gboolean asks_of_left(const ClosingState *state)
{
    return state->left && !(state->excuse && state->sign && state->sign->stage > 1);
}

// Whether that person gave one of the signatures of the step.
static gboolean has_signed(const ClosingState *state, Desk *desk, const char *person)
{
    const Agenda *agenda = &state->told.agenda;
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = closing_made(state, i);
        gboolean given = made->step == state->step && made->asked == ASKED_SIGN && made->entry > 0;
        const Entry *by = given ? shop_by_id(session_shop(desk->shop), "person",
                                             agenda->entries[made->entry - 1]->by)
                                : NULL;
        if (by && g_strcmp0(shop_label(by), person) == 0)
            return TRUE;
    }
    return FALSE;
}

// Those who may sign as another person, each with the digit that picks up, and 0.
static char *others_words(const ClosingState *state, Desk *desk)
{
    g_autoptr(GPtrArray) people = people_listed(desk);
    GString *names = g_string_new(NULL);
    for (guint i = 0; i < MIN(people->len, PEOPLE_DIGITS); i++)
        if (!has_signed(state, desk, people->pdata[i]))
            g_string_append_printf(names, "%u %s  ", i + 1, (const char *)people->pdata[i]);
    return g_string_free(g_string_append(names, people_others(people)), FALSE);
}

// `case screws: no fluid before 14:45`, where it is too soon to sign; NULL where it is not.
static char *too_soon_of(const ClosingState *state)
{
    return too_soon_words(&state->told.agenda, state->step, state->told.telling.now);
}

static void ask_signature(const ClosingState *state, Desk *desk, Page *page)
{
    gboolean other = state->sign->stage > 1;
    g_autofree char *others = other ? others_words(state, desk) : NULL;
    page_say(&page->next, "%s%s%s?", other ? "another person signs " : "sign ", state->step->name,
             other ? ": who" : "");
    page_say(&page->unit, other ? "a digit" : "1");
    if (other)
        page_say(&page->then, "%s", others);
    else {
        g_autofree char *soon = too_soon_of(state);
        page_say(&page->then, "1 %s signs%s%s", desk->who ? desk->who : "nobody yet",
                 soon ? ", in doubt: " : "", soon ? soon : "");
    }
}

// The first finding in the lines that waits for later work; NULL if there is none.
static const Requirement *first_waiting(const ClosingState *state)
{
    for (guint i = 0; i < state->subjects->len; i++) {
        const GArray *places = g_array_index(state->subjects, Subject, i).places;
        for (guint j = 0; j < places->len; j++)
            if (finding_waits(closing_made(state, g_array_index(places, guint, j))))
                return closing_made(state, g_array_index(places, guint, j));
    }
    return NULL;
}

// The finding that `c` decides; NULL if none waits.
static const Requirement *to_decide(const ClosingState *state)
{
    return decide_meant(state->told.agenda.assessment, state->step,
                        (const Requirement *const[2]){NULL, NULL});
}

// The first setting of the step; NULL if it has none.
static const PlanCheck *setting_of(const PlanStep *step)
{
    for (guint i = 0; i < step->checks->len; i++)
        if (((const PlanCheck *)step->checks->pdata[i])->setting)
            return step->checks->pdata[i];
    return NULL;
}

// What `w` tells of: the first that is not settled, or that waits; NULL if there is none.
static const Requirement *told_of(const ClosingState *state)
{
    return state->first != AGENDA_NOWHERE ? closing_made(state, state->first)
                                          : first_waiting(state);
}

// What `u` argues for: the first that is not settled, else a signature in doubt; NULL: none.
static const Requirement *upheld_of(const ClosingState *state)
{
    return state->first != AGENDA_NOWHERE ? closing_made(state, state->first) : state->doubted;
}

// It is signed, but that does not count as it stands: given again it does, or it is argued for.
static void ask_of_doubt(const ClosingState *state, Page *page)
{
    page_say(&page->next, "%s is signed, in doubt: %s; sign again?", state->step->name,
             reason_said(state->doubted->reason));
    page_say(&page->unit, "1 or 2");
    page_say(&page->then, "1 reopen it: say why, then sign     2 concede or uphold it");
    g_autofree char *soon = too_soon_of(state);
    if (soon)
        page->remark = g_strdup_printf("%s; signed again before then, it is in doubt again. "
                                       "c accepts it as it is, u upholds it.",
                                       soon);
}

// The first that is outside or in doubt, a signature last; NULL if none is.
static const Requirement *first_fault(const ClosingState *now)
{
    for (guint i = 0; i < now->subjects->len; i++) {
        const Subject *subject = &g_array_index(now->subjects, Subject, i);
        if (subject->verdict != VERDICT_FAIL && subject->verdict != VERDICT_IN_DOUBT)
            continue;
        for (guint j = 0; j < subject->places->len; j++) {
            const Requirement *made = closing_made(now, g_array_index(subject->places, guint, j));
            if (made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT)
                return made;
        }
    }
    return now->doubted;
}

// The last place of the step at which something is typed, by its name; NULL if it has none. The
// caller frees.
static char *last_place(Desk *desk, const PlanStep *step)
{
    BenchWork work;
    guint from =
        bench_work(desk, step->name, &work) ? work.agenda.assessment->requirements->len : 0;
    while (from-- > 0) {
        const Requirement *made = bench_requirement(&work, from);
        if (bench_asks(&work, from) && made->asked != ASKED_SIGN)
            return requirement_name(made);
    }
    return NULL;
}

enum { TO_BUILD = 1, TO_ADD, TO_PLACES }; // the digits of a step that is signed

// A step that is signed is not shut: back to its places, or something is added to it.
static void ask_where(const ClosingState *state, Desk *desk, Page *page)
{
    g_autofree char *place = last_place(desk, state->step);
    page_say(&page->next, "%s is signed", state->step->name);
    page_say(&page->unit, "1 to %u", place ? TO_PLACES : TO_ADD);
    page_say(&page->then, "%u on to the build   %u add to it%s", TO_BUILD, TO_ADD,
             place ? "   3 back to its places" : "");
}

static void ask(const ClosingState *state, Desk *desk, Page *page)
{
    page->ask = TRUE;
    page->field = ASKS_DIGIT;
    if (asks_of_left(state)) {
        g_autofree char *settle = settle_words(state);
        page_say(&page->next, "settle %s, or close with a reason?",
                 state->left == 1 ? "it" : "them");
        page_say(&page->unit, "1 or 2");
        page_say(&page->then, "%s     2 close all the same: %s", settle,
                 state->excuse ? entry_text(state->excuse, "why") : "say why");
    } else if (state->sign) {
        ask_signature(state, desk, page);
    } else if (state->doubted) {
        ask_of_doubt(state, page);
    } else {
        ask_where(state, desk, page);
    }
    page->keys[0] = (PageKey){ACTION_TAKE, "one digit", "answers"};
    page->keys[1] = (PageKey){ACTION_UP, "Backspace", "not yet"};
    if (!state->left && !state->doubted)
        page_key(page, ACTION_ADD, "adds to it");
    if (setting_of(state->step) || told_of(state))
        page_key(page, ACTION_WHY, NULL);
    if (upheld_of(state) && uphold_can(upheld_of(state)))
        page_key(page, ACTION_UPHOLD, NULL);
    if (first_fault(state) || to_decide(state))
        page_key(page, ACTION_CONCEDE, first_fault(state) ? NULL : "decide");
    page_key(page, ACTION_HELP, NULL);
    if (desk->last_seq && desk->who)
        page_key(page, ACTION_STRIKE, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    const Closing *closing = state;
    g_auto(ClosingState) now = {0};
    g_autofree char *title = desk_title(desk, desk->number);
    (void)typed;
    page_say(&page->status, "%s", title);
    if (!state_of(closing, desk, &now))
        return;
    page->status_right = clock_line(desk, now.step);
    g_autofree char *head = step_words(now.step);
    page_say(&page->head, "%s: before it %s", head, closing->before ? "goes on" : "is closed");
    if (now.left)
        page_say(&page->count, "%u line%s not settled", now.left, now.left == 1 ? "" : "s");
    else
        page_say(&page->count, "%s", now.doubted ? "signed, in doubt" : "whole");
    paint_body(&now, page);
    beside_entries(desk, now.step->name, page);
    if (!closing->reason) {
        ask(&now, desk, page);
        return;
    }
    page->field = ASKS_TEXT;
    page_say(&page->unit, " ");
    page_say(&page->next, "why?");
    page_say(&page->then, "in words; Backspace on an empty field goes back");
    page->keys[0] = (PageKey){ACTION_TAKE, "Enter",
                              closing->before    ? "goes on with this reason"
                              : closing->reopens ? "takes the signatures back for this reason"
                                                 : "closes the step with this reason"};
}

// What is signed too soon is asked about once.
static gboolean sign(Closing *closing, Desk *desk)
{
    g_autofree char *line = g_strdup_printf("sign %s", closing->step);
    if (slip_asks(&closing->slip, desk, line)) {
        desk_warn(desk, "%s", closing->slip.said);
        return FALSE;
    }
    slip_forget(&closing->slip);
    if (!desk_line(desk, line, NULL))
        return FALSE;
    g_autofree char *time = moment_text(desk->now);
    desk_last(desk, "%s signed   %.5s %s", closing->step, time + 11, desk->who ? desk->who : "");
    return TRUE;
}

// The first signature is of whom works here; another person's digit is that person's signature,
// while who works here stays.
static Go sign_next(Closing *closing, const ClosingState *now, Desk *desk, guint digit)
{
    g_autoptr(GPtrArray) people = people_listed(desk);
    gboolean other = now->sign->stage > 1;
    if (other && digit == 0)
        return go_open(VIEW_ENTER, g_strdup("person"));
    if (digit < 1 || digit > (other ? people->len : 1) ||
        (other && has_signed(now, desk, people->pdata[digit - 1])))
        return go(GO_STAY);
    char *here = desk->who;
    desk->who = other ? g_strdup(people->pdata[digit - 1]) : here;
    gboolean is_signed = sign(closing, desk);
    if (other) {
        g_free(desk->who);
        desk->who = here;
    }
    return is_signed && now->signatures == 1 ? go_instead(VIEW_STEPS, NULL) : go(GO_STAY);
}

// To the first that is not settled, wherever it is asked.
static Go settle(const ClosingState *now, Desk *desk)
{
    if (now->layings->len)
        return go_lay(&g_array_index(now->layings, Laying, 0));
    const Requirement *first = closing_made(now, now->first);
    g_autofree char *name = requirement_name(first);
    char *bench = g_strdup_printf("%s\n%s", first->step->name, name);
    if (first->step == now->step)
        return go_instead(VIEW_BENCH, bench);
    g_autofree char *line = g_strdup_printf("pick up %s", first->step->name);
    if (desk_line(desk, line, NULL))
        return go_open(VIEW_BENCH, bench);
    g_free(bench);
    return go(GO_STAY);
}

// Back to the work of the step.
static Go go_on(const Closing *closing, Desk *desk)
{
    const PlanStep *in_hand = session_step(desk_build(desk));
    g_autofree char *line = g_strdup_printf("pick up %s", closing->step);
    if (in_hand && strcmp(in_hand->name, closing->step) != 0)
        desk_line(desk, line, NULL);
    return go_instead(VIEW_BENCH, g_strdup(closing->step));
}

// Once all is settled in front of the place, or it is gone, the work goes on there.
static Go wants(gpointer state, Desk *desk)
{
    const Closing *closing = state;
    g_auto(ClosingState) now = {0};
    if (!closing->before || !state_of(closing, desk, &now))
        return go(GO_STAY);
    gboolean due = now.before != AGENDA_NOWHERE &&
                   closing_first(&now.told.agenda, now.step, now.before) != AGENDA_NOWHERE;
    return due ? go(GO_STAY) : go_on(closing, desk);
}

static Go answer_doubt(Closing *closing, const ClosingState *now, Desk *desk, guint digit)
{
    if (digit == 2)
        return concede_ask(desk, now->step, now->doubted, "");
    closing->reason = closing->reopens = digit == 1;
    return go(GO_STAY);
}

// What was signed is open again, and asked for.
static Go reopen(Closing *closing, Desk *desk, const char *why)
{
    g_autofree char *line = g_strdup_printf("reopen %s %s", closing->step, why);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    closing->reason = closing->reopens = FALSE;
    return go(GO_STAY);
}

// The step is taken up again at its last place.
static Go go_back(const Closing *closing, const ClosingState *now, Desk *desk)
{
    g_autofree char *place = last_place(desk, now->step);
    const PlanStep *in_hand = session_step(desk_build(desk));
    g_autofree char *line = g_strdup_printf("pick up %s", closing->step);
    if (!place)
        return go(GO_DEFAULT);
    if (in_hand != now->step && !desk_line(desk, line, NULL))
        return go(GO_STAY);
    return go_instead(VIEW_BENCH, g_strconcat(closing->step, "\n", place, NULL));
}

static Go go_add(const Closing *closing)
{
    return go_open(VIEW_ADD, g_strdup_printf("%s\n\n", closing->step));
}

static Go digit(gpointer state, Desk *desk, guint digit)
{
    Closing *closing = state;
    g_auto(ClosingState) now = {0};
    if (!state_of(closing, desk, &now))
        return go(GO_UP);
    gboolean left = asks_of_left(&now);
    if (left && digit == 2 && !now.excuse) {
        closing->reason = TRUE;
        return go(GO_STAY);
    }
    if (left && digit == 1)
        return settle(&now, desk);
    if (left && digit != 2)
        return go(GO_STAY);
    if (now.sign)
        return sign_next(closing, &now, desk, left ? 1 : digit);
    if (now.doubted && !left)
        return answer_doubt(closing, &now, desk, digit);
    if (!left && digit == TO_PLACES)
        return go_back(closing, &now, desk);
    if (!left && digit == TO_ADD)
        return go_add(closing);
    return left || digit == TO_BUILD ? go_instead(VIEW_STEPS, NULL) : go(GO_STAY);
}

// One character or digits alone are hardly a reason: asked about once.
static gboolean is_slip(Closing *closing, Desk *desk, const char *typed)
{
    gboolean bare = !typed[strspn(typed, "0123456789.,+- ")] || g_utf8_strlen(typed, -1) < 2;
    if (!slip_asks_this(&closing->slip, typed,
                        bare ? g_strdup_printf("`%s` as the reason? Enter again takes it so; else "
                                               "Backspace",
                                               typed)
                             : NULL))
        return FALSE;
    desk_warn(desk, "%s", closing->slip.said);
    return TRUE;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Closing *closing = state;
    if (!*typed || is_slip(closing, desk, typed))
        return go(GO_KEEP);
    g_autofree char *words = line_quoted(typed);
    if (closing->reopens)
        return reopen(closing, desk, words);
    g_autofree char *line = g_strdup_printf("close %s %s", closing->step, words);
    if (!desk_line(desk, line, NULL))
        return go(GO_KEEP);
    closing->reason = FALSE;
    if (closing->before)
        return go_on(closing, desk);
    return sign(closing, desk) ? go_instead(VIEW_STEPS, NULL) : go(GO_STAY);
}

static Go concede(const ClosingState *now, Desk *desk)
{
    const Requirement *found = first_fault(now) ? NULL : to_decide(now);
    if (found)
        return decide_ask(found);
    return concede_ask(desk, now->step, first_fault(now),
                       now->left ? "what is left is open, not outside: there is nothing to concede"
                                 : "nothing here is outside or in doubt");
}

// Where each place is set by itself: the one that is not settled, else the first.
static guint place_to_look_at(const PlanCheck *setting, const Requirement *made)
{
    guint place = 0;
    for (guint i = 0; made && made->check == setting && i < setting_count(setting); i++) {
        g_autofree char *label = places_label(setting->places, i);
        place = strcmp(label, made->place) == 0 ? i : place;
    }
    return place;
}

// The tries of a setting, else what the first rests on that is not settled, or that waits.
static Go why(const ClosingState *now)
{
    const PlanCheck *setting = setting_of(now->step);
    const Requirement *made = told_of(now);
    if (setting)
        return go_open(VIEW_SETTING,
                       setting_tries_argument(setting->name, now->step->name,
                                              place_to_look_at(setting, made), "look"));
    return made ? go_open(VIEW_WHY, requirement_name(made)) : go(GO_DEFAULT);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Closing *closing = state;
    if (closing->reason) {
        closing->reason = action != ACTION_UP && closing->reason;
        closing->reopens = closing->reason && closing->reopens;
        return go(closing->reason ? GO_DEFAULT : GO_STAY);
    }
    g_auto(ClosingState) now = {0};
    if (!state_of(closing, desk, &now))
        return go(GO_DEFAULT);
    if (action == ACTION_CONCEDE)
        return concede(&now, desk);
    if (action == ACTION_UP && agenda_is_card(&now.told.agenda)) // more may be named there
        return go_instead(VIEW_BENCH, g_strdup(closing->step));
    if (action == ACTION_BACK && !closing->before)
        return go_back(closing, &now, desk);
    if (action == ACTION_ADD)
        return go_add(closing);
    if (action == ACTION_NOTE)
        return go_open(VIEW_NOTE, g_strconcat("\n", closing->step, NULL));
    if (action == ACTION_UPHOLD)
        return uphold_ask(desk, now.step, upheld_of(&now));
    return action == ACTION_WHY ? why(&now) : go(GO_DEFAULT);
}

const ViewOps closing_view = {
    .name = "closing a step",
    .open = open,
    .close = close,
    .paint = paint,
    .wants = wants,
    .enter = enter,
    .digit = digit,
    .act = act,
    .acts = {ACTION_BACK, ACTION_ADD, ACTION_NOTE, ACTION_CONCEDE, ACTION_UPHOLD, ACTION_WHY}};
