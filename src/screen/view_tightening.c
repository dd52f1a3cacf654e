// Bolts of a step, one after the other in their order, stage by stage.
#include "before_closing.h"
#include "bolts_beside.h"
#include "clock_line.h"
#include "concede.h"
#include "left.h"
#include "line_words.h"
#include "new_bolt.h"
#include "setting_tries.h"
#include "slip.h"
#include "struck.h"
#include "supposed.h"
#include "tightening_about.h"
#include "tightening_beside.h"
#include "tightening_head.h"
#include "tightening_page.h"
#include "tightening_rows.h"
#include "toolbox.h"
#include "uphold.h"
#include "view.h"
#include "words.h"

#include <string.h>

typedef struct {
    char *number; // of the build
    char *set, *step;
    guint here;    // the turn in hand
    char *first;   // the requirement to begin with, done or not; NULL for what is open
    gboolean over; // opened over a setting, which goes on behind it
    char *check;   // then its check and place
    guint place;
    guint opened;        // how many entries there were then
    gboolean placed;     // by -Enter or +Enter: it stays there though it is done
    guint asked;         // the stage for which the wrench was asked, 0: none, or one is in hand
    Moment tried;        // the end of the wait that was entered last as waited
    gint64 answered;     // seq of the interruption whose question was answered
    gint64 loosened;     // seq of the loosening that was heeded last
    gboolean asks_again; // whether to begin the stage again, or to loosen a bolt
    gboolean only_again; // opened for that question alone
    gint64 again;      // seq of the note that began a stage again, 0 for none: its bolts are taken
    guint again_stage; // once more, as far as they were not ticked behind it
    gint64 mends;      // seq up to which bolts in doubt are done again, 0: none is,
    Reason reason;     // and why they are in doubt: that of the bolt with which it began
    Slip slip;         // a line that was asked about once
    Supposed supposed; // by what is typed
    // With so many entries nothing had to be closed before the turn `ready_at`:
    guint ready;
    guint ready_at;
} Bolts;

static gpointer open(Desk *desk, const char *argument)
{
    Bolts *bolts = g_new0(Bolts, 1);
    g_auto(GStrv) parts = g_strsplit(argument, "\n", 5);
    bolts->number = g_strdup(desk->number);
    bolts->set = g_strdup(parts[0]);
    bolts->step = g_strdup(parts[1]);
    bolts->over = g_strcmp0(parts[2], "over") == 0;
    bolts->check = bolts->over ? g_strdup(parts[3]) : NULL;
    bolts->place = bolts->check ? (guint)g_ascii_strtoull(parts[4], NULL, 10) : 0;
    bolts->opened = desk_build(desk) ? session_entries(desk_build(desk))->len : 0;
    bolts->first = bolts->over ? NULL : g_strdup(parts[2]);
    bolts->only_again = bolts->first && g_strcmp0(parts[3], "again") == 0;
    bolts->asks_again = bolts->only_again;
    return bolts;
}

static void close(gpointer state)
{
    Bolts *bolts = state;
    slip_forget(&bolts->slip);
    supposed_forget(&bolts->supposed);
    g_free(bolts->number);
    g_free(bolts->set);
    g_free(bolts->step);
    g_free(bolts->first);
    g_free(bolts->check);
    g_free(bolts);
}

static Tightening *tightening_of(const Bolts *bolts, Desk *desk)
{
    Session *session = desk_build(desk);
    const PlanStep *step = session ? plan_step(session_plan(session), bolts->step) : NULL;
    Tightening *tightening =
        step ? tightening_new(session_plan(session), session_assessment(session), step, bolts->set)
             : NULL;
    const PlanCheck *check =
        bolts->check && tightening ? plan_check(session_plan(session), bolts->check) : NULL;
    if (check && check->setting->each)
        tightening_keep_at(tightening, check, bolts->place);
    if (tightening) {
        tightening->mends = bolts->mends;
        tightening->reason = bolts->reason;
    }
    return tightening;
}

// Begins at the turn of that requirement, though it may be done. Where it is in doubt, and not
// opened to be loosened only, all bolts in doubt as it is are done again behind it.
static void begin_at(Bolts *bolts, const Tightening *tightening, const char *name)
{
    for (guint i = 0; i < tightening->turns->len && !bolts->placed; i++) {
        const Requirement *made = tightening_turn(tightening, i)->made;
        g_autofree char *each = requirement_name(made);
        bolts->placed = strcmp(each, name) == 0;
        bolts->here = i;
        if (bolts->placed && made->verdict == VERDICT_IN_DOUBT && !bolts->only_again) {
            bolts->mends = bolts->opened;
            bolts->reason = made->reason;
        }
    }
}

