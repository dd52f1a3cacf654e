#include "setting_tries.h"

#include "earlier_builds.h"

static void forget(SettingTries *tries)
{
    g_clear_pointer(&tries->trials, trials_free);
    next_move_clear(&tries->advised);
    tries->advised = (NextMove){0};
}

void setting_tries_clear(SettingTries *tries)
{
    forget(tries);
    g_clear_pointer(&tries->earlier, g_array_unref);
    g_free(tries->check);
    g_free(tries->step);
}

const Trials *setting_tries_now(SettingTries *tries, Desk *desk)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    if (tries->trials && entries && tries->seen == entries->len)
        return tries->trials;
    forget(tries);
    const Plan *plan = session ? session_plan(session) : NULL;
    const PlanStep *step = plan ? plan_step(plan, tries->step) : NULL;
    const PlanCheck *check = step ? plan_check(plan, tries->check) : NULL;
    if (!check || !check->setting)
        return NULL;
    tries->seen = entries->len;
    tries->trials = trials_new(plan, step, check, session_assessment(session),
                               (const Entry *const *)entries->pdata, entries->len);
    trials_judge(tries->trials);
    if (!tries->earlier)
        tries->earlier = earlier_builds(desk, tries->trials);
    tries->advised = next_move_of(tries->trials, tries->earlier);
    return tries->trials;
}
