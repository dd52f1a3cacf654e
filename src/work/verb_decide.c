// decide, add, amend, withdraw, not needed: what people decide about findings and the plan.
#include "take.h"

#include <standbook/plan/extend.h>
#include <standbook/plan/requirement.h>
#include <string.h>

// DECIDE ----------------------------------------------------------------------------------------

gboolean verb_decide(Take *take, GError **error)
{
    static const char *const decisions[] = {"keep", "rework", "replace", "look closer"};
    g_auto(Target) target = {0};
    const char *how = NULL;
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error))
        return FALSE;
    if (!target.check->finding)
        return words_refuse(&take->words, target.at, error,
                            "`%s` is no finding; write `concede` for what stays outside its limits",
                            target.name);
    const char *decision = words_name(&take->words, decisions, G_N_ELEMENTS(decisions));
    if (!decision)
        return words_refuse(&take->words, take->words.at, error,
                            "what is decided? write keep, rework, replace or look closer");
    g_autofree char *why = words_text(&take->words, "the reason", error);
    if (!why || !take_customer(take, &how, error))
        return FALSE;
    for (guint i = 0; i < target.places->len; i++) {
        Entry *entry = take_entry(take, "decide");
        entry_set_text(entry, "check", target.name);
        entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_step(take, entry, target.step);
        entry_set_text(entry, "decision", decision);
        entry_set_text(entry, "why", why);
        entry_set_text(entry, "consent", how);
    }
    return TRUE;
}

// THE PLAN OF THIS BUILD ------------------------------------------------------------------------

static gboolean read_limits(Take *take, const Unit *unit, const char *end, char **text,
                            GError **error)
{
    gsize offset = 0;
    g_autoptr(GError) why = NULL;
    const char *at = take->words.at;
    *text = words_up_to(&take->words, end);
    g_autoptr(Limits) limits = limits_parse(*text, unit, &offset, &why);
    return limits || words_refuse(&take->words, g_utf8_offset_to_pointer(at, (glong)offset), error,
                                  "%s", why->message);
}

// What an `add` says, and where its parts stand in the line.
typedef struct {
    PlanAddition addition;
    char *name, *definition;
    const char *name_at, *step_at, *definition_at;
} Added;

static void added_clear(Added *added)
{
    g_free(added->name);
    g_free(added->definition);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Added, added_clear)

// What can be added: the word in a line, that in the entry, and whether a definition must follow.
typedef struct {
    const char *word, *what;
    gboolean behind; // another step, not in one
    gboolean defined;
} Addable;

static const Addable addables[] = {
    {"step", "step", TRUE, FALSE},
    {"check", "check", FALSE, TRUE},
    {"group", "tightening", FALSE, TRUE},
    {"part", "part", FALSE, FALSE},
};

static const Addable *read_addable(Take *take, GError **error)
{
    for (gsize i = 0; i < G_N_ELEMENTS(addables); i++)
        if (words_skip(&take->words, addables[i].word))
            return &addables[i];
    words_refuse(&take->words, take->words.at, error,
                 "what is added? write `step`, `check`, `group` or `part`");
    return NULL;
}

// Behind a colon: what follows the name in a plan.
static gboolean read_definition(Take *take, const Addable *sort, Added *added, GError **error)
{
    if (*take->words.at != ':')
        return (!sort->defined && !*take->words.at) ||
               words_refuse(&take->words, take->words.at, error, "a colon and %s",
                            sort == &addables[1]
                                ? "the limits are missing here: `: at most 0.05 mm`"
                                : "its keys are missing here: `: {bolts: 4, stages: [25 N·m]}`");
    take->words.at++;
    take->words.at += strspn(take->words.at, " \t");
    added->definition_at = take->words.at;
    added->definition = words_up_to(&take->words, take->words.at + strlen(take->words.at));
    added->addition.definition = *added->definition ? added->definition : NULL;
    return TRUE;
}

