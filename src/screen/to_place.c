#include "to_place.h"

#include "struck.h"

#include <standbook/work/too_soon.h>
#include <string.h>

gboolean step_is_begun(const Agenda *agenda, const PlanStep *step)
{
    for (gsize i = agenda->count; i-- > 0;)
        if (strcmp(agenda->entries[i]->kind->name, "pick up") == 0 &&
            g_strcmp0(entry_text(agenda->entries[i], "step"), step->name) == 0)
            return TRUE;
    return FALSE;
}

gboolean step_is_cautioned(const Agenda *agenda, const PlanStep *step, Moment now)
{
    g_autofree char *soon = too_soon_words(agenda, step, now);
    return step->cautions->len || soon;
}

Go go_tell(const char *build, const Requirement *made)
{
    g_autofree char *name = requirement_name(made);
    return go_look(build, VIEW_WHY, g_strconcat(name, "\nleads", NULL));
}

// Whether who works here has the step in hand: picked up once more it would look broken off.
static gboolean has_in_hand(Desk *desk, const PlanStep *step)
{
    Standing standing = standing_of(desk_build(desk));
    return standing.in_hand && standing.step == step && struck_is_own(desk, standing.entry->seq);
}

Go go_to_place(Desk *desk, const Agenda *agenda, const Requirement *made)
{
    const PlanStep *step = made->step;
    if (!step_is_begun(agenda, step) && step_is_cautioned(agenda, step, desk->now))
        return go_open(VIEW_CAUTION, g_strdup(step->name));
    gboolean sign = made->asked == ASKED_SIGN;
    g_autofree char *name = requirement_name(made);
    g_autofree char *line = g_strdup_printf("pick up %s", step->name);
    g_autofree char *argument = g_strconcat(step->name, sign ? NULL : "\n", name, NULL);
    if (!has_in_hand(desk, step) && !desk_line(desk, line, NULL))
        return go(GO_KEEP);
    return go_open(sign ? VIEW_CLOSING : VIEW_BENCH, g_steal_pointer(&argument));
}
