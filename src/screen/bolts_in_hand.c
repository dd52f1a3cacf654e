#include "bolts_in_hand.h"

#include "left.h"
#include "telling.h"

#include <string.h>

BoltsInHand *bolts_in_hand_open(Desk *desk, const char *argument)
{
    BoltsInHand *bolts = g_new0(BoltsInHand, 1);
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

void bolts_in_hand_close(BoltsInHand *bolts)
{
    slip_forget(&bolts->slip);
    supposed_forget(&bolts->supposed);
    g_free(bolts->number);
    g_free(bolts->set);
    g_free(bolts->step);
    g_free(bolts->first);
    g_free(bolts->check);
    g_free(bolts);
}

Tightening *bolts_tightening(const BoltsInHand *bolts, Desk *desk)
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
static void begin_at(BoltsInHand *bolts, const Tightening *tightening, const char *name)
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

void bolts_heed_mended(BoltsInHand *bolts, Desk *desk, guint here)
{
    g_autoptr(Tightening) tightening = bolts->mends ? bolts_tightening(bolts, desk) : NULL;
    const Turn *turn = tightening ? tightening_turn(tightening, here) : NULL;
    if (turn && turn->made->verdict == VERDICT_IN_DOUBT && turn->made->reason == bolts->reason)
        bolts->mends = 0;
}

const Turn *bolts_turn(BoltsInHand *bolts, const Tightening *tightening)
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

void bolts_heed_loosened(BoltsInHand *bolts, Desk *desk)
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

gboolean bolts_ask_how_left(const BoltsInHand *bolts, Desk *desk, const Tightening *tightening,
                            const Turn *turn)
{
    StageKind kind = tightening_stage(tightening, turn->stage)->kind;
    gboolean angle = stage_is_angle(kind);
    gboolean ticked = turn->made->verdict != VERDICT_OPEN;
    gboolean in_hand = angle && !ticked && standing_of(desk_build(desk)).in_hand;
    gint64 seq = in_hand ? left_interrupted(desk, bolts->step, bolts->set) : 0;
    return seq != 0 && seq != bolts->answered;
}
