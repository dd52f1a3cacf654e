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

static gboolean refuse_twice(const Take *take, const char *at, const char *what, GError **error)
{
    return words_refuse(&take->words, at, error, "%s is said twice; leave one out", what);
}

static gboolean read_lot(Take *take, Fitting *fitting, const char *at, GError **error)
{
    if (fitting->lot)
        return refuse_twice(take, at, "its lot", error);
    return (fitting->lot = take_lot(take, error)) != NULL;
}

static gboolean read_serial(Take *take, Fitting *fitting, const char *at, GError **error)
{
    if (fitting->serial)
        return refuse_twice(take, at, "its serial", error);
    return (fitting->serial = words_text(&take->words, "the serial", error)) != NULL;
}

static gboolean read_count(Take *take, Fitting *fitting, const char *at, GError **error)
{
    if (fitting->count)
        return refuse_twice(take, at, "the count", error);
    return words_whole(&take->words, "the count", 1, &fitting->count, error);
}

static gboolean read_use(Take *take, Fitting *fitting, const char *use, const char *at,
                         GError **error)
{
    if (fitting->use)
        return refuse_twice(take, at, "its condition", error);
    fitting->use = use;
    return TRUE;
}

// What stands behind the target, in any order, up to the end or to something else.
static gboolean read_options(Take *take, Fitting *fitting, GError **error)
{
    static const char *const states[] = {"new", "reused", "reworked"};
    static const struct {
        const char *word;
        gboolean (*read)(Take *take, Fitting *fitting, const char *at, GError **error);
    } options[] = {{"lot", read_lot}, {"serial", read_serial}, {"count", read_count}};
    for (;;) {
        gsize i = 0;
        const char *at = take->words.at;
        const char *use = words_name(&take->words, states, G_N_ELEMENTS(states));
        while (!use && i < G_N_ELEMENTS(options) && !words_skip(&take->words, options[i].word))
            i++;
        gboolean read;
        if (use)
            read = read_use(take, fitting, use, at, error);
        else if (i < G_N_ELEMENTS(options))
            read = options[i].read(take, fitting, at, error);
        else if (words_are_quoted(&take->words) && !fitting->words)
            read = (fitting->words = words_text(&take->words, "the remark", error)) != NULL;
        else
            return TRUE;
        if (!read)
            return FALSE;
    }
}

static gboolean read_fitting(Take *take, Fitting *fitting, GError **error)
{
    if (!read_options(take, fitting, error))
        return FALSE;
    if (!fitting->use)
        return words_refuse(&take->words, take->words.at, error,
                            "its condition is missing here; write new, reused or reworked");
    return fitting->words || strcmp(fitting->use, "new") == 0 ||
           words_refuse(&take->words, take->words.at, error,
                        "why can it be used again? write the reason in quotes");
}

// The part stays open until the lot (of a new one) or serial that the plan asks for is said;
// fitting it once more later would disturb what rests on it by then.
static void remark_untracked(Take *take, const Target *target, const Fitting *fitting)
{
    const char *track = target->part ? target->part->track : target->group->track;
    gboolean serial = g_strcmp0(track, "serial") == 0;
    gboolean fresh = strcmp(fitting->use, "new") == 0;
    if (!track || (serial ? fitting->serial != NULL : !fresh || fitting->lot != NULL))
        return;
    g_autofree char *typed = target_typed(target);
    take_remark(take,
                "The plan asks for its %s; once that is known, write `strike %s \"%s known\"` and "
                "`fit %s %s … %s after #%u`",
                track, typed, track, typed, track, fitting->use,
                take->taker->entries->len + take->takes->len + take->made->len);
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
    remark_untracked(take, &target, &fitting);
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
    if (near) {
        words_refuse(&take->words, take->words.at, error,
                     "this is no consumable of the plan; did you mean `%s`?", near);
        return NULL;
    }
    g_autoptr(GString) all = g_string_new(NULL);
    for (guint i = 0; i < names->len; i++)
        g_string_append_printf(all, "%s%s", i ? ", " : "", (const char *)names->pdata[i]);
    words_refuse(&take->words, take->words.at, error,
                 names->len ? "this is no consumable of the plan; write one of: %s"
                            : "the plan has no consumables, so none is laid; write a note%s",
                 all->str);
    return NULL;
}

// A tube of something else is the slip that matters most here.
static gboolean is_of_sort(const Entry *item, const PlanConsumable *consumable)
{
    const char *sort = entry_text(item, "sort");
    return g_strcmp0(sort, consumable->name) == 0 || g_strcmp0(sort, consumable->kind) == 0;
}

// `on SET` and `lot WORD`, in any order.
static gboolean read_laid(Take *take, const PlanConsumable *consumable, Target *target,
                          const Entry **item, GError **error)
{
    for (;;) {
        const char *at = take->words.at;
        if (!target->name && words_skip(&take->words, "on")) {
            if (!take_target(take, TARGET_GROUPS | TARGET_PARTS, FALSE, target, error) ||
                !target_is_whole(take, target, error))
                return FALSE;
        } else if (!*item && words_skip(&take->words, "lot")) {
            at = take->words.at;
            if (!(*item = take_consumable(take, error)))
                return FALSE;
            if (!is_of_sort(*item, consumable))
                return words_refuse(&take->words, at, error,
                                    "lot %s is %s, not %s; look at the tube", shop_label(*item),
                                    entry_text(*item, "sort"), consumable->name);
        } else {
            return target->name || words_refuse(&take->words, at, error,
                                                "where? write `on` and the bolt set or part");
        }
    }
}

static gboolean step_uses(const PlanStep *step, const PlanConsumable *consumable)
{
    return step && g_ptr_array_find(step->uses, consumable, NULL);
}

static gboolean is_asked_for(const Take *take, const Target *target,
                             const PlanConsumable *consumable)
{
    for (guint i = 0; target->group && i < target->group->lubricants->len; i++) {
        const PlanLubricant *lubricant = target->group->lubricants->pdata[i];
        if (strcmp(lubricant->words, consumable->name) == 0)
            return TRUE;
    }
    return step_uses(target->step, consumable) || step_uses(take_step_in_hand(take), consumable);
}

gboolean verb_lay(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    const Entry *item = NULL;
    const PlanConsumable *consumable = read_consumable(take, error);
    if (!consumable)
        return FALSE;
    if (!read_laid(take, consumable, &target, &item, error))
        return FALSE;
    if (target.said)
        return words_refuse(&take->words, target.at, error,
                            "it is laid for the whole set; leave the brackets out");
    if (!is_asked_for(take, &target, consumable))
        take_remark(take, "The plan asks for no %s on `%s`%s", consumable->name, target.name,
                    consumable_has_clock(consumable) ? "; its clocks run all the same" : "");
    Entry *entry = take_entry(take, "laid");
    entry_set_text(entry, "consumable", consumable->name);
    entry_set_step(take, entry, target.step);
    entry_set_text(entry, "tightening", target.name);
    entry_set_text(entry, "item", item ? entry_text(item, "id") : NULL);
    entry_set_text(entry, "lot", item ? shop_label(item) : NULL);
    entry_set_text(entry, "expires", item ? entry_text(item, "expires") : NULL);
    return TRUE;
}
