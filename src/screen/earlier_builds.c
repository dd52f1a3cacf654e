#include "earlier_builds.h"

#include <string.h>

static void learn(Session *session, const Trials *here, GArray *all)
{
    const GPtrArray *entries = session_entries(session);
    const EarlierBuild build = {session_plan(session), session_assessment(session),
                                (const Entry *const *)entries->pdata, entries->len};
    earlier_learn(here, &build, all);
}

GArray *earlier_builds(Desk *desk, const Trials *trials)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    earlier_here(trials, all);
    for (guint i = 0; i < numbers->len && all->len < EARLIER_MOST; i++) {
        Session *session = strcmp(numbers->pdata[i], desk->number) == 0
                               ? NULL
                               : desk_session(desk, numbers->pdata[i]);
        if (session)
            learn(session, trials, all);
    }
    return all;
}
