// BoltsInHand of a step, one after the other in their order, stage by stage.
#include "before_closing.h"
#include "bolts_beside.h"
#include "bolts_in_hand.h"
#include "clock_line.h"
#include "concede.h"
#include "left.h"
#include "line_words.h"
#include "new_bolt.h"
#include "setting_tries.h"
#include "struck.h"
#include "tightening_about.h"
#include "tightening_beside.h"
#include "tightening_head.h"
#include "tightening_page.h"
#include "tightening_rows.h"
#include "to_lay.h"
#include "toolbox.h"
#include "uphold.h"
#include "view.h"
#include "words.h"

#include <string.h>

static gpointer open(Desk *desk, const char *argument)
{
    return bolts_in_hand_open(desk, argument);
}

static void close(gpointer state)
{
    bolts_in_hand_close(state);
}

// PAINT -----------------------------------------------------------------------------------------

// What the wrench shows is refused, or was asked about: the sentence stays until it is changed.
static void say_typed(BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                      const char *typed, Page *page)
{
    gboolean wanted = *typed || bolts->slip.line;
    g_autofree char *line = wanted ? tightening_line(desk, tightening, bolts->here, typed) : NULL;
    supposed_take(&bolts->supposed, desk, *typed ? line : NULL);
    const Turn *turn = tightening_turn(tightening, bolts->here);
    g_autofree char *none = tightening_no_torque(desk, tightening, turn, typed);
    const char *asked = slip_asked(&bolts->slip, line);
    const char *said = none ? NULL : asked ? asked : supposed_problem(&bolts->supposed, typed);
    if (said)
        page_say(&page->then, "%s", said);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    BoltsInHand *bolts = state;
    g_autofree char *title = desk_title(desk, desk->number);
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk, tightening ? tightening->plan->step : NULL);
    if (!tightening) {
        tightening_keys(desk, &(BoltTool){.tool = NULL}, page);
        return;
    }
    tightening_name_others(desk, tightening);
    const Turn *turn = bolts_turn(bolts, tightening);
    tightening_head(desk, tightening, turn, page);
    g_auto(BoltTool) tool = {.tool = NULL};
    if (turn)
        tool = bolt_tool(desk, tightening, turn);
    tightening_keys(desk, &tool, page);
    tightening_beside(desk, tightening, turn, page);
    const Plan *plan = session_plan(desk_build(desk));
    if (turn && bolts_ask_how_left(bolts, desk, tightening, turn)) {
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
        tightening_ask_again(tightening, tightening_again(tightening, bolts->here), turn,
                             new_bolt_fit(desk, turn) != NULL, page);
    else if (turn) {
        tightening_rows(desk, tightening, bolts->here, typed, page);
        if (!*typed && new_bolt_loosened(desk, turn))
            page_say(&page->then, "it is loose: l fits a new bolt there, Enter tightens this one");
        say_typed(bolts, desk, tightening, typed, page);
    }
}

// KEYS ------------------------------------------------------------------------------------------

// What comes before a bolt: what closes, and what is laid. What was opened over other work closes
// nothing: that work goes on behind it. Nor does a bolt that is mended: what is to be closed waits
// for it.
static Go wants_before(BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                       const Turn *turn)
{
    guint known = session_entries(desk_build(desk))->len;
    if (bolts->over || bolts->mends || (bolts->ready == known && bolts->ready_at == bolts->here))
        return go(GO_STAY);
    Go before = go_before_closing(desk, tightening->plan->step, turn->made);
    if (before.kind == GO_STAY)
        before = go_to_lay_for(desk, turn->made);
    if (before.kind == GO_STAY) {
        bolts->ready = known;
        bolts->ready_at = bolts->here;
    }
    return before;
}

// Opened for the question of what is done again: where that is only to loosen, why is asked at
// once; who loosens nothing is back at the bench.
static Go wants_again(BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                      const Turn *turn)
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
static gboolean looks(const BoltsInHand *bolts, const Turn *turn)
{
    return bolts->placed && !bolts->mends && turn->made->verdict != VERDICT_OPEN;
}

// Asks for a wrench once a stage, and again when the one in hand is found wrong, but over nothing
// that is half typed, and of nobody who looks; goes back to the bench when all is done.
static Go wants(gpointer state, Desk *desk)
{
    BoltsInHand *bolts = state;
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    if (tightening)
        bolts_heed_loosened(bolts, desk);
    const Turn *turn = tightening ? bolts_turn(bolts, tightening) : NULL;
    if (tightening && bolts->over && struck_behind(desk, bolts->opened, bolts->set))
        return go(GO_UP);
    if (!turn)
        return tightening && !bolts->over ? go_instead(VIEW_BENCH, g_strdup(bolts->step))
                                          : go(GO_UP);
    Go before = new_bolt_ask(desk, turn, bolts->over);
    if (before.kind == GO_STAY)
        before = wants_again(bolts, desk, tightening, turn);
    if (before.kind == GO_STAY)
        before = wants_before(bolts, desk, tightening, turn);
    if (before.kind != GO_STAY)
        return before;
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    if (!tool.asked)
        bolts->asked = 0;
    if (!tool.asked || desk->typed || bolts->asked == turn->stage || looks(bolts, turn) ||
        bolts_ask_how_left(bolts, desk, tightening, turn))
        return go(GO_STAY);
    bolts->asked = turn->stage;
    return bolt_tool_ask(desk, tightening, turn);
}

