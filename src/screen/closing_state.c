#include "closing_state.h"

#include "before_closing.h"

#include <standbook/work/closing.h>
#include <standbook/work/laying.h>

void closing_state_clear(ClosingState *state)
{
    g_clear_pointer(&state->subjects, g_array_unref);
    g_clear_pointer(&state->layings, g_array_unref);
    told_clear(&state->told);
}

const Requirement *closing_made(const ClosingState *state, guint index)
{
    return g_ptr_array_index(state->told.agenda.assessment->requirements, index);
}

// The first place of the first line that is left.
static guint first_left(const ClosingState *state)
{
    const GArray *places = g_array_index(state->subjects, Subject, 0).places;
    for (guint i = 0; i < places->len; i++)
        if (closing_is_left(closing_made(state, g_array_index(places, guint, i))))
            return g_array_index(places, guint, i);
    return g_array_index(places, guint, 0);
}

static void find_subjects(ClosingState *state, const char *before)
{
    const Agenda *agenda = &state->told.agenda;
    state->before = before ? place_before_closing(agenda->assessment, before) : AGENDA_NOWHERE;
    state->subjects = state->before == AGENDA_NOWHERE
                          ? subjects_closed(&state->told.telling, state->step)
                          : subjects_at_stake(&state->told.telling, state->step, state->before);
    for (guint i = 0; i < state->subjects->len; i++)
        state->left += g_array_index(state->subjects, Subject, i).left ? 1 : 0;
    state->first = state->left ? first_left(state) : AGENDA_NOWHERE;
    state->layings =
        before ? g_array_new(FALSE, FALSE, sizeof(Laying)) : layings_missed(agenda, state->step);
    state->left += state->layings->len;
    state->excuse = state->left && !before ? closing_excuse(agenda, state->step) : NULL;
}

static void find_signatures(ClosingState *state)
{
    for (guint i = 0; i < state->told.agenda.assessment->requirements->len; i++) {
        const Requirement *made = closing_made(state, i);
        if (made->step != state->step || made->withdrawn || made->asked != ASKED_SIGN ||
            !requirement_is_left(made))
            continue;
        const Requirement **first = made->verdict == VERDICT_OPEN ? &state->sign : &state->doubted;
        state->signatures += made->verdict == VERDICT_OPEN ? 1 : 0;
        *first = *first ? *first : made;
    }
}

gboolean closing_state(ClosingState *state, Desk *desk, const char *step, const char *before)
{
    *state = (ClosingState){.step = NULL};
    if (!told_init(&state->told, desk))
        return FALSE;
    state->told.telling.agenda = &state->told.agenda;
    state->step = plan_step(state->told.agenda.plan, step);
    if (!state->step)
        return FALSE;
    find_subjects(state, before);
    find_signatures(state);
    return TRUE;
}
