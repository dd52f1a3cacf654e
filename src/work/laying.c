#include <standbook/work/laying.h>

#include <standbook/record/live.h>
#include <string.h>

// WHAT IS LAID ----------------------------------------------------------------------------------

static gboolean has_lubricant(const PlanGroup *group, const PlanConsumable *consumable)
{
    for (guint i = 0; i < group->lubricants->len; i++)
        if (strcmp(((const PlanLubricant *)group->lubricants->pdata[i])->words, consumable->name) ==
            0)
            return TRUE;
    return FALSE;
}

static gboolean step_uses(const PlanStep *step, const PlanConsumable *consumable)
{
    return step && g_ptr_array_find(step->uses, consumable, NULL);
}

// Whether what a step uses is laid by this entry: on something of that step, or on something that
// nobody else asks to be laid on.
static gboolean is_for_step(const Agenda *agenda, const Laying *laying, const char *target)
{
    const PlanGroup *group = target ? plan_group(agenda->plan, target) : NULL;
    const PlanPart *part = target ? plan_part(agenda->plan, target) : NULL;
    const PlanStep *step = group ? group->step : part ? part->step : NULL;
    if (!step || step == laying->step || plan_tightening(laying->step, target))
        return TRUE;
    return !step_uses(step, laying->consumable) &&
           !(group && has_lubricant(group, laying->consumable));
}

// How many entries there were when it was laid last; 0 if it never was.
static gsize laid_at(const Agenda *agenda, const gboolean *live, const Laying *laying)
{
    for (gsize i = agenda->count; i-- > 0;) {
        const Entry *entry = agenda->entries[i];
        if (!live[i] || strcmp(entry->kind->name, "laid") != 0 ||
            g_strcmp0(entry_text(entry, "consumable"), laying->consumable->name) != 0)
            continue;
        const char *target = entry_text(entry, "tightening");
        if (laying->group ? g_strcmp0(target, laying->group->name) == 0
                          : is_for_step(agenda, laying, target))
            return i + 1;
    }
    return 0;
}

static gboolean names_bolt(const Entry *entry, const char *bolt)
{
    gboolean found = bolt == NULL;
    for (gsize i = 0; !found && i < entry_list_length(entry, "bolts"); i++)
        found = strcmp(entry_list_item(entry, "bolts", i), bolt) == 0;
    return found;
}

// Whether that bolt of the set (NULL: any) was slackened since it was laid: what was laid on it is
// broken.
static gboolean is_broken(const Agenda *agenda, const gboolean *live, const Laying *laying,
                          const char *bolt)
{
    for (gsize i = laying->laid; laying->group && i < agenda->count; i++) {
        const Entry *entry = agenda->entries[i];
        if (live[i] && strcmp(entry->kind->name, "slacken") == 0 &&
            g_strcmp0(entry_text(entry, "tightening"), laying->group->name) == 0 &&
            names_bolt(entry, bolt))
            return TRUE;
    }
    return FALSE;
}