// `behind STEP` of a step, `in STEP: DEFINITION` of all else.
static gboolean read_where(Take *take, const Addable *sort, Added *added, GError **error)
{
    if (!words_skip(&take->words, sort->behind ? "behind" : "in"))
        return words_refuse(&take->words, take->words.at, error, "%s",
                            sort->behind ? "where? write `behind` and the step"
                            : sort->defined
                                ? "where? write `in`, the step, a colon and what it asks"
                                : "where? write `in` and the step");
    added->step_at = take->words.at;
    const PlanStep *step = take_step(take, error);
    if (!step)
        return FALSE;
    added->addition.step = step->name;
    return sort->behind || read_definition(take, sort, added, error);
}

// A refusal without `step "Sump", check "gap": ` in front: the line says so itself.
static const char *bare_refusal(const char *message, const PlanAddition *addition)
{
    g_autofree char *step = g_strdup_printf("step \"%s\", ", addition->step);
    g_autofree char *name = g_strdup_printf(" \"%s\": ", addition->name);
    const char *front = g_str_has_prefix(message, step) ? message + strlen(step) : message;
    const char *word_end = front + strspn(front, "abcdefghijklmnopqrstuvwxyz");
    return g_str_has_prefix(word_end, name) ? word_end + strlen(name) : message;
}

// The plan's own reader says whether it can be added.
static gboolean check_addition(const Take *take, const Added *added, GError **error)
{
    PlanRefusal refusal = {0};
    g_autoptr(GError) why = NULL;
    if (plan_extend_check(take->taker->plan, &added->addition, &refusal, &why))
        return TRUE;
    const char *at = refusal.field == ADDITION_DEFINITION && added->definition_at
                         ? added->definition_at
                     : refusal.field == ADDITION_STEP ? added->step_at
                                                      : added->name_at;
    glong left = g_utf8_strlen(at, -1);
    return words_refuse(&take->words,
                        g_utf8_offset_to_pointer(at, MIN((glong)refusal.offset, left)), error, "%s",
                        bare_refusal(why->message, &added->addition));
}

gboolean verb_add(Take *take, GError **error)
{
    g_auto(Added) added = {0};
    const Addable *sort = read_addable(take, error);
    if (!sort)
        return FALSE;
    added.name_at = take->words.at + words_are_quoted(&take->words);
    added.name = words_text(&take->words, "its name", error);
    g_autofree char *why = added.name ? words_text(&take->words, "the reason", error) : NULL;
    if (!why || !read_where(take, sort, &added, error))
        return FALSE;
    added.addition.what = sort->what;
    added.addition.name = added.name;
    if (!check_addition(take, &added, error))
        return FALSE;
    Entry *entry = take_entry(take, "add");
    entry_set_text(entry, "what", added.addition.what);
    entry_set_text(entry, "name", added.name);
    entry_set_text(entry, "step", added.addition.step);
    entry_set_text(entry, "definition", added.addition.definition);
    entry_set_text(entry, "why", why);
    return TRUE;
}

// Where the words in quotes begin: the first quote behind a blank, so that inches (`0.5"`) are not
// taken for them.
static const char *quote_ahead(const char *at)
{
    for (; *at; at++)
        if (*at == '"' && strchr(" \t", at[-1]))
            return at;
    return at;
}

static gboolean read_amendment(Take *take, const Target *target, char **limits, char **wear,
                               GError **error)
{
    g_auto(Reading) value = {0};
    if (words_skip(&take->words, "limits"))
        return read_limits(take, target->check->unit, quote_ahead(take->words.at), limits, error);
    if (!words_skip(&take->words, "wear"))
        return words_refuse(&take->words, take->words.at, error,
                            "what is amended? write `limits` or `wear` and the new value");
    if (!words_value(&take->words, target->check->unit, &value, error))
        return FALSE;
    *wear = g_strdup(value.typed);
    return TRUE;
}

