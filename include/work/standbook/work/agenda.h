// What is next and what is left: in a step, and over a build. Pure: everything comes in.
//
// The order of the work is the order of the requirements of an assessment: the steps as the plan
// has them, within a step what it asks for as written, bolts in the order asked (each run through
// all its stages), signatures last. What is worked out is never typed; what is not needed or
// withdrawn is passed over. Places are indexes into Assessment.requirements.
#pragma once
#include <standbook/judge/assess.h>

typedef struct {
    const Plan *plan;             // in force
    const Assessment *assessment; // of this plan and these entries
    const Entry *const *entries;  // of the build, in turn
    gsize count;
} Agenda;

enum { AGENDA_NOWHERE = G_MAXUINT }; // no place

// What is asked at a place, which is there.
static inline const Requirement *agenda_made(const Agenda *agenda, guint index)
{
    return g_ptr_array_index(agenda->assessment->requirements, index);
}

// Whether something is typed at this place of the step.
gboolean agenda_asks(const Agenda *agenda, const PlanStep *step, guint index);

// Whether something is still to be typed at this place: it is open. A finding that was read and
// waits for its answer is not.
gboolean agenda_is_open(const Agenda *agenda, guint index);

// The next place to type at in a step after a reading at `from` (AGENDA_NOWHERE: at the beginning),
// round to those that were passed over: what is open and needed, then what fails or is in doubt,
// then what is open and optional, then the signatures. Of a tightening no stage comes before the
// one in front of it is through. In place of what is worked out and fails or is in doubt stands a
// reading that goes into it, of this step if there is one. AGENDA_NOWHERE: nothing is left.
guint agenda_next(const Agenda *agenda, const PlanStep *step, guint from);

// The place beside `from` in the step, done or not, in a direction (1, -1); from AGENDA_NOWHERE the
// first or the last. AGENDA_NOWHERE at the end.
guint agenda_beside(const Agenda *agenda, const PlanStep *step, guint from, gint direction);

// What is to be read for the place: itself, or of what is worked out a reading that goes into it
// where the places meet, of this step before one of others, the latest of those. AGENDA_NOWHERE if
// there is none.
guint agenda_input(const Agenda *agenda, guint index);

// Whether `input` is one of those that the formula of `made` (a check's place with a formula)
// names, itself needed and read in that step or one before it, where the places meet.
gboolean agenda_goes_into(const Requirement *input, const Requirement *made);

// STEPS

// Whether the plan itself asks for nothing but signatures: a blank card, on which each check is
// named as it comes.
gboolean agenda_is_card(const Agenda *agenda);

// Whether the step asks for anything but signatures.
gboolean agenda_has_work(const Agenda *agenda, const PlanStep *step);

// Whether all signatures of the step are there that are needed.
gboolean agenda_is_signed(const Agenda *agenda, const PlanStep *step);

// Whether nothing needed is left in the step: no open place, no fault, no signature. A finding that
// waits for later work does not keep its step.
gboolean agenda_is_done(const Agenda *agenda, const PlanStep *step);

// Whether a step that the entry `since` (seq) picked up or put down is closed: all signatures it asks
// for are given, and the last of them after that entry, or nothing needed is left. A step that asks
// for no signature is never closed.
gboolean agenda_is_closed(const Agenda *agenda, const PlanStep *step, gint64 since);

// The first of the steps in its `after` that is not signed: by it the step is held. NULL: it may
// begin.
const PlanStep *agenda_held_by(const Agenda *agenda, const PlanStep *step);

// Who has a step in hand. A person has the step picked up last in hand until it is put down, or
// signed by whomever, or until the same person picks up another.
typedef struct {
    const PlanStep *step; // NULL: none is in hand
    const Entry *since;   // that picked it up; its `by` has it in hand
} AgendaHand;

// All that are in hand (AgendaHand), the one picked up last first. The caller frees with
// g_array_unref.
GArray *agenda_hands(const Agenda *agenda) G_GNUC_WARN_UNUSED_RESULT;

// Of several steps in hand the one picked up last.
AgendaHand agenda_hand(const Agenda *agenda);

// The step to go on with: the one in hand, else the first that is neither done nor held; NULL:
// there is none.
const PlanStep *agenda_step(const Agenda *agenda);
