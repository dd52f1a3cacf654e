#include "concede.h"

#include "line_words.h"
#include "uphold.h"

Go concede_ask(Desk *desk, const PlanStep *step, const Requirement *fault, const char *none)
{
    gboolean fails = fault && fault->verdict == VERDICT_FAIL;
    const Requirement *doubt = fails ? NULL : uphold_meant(desk, step, fault);
    if (!fault && !doubt) {
        desk_warn(desk, "%s", none);
        return go(GO_STAY);
    }
    g_autofree char *name = fault ? requirement_name(fault) : g_strdup("");
    g_autofree char *target =
        fault ? line_target(session_plan(desk_build(desk)), fault) : g_strdup("");
    if (!doubt)
        return go_open(VIEW_CONCEDE, g_strdup_printf("%s\n%s", name, target));
    g_autofree char *upheld = requirement_name(doubt);
    return go_open(VIEW_ACCEPT, g_strdup_printf("%s\n%s\n%s", name, target, upheld));
}