// Ends it where a bolt that was done again is in doubt as before.
static void heed_mended(Bolts *bolts, Desk *desk, guint here)
{
    g_autoptr(Tightening) tightening = bolts->mends ? tightening_of(bolts, desk) : NULL;
    const Turn *turn = tightening ? tightening_turn(tightening, here) : NULL;
    if (turn && turn->made->verdict == VERDICT_IN_DOUBT && turn->made->reason == bolts->reason)
        bolts->mends = 0;
}

// The turn in hand; NULL when all are done.
static const Turn *in_hand(Bolts *bolts, const Tightening *tightening)
{
    if (bolts->first)
        begin_at(bolts, tightening, bolts->first);
    g_clear_pointer(&bolts->first, g_free);
    if (!bolts->placed)
        bolts->here = bolts->again ? tightening_older(tightening, bolts->again_stage, bolts->again)
                                   : tightening_in_hand(tightening);
    if (bolts->again && !tightening_turn(tightening, bolts->here)) { // all once more
        bolts->again = 0;
        bolts->here = tightening_in_hand(tightening);
    }
    return tightening_turn(tightening, bolts->here);
}

// Once bolts of this set are loosened, what is open again comes first, wherever one was.
static void heed_loosened(Bolts *bolts, Desk *desk)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    const Entry *newest = entries->len ? entries->pdata[entries->len - 1] : NULL;
    if (!newest || newest->seq == bolts->loosened || strcmp(newest->kind->name, "slacken") != 0 ||
        g_strcmp0(entry_text(newest, "tightening"), bolts->set) != 0)
        return;
    bolts->loosened = newest->seq;
    bolts->placed = FALSE;
    slip_forget(&bolts->slip); // it was asked of the bolt as it stood
}

// INTERRUPTION ----------------------------------------------------------------------------------

// Whether nobody knows how the bolt in hand was left: a pull by angle does not tell whether it was
// begun. A pull to a torque may be done twice. Of one that is ticked nothing is asked, also where
// it is walked back to; nor is who has not picked it up yet.
static gboolean is_question(const Bolts *bolts, Desk *desk, const Tightening *tightening,
                            const Turn *turn)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    gboolean angle = stage_is_angle(kind);
    gboolean ticked = turn->made->verdict != VERDICT_OPEN;
    gboolean in_hand = angle && !ticked && standing_of(desk_build(desk)).in_hand;
    gint64 seq = in_hand ? left_interrupted(desk, bolts->step, bolts->set) : 0;
    return seq != 0 && seq != bolts->answered;
}

// PAINT -----------------------------------------------------------------------------------------

// What the wrench shows is refused, or was asked about: the sentence stays until it is changed.
static void say_typed(Bolts *bolts, Desk *desk, const Tightening *tightening, const char *typed,
                      Page *page)
{
    gboolean wanted = *typed || bolts->slip.line;
    g_autofree char *line = wanted ? tightening_line(desk, tightening, bolts->here, typed) : NULL;
    supposed_take(&bolts->supposed, desk, *typed ? line : NULL);
    const char *asked = slip_asked(&bolts->slip, line);
    const char *said = asked ? asked : supposed_problem(&bolts->supposed, typed);
    if (said)
        page_say(&page->then, "%s", said);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Bolts *bolts = state;
    g_autofree char *title = desk_title(desk, desk->number);
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk, tightening ? tightening->plan->step : NULL);
    if (!tightening) {
        tightening_keys(desk, &(BoltTool){.tool = NULL}, page);
        return;
    }
    tightening_name_others(desk, tightening);
    const Turn *turn = in_hand(bolts, tightening);
    tightening_head(desk, tightening, turn, page);
    g_auto(BoltTool) tool = {.tool = NULL};
    if (turn)
        tool = bolt_tool(desk, tightening, turn);
    tightening_keys(desk, &tool, page);
    tightening_beside(desk, tightening, turn, page);
    const Plan *plan = session_plan(desk_build(desk));
    if (turn && is_question(bolts, desk, tightening, turn)) {
        g_autofree char *bolt = bolt_words(turn);
        tightening_question(tightening, turn, page);
        tightening_bolts(tightening, plan, turn, TRUE, &tool, page);
        tightening_left(desk, left_interrupted(desk, bolts->step, bolts->set), bolt, page);
        return;
    }
    if (turn && desk->big)
        tightening_far(tightening, turn, &tool, page);
    else
        tightening_about(desk, tightening, bolts->here,
                         turn ? left_interrupted(desk, bolts->step, bolts->set) : 0, &tool,
                         tightening_bolts(tightening, plan, turn, FALSE, &tool, page) + 1, page);
    if (turn && bolts->asks_again)
        tightening_ask_again(tightening, tightening_again(tightening, bolts->here), turn, page);
    else if (turn) {
        tightening_rows(desk, tightening, bolts->here, typed, page);
        say_typed(bolts, desk, tightening, typed, page);
    }
}

