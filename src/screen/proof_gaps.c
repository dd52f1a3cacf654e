#include "proof_gaps.h"

#include "bench_work.h"
#include "tightening.h"
#include "to_place.h"

#include <standbook/work/agenda_item.h>
#include <standbook/work/closing.h>
#include <standbook/work/finding.h>
#include <standbook/work/gate.h>
#include <string.h>

gboolean gaps_init(Gaps *gaps, Desk *desk, const char *gate)
{
    *gaps = (Gaps){.gaps = NULL};
    if (!told_init(&gaps->told, desk))
        return FALSE;
    gint named = gate ? plan_gate(gaps->told.agenda.plan, gate) : -1;
    gaps->gate = named >= 0 ? (guint)named : gate_next(&gaps->told.agenda);
    gaps->told.telling.agenda = &gaps->told.agenda;
    gaps->gaps = subjects_missing(&gaps->told.telling, gaps->gate);
    return TRUE;
}

void gaps_clear(Gaps *gaps)
{
    g_clear_pointer(&gaps->gaps, g_array_unref);
    told_clear(&gaps->told);
}

const GateCount *gaps_gate(const Gaps *gaps)
{
    return gaps->told.agenda.assessment->gates->pdata[gaps->gate];
}

const Requirement *gaps_made(const Gaps *gaps, guint index)
{
    return agenda_made(&gaps->told.agenda, index);
}

const Subject *gaps_gap(const Gaps *gaps, guint at)
{
    return at < gaps->gaps->len ? &g_array_index(gaps->gaps, Subject, at) : NULL;
}

// WHERE -----------------------------------------------------------------------------------------

guint gaps_first_left(const Gaps *gaps, guint at)
{
    const Subject *gap = gaps_gap(gaps, at);
    for (guint i = 0; gap && i < gap->places->len; i++) {
        guint index = g_array_index(gap->places, guint, i);
        if (requirement_is_left(gaps_made(gaps, index)))
            return index;
    }
    return AGENDA_NOWHERE;
}

// The bolt that is next; that one itself if none is open.
static guint next_bolt(const Gaps *gaps, guint index)
{
    const Agenda *agenda = &gaps->told.agenda;
    const Requirement *made = gaps_made(gaps, index);
    g_autoptr(Tightening) tightening =
        tightening_new(agenda->plan, agenda->assessment, made->step, made->name);
    const Turn *next =
        tightening ? tightening_turn(tightening, tightening_next(tightening, 0)) : NULL;
    guint found = index;
    if (next)
        g_ptr_array_find(agenda->assessment->requirements, next->made, &found);
    return found;
}

static guint place_of(const Gaps *gaps, guint at)
{
    guint found = gaps_first_left(gaps, at);
    const Requirement *made = found == AGENDA_NOWHERE ? NULL : gaps_made(gaps, found);
    if (!made || finding_waits(made))
        return AGENDA_NOWHERE;
    return requirement_is_bolted(made) ? next_bolt(gaps, found)
                                       : agenda_input(&gaps->told.agenda, found);
}

// HERE OR THERE ---------------------------------------------------------------------------------

// A pull to a torque needs no more than its Enter. An angle may have been begun and left, a wait
// runs by itself, and what is in doubt is loosened first.
static gboolean is_plain_bolt(const AgendaItem *item)
{
    StageKind kind = item->stage ? item->stage->kind : STAGE_WAIT;
    return item->made->verdict == VERDICT_OPEN && (kind == STAGE_TORQUE || kind == STAGE_SNUG);
}

static gboolean is_set(const Gaps *gaps, const Requirement *made)
{
    const BenchWork work = {gaps->told.agenda, made->step};
    g_autofree char *setting = bench_setting(&work, made);
    return setting != NULL;
}

// Nothing is signed but on the page that closes the step, which lists what is signed.
static gboolean has_page(const Gaps *gaps, guint place)
{
    const Agenda *agenda = &gaps->told.agenda;
    g_auto(AgendaItem) item = agenda_item(agenda, place);
    if (item.made->asked == ASKED_SIGN)
        return TRUE;
    if (closing_first(agenda, item.made->step, place) != AGENDA_NOWHERE)
        return TRUE;
    if (requirement_is_bolted(item.made))
        return !is_plain_bolt(&item);
    return item.field == AGENDA_PART ? !item.new_needed || item.track : is_set(gaps, item.made);
}

static gboolean is_for_decision(const Gaps *gaps, guint at)
{
    guint index = gaps_first_left(gaps, at);
    const Requirement *made = index == AGENDA_NOWHERE ? NULL : gaps_made(gaps, index);
    return made && finding_waits(made) && made->check->by_decision;
}

Doing gaps_doing(const Gaps *gaps, guint at, guint *place)
{
    const Subject *gap = gaps_gap(gaps, at);
    *place = place_of(gaps, at);
    if (*place == AGENDA_NOWHERE)
        return !gap ? DO_NOTHING : is_for_decision(gaps, at) ? DO_DECIDE : DO_WAIT;
    gboolean begun = step_is_begun(&gaps->told.agenda, gaps_made(gaps, *place)->step);
    return !begun || has_page(gaps, *place) ? DO_OPEN : DO_HERE;
}
