#include "to_lay.h"

Go go_lay(const Laying *laying)
{
    return go_open(VIEW_LAY, g_strconcat(laying->step->name, "\n", laying->consumable->name, "\n",
                                         laying->group ? laying->group->name : "", NULL));
}

Go go_to_lay(Desk *desk, const Agenda *agenda, guint index)
{
    g_autoptr(GArray) layings = layings_left(agenda, agenda_made(agenda, index)->step);
    for (guint i = layings->len; i-- > 0;) {
        const Laying *laying = &g_array_index(layings, Laying, i);
        g_autofree char *name =
            g_strconcat(laying->step->name, "\n", laying->consumable->name, NULL);
        if (g_hash_table_contains(desk->not_yet, name))
            g_array_remove_index(layings, i);
    }
    const Laying *next = laying_before(agenda, layings, index);
    return next ? go_lay(next) : go(GO_STAY);
}

Go go_to_lay_for(Desk *desk, const Requirement *made)
{
    Session *session = desk_build(desk);
    const Agenda agenda = session_agenda(session);
    guint place;
    return g_ptr_array_find(agenda.assessment->requirements, made, &place)
               ? go_to_lay(desk, &agenda, place)
               : go(GO_STAY);
}

char *laying_words(const Laying *laying)
{
    return laying->group
               ? g_strdup_printf("%s on %s", laying->consumable->name, laying->group->name)
               : g_strdup(laying->consumable->name);
}
