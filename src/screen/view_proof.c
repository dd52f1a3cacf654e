// Before a gate: what is still missing, and what stands. Empty is the proof.
#include "bench_said.h"
#include "clock_line.h"
#include "concede.h"
#include "decide.h"
#include "proof_body.h"
#include "proof_hand.h"
#include "to_place.h"
#include "toolbox.h"
#include "uphold.h"
#include "words.h"

#include <standbook/work/finding.h>
#include <standbook/work/gate.h>

typedef struct {
    char *gate;        // by name; NULL: the next of the build
    guint at;          // which gap is in hand
    gboolean asked;    // whether it is to be sealed
    Slip slip;         // a line that was asked about once
    Supposed supposed; // by what is typed
} Proof;

static gpointer open(Desk *desk, const char *argument)
{
    Proof *proof = g_new0(Proof, 1);
    (void)desk;
    proof->gate = g_strdup(argument);
    return proof;
}

static void close(gpointer state)
{
    Proof *proof = state;
    slip_forget(&proof->slip);
    supposed_forget(&proof->supposed);
    g_free(proof->gate);
    g_free(proof);
}

static gboolean gaps_of(Proof *proof, Desk *desk, Gaps *gaps)
{
    if (!gaps_init(gaps, desk, proof->gate))
        return FALSE;
    proof->at = gaps->gaps->len ? MIN(proof->at, gaps->gaps->len - 1) : 0;
    return TRUE;
}

// PAINT -----------------------------------------------------------------------------------------

static void say_next(Proof *proof, const Gaps *gaps, Desk *desk, const char *typed, Page *page)
{
    guint place;
    const Subject *gap = gaps_gap(gaps, proof->at), *then = gaps_gap(gaps, proof->at + 1);
    page_say(&page->then, "%s", then ? then->name : "");
    page->field = ASKS_TICK;
    switch (gaps_doing(gaps, proof->at, &place)) {
    case DO_NOTHING:
        page->field = ASKS_NOTHING;
        page_say(&page->next, "%s: nothing is missing", gaps_gate(gaps)->name);
        page_say(&page->then, "r prints the sheets   q goes back");
        break;
    case DO_WAIT:
        page_say(&page->next, "%s: later work answers it, or c", gap->name);
        page_say(&page->unit, "Enter = on");
        break;
    case DO_DECIDE:
        page_say(&page->next, "%s: waits for a decision", gap->name);
        page_say(&page->unit, "Enter = decide");
        break;
    case DO_OPEN:
        page_say(&page->next, "%s", gap->name);
        page_say(&page->unit, "Enter = open");
        break;
    case DO_HERE: {
        g_auto(ProofHand) hand = proof_hand(gaps, place);
        proof_hand_rows(&hand, desk, typed, &proof->supposed, &proof->slip, page);
        break;
    }
    }
}

// Words take every sign and letter; only what ends with Enter acts beside them.
static void paint_keys(Page *page)
{
    if (page->field == ASKS_TEXT) {
        page_key(page, ACTION_TAKE, NULL);
        page_key(page, ACTION_ON, "next gap");
        page->keys[2] = (PageKey){ACTION_UP, "Backspace", "leaves"};
        return;
    }
    page_key(page, ACTION_STRIKE, NULL);
    page_key(page, ACTION_PUT_DOWN, NULL);
    page_key(page, ACTION_ON, "next gap");
    page_key(page, ACTION_PRINT, NULL);
    page_key(page, ACTION_UP, NULL);
    page_key(page, ACTION_HELP, NULL);
}

static void paint(gpointer state, Desk *desk, const char *typed, Page *page)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    g_autofree char *title = desk_title(desk, desk->number);
    page_say(&page->status, "%s", title);
    page->status_right = clock_line(desk, NULL);
    page_say(&page->head, "Proof");
    if (!gaps_of(proof, desk, &gaps))
        return;
    proof_body(&gaps, proof->at, desk_build(desk), page);
    say_next(proof, &gaps, desk, typed, page);
    paint_keys(page);
}

// KEYS ------------------------------------------------------------------------------------------

static Go step_to(Proof *proof, const Gaps *gaps, gint direction)
{
    guint count = gaps->gaps->len;
    if (count)
        proof->at = (proof->at + (direction > 0 ? 1 : count - 1)) % count;
    return go(GO_STAY);
}

// What was done last. `made` is the place as it stands now.
static void say_last(Desk *desk, const char *said, const char *typed, const Requirement *made)
{
    if (made->check || made->asked == ASKED_FIT) {
        bench_say_last(desk, said, typed, made);
        return;
    }
    desk_last_entry(desk, "%s", said);
}

// What is not settled by what was typed stays a gap, and the one behind it is next, unless the gap
// has other places to do: bolts of which one failed.
static void step_past(Proof *proof, Desk *desk, guint place)
{
    g_auto(Gaps) gaps = {0};
    guint next = AGENDA_NOWHERE;
    if (gaps_of(proof, desk, &gaps))
        gaps_doing(&gaps, proof->at, &next);
    proof->at += next == place ? 1 : 0;
}

