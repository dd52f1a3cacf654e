#include "before_closing.h"

#include <standbook/work/closing.h>
#include <string.h>

Go go_before_closing(Desk *desk, const PlanStep *step, const Requirement *made)
{
    Session *session = desk_build(desk);
    const Agenda agenda = session_agenda(session);
    guint place;
    if (!made || !g_ptr_array_find(agenda.assessment->requirements, made, &place) ||
        closing_first(&agenda, step, place) == AGENDA_NOWHERE)
        return go(GO_STAY);
    g_autofree char *name = requirement_name(made);
    return go_instead(VIEW_CLOSING, g_strconcat(step->name, "\n", name, NULL));
}

guint place_before_closing(const Assessment *assessment, const char *argument)
{
    const Requirement *made = requirement_of_name(assessment, argument);
    guint place = AGENDA_NOWHERE;
    if (made)
        g_ptr_array_find(assessment->requirements, made, &place);
    return place;
}
