// What a line is about: a name of the plan, its place, and the step where it is done.
#include "take.h"

#include <string.h>

static const struct {
    unsigned sort;
    const char *one; // as messages call it
} sorts_of[] = {
    {TARGET_CHECKS, "a check"},
    {TARGET_GROUPS, "a bolt set"},
    {TARGET_PARTS, "a part"},
    {TARGET_STEPS, "a step"},
};

static GPtrArray *names_of(const Take *take, unsigned sort)
{
    const PlanNames *names = &take->taker->names;
    switch (sort) {
    case TARGET_CHECKS:
        return names->checks;
    case TARGET_GROUPS:
        return names->groups;
    case TARGET_PARTS:
        return names->parts;
    default:
        return names->steps;
    }
}

// The word in front of a requirement as it is printed, and what can follow it.
static const struct {
    const char *word;
    Asked asked;
    unsigned sorts;
} printed[] = {
    {"read", ASKED_READ, TARGET_CHECKS},
    {"look", ASKED_LOOK, TARGET_CHECKS},
    {"bolt", ASKED_BOLT, TARGET_GROUPS},
    {"wait", ASKED_WAIT, TARGET_GROUPS},
    {"fit", ASKED_FIT, TARGET_GROUPS | TARGET_PARTS},
    {"sign", ASKED_SIGN, TARGET_STEPS},
};

// `a check, a bolt set or a part`
static char *sorts_in_words(unsigned sorts)
{
    g_autoptr(GPtrArray) words = g_ptr_array_new();
    for (gsize i = 0; i < G_N_ELEMENTS(sorts_of); i++)
        if (sorts & sorts_of[i].sort)
            g_ptr_array_add(words, (gpointer)sorts_of[i].one);
    GString *text = g_string_new(words->pdata[0]);
    for (guint i = 1; i < words->len; i++)
        g_string_append_printf(text, "%s%s", i + 1 < words->len ? ", " : " or ",
                               (const char *)words->pdata[i]);
    return g_string_free(text, FALSE);
}

// The longest name of these sorts; goes behind it. Of equal names the first sort counts.
static const char *find_name(Take *take, unsigned sorts, unsigned *found)
{
    const char *longest = NULL;
    Words best = take->words;
    for (gsize i = 0; i < G_N_ELEMENTS(sorts_of); i++) {
        if (!(sorts & sorts_of[i].sort))
            continue;
        Words words = take->words;
        GPtrArray *names = names_of(take, sorts_of[i].sort);
        const char *name = words_name(&words, (const char *const *)names->pdata, names->len);
        if (name && words.at > best.at) {
            longest = name;
            best = words;
            *found = sorts_of[i].sort;
        }
    }
    take->words = best;
    return longest;
}

static const char *meant(const Take *take, unsigned sorts)
{
    g_autoptr(GPtrArray) all = g_ptr_array_new();
    for (gsize i = 0; i < G_N_ELEMENTS(sorts_of); i++)
        if (sorts & sorts_of[i].sort)
            g_ptr_array_extend(all, names_of(take, sorts_of[i].sort), NULL, NULL);
    return words_meant(&take->words, (const char *const *)all->pdata, all->len);
}

static gboolean refuse_name(Take *take, unsigned sorts, GError **error)
{
    const Words *words = &take->words;
    g_autofree char *wanted = sorts_in_words(sorts);
    if (words_ended(words))
        return words_refuse(words, words->at, error, "%s is missing here; write its name", wanted);
    Take other = *take;
    unsigned found = 0;
    const char *name = find_name(&other, ~sorts, &found);
    for (gsize i = 0; name && i < G_N_ELEMENTS(sorts_of); i++)
        if (found == sorts_of[i].sort)
            return words_refuse(words, words->at, error, "`%s` is %s; write the name of %s", name,
                                sorts_of[i].one, wanted);
    const char *near = meant(take, sorts);
    if (near)
        return words_refuse(words, words->at, error,
                            "this is not the name of %s; did you mean `%s`?", wanted, near);
    return words_refuse(words, words->at, error,
                        "this is not the name of %s; write it in the plan's own letters", wanted);
}