// What is likely a slip is asked about once.
static Go take(Proof *proof, const Gaps *gaps, guint place, Desk *desk, const char *typed)
{
    g_auto(ProofHand) hand = proof_hand(gaps, place);
    if (proof_hand_needs_wrench(&hand, desk))
        return proof_hand_ask_tool(&hand, desk);
    g_autofree char *line = proof_hand_line(&hand, desk, typed);
    g_autofree char *said = proof_hand_said(&hand, desk, typed);
    if (!line || (*typed && slip_asks(&proof->slip, desk, line)) || !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    slip_forget(&proof->slip);
    toolbox_forget_adapter(desk);
    const GPtrArray *all = session_assessment(desk_build(desk))->requirements;
    const Requirement *made = all->pdata[place];
    say_last(desk, said, typed, made);
    if (made->verdict != VERDICT_OPEN && requirement_is_left(made))
        step_past(proof, desk, place);
    return go(GO_STAY);
}

// The first place of the gap in hand that is not settled; NULL without a gap.
static const Requirement *first_left(const Gaps *gaps, guint at)
{
    guint found = gaps_first_left(gaps, at);
    return found == AGENDA_NOWHERE ? NULL : gaps_made(gaps, found);
}

static Go enter(gpointer state, Desk *desk, const char *typed)
{
    Proof *proof = state;
    guint place;
    g_auto(Gaps) gaps = {0};
    if (!gaps_of(proof, desk, &gaps))
        return go(GO_UP);
    Doing doing = gaps_doing(&gaps, proof->at, &place);
    if (doing == DO_NOTHING)
        return go(GO_STAY);
    if (doing == DO_WAIT)
        return step_to(proof, &gaps, 1);
    if (!desk->who)
        return go_open(VIEW_WHO, NULL);
    if (doing == DO_DECIDE)
        return decide_ask(first_left(&gaps, proof->at));
    return doing == DO_OPEN ? go_to_place(desk, &gaps.told.agenda, gaps_made(&gaps, place))
                            : take(proof, &gaps, place, desk, typed);
}

static Go concede(Desk *desk, const Requirement *left)
{
    if (left && finding_waits(left))
        return decide_ask(left);
    return concede_ask(desk, left ? left->step : NULL,
                       left && left->verdict != VERDICT_OPEN ? left : NULL,
                       "this is open, not outside: there is nothing to concede yet");
}

static Go ask_tool(const Gaps *gaps, guint at, Desk *desk)
{
    guint place;
    if (gaps_doing(gaps, at, &place) != DO_HERE)
        return go(GO_STAY);
    g_auto(ProofHand) hand = proof_hand(gaps, place);
    return proof_hand_ask_tool(&hand, desk);
}

static Go act(gpointer state, Desk *desk, Action action)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    if (!gaps_of(proof, desk, &gaps))
        return go(GO_DEFAULT);
    const Requirement *left = first_left(&gaps, proof->at);
    switch (action) {
    case ACTION_ON:
        return step_to(proof, &gaps, 1);
    case ACTION_BACK:
        return step_to(proof, &gaps, -1);
    case ACTION_NOTE:
        return go_open(VIEW_NOTE, NULL);
    case ACTION_CONCEDE:
        return concede(desk, left);
    case ACTION_UPHOLD:
        return left ? uphold_ask(desk, left->step, left) : go(GO_DEFAULT);
    case ACTION_WHY:
        return left ? go_open(VIEW_WHY, requirement_name(left)) : go(GO_DEFAULT);
    case ACTION_GAUGE:
        return ask_tool(&gaps, proof->at, desk);
    case ACTION_BUILD:
        return go_instead(VIEW_STEPS, NULL);
    default:
        return go(GO_DEFAULT);
    }
}

// A gate without a gap is to be sealed; asked once.
static Go wants(gpointer state, Desk *desk)
{
    Proof *proof = state;
    g_auto(Gaps) gaps = {0};
    if (proof->asked || !desk->who || !gaps_of(proof, desk, &gaps))
        return go(GO_STAY);
    if (gaps.gaps->len || gate_is_sealed(gaps_gate(&gaps)))
        return go(GO_STAY);
    proof->asked = TRUE;
    return go_open(VIEW_SEAL, g_strdup(gaps_gate(&gaps)->name));
}

const ViewOps proof_view = {.name = "the proof",
                            .open = open,
                            .close = close,
                            .paint = paint,
                            .wants = wants,
                            .enter = enter,
                            .act = act,
                            .acts = {ACTION_ON, ACTION_GAUGE, ACTION_NOTE, ACTION_CONCEDE,
                                     ACTION_UPHOLD, ACTION_WHY, ACTION_BUILD}};