// KEYS ------------------------------------------------------------------------------------------

// What was opened over other work closes nothing: that work goes on behind it. Nor does a bolt that
// is mended: what is to be closed waits for it.
static Go wants_closing(Bolts *bolts, Desk *desk, const Tightening *tightening, const Turn *turn)
{
    guint known = session_entries(desk_build(desk))->len;
    if (bolts->over || bolts->mends || (bolts->ready == known && bolts->ready_at == bolts->here))
        return go(GO_STAY);
    Go closing = go_before_closing(desk, tightening->plan->step, turn->made);
    if (closing.kind == GO_STAY) {
        bolts->ready = known;
        bolts->ready_at = bolts->here;
    }
    return closing;
}

// Opened for the question of what is done again: where that is only to loosen, why is asked at
// once; who loosens nothing is back at the bench.
static Go wants_again(Bolts *bolts, Desk *desk, const Tightening *tightening, const Turn *turn)
{
    if (!bolts->only_again || (bolts->asks_again && tightening_again(tightening, bolts->here)))
        return go(GO_STAY);
    bolts->only_again = bolts->asks_again;
    bolts->asks_again = FALSE;
    if (bolts->only_again)
        return go_open(VIEW_LOOSEN, line_target(session_plan(desk_build(desk)), turn->made));
    return turn->made->verdict == VERDICT_OPEN ? go(GO_STAY)
                                               : go_instead(VIEW_BENCH, g_strdup(bolts->step));
}

// Whether who walked back to a bolt that is done only looks at it.
static gboolean looks(const Bolts *bolts, const Turn *turn)
{
    return bolts->placed && !bolts->mends && turn->made->verdict != VERDICT_OPEN;
}

// Asks for a wrench once a stage, and again when the one in hand is found wrong, but over nothing
// that is half typed, and of nobody who looks; goes back to the bench when all is done.
static Go wants(gpointer state, Desk *desk)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    if (tightening)
        heed_loosened(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (tightening && bolts->over && struck_behind(desk, bolts->opened, bolts->set))
        return go(GO_UP);
    if (!turn)
        return tightening && !bolts->over ? go_instead(VIEW_BENCH, g_strdup(bolts->step))
                                          : go(GO_UP);
    Go before = new_bolt_ask(desk, turn, bolts->over);
    if (before.kind == GO_STAY)
        before = wants_again(bolts, desk, tightening, turn);
    if (before.kind == GO_STAY)
        before = wants_closing(bolts, desk, tightening, turn);
    if (before.kind != GO_STAY)
        return before;
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    if (!tool.asked)
        bolts->asked = 0;
    if (!tool.asked || desk->typed || bolts->asked == turn->stage ||
        looks(bolts, turn) || is_question(bolts, desk, tightening, turn))
        return go(GO_STAY);
    bolts->asked = turn->stage;
    return bolt_tool_ask(desk, tightening, turn);
}

// Ticks the turn in hand; FALSE with a warning if that is refused.
static gboolean tick(Bolts *bolts, Desk *desk, const char *typed)
{
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = in_hand(bolts, tightening);
    if (tightening_wait_over(desk, turn) > desk->now) {
        g_autofree char *until = until_words(tightening_wait_over(desk, turn));
        desk_warn(desk, "The wait runs %s; it ends by itself; `+` Enter goes on without it", until);
        return FALSE;
    }
    g_autofree char *line = tightening_line(desk, tightening, bolts->here, typed);
    guint count = tightening_round(desk, tightening, bolts->here);
    g_autofree char *bolt = tightening_round_words(tightening, bolts->here, count);
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *read = *typed ? tightening_shown(desk, tightening, turn, typed) : NULL;
    if (slip_asks(&bolts->slip, desk, line) || !desk_line(desk, line, NULL))
        return FALSE;
    slip_forget(&bolts->slip);
    desk_last_entry(desk, "%s · %s%s%s", bolt, amount, read ? " · shown " : "", read ? read : "");
    bolts->placed = FALSE;
    heed_mended(bolts, desk, bolts->here);
    toolbox_forget_adapter(desk);
    return TRUE;
}

