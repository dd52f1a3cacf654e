#include "uphold.h"

#include "line_words.h"
#include "supposed.h"

#include <string.h>

static guint32 doubts_of(const Requirement *made)
{
    const guint32 others = reason_bit(REASON_SPENT) | reason_bit(REASON_GAUGE);
    gboolean doubted = !made->withdrawn && made->verdict == VERDICT_IN_DOUBT;
    return doubted ? made->doubts & ~others : 0;
}

gboolean uphold_can(const Requirement *made)
{
    return doubts_of(made) != 0;
}

static guint nearness(const Requirement *made)
{
    return !made ? 0 : uphold_can(made) ? 2 : made->verdict == VERDICT_IN_DOUBT ? 1 : 0;
}

// The place in hand, unless another one of the step is in a doubt that says more.
static const Requirement *meant(const Assessment *assessment, const PlanStep *step,
                                const Requirement *made)
{
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = assessment->requirements->pdata[i];
        made = each->step == step && nearness(each) > nearness(made) ? each : made;
    }
    return made;
}

const Requirement *uphold_meant(Desk *desk, const PlanStep *step, const Requirement *made)
{
    Session *session = desk_build(desk);
    const Requirement *found =
        session && step ? meant(session_assessment(session), step, made) : NULL;
    return found && uphold_can(found) ? found : NULL;
}

Go uphold_ask(Desk *desk, const PlanStep *step, const Requirement *made)
{
    Session *session = desk_build(desk);
    made = session ? meant(session_assessment(session), step, made) : NULL;
    if (!nearness(made)) {
        desk_warn(desk, "nothing here is in doubt, so there is nothing to uphold");
        return go(GO_STAY);
    }
    if (!desk->who)
        return go_open(VIEW_WHO, NULL);
    Supposed supposed = {0};
    g_autofree char *target = line_target(session_plan(session), made);
    g_autofree char *line = g_strdup_printf("uphold %s \"so\"", target);
    supposed_take(&supposed, desk, line);
    if (supposed.problem)
        desk_warn(desk, "%s", supposed.problem);
    gboolean can = !supposed.problem;
    supposed_forget(&supposed);
    return can ? go_open(VIEW_UPHOLD, requirement_name(made)) : go(GO_STAY);
}

static gboolean is_alike(const Requirement *one, const Requirement *other)
{
    return one->step == other->step && strcmp(one->name, other->name) == 0;
}

// What a line that names its place means, whatever the stage; of signatures it is one.
static gboolean is_there(const Requirement *one, const Requirement *other)
{
    return is_alike(one, other) && strcmp(one->place, other->place) == 0 &&
           (one->asked != ASKED_SIGN || one->stage == other->stage);
}

guint uphold_count(const Assessment *assessment, const Requirement *made, gboolean whole)
{
    guint count = 0;
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = assessment->requirements->pdata[i];
        count += (whole ? is_alike : is_there)(each, made) && uphold_can(each);
    }
    return count;
}

char *uphold_doubts(const Assessment *assessment, const Requirement *made, gboolean whole)
{
    guint32 doubts = doubts_of(made);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *each = assessment->requirements->pdata[i];
        doubts |= (whole ? is_alike : is_there)(each, made) ? doubts_of(each) : 0;
    }
    return reasons_words(doubts);
}
