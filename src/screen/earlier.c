#include "earlier.h"

#include <string.h>

enum { MOST = 6 }; // builds

// What that build shows of it; FALSE if it was not set there.
static gboolean learn(Session *session, const Trials *here, SettingLearned *learned)
{
    const Plan *plan = session_plan(session);
    const PlanCheck *check = plan_check(plan, here->check->name);
    if (!check || !check->setting || g_strcmp0(plan->family, here->plan->family) != 0)
        return FALSE;
    const GPtrArray *entries = session_entries(session);
    g_autoptr(Trials) trials = trials_new(plan, check->step, check, session_assessment(session),
                                          (const Entry *const *)entries->pdata, entries->len);
    if (!trials->all->len)
        return FALSE;
    trials_judge(trials);
    g_auto(NextMove) next = next_move_of(trials, NULL);
    *learned = next.learned;
    return next_move_teaches(&next);
}

GArray *earlier_settings(Desk *desk, const Trials *trials)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    for (guint i = 0; i < numbers->len && all->len < MOST; i++) {
        SettingLearned learned;
        Session *session = strcmp(numbers->pdata[i], desk->number) == 0
                               ? NULL
                               : desk_session(desk, numbers->pdata[i]);
        if (session && learn(session, trials, &learned))
            g_array_append_val(all, learned);
    }
    return all;
}