// A wait that is over is entered as waited without a key, with one bell.
static gboolean idle(gpointer state, Desk *desk)
{
    Bolts *bolts = state;
    Moment over = 0, now = desk->options->now(desk->options->user);
    g_autoptr(Tightening) tightening =
        g_strcmp0(bolts->number, desk->number) == 0 ? tightening_of(bolts, desk) : NULL;
    const Turn *turn = tightening ? tightening_wait(desk, tightening, &over) : NULL;
    if (!turn || over > now || over == bolts->tried || !left_picked_up_here(desk, bolts->step))
        return FALSE;
    bolts->tried = over;
    g_autofree char *line = g_strdup_printf("waited %s in %s stage %u", bolts->set,
                                            tightening->plan->step->name, turn->stage);
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    if (!desk_line(desk, line, NULL))
        return TRUE;
    desk_last_entry(desk, "%s · %s · waited", bolts->set, amount);
    desk_warn(desk, "%s: %s is over, go on", bolts->set, amount);
    return TRUE;
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_STAY);
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    if (tool.asked)
        return go_first(bolt_tool_ask(desk, tightening, turn));
    return tick(bolts, desk, typed) ? go(GO_STAY) : go(GO_KEEP);
}

// Begins the stage of the bolt in hand again; that stands in the record.
static void begin_again(Bolts *bolts, Desk *desk, const Tightening *tightening)
{
    const Turn *first = tightening_again(tightening, bolts->here);
    if (!first)
        return;
    g_autofree char *target = line_target(session_plan(desk_build(desk)), first->made);
    g_autofree char *amount = tightening_words(tightening, first->stage);
    g_autofree char *line = g_strdup_printf("note on %s \"stage %u, %s, begun again at bolt %s\"",
                                            target, first->stage, amount, first->made->place);
    if (!desk_line(desk, line, NULL))
        return;
    bolts->again = session_entries(desk_build(desk))->len;
    bolts->again_stage = first->stage;
    bolts->placed = FALSE;
    desk_last(desk, "%s begun again at bolt %s", amount, first->made->place);
}

// The answer to whether a stage is begun again (1) or the bolt in hand loosened (2).
static Go answer_again(Bolts *bolts, Desk *desk, const Tightening *tightening, guint digit)
{
    if (digit != 1 && digit != 2)
        return go(GO_STAY);
    bolts->asks_again = FALSE;
    const Turn *turn = tightening_turn(tightening, bolts->here);
    if (digit == 2)
        return go_open(VIEW_LOOSEN, line_target(session_plan(desk_build(desk)), turn->made));
    begin_again(bolts, desk, tightening);
    bolts->only_again = FALSE;
    return go(GO_STAY);
}

// Nobody can tell how the bolt in hand was left: it comes out. Where a new one goes in, that takes
// it out: until it is entered the question stays, also for who begins anew. `*taken`: it is out.
static Go take_out(const Bolts *bolts, Desk *desk, const Tightening *tightening, const Turn *turn,
                   gboolean *taken)
{
    const Requirement *fit = new_bolt_fit(desk, turn);
    g_autofree char *target = line_target(session_plan(desk_build(desk)), turn->made);
    g_autofree char *line = g_strdup_printf("slacken %s \"cannot tell how it was left\"", target);
    if (fit && fit->entry)
        return left_note(desk, tightening, turn, 3) ? new_bolt_go(fit, bolts->over) : go(GO_STAY);
    *taken = desk_line(desk, line, NULL);
    if (*taken)
        desk_last(desk, "bolt out: nobody can tell how it was left");
    return *taken && fit ? new_bolt_go(fit, bolts->over) : go(GO_STAY);
}

// An answer to how the bolt in hand was left, or to what is done again.
static Go digit(gpointer state, Desk *desk, guint digit)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (turn && bolts->asks_again)
        return answer_again(bolts, desk, tightening, digit);
    if (!turn || digit < 1 || digit > 3)
        return go(GO_STAY);
    gint64 answered = left_interrupted(desk, bolts->step, bolts->set);
    if (!answered || !is_question(bolts, desk, tightening, turn))
        return go(GO_STAY);
    gboolean taken = digit != 3 && left_note(desk, tightening, turn, digit);
    if (taken && digit == 1)
        taken = tick(bolts, desk, "");
    Go out = digit == 3 ? take_out(bolts, desk, tightening, turn, &taken) : go(GO_STAY);
    bolts->answered = taken ? answered : bolts->answered;
    return out;
}

