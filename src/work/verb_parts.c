// fit, rework, lay: parts, and what is laid between them.
#include "take.h"

#include <string.h>

// What a `fit` says behind its target.
typedef struct {
    const Entry *lot;
    char *serial, *words;
    const char *use;
    guint count;
} Fitting;

static void fitting_clear(Fitting *fitting)
{
    g_free(fitting->serial);
    g_free(fitting->words);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Fitting, fitting_clear)

static gboolean read_origin(Take *take, Fitting *fitting, GError **error)
{
    for (;;) {
        if (words_skip(&take->words, "lot")) {
            if (!(fitting->lot = take_lot(take, error)))
                return FALSE;
        } else if (words_skip(&take->words, "serial")) {
            g_free(fitting->serial);
            if (!(fitting->serial = words_text(&take->words, "the serial", error)))
                return FALSE;
        } else if (words_skip(&take->words, "count")) {
            if (!words_whole(&take->words, "the count", 1, &fitting->count, error))
                return FALSE;
        } else {
            return TRUE;
        }
    }
}

static gboolean read_fitting(Take *take, Fitting *fitting, GError **error)
{
    static const char *const states[] = {"new", "reused", "reworked"};
    if (!read_origin(take, fitting, error))
        return FALSE;
    fitting->use = words_name(&take->words, states, G_N_ELEMENTS(states));
    if (!fitting->use)
        return words_refuse(&take->words, take->words.at, error,
                            "its condition is missing here; write new, reused or reworked");
    if (words_are_quoted(&take->words))
        return (fitting->words = words_text(&take->words, "the remark", error)) != NULL;
    return strcmp(fitting->use, "new") == 0 ||
           words_refuse(&take->words, take->words.at, error,
                        "why can it be used again? write the reason in quotes");
}

gboolean verb_fit(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_auto(Fitting) fitting = {0};
    if (!take_target(take, TARGET_GROUPS | TARGET_PARTS, FALSE, &target, error) ||
        !target_is_whole(take, &target, error) || !read_fitting(take, &fitting, error))
        return FALSE;
    gboolean fresh = strcmp(fitting.use, "new") == 0;
    for (guint i = 0; i < (target.said ? target.places->len : 1); i++) {
        Entry *entry = take_entry(take, "fit");
        entry_set_text(entry, "part", target.name);
        if (target.said)
            entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_step(take, entry, target.step);
        entry_set_text(entry, "use", fitting.use);
        entry_set_text(entry, "serial", fitting.serial);
        entry_set_text(entry, "lot", fitting.lot ? entry_text(fitting.lot, "id") : NULL);
        entry_set_text(entry, "label", fitting.lot ? shop_label(fitting.lot) : NULL);
        if (fitting.count)
            entry_set_number(entry, "count", fitting.count);
        entry_set_text(entry, fresh ? "note" : "evidence", fitting.words);
    }
    return TRUE;
}

gboolean verb_rework(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    if (!take_target(take, TARGET_CHECKS | TARGET_PARTS, FALSE, &target, error))
        return FALSE;
    g_autofree char *work = words_text(&take->words, "what was done", error);
    if (!work)
        return FALSE;
    for (guint i = 0; i < (target.said ? target.places->len : 1); i++) {
        Entry *entry = take_entry(take, "rework");
        entry_set_text(entry, "name", target.name);
        if (target.said)
            entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_step(take, entry, take_step_in_hand(take));
        entry_set_text(entry, "work", work);
    }
    return TRUE;
}

static const PlanConsumable *read_consumable(Take *take, GError **error)
{
    const GPtrArray *names = take->taker->names.consumables;
    const char *name = words_name(&take->words, (const char *const *)names->pdata, names->len);
    if (name)
        return plan_consumable(take->taker->plan, name);
    const char *near = words_meant(&take->words, (const char *const *)names->pdata, names->len);
    words_refuse(&take->words, take->words.at, error,
                 near ? "this is no consumable of the plan; did you mean `%s`?"
                      : "this is no consumable of the plan; write its name%s",
                 near ? near : "");
    return NULL;
}

// A tube of something else is the slip that matters most here.
static gboolean is_of_sort(const Entry *item, const PlanConsumable *consumable)
{
    const char *sort = entry_text(item, "sort");
    return g_strcmp0(sort, consumable->name) == 0 || g_strcmp0(sort, consumable->kind) == 0;
}

gboolean verb_lay(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    const Entry *item = NULL;
    const PlanConsumable *consumable = read_consumable(take, error);
    if (!consumable)
        return FALSE;
    if (!words_skip(&take->words, "on"))
        return words_refuse(&take->words, take->words.at, error,
                            "where? write `on` and the bolt set or part");
    if (!take_target(take, TARGET_GROUPS | TARGET_PARTS, FALSE, &target, error) ||
        !target_is_whole(take, &target, error))
        return FALSE;
    if (target.said)
        return words_refuse(&take->words, target.at, error,
                            "it is laid for the whole set; leave the brackets out");
    if (words_skip(&take->words, "lot")) {
        const char *at = take->words.at;
        if (!(item = take_consumable(take, error)))
            return FALSE;
        if (!is_of_sort(item, consumable))
            return words_refuse(&take->words, at, error, "lot %s is %s, not %s; look at the tube",
                                shop_label(item), entry_text(item, "sort"), consumable->name);
    }
    Entry *entry = take_entry(take, "laid");
    entry_set_text(entry, "consumable", consumable->name);
    entry_set_step(take, entry, target.step);
    entry_set_text(entry, "tightening", target.name);
    entry_set_text(entry, "item", item ? entry_text(item, "id") : NULL);
    entry_set_text(entry, "lot", item ? shop_label(item) : NULL);
    entry_set_text(entry, "expires", item ? entry_text(item, "expires") : NULL);
    return TRUE;
}
