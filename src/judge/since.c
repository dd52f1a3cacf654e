// What stands since a seal.
#include "judge.h"

#include <string.h>

gboolean entry_is_idle(const Entry *entry)
{
    static const char *const idle[] = {"take",     "note",    "photo",          "cost", "zero",
                                       "put down", "pick up", "caution passed", NULL};
    return g_strv_contains(idle, entry->kind->name);
}

// Kinds that no seal has to be renewed for: what the shop learnt, which is told where it turns a
// verdict; reasons and papers, which turn none; and seals.
static gboolean is_beside(const Entry *entry)
{
    static const char *const beside[] = {"news", "close", "claim", "seal", NULL};
    return entry_is_idle(entry) || g_strv_contains(beside, entry->kind->name);
}

// The step that an entry names, or that of the check it is about; NULL for none.
static const PlanStep *step_of(const Plan *plan, const Entry *entry)
{
    const char *step = entry_text(entry, "step"), *name = entry_text(entry, "check");
    const PlanCheck *check = name ? plan_check(plan, name) : NULL;
    return step ? plan_step(plan, step) : check ? check->step : NULL;
}

// What was struck since is as if it had never been; a strike of what was sealed counts as that does.
static gboolean stands_since(const Judge *judge, gint64 seq, gint64 seal, guint gate)
{
    const Entry *entry = judge_entry(judge, seq);
    if (!judge->live[seq - 1] || is_beside(entry))
        return FALSE;
    while (strcmp(entry->kind->name, "strike") == 0) {
        entry = judge_entry(judge, entry_number(entry, "entry"));
        if (entry->seq > seal || is_beside(entry))
            return FALSE;
    }
    const PlanStep *step = step_of(judge->plan, entry);
    return !step || step->gate <= gate;
}

guint judge_since(const Judge *judge, guint gate)
{
    gint64 seal = judge->sealed[gate];
    guint since = 0;
    for (guint later = gate + 1; later < judge->plan->gates->len; later++)
        if (judge->sealed[later])
            return 0;
    for (gint64 seq = seal + 1; seal && seq <= (gint64)judge->count; seq++)
        since += stands_since(judge, seq, seal, gate) ? 1 : 0;
    return since;
}
