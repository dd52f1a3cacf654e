#include "left.h"

#include <string.h>

gint64 left_interrupted(Desk *desk, const char *step, const char *set)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        if (strcmp(entry->kind->name, "put down") == 0 &&
            g_strcmp0(entry_text(entry, "step"), step) == 0)
            return entry->seq;
        if (kind_field(entry->kind, "tightening") &&
            g_strcmp0(entry_text(entry, "tightening"), set) == 0)
            return 0;
    }
    return 0;
}

gboolean left_picked_up_here(Desk *desk, const char *step)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session_entries(session);
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        if (strcmp(entry->kind->name, "pick up") != 0 ||
            g_strcmp0(entry_text(entry, "step"), step) != 0)
            continue;
        const Entry *person = shop_by_id(session_shop(session), "person", entry->by);
        return person && g_strcmp0(shop_label(person), desk->who) == 0;
    }
    return FALSE;
}
