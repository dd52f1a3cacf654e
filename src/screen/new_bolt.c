#include "new_bolt.h"

#include <string.h>

const Requirement *new_bolt_fit(Desk *desk, const Turn *turn)
{
    Session *session = desk_build(desk);
    const PlanGroup *group = plan_group(session_plan(session), turn->made->name);
    const GPtrArray *all = session_assessment(session)->requirements;
    for (guint i = 0; (group->once || group->new_needed) && i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        if (made->asked == ASKED_FIT && !made->withdrawn && made->step == turn->made->step &&
            strcmp(made->name, turn->made->name) == 0 &&
            strcmp(made->place, turn->made->place) == 0)
            return made;
    }
    return NULL;
}

Go new_bolt_go(const Requirement *fit, gboolean over)
{
    g_autofree char *name = requirement_name(fit);
    Go there = go_instead(VIEW_BENCH, g_strconcat(fit->step->name, "\n", name, NULL));
    there.kind = over ? GO_WORK : there.kind;
    return there;
}

Go new_bolt_ask(Desk *desk, const Turn *turn, gboolean over)
{
    const guint known = session_entries(desk_build(desk))->len;
    const Requirement *fit = desk->new_asked == known ? NULL : new_bolt_fit(desk, turn);
    if (!fit || !fit->spent)
        return go(GO_STAY);
    desk->new_asked = known;
    desk_warn(desk, "%s %s is used up: fit a new one before it is tightened again", fit->name,
              fit->place);
    return new_bolt_go(fit, over);
}
