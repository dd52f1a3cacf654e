#include "telling.h"

gboolean told_init(Told *told, Desk *desk)
{
    Session *session = desk_build(desk);
    *told = (Told){.taken = NULL};
    if (!session)
        return FALSE;
    told->agenda = session_agenda(session);
    told->taken = taken_new(told->agenda.entries, told->agenda.count, NULL);
    told->telling = (Telling){&told->agenda, told->taken, desk->now};
    return TRUE;
}

void told_clear(Told *told)
{
    g_clear_pointer(&told->taken, taken_free);
}
