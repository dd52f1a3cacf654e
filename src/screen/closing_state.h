// What the page that closes a step is about: what is asked for, what is left of it, who signs.
#pragma once
#include "telling.h"

typedef struct {
    Told told;
    const PlanStep *step;
    guint before;            // the place in front of which it is asked, AGENDA_NOWHERE for none
    GArray *subjects;        // Subject: what it closes, and what it asks for if it is to be signed
    GArray *layings;         // Laying: what it asks to be laid and is not, likewise
    guint left;              // of those not settled
    guint first;             // of the subjects left, where one begins to settle; AGENDA_NOWHERE
    const Entry *excuse;     // a reason given before for all that is left, or NULL
    const Requirement *sign; // the next signature that is missing, NULL if none is
    guint signatures;        // how many are missing
    const Requirement *doubted; // a signature that is given and in doubt, NULL if none is
} ClosingState;

// Of a step of the build in hand, by name; `before` is the requirement in front of which it is
// asked, NULL: before it is signed. FALSE if there is none of that name. It holds until the next
// line; cleared with closing_state_clear either way.
gboolean closing_state(ClosingState *state, Desk *desk, const char *step, const char *before);
void closing_state_clear(ClosingState *state);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(ClosingState, closing_state_clear)

const Requirement *closing_made(const ClosingState *state, guint index);
