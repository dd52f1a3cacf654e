#include "proof_hand.h"

#include "bench_field.h"
#include "bench_said.h"
#include "tightening_rows.h"

#include <standbook/work/agenda_item.h>

static guint turn_of(const Tightening *tightening, const Requirement *made)
{
    guint turn = 0;
    while (turn < tightening->turns->len && tightening_turn(tightening, turn)->made != made)
        turn++;
    return turn;
}

ProofHand proof_hand(const Gaps *gaps, guint place)
{
    const Agenda *agenda = &gaps->told.agenda;
    const Requirement *made = gaps_made(gaps, place);
    ProofHand hand = {.work = {*agenda, made->step}, .place = place, .made = made};
    if (requirement_is_bolted(made)) {
        hand.tightening = tightening_new(agenda->plan, agenda->assessment, made->step, made->name);
        hand.turn = turn_of(hand.tightening, made);
    }
    return hand;
}

void proof_hand_clear(ProofHand *hand)
{
    g_clear_pointer(&hand->tightening, tightening_free);
}

// BOLTS -----------------------------------------------------------------------------------------

static const Turn *turn_in_hand(const ProofHand *hand)
{
    return tightening_turn(hand->tightening, hand->turn);
}

// `mount nuts bolt 4 · 69 N·m`
static char *bolt_said(const ProofHand *hand, Desk *desk)
{
    guint count = tightening_round(desk, hand->tightening, hand->turn);
    g_autofree char *bolts = tightening_round_words(hand->tightening, hand->turn, count);
    g_autofree char *amount = tightening_words(hand->tightening, turn_in_hand(hand)->stage);
    g_auto(AgendaItem) item = agenda_item(&hand->work.agenda, hand->place);
    return g_strdup_printf("%s %s · %s", hand->made->name, bolts,
                           item.amount_words ? item.amount_words : amount);
}

// The tool, and what it is set to, as on the page of the bolts.
static void bolt_rows(const ProofHand *hand, Desk *desk, const char *typed, Page *page)
{
    tightening_rows(desk, hand->tightening, hand->turn, typed, page);
    g_auto(BoltTool) tool = bolt_tool(desk, hand->tightening, turn_in_hand(hand));
    g_autofree char *said = bolt_said(hand, desk);
    page_say(&page->next, "%s%s%s", said, *tool.words ? " · " : "", tool.words);
}

gboolean proof_hand_needs_wrench(const ProofHand *hand, Desk *desk)
{
    if (!hand->tightening)
        return FALSE;
    g_auto(BoltTool) tool = bolt_tool(desk, hand->tightening, turn_in_hand(hand));
    return tool.asked;
}

Go proof_hand_ask_tool(const ProofHand *hand, Desk *desk)
{
    if (hand->tightening)
        return bolt_tool_ask(desk, hand->tightening, turn_in_hand(hand));
    const char *sort = hand->made->check ? hand->made->check->gauge : NULL;
    return sort ? go_open(VIEW_GAUGE, g_strdup_printf("G%s\n\n%u", sort, hand->place))
                : go(GO_STAY);
}

// ALL -------------------------------------------------------------------------------------------

static const char *gauge_of(const ProofHand *hand, Desk *desk, const char *typed)
{
    return hand->made->check ? bench_gauge(desk, &hand->work.agenda, hand->place, typed) : NULL;
}

char *proof_hand_line(const ProofHand *hand, Desk *desk, const char *typed)
{
    const Agenda *agenda = &hand->work.agenda;
    if (hand->tightening)
        return tightening_line(desk, hand->tightening, hand->turn, typed);
    return bench_line(desk, agenda, hand->place, STATE_AGAIN, typed, gauge_of(hand, desk, typed));
}

char *proof_hand_said(const ProofHand *hand, Desk *desk, const char *typed)
{
    if (!hand->tightening)
        return bench_place(&hand->work.agenda, hand->place, STATE_AGAIN);
    g_autofree char *bolt = bolt_said(hand, desk);
    g_autofree char *shown =
        *typed ? tightening_shown(desk, hand->tightening, turn_in_hand(hand), typed) : NULL;
    return g_strconcat(bolt, shown ? " · shown " : "", shown, NULL);
}

// What is asked at a check or part, as at the bench.
static void field_rows(const ProofHand *hand, Desk *desk, const char *typed, Page *page)
{
    BenchField field = bench_field(desk, &hand->work.agenda, hand->place, STATE_AGAIN);
    const char *gauge = gauge_of(hand, desk, typed);
    g_autofree char *next =
        bench_next_words(desk, &hand->work, hand->place, STATE_AGAIN, &field, gauge);
    const ToolNeed need = bench_need_at(&hand->work.agenda, hand->place);
    g_autofree char *wrong = bench_wrong_gauge(desk, hand->made, &need, gauge);
    page->field = field.field;
    page_say(&page->next, "%s", next);
    page_say(&page->unit, "%s", field.unit);
    if (wrong || field.hint)
        page_say(&page->then, "%s", wrong ? wrong : field.hint);
    bench_field_clear(&field);
}

// What the digits mean, and what they make of the verdict.
static void meaning_row(const ProofHand *hand, const Supposed *supposed, const char *typed,
                        Page *page)
{
    const Checks checks = {.agenda = &hand->work.agenda,
                           .now = hand->work.agenda.assessment,
                           .supposed = supposed->made,
                           .step = hand->work.step,
                           .here = hand->made,
                           .typed = typed};
    page->means = TRUE;
    const char *problem = supposed_problem(supposed, typed);
    if (problem)
        page_say(&page->then, "%s", problem);
    else if (supposed->made && hand->made->check) {
        g_autofree char *words = bench_meaning(&checks, hand->place);
        page_say(&page->then, "%s", words);
    }
}

void proof_hand_rows(const ProofHand *hand, Desk *desk, const char *typed, Supposed *supposed,
                     const Slip *slip, Page *page)
{
    if (hand->tightening)
        bolt_rows(hand, desk, typed, page);
    else
        field_rows(hand, desk, typed, page);
    g_autofree char *line = *typed ? proof_hand_line(hand, desk, typed) : NULL;
    gboolean field = !hand->tightening;
    supposed_take(supposed, desk, field ? line : NULL);
    if (line && field)
        meaning_row(hand, supposed, typed, page);
    if (slip_asked(slip, line))
        page_say(&page->then, "%s", slip_asked(slip, line));
}
