#include "new_bolt.h"

#include <string.h>

typedef gboolean (*Wanted)(const Requirement *fit, const Turn *turn);

// The first new bolt of the set of a turn that the plan asks for in the same step and that is
// wanted.
static const Requirement *find_fit(Desk *desk, const Turn *turn, Wanted wanted)
{
    Session *session = desk_build(desk);
    const PlanGroup *group = plan_group(session_plan(session), turn->made->name);
    const GPtrArray *all = session_assessment(session)->requirements;
    for (guint i = 0; (group->once || group->new_needed) && i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        if (made->asked == ASKED_FIT && !made->withdrawn && made->step == turn->made->step &&
            strcmp(made->name, turn->made->name) == 0 && wanted(made, turn))
            return made;
    }
    return NULL;
}

static gboolean is_at(const Requirement *fit, const Turn *turn)
{
    return strcmp(fit->place, turn->made->place) == 0;
}

static gboolean is_in_doubt(const Requirement *fit, const Turn *turn)
{
    (void)turn;
    return fit->verdict == VERDICT_IN_DOUBT;
}

const Requirement *new_bolt_fit(Desk *desk, const Turn *turn)
{
    return find_fit(desk, turn, is_at);
}

// The newest entry of the build if it is of that kind and its `field` names the set; else NULL.
static const Entry *newest_of(Desk *desk, const char *kind, const char *field, const char *set)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    const Entry *newest = entries->len ? entries->pdata[entries->len - 1] : NULL;
    return newest && strcmp(newest->kind->name, kind) == 0 &&
                   g_strcmp0(entry_text(newest, field), set) == 0
               ? newest
               : NULL;
}

// Another bolt of the set that is to be replaced too, where one was just now: all that are come out
// before any is tightened. NULL if there is none.
static const Requirement *to_replace_too(Desk *desk, const Turn *turn)
{
    return newest_of(desk, "fit", "part", turn->made->name) ? find_fit(desk, turn, is_in_doubt)
                                                            : NULL;
}

gboolean new_bolt_loosened(Desk *desk, const Turn *turn)
{
    const Entry *loosened = newest_of(desk, "slacken", "tightening", turn->made->name);
    for (gsize i = 0; loosened && i < entry_list_length(loosened, "bolts"); i++)
        if (g_strcmp0(entry_list_item(loosened, "bolts", i), turn->made->place) == 0)
            return new_bolt_fit(desk, turn) != NULL;
    return FALSE;
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
    const Requirement *too = fit && !fit->spent ? to_replace_too(desk, turn) : NULL;
    if (!fit || (!fit->spent && !too))
        return go(GO_STAY);
    desk->new_asked = known;
    if (too)
        desk_warn(desk, "%s %s is in doubt: fit a new one there too, before any is tightened",
                  too->name, too->place);
    else
        desk_warn(desk, "%s %s is used up: fit a new one before it is tightened again", fit->name,
                  fit->place);
    return new_bolt_go(too ? too : fit, over);
}
