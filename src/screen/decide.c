#include "decide.h"

#include <standbook/work/finding.h>

// How much is said for a finding: only a decision answers it, or later work may.
static guint weight_of(const Requirement *made)
{
    return !made || !finding_waits(made) ? 0 : made->check->by_decision ? 2 : 1;
}

const Requirement *decide_meant(const Assessment *assessment, const PlanStep *step,
                                const Requirement *const near[2])
{
    const Requirement *meant = NULL;
    for (guint i = 0; i < 2; i++)
        if (weight_of(near[i]))
            return near[i];
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = assessment->requirements->pdata[i];
        meant = each->step == step && weight_of(each) > weight_of(meant) ? each : meant;
    }
    return meant;
}

Go decide_ask(const Requirement *found)
{
    return go_open(VIEW_DECIDE, requirement_name(found));
}
