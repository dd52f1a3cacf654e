#include <standbook/work/closing.h>

#include <standbook/record/live.h>
#include <standbook/work/finding.h>
#include <string.h>

gboolean closing_means(const PlanStep *step, const PlanName *name, const Requirement *made)
{
    gboolean same = name->check ? made->check == name->check
                    : name->group
                        ? requirement_is_bolted(made) && strcmp(made->name, name->group->name) == 0
                        : FALSE;
    if (!same || made->withdrawn)
        return FALSE;
    return name->step ? made->step == name->step
                      : made->step == step || plan_step_follows(step, made->step);
}

static gboolean is_named(const PlanStep *step, const Requirement *made)
{
    for (guint i = 0; i < step->closes->len; i++)
        if (closing_means(step, step->closes->pdata[i], made))
            return TRUE;
    return FALSE;
}

gboolean closing_is_left(const Requirement *made)
{
    return requirement_is_left(made) && !finding_waits(made);
}

gboolean closing_at_stake(const PlanStep *step, const Requirement *made)
{
    gboolean found = made->finding && made->own_verdict != VERDICT_OPEN;
    return requirement_is_left(made) && !found && is_named(step, made);
}

static const Entry *newest_reason(const Agenda *agenda, const PlanStep *step)
{
    g_autofree gboolean *live = g_new0(gboolean, agenda->count);
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *entry = agenda->entries[i];
        if (live[i] && strcmp(entry->kind->name, "close") == 0 &&
            g_strcmp0(entry_text(entry, "step"), step->name) == 0)
            return entry;
    }
    return NULL;
}

// Whether all of these places (guint) were at stake already when that reason was given.
static gboolean were_at_stake(const Agenda *agenda, const PlanStep *step, const GArray *places,
                              const Entry *reason)
{
    g_autoptr(Assessment) then =
        assess(agenda->plan, agenda->entries, agenda->count, reason->seq, NULL);
    for (guint i = 0; i < places->len; i++) {
        g_autofree char *name =
            requirement_name(agenda_made(agenda, g_array_index(places, guint, i)));
        const Requirement *made = requirement_of_name(then, name);
        if (!made || !closing_at_stake(step, made))
            return FALSE;
    }
    return TRUE;
}

gboolean closing_comes_before(const Agenda *agenda, const PlanStep *step, guint index, guint place)
{
    gboolean bolt = requirement_is_bolted(agenda_made(agenda, place));
    if (agenda_made(agenda, index)->step == step)
        return bolt && index < place;
    return bolt || !step->tightenings->len;
}

guint closing_first(const Agenda *agenda, const PlanStep *step, guint place)
{
    g_autoptr(GArray) stake = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; step->closes->len && i < agenda->assessment->requirements->len; i++)
        if (closing_at_stake(step, agenda_made(agenda, i)) &&
            closing_comes_before(agenda, step, i, place))
            g_array_append_val(stake, i);
    const Entry *reason = stake->len ? newest_reason(agenda, step) : NULL;
    if (!stake->len || (reason && were_at_stake(agenda, step, stake, reason)))
        return AGENDA_NOWHERE;
    return g_array_index(stake, guint, 0);
}

const Entry *closing_excuse(const Agenda *agenda, const PlanStep *step)
{
    const Entry *reason = newest_reason(agenda, step);
    g_autoptr(GArray) left = g_array_new(FALSE, FALSE, sizeof(guint));
    for (guint i = 0; reason && i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        gboolean own = made->step == step && made->asked != ASKED_SIGN && !made->withdrawn;
        if ((own || is_named(step, made)) && closing_is_left(made))
            g_array_append_val(left, i);
    }
    return reason && were_at_stake(agenda, step, left, reason) ? reason : NULL;
}
