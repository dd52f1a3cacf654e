#include "earlier_builds.h"

#include <string.h>

static gboolean learn(Session *session, const Trials *here, SettingLearned *learned)
{
    const GPtrArray *entries = session_entries(session);
    return earlier_learned(here, session_plan(session), session_assessment(session),
                           (const Entry *const *)entries->pdata, entries->len, learned);
}

GArray *earlier_builds(Desk *desk, const Trials *trials)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    for (guint i = 0; i < numbers->len && all->len < EARLIER_MOST; i++) {
        SettingLearned learned;
        Session *session = strcmp(numbers->pdata[i], desk->number) == 0
                               ? NULL
                               : desk_session(desk, numbers->pdata[i]);
        if (session && learn(session, trials, &learned))
            g_array_append_val(all, learned);
    }
    return all;
}
