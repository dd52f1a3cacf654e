#include "others.h"

#include <standbook/work/agenda.h>
#include <string.h>

// NULL for who works here.
static const char *other_by(Desk *desk, const Entry *entry)
{
    const Shop *shop = session_shop(desk_build(desk));
    const Entry *person = shop_by_id(shop, "person", entry->by);
    const char *initials = person ? shop_label(person) : NULL;
    return g_strcmp0(initials, desk->who) == 0 ? NULL : initials;
}

// Who else has the step in hand at a terminal that is running (AgendaHand).
static GArray *hands_of(Desk *desk, const char *step)
{
    Session *session = desk_build(desk);
    const Agenda agenda = session_agenda(session);
    GArray *hands = agenda_hands(&agenda);
    for (guint i = hands->len; i-- > 0;) {
        const AgendaHand *hand = &g_array_index(hands, AgendaHand, i);
        if (!other_by(desk, hand->since) || strcmp(hand->step->name, step) != 0 ||
            !book_is_attended(desk->book, hand->since->ledger, hand->since->seq))
            g_array_remove_index(hands, i);
    }
    return hands;
}

char *others_here(Desk *desk, const char *step)
{
    g_autoptr(GArray) hands = hands_of(desk, step);
    g_autoptr(GString) here = g_string_new(NULL);
    for (guint i = 0; i < hands->len; i++)
        g_string_append_printf(here, "%s%s", here->len ? ", " : "",
                               other_by(desk, g_array_index(hands, AgendaHand, i).since));
    return here->len ? g_strconcat(here->str, " here too", NULL) : NULL;
}

gboolean others_are_at(Desk *desk, const char *step, const Entry *entry)
{
    g_autoptr(GArray) hands = hands_of(desk, step);
    for (guint i = 0; i < hands->len; i++)
        if (g_strcmp0(g_array_index(hands, AgendaHand, i).since->by, entry->by) == 0)
            return TRUE;
    return FALSE;
}

const char *others_initials(Desk *desk, gint64 seq)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    return seq > 0 && seq <= entries->len ? other_by(desk, entries->pdata[seq - 1]) : NULL;
}