static Go back_a_bolt(Bolts *bolts, Desk *desk, const Turn *turn)
{
    toolbox_forget_adapter(desk);
    if (bolts->here == 0)
        return bolts->over ? go(GO_STAY) : bolts_leave(desk, turn, -1);
    bolts->here--;
    bolts->placed = TRUE;
    return go(GO_STAY);
}

static Go on_a_bolt(Bolts *bolts, Desk *desk, const Tightening *tightening, const Turn *turn)
{
    toolbox_forget_adapter(desk);
    gboolean done = turn->made->verdict != VERDICT_OPEN; // it was looked at again
    guint on = done ? tightening_next(tightening, bolts->here) : bolts->here + 1;
    if (on >= tightening->turns->len)
        return bolts->over ? go(GO_STAY) : bolts_leave(desk, turn, 1);
    bolts->here = on;
    bolts->placed = TRUE;
    return go(GO_STAY);
}

static gboolean is_fault(const Requirement *made)
{
    return made->verdict == VERDICT_FAIL || made->verdict == VERDICT_IN_DOUBT;
}

// Over a setting the working of its advice, which leads on to why of the bolt.
static Go why(const Bolts *bolts, const Turn *turn)
{
    g_autofree char *name = requirement_name(turn->made);
    return bolts->over ? go_open(VIEW_WORKING, setting_tries_argument(bolts->check, bolts->step,
                                                                      bolts->place, name))
                       : go_open(VIEW_WHY, g_steal_pointer(&name));
}

static Go note(const Bolts *bolts, Desk *desk, const Turn *turn)
{
    g_autofree char *on = line_target(session_plan(desk_build(desk)), turn->made);
    return go_open(VIEW_NOTE, g_strconcat(on, "\n", bolts->step, NULL));
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Bolts *bolts = state;
    g_autoptr(Tightening) tightening = tightening_of(bolts, desk);
    const Turn *turn = tightening ? in_hand(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_DEFAULT);
    if (bolts->asks_again && action == ACTION_UP) {
        bolts->asks_again = FALSE;
        return bolts->only_again ? go_instead(VIEW_BENCH, g_strdup(bolts->step)) : go(GO_STAY);
    }
    switch (action) {
    case ACTION_BACK:
        return back_a_bolt(bolts, desk, turn);
    case ACTION_ON:
        return on_a_bolt(bolts, desk, tightening, turn);
    case ACTION_ADD:
        return go_open(VIEW_ADD, g_strconcat(bolts->step, "\n\n", NULL));
    case ACTION_GAUGE:
        return bolt_tool_ask(desk, tightening, turn);
    case ACTION_NOTE:
        return note(bolts, desk, turn);
    case ACTION_AGAIN:
        bolts->asks_again = tightening_again(tightening, bolts->here) != NULL;
        if (bolts->asks_again)
            return go(GO_STAY);
        return go_open(VIEW_LOOSEN, line_target(session_plan(desk_build(desk)), turn->made));
    case ACTION_CONCEDE:
        return concede_ask(desk, turn->made->step, is_fault(turn->made) ? turn->made : NULL,
                           "this bolt is neither outside nor in doubt");
    case ACTION_UPHOLD:
        return uphold_ask(desk, turn->made->step, turn->made);
    case ACTION_WHY:
        return why(bolts, turn);
    case ACTION_BUILD:
        return go_instead(VIEW_STEPS, NULL);
    case ACTION_CLOSE:
        return go_instead(VIEW_CLOSING, g_strdup(bolts->step));
    default:
        return go(GO_DEFAULT);
    }
}

const ViewOps tightening_view = {.name = "tightening",
                                 .open = open,
                                 .close = close,
                                 .paint = paint,
                                 .wants = wants,
                                 .enter = enter,
                                 .digit = digit,
                                 .act = act,
                                 .idle = idle,
                                 .acts = {ACTION_ON, ACTION_BACK, ACTION_AGAIN, ACTION_GAUGE,
                                          ACTION_NOTE, ACTION_ADD, ACTION_CONCEDE, ACTION_UPHOLD,
                                          ACTION_WHY, ACTION_CLOSE, ACTION_BUILD, ACTION_BIG}};
