#include "session_inside.h"

#include <standbook/work/suppose.h>
#include <string.h>

Assessment *session_suppose(Session *session, const char *line, GError **error)
{
    Moment now = session->options.now(session->options.user);
    g_autoptr(LineTaken) taken = line_take(session->taker, line, now, error);
    if (!taken || !session->build)
        return NULL;
    g_autoptr(GPtrArray) ours = g_ptr_array_new();
    for (guint i = 0; i < taken->entries->len; i++) {
        Entry *entry = taken->entries->pdata[i];
        if (strcmp(entry->ledger, session->build) == 0)
            g_ptr_array_add(ours, entry);
    }
    if (ours->len == 0)
        return NULL;
    session_assessment(session); // makes the judgement, and brings it up to now
    return judgement_suppose(session->judgement, (const Entry *const *)ours->pdata, ours->len);
}
