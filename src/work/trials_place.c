// The one place of a setting that is set by itself, and what belongs to it.
#include "trials_inside.h"

#include <standbook/record/order.h>
#include <standbook/work/words.h>
#include <string.h>

guint setting_count(const PlanCheck *check)
{
    if (!check->setting || !check->setting->inputs->len)
        return 0;
    return check->setting->each ? places_count(check->places) : 1;
}

gboolean trials_meet(const Trials *trials, const GPtrArray *axes, const char *const *labels)
{
    return !trials->labels ||
           places_meet(trials->check->places, (const char *const *)trials->labels, axes, labels);
}

gboolean trials_is_moved(const Trials *trials, const Entry *entry)
{
    return !trials->labels || entry_reaches(entry, (const char *const *)trials->labels);
}

// Whether the entry is about the place at `index` of these axes: among its bolts, or its own place.
static gboolean is_about(const Entry *entry, const GPtrArray *axes, guint index,
                         const char *const *labels)
{
    g_autofree char *label = places_label(axes, index);
    if (kind_field(entry->kind, "bolts"))
        return entry_list_has(entry, "bolts", label);
    return entry_reaches(entry, labels);
}

gboolean trials_is_near(const Trials *trials, const Entry *entry, const char *name)
{
    const PlanGroup *group = plan_group(trials->plan, name);
    const PlanPart *part = group ? NULL : plan_part(trials->plan, name);
    const GPtrArray *axes = group ? group->axes : part ? part->axes : NULL;
    for (guint i = 0; trials->labels && axes && i < places_count(axes); i++) {
        g_auto(GStrv) labels = places_labels(axes, i);
        if (is_about(entry, axes, i, (const char *const *)labels) &&
            trials_meet(trials, axes, (const char *const *)labels))
            return TRUE;
    }
    return !trials->labels || !axes;
}