// Goes behind a comma, if one is here.
static gboolean skip_comma(Words *words)
{
    if (*words->at != ',')
        return FALSE;
    words->at++;
    words->at += strspn(words->at, " \t");
    return TRUE;
}

const PlanStep *take_step(Take *take, GError **error)
{
    unsigned found = 0;
    const char *name = find_name(take, TARGET_STEPS, &found);
    if (!name)
        refuse_name(take, TARGET_STEPS, error);
    return name ? plan_step(take->taker->plan, name) : NULL;
}

static const PlanTightening *tightening_in(const PlanGroup *group, const PlanStep *step)
{
    return group ? plan_tightening(step, group->name) : NULL;
}

static gboolean is_in(const Target *target, const PlanStep *step)
{
    if (target->check)
        return target->check->step == step || plan_reads_again(step, target->check);
    if (target->part)
        return target->part->step == step;
    return tightening_in(target->group, step) != NULL;
}

// The steps that have the target: how many, the first, and all in words.
static guint steps_with(const Take *take, const Target *target, const PlanStep **first,
                        GString *words)
{
    const GPtrArray *steps = take->taker->plan->steps;
    guint count = 0;
    for (guint i = 0; i < steps->len; i++) {
        const PlanStep *step = g_ptr_array_index(steps, i);
        if (!is_in(target, step))
            continue;
        if (count++ == 0)
            *first = step;
        g_string_append_printf(words, "%s`in %s`", words->len ? " or " : "", step->name);
    }
    return count;
}

static gboolean read_step_of(Take *take, Target *target, GError **error)
{
    const char *at = take->words.at;
    target->step = take_step(take, error);
    if (!target->step)
        return FALSE;
    const PlanStep *first = NULL;
    g_autoptr(GString) where = g_string_new(NULL);
    if (is_in(target, target->step))
        return TRUE;
    steps_with(take, target, &first, where);
    return words_refuse(&take->words, at, error, "`%s` has no `%s`; write %s", target->step->name,
                        target->name, where->str);
}

// The step that a requirement means by its printed name alone: its own; NULL where it prints one.
static const PlanStep *step_as_printed(const Target *target)
{
    if (!target->says_asked)
        return NULL;
    return target->check                ? target->check->step
           : target->part               ? target->part->step
           : target->asked == ASKED_FIT ? target->group->step
                                        : NULL;
}

static gboolean find_step(Take *take, gboolean need_step, Target *target, GError **error)
{
    const PlanStep *in_hand = take_step_in_hand(take);
    const PlanStep *first = NULL;
    g_autoptr(GString) where = g_string_new(NULL);
    if (words_skip(&take->words, "in"))
        return read_step_of(take, target, error);
    if ((target->step = step_as_printed(target)))
        return TRUE;
    if (in_hand && is_in(target, in_hand)) {
        target->step = in_hand;
        return TRUE;
    }
    guint count = steps_with(take, target, &first, where);
    if (count == 1 || !need_step) {
        target->step = count == 1 ? first : NULL;
        return TRUE;
    }
    return words_refuse(&take->words, target->at, error,
                        "`%s` is in several steps; write %s behind it", target->name, where->str);
}

// Goes behind the word that a requirement is printed with, where it is not a name itself.
static unsigned skip_printed(Take *take, unsigned sorts, Target *target)
{
    for (gsize i = 0; i < G_N_ELEMENTS(printed); i++) {
        Words words = take->words;
        if (!words_skip(&words, printed[i].word) || !(sorts & printed[i].sorts))
            continue;
        take->words = words;
        target->says_asked = TRUE;
        target->asked = printed[i].asked;
        return sorts & printed[i].sorts;
    }
    return sorts;
}