gboolean verb_amend(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_autofree char *limits = NULL, *wear = NULL;
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error) ||
        !read_amendment(take, &target, &limits, &wear, error))
        return FALSE;
    g_autofree char *why = words_text(&take->words, "the reason", error);
    g_autofree char *source = NULL;
    if (!why || (words_skip(&take->words, "source") &&
                 !(source = words_text(&take->words, "the source", error))))
        return FALSE;
    for (guint i = 0; i < (target.said ? target.places->len : 1); i++) {
        Entry *entry = take_entry(take, "amend");
        entry_set_text(entry, "check", target.name);
        if (target.said)
            entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_text(entry, "limits", limits);
        entry_set_text(entry, "wear", wear);
        entry_set_text(entry, "why", why);
        entry_set_text(entry, "source", source);
    }
    return TRUE;
}

gboolean verb_withdraw(Take *take, GError **error)
{
    const unsigned all = TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS | TARGET_STEPS;
    g_auto(Target) target = {0};
    if (!take_target(take, all, FALSE, &target, error) || !target_is_whole(take, &target, error))
        return FALSE;
    g_autofree char *why = words_text(&take->words, "the reason", error);
    if (!why)
        return FALSE;
    for (guint i = 0; i < (target.said ? target.places->len : 1); i++) {
        Entry *entry = take_entry(take, "withdraw");
        entry_set_text(entry, "what",
                       target.check   ? "check"
                       : target.group ? "tightening"
                       : target.part  ? "part"
                                      : "step");
        entry_set_text(entry, "name", target.name);
        if (target.said)
            entry_set_labels(entry, target.axes, target_place(&target, i));
        entry_set_text(entry, "why", why);
    }
    return TRUE;
}

static gboolean is_meant(const PlanRequirement *asked, const Target *target)
{
    if (asked->step != target->step || !target_fits(target, asked->asked, asked->number))
        return FALSE;
    gboolean same = target->check       ? asked->check == target->check
                    : target->part      ? asked->part == target->part
                    : asked->tightening ? asked->tightening == target->tightening
                                        : asked->group && asked->group == target->group;
    for (guint i = 0; same && asked->asked != PLAN_WAIT && i < target->places->len; i++)
        if (target_place(target, i) == asked->place)
            return TRUE;
    return same && asked->asked == PLAN_WAIT && !target->said;
}

static void add_not_needed(Take *take, const PlanRequirement *asked, const Target *target,
                           const char *why)
{
    static const char *const words[] = {"read", "look", "bolt", "wait", "fit", "sign"};
    Entry *entry = take_entry(take, "not needed");
    entry_set_text(entry, "asked", words[asked->asked]);
    entry_set_text(entry, "name", target->name);
    entry_set_step(take, entry, target->step);
    if (asked->asked != PLAN_WAIT)
        entry_set_labels(entry, target->axes, asked->place);
    if (asked->number)
        entry_set_number(entry, "stage", asked->number);
    entry_set_text(entry, "why", why);
}

// A whole step is its signatures, without saying which, and all that leads up to them.
static gboolean leave_out_step(Take *take, const Target *target, const char *why)
{
    Entry *entry = take_entry(take, "not needed");
    entry_set_text(entry, "asked", "sign");
    entry_set_text(entry, "name", target->name);
    entry_set_step(take, entry, target->itself);
    if (target->number)
        entry_set_number(entry, "stage", target->number);
    entry_set_text(entry, "why", why);
    return TRUE;
}

gboolean verb_not_needed(Take *take, GError **error)
{
    const unsigned all = TARGET_CHECKS | TARGET_GROUPS | TARGET_PARTS | TARGET_STEPS;
    g_auto(Target) target = {0};
    if (!take_target(take, all, TRUE, &target, error))
        return FALSE;
    g_autofree char *why = words_text(&take->words, "the reason", error);
    if (!why)
        return FALSE;
    if (target.itself)
        return leave_out_step(take, &target, why);
    g_autoptr(GArray) asked_for = plan_requirements(take->taker->plan);
    for (guint i = 0; i < asked_for->len; i++) {
        const PlanRequirement *asked = &g_array_index(asked_for, PlanRequirement, i);
        if (is_meant(asked, &target))
            add_not_needed(take, asked, &target, why);
    }
    return take->made->len || words_refuse(&take->words, target.at, error,
                                           "nothing is asked for there, so nothing is left out");
}
