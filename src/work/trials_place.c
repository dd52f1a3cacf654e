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

// A bolt, or a place of a part, that is at what these trials set.
typedef struct {
    char *label;
    GStrv labels;
} Near;

static void near_free(gpointer data)
{
    Near *near = data;
    g_free(near->label);
    g_strfreev(near->labels);
    g_free(near);
}

GHashTable *trials_near_new(void)
{
    return g_hash_table_new_full(g_str_hash, g_str_equal, NULL, (GDestroyNotify)g_ptr_array_unref);
}

// Those (Near) of a name with these axes, found once.
static const GPtrArray *near_of(const Trials *trials, const char *name, const GPtrArray *axes)
{
    GPtrArray *all = g_hash_table_lookup(trials->near, name);
    if (all)
        return all;
    all = g_ptr_array_new_with_free_func(near_free);
    for (guint i = 0; i < places_count(axes); i++) {
        g_auto(GStrv) labels = places_labels(axes, i);
        if (!trials_meet(trials, axes, (const char *const *)labels))
            continue;
        Near *near = g_new(Near, 1);
        *near = (Near){places_label(axes, i), g_steal_pointer(&labels)};
        g_ptr_array_add(all, near);
    }
    g_hash_table_insert(trials->near, (gpointer)name, all);
    return all;
}

gboolean trials_is_near(const Trials *trials, const Entry *entry, const char *name)
{
    const PlanGroup *group = plan_group(trials->plan, name);
    const PlanPart *part = group ? NULL : plan_part(trials->plan, name);
    const GPtrArray *axes = group ? group->axes : part ? part->axes : NULL;
    if (!trials->labels || !axes)
        return TRUE;
    const GPtrArray *all = near_of(trials, group ? group->name : part->name, axes);
    gboolean bolts = kind_field(entry->kind, "bolts") != NULL, found = FALSE;
    for (guint i = 0; !found && i < all->len; i++) {
        const Near *near = all->pdata[i];
        found = bolts ? entry_list_has(entry, "bolts", near->label)
                      : entry_reaches(entry, (const char *const *)near->labels);
    }
    return found;
}