static gboolean read_name(Take *take, unsigned sorts, Target *target, GError **error)
{
    unsigned found = 0;
    const Plan *plan = take->taker->plan;
    target->name = find_name(take, sorts, &found);
    if (!target->name) {
        sorts = skip_printed(take, sorts, target);
        target->name = find_name(take, sorts, &found);
    }
    if (!target->name)
        return refuse_name(take, sorts, error);
    target->itself = found == TARGET_STEPS ? plan_step(plan, target->name) : NULL;
    target->check = found == TARGET_CHECKS ? plan_check(plan, target->name) : NULL;
    target->group = found == TARGET_GROUPS ? plan_group(plan, target->name) : NULL;
    target->part = found == TARGET_PARTS ? plan_part(plan, target->name) : NULL;
    return TRUE;
}

// The place, which stands behind the name, or behind the step as it is printed.
static gboolean read_place(Take *take, Target *target, GError **error)
{
    if (target->said || *take->words.at != '[')
        return TRUE;
    target->said = TRUE;
    return words_place(&take->words, target->axes, target->name, target->picked, error);
}

char *stages_in_words(const PlanTightening *tightening)
{
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < tightening->stages->len; i++)
        g_string_append_printf(text, "%s%s", i ? " > " : "",
                               ((const Stage *)tightening->stages->pdata[i])->text);
    return g_string_free(text, FALSE);
}

// `, stage 2` of a bolt set, with the comma or without.
static gboolean read_stage(Take *take, Target *target, GError **error)
{
    Words words = take->words;
    skip_comma(&words);
    const char *at = words.at;
    if (!words_skip(&words, "stage"))
        return TRUE;
    take->words = words;
    target->number_at = at;
    at = words.at;
    if (!words_whole(&take->words, "the stage", 1, &target->number, error))
        return FALSE;
    if (!target->tightening || target->number <= target->tightening->stages->len)
        return TRUE;
    g_autofree char *all = stages_in_words(target->tightening);
    return words_refuse(&take->words, at, error, "`%s in %s` has no stage %u; its stages are %s",
                        target->name, target->step->name, target->number, all);
}

// `, 2` of a step: one of its signatures.
static gboolean read_signature(Take *take, Target *target, GError **error)
{
    target->step = target->itself;
    if (!skip_comma(&take->words))
        return TRUE;
    target->number_at = take->words.at;
    return words_whole(&take->words, "which signature it is", 1, &target->number, error);
}

static const GPtrArray *no_axes(void)
{
    static GPtrArray none = {0};
    return &none;
}

static gboolean read_target(Take *take, unsigned sorts, gboolean need_step, Target *target,
                            GError **error)
{
    if (!read_name(take, sorts, target, error))
        return FALSE;
    if (target->itself)
        return read_signature(take, target, error);
    target->axes = target->check   ? target->check->places
                   : target->group ? target->group->axes
                                   : target->part->axes;
    target->picked = g_new0(gssize, target->axes->len + 1);
    for (guint i = 0; i < target->axes->len; i++)
        target->picked[i] = -1;
    if (!read_place(take, target, error) || !find_step(take, need_step, target, error) ||
        !read_place(take, target, error))
        return FALSE;
    target->places = places_picked(target->axes, target->picked);
    target->tightening = target->step ? tightening_in(target->group, target->step) : NULL;
    return !target->group || read_stage(take, target, error);
}

gboolean take_target(Take *take, unsigned sorts, gboolean need_step, Target *target, GError **error)
{
    *target = (Target){.at = take->words.at, .axes = no_axes()};
    gboolean taken = read_target(take, sorts, need_step, target, error);
    target->end = take->words.at;
    return taken;
}

char *target_typed(const Target *target)
{
    return g_strchomp(g_strndup(target->at, (gsize)(target->end - target->at)));
}

gboolean target_is_whole(const Take *take, const Target *target, GError **error)
{
    return !target->number || words_refuse(&take->words, target->number_at, error,
                                           "no single %s is meant here; leave this out",
                                           target->itself ? "signature" : "stage");
}

gboolean target_fits(const Target *target, guint asked, guint number)
{
    return (!target->says_asked || (guint)target->asked == asked) &&
           (!target->number || target->number == number);
}

void target_clear(Target *target)
{
    g_clear_pointer(&target->picked, g_free);
    g_clear_pointer(&target->places, g_array_unref);
}

guint target_place(const Target *target, guint index)
{
    return g_array_index(target->places, guint, index);
}
