#include "session_inside.h"

#include <standbook/work/suppose.h>
#include <string.h>

Assessment *session_suppose(Session *session, const char *line, GError **error)
{
    Moment now = session->options.now(session->options.user);
    g_autoptr(LineTaken) taken = line_take(session->taker, line, now, error);
    if (!taken || !session->build)
        return NULL;
    const GPtrArray *entries = line_taker_entries(session->taker);
    g_autoptr(GPtrArray) all = g_ptr_array_sized_new(entries->len + taken->entries->len);
    for (guint i = 0; i < entries->len; i++)
        g_ptr_array_add(all, entries->pdata[i]);
    for (guint i = 0; i < taken->entries->len; i++) {
        Entry *entry = taken->entries->pdata[i];
        if (strcmp(entry->ledger, session->build) == 0)
            g_ptr_array_add(all, entry);
    }
    if (all->len == entries->len)
        return NULL;
    return assess(session_plan(session), (const Entry *const *)all->pdata, all->len, 0, NULL);
}