// Ticks the turn in hand; FALSE with a warning if that is refused.
static gboolean tick(BoltsInHand *bolts, Desk *desk, const char *typed)
{
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    const Turn *turn = bolts_turn(bolts, tightening);
    if (tightening_wait_over(desk, turn) > desk->now) {
        g_autofree char *until = until_words(tightening_wait_over(desk, turn));
        desk_warn(desk, "The wait runs %s; it ends by itself; `+` Enter goes on without it", until);
        return FALSE;
    }
    g_autofree char *none = tightening_no_torque(desk, tightening, turn, typed);
    if (none) // row 22 says it
        return FALSE;
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
    bolts_heed_mended(bolts, desk, bolts->here);
    toolbox_forget_adapter(desk);
    return TRUE;
}

// A wait that is over is entered as waited without a key, with one bell.
static gboolean idle(gpointer state, Desk *desk)
{
    BoltsInHand *bolts = state;
    Moment over = 0, now = desk->options->now(desk->options->user);
    g_autoptr(Tightening) tightening =
        g_strcmp0(bolts->number, desk->number) == 0 ? bolts_tightening(bolts, desk) : NULL;
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
    BoltsInHand *bolts = state;
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    const Turn *turn = tightening ? bolts_turn(bolts, tightening) : NULL;
    if (!turn)
        return go(GO_STAY);
    g_auto(BoltTool) tool = bolt_tool(desk, tightening, turn);
    if (tool.asked)
        return go_first(bolt_tool_ask(desk, tightening, turn));
    return tick(bolts, desk, typed) ? go(GO_STAY) : go(GO_KEEP);
}

// Begins the stage of the bolt in hand again; that stands in the record.
static void begin_again(BoltsInHand *bolts, Desk *desk, const Tightening *tightening)
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

// The answer to whether a stage is begun again (1), the bolt in hand loosened (2), or a new one
// fitted there (3).
static Go answer_again(BoltsInHand *bolts, Desk *desk, const Tightening *tightening, guint digit)
{
    const Turn *turn = tightening_turn(tightening, bolts->here);
    const Requirement *fit = new_bolt_fit(desk, turn);
    if (digit < 1 || digit > (fit ? 3 : 2))
        return go(GO_STAY);
    bolts->asks_again = FALSE;
    if (digit == 3)
        return new_bolt_go(fit, bolts->over);
    if (digit == 2)
        return go_open(VIEW_LOOSEN, line_target(session_plan(desk_build(desk)), turn->made));
    begin_again(bolts, desk, tightening);
    bolts->only_again = FALSE;
    return go(GO_STAY);
}

// Nobody can tell how the bolt in hand was left: it comes out. Where a new one goes in, that takes
// it out: until it is entered the question stays, also for who begins anew. `*taken`: it is out.
static Go take_out(const BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                   const Turn *turn, gboolean *taken)
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
    BoltsInHand *bolts = state;
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    const Turn *turn = tightening ? bolts_turn(bolts, tightening) : NULL;
    if (turn && bolts->asks_again)
        return answer_again(bolts, desk, tightening, digit);
    if (!turn || digit < 1 || digit > 3)
        return go(GO_STAY);
    gint64 answered = left_interrupted(desk, bolts->step, bolts->set);
    if (!answered || !bolts_ask_how_left(bolts, desk, tightening, turn))
        return go(GO_STAY);
    gboolean taken = digit != 3 && left_note(desk, tightening, turn, digit);
    if (taken && digit == 1)
        taken = tick(bolts, desk, "");
    Go out = digit == 3 ? take_out(bolts, desk, tightening, turn, &taken) : go(GO_STAY);
    bolts->answered = taken ? answered : bolts->answered;
    return out;
}

static Go back_a_bolt(BoltsInHand *bolts, Desk *desk, const Turn *turn)
{
    toolbox_forget_adapter(desk);
    if (bolts->here == 0)
        return bolts->over ? go(GO_STAY) : bolts_leave(desk, turn, -1);
    bolts->here--;
    bolts->placed = TRUE;
    return go(GO_STAY);
}

static Go on_a_bolt(BoltsInHand *bolts, Desk *desk, const Tightening *tightening, const Turn *turn)
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
static Go why(const BoltsInHand *bolts, const Turn *turn)
{
    g_autofree char *name = requirement_name(turn->made);
    return bolts->over ? go_open(VIEW_WORKING, setting_tries_argument(bolts->check, bolts->step,
                                                                      bolts->place, name))
                       : go_open(VIEW_WHY, g_steal_pointer(&name));
}

static Go note(const BoltsInHand *bolts, Desk *desk, const Turn *turn)
{
    g_autofree char *on = line_target(session_plan(desk_build(desk)), turn->made);
    return go_open(VIEW_NOTE, g_strconcat(on, "\n", bolts->step, NULL));
}

static Go act(gpointer state, Desk *desk, Action action)
{
    BoltsInHand *bolts = state;
    g_autoptr(Tightening) tightening = bolts_tightening(bolts, desk);
    const Turn *turn = tightening ? bolts_turn(bolts, tightening) : NULL;
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
        if (new_bolt_loosened(desk, turn))
            return new_bolt_go(new_bolt_fit(desk, turn), bolts->over);
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
