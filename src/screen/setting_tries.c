#include "setting_tries.h"

#include "earlier_builds.h"

#include <string.h>

static void forget(SettingTries *tries)
{
    g_clear_pointer(&tries->trials, trials_free);
    next_move_clear(&tries->advised);
    tries->advised = (NextMove){0};
}

const char *setting_tries_open(SettingTries *tries, const char *argument)
{
    enum { CHECK, STEP, PLACE, PARTS };
    g_auto(GStrv) parts = g_strsplit(argument, "\n", PARTS + 1);
    g_assert(g_strv_length(parts) >= PARTS);
    tries->check = g_strdup(parts[CHECK]);
    tries->step = g_strdup(parts[STEP]);
    tries->place = (guint)g_ascii_strtoull(parts[PLACE], NULL, 10);
    return parts[PARTS] ? argument + strlen(argument) - strlen(parts[PARTS]) : NULL;
}

char *setting_tries_argument(const char *check, const char *step, guint place, const char *behind)
{
    return g_strdup_printf("%s\n%s\n%u%s%s", check, step, place, behind ? "\n" : "",
                           behind ? behind : "");
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
    if (!check || !check->setting || tries->place >= MAX(setting_count(check), 1))
        return NULL;
    tries->seen = entries->len;
    tries->trials = trials_new(plan, step, check, tries->place, session_assessment(session),
                               (const Entry *const *)entries->pdata, entries->len);
    trials_judge(tries->trials);
    if (!tries->earlier)
        tries->earlier = earlier_builds(desk, tries->trials);
    tries->advised = next_move_of(tries->trials, tries->earlier);
    return tries->trials;
}