static gboolean *live_of(const Agenda *agenda)
{
    gboolean *live = g_new0(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    return live;
}

// WHAT IS LEFT ----------------------------------------------------------------------------------

static void add_lubricants(const Agenda *agenda, const PlanTightening *tightening, GArray *asked)
{
    const GPtrArray *lubricants = tightening->group->lubricants;
    for (guint i = 0; !tightening->again && i < lubricants->len; i++) {
        const PlanConsumable *consumable =
            plan_consumable(agenda->plan, ((const PlanLubricant *)lubricants->pdata[i])->words);
        const Laying laying = {consumable, tightening->step, tightening->group, 0};
        if (consumable && consumable_has_clock(consumable))
            g_array_append_val(asked, laying);
    }
}

static gboolean is_among(const GArray *asked, const PlanConsumable *consumable)
{
    for (guint i = 0; i < asked->len; i++)
        if (g_array_index(asked, Laying, i).consumable == consumable)
            return TRUE;
    return FALSE;
}

GArray *layings_left(const Agenda *agenda, const PlanStep *step)
{
    GArray *layings = g_array_new(FALSE, FALSE, sizeof(Laying));
    for (guint i = 0; i < step->tightenings->len; i++)
        add_lubricants(agenda, step->tightenings->pdata[i], layings);
    for (guint i = 0; i < step->uses->len; i++) {
        const Laying laying = {step->uses->pdata[i], step, NULL, 0};
        if (!is_among(layings, laying.consumable))
            g_array_append_val(layings, laying);
    }
    if (!layings->len)
        return layings;
    g_autofree gboolean *live = live_of(agenda);
    for (guint i = layings->len; i-- > 0;) {
        Laying *laying = &g_array_index(layings, Laying, i);
        laying->laid = laid_at(agenda, live, laying);
        if (laying->laid && !is_broken(agenda, live, laying, NULL))
            g_array_remove_index(layings, i);
    }
    return layings;
}

// Whether a bolt of the set stands in the step.
static gboolean is_begun(const Agenda *agenda, const PlanStep *step, const char *group)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        if (made->asked == ASKED_BOLT && made->step == step && made->entry &&
            strcmp(made->name, group) == 0)
            return TRUE;
    }
    return FALSE;
}

GArray *layings_missed(const Agenda *agenda, const PlanStep *step)
{
    GArray *layings = layings_left(agenda, step);
    for (guint i = layings->len; i-- > 0;) {
        const Laying *laying = &g_array_index(layings, Laying, i);
        if (laying->group && (laying->laid || !is_begun(agenda, step, laying->group->name)))
            g_array_remove_index(layings, i);
    }
    return layings;
}

GArray *layings_passed_over(const Agenda *agenda, guint gate)
{
    GArray *all = g_array_new(FALSE, FALSE, sizeof(Laying));
    for (guint i = 0; i < agenda->plan->steps->len; i++) {
        const PlanStep *step = agenda->plan->steps->pdata[i];
        if (step->gate > gate || !agenda_is_signed(agenda, step))
            continue;
        g_autoptr(GArray) left = layings_missed(agenda, step);
        g_array_append_vals(all, left->data, left->len);
    }
    return all;
}

// WHERE AND WHEN --------------------------------------------------------------------------------

static gboolean needs_it(const Agenda *agenda, const Laying *laying, const Requirement *made)
{
    if (!laying->laid)
        return !is_begun(agenda, laying->step, made->name);
    g_autofree gboolean *live = live_of(agenda);
    return is_broken(agenda, live, laying, made->place);
}

static gboolean comes_before(const Agenda *agenda, const Laying *laying, const Requirement *made)
{
    if (made->step != laying->step || made->verdict != VERDICT_OPEN || made->withdrawn)
        return FALSE;
    if (laying->group)
        return made->asked == ASKED_BOLT && strcmp(made->name, laying->group->name) == 0 &&
               needs_it(agenda, laying, made);
    return made->asked == ASKED_FIT || made->asked == ASKED_BOLT;
}

const Laying *laying_before(const Agenda *agenda, const GArray *layings, guint index)
{
    for (guint i = 0; i < layings->len; i++) {
        const Laying *laying = &g_array_index(layings, Laying, i);
        if (comes_before(agenda, laying, agenda_made(agenda, index)))
            return laying;
    }
    return NULL;
}

GPtrArray *laying_targets(const Plan *plan, const Laying *laying)
{
    GPtrArray *names = g_ptr_array_new();
    if (laying->group) {
        g_ptr_array_add(names, (gpointer)laying->group->name);
        return names;
    }
    for (guint at = laying->step->index + 1; !names->len && at-- > 0;) {
        const PlanStep *step = plan->steps->pdata[at];
        for (guint i = 0; i < step->tightenings->len; i++) {
            const PlanTightening *tightening = step->tightenings->pdata[i];
            g_ptr_array_add(names, (gpointer)tightening->group->name);
        }
        for (guint i = 0; i < step->parts->len; i++)
            g_ptr_array_add(names, (gpointer)((const PlanPart *)step->parts->pdata[i])->name);
    }
    return names;
}
