// What a step closes: what cannot be read or done any more once the step goes on. Pure.
#pragma once
#include <standbook/work/agenda.h>

// Whether the plan means this requirement by a name in the step's `closes`. A name alone is that of
// the step itself if it has it, and of wherever it is asked before.
gboolean closing_means(const PlanStep *step, const PlanName *name, const Requirement *made);

// Whether it is to be settled before its step is closed: not a finding that was read and waits for
// later work, which loses nothing by it.
gboolean closing_is_left(const Requirement *made);

// Whether a place that the step closes is not settled: open, outside or in doubt. A finding that
// was read is settled as far as that goes: it cannot be lost any more.
gboolean closing_at_stake(const PlanStep *step, const Requirement *made);

// Whether it is asked for before a place of the step: in front of a bolt all that stands before it;
// at a place of a step without bolts what earlier steps ask for; elsewhere nothing.
gboolean closing_comes_before(const Agenda *agenda, const PlanStep *step, guint index, guint place);

// The first that is at stake in front of a place of the step, where it should not go on without a
// reason: one of them was not at stake yet when a reason for closing the step was entered last.
// AGENDA_NOWHERE: it may go on.
guint closing_first(const Agenda *agenda, const PlanStep *step, guint place);

// The newest reason for closing the step that counts (`close` in standbook-log(5)) if it was given
// when all that is left of the step now was at stake already; else NULL.
const Entry *closing_excuse(const Agenda *agenda, const PlanStep *step);
