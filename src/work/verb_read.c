// read, look, choose, claim: what is measured and looked at.
#include "take.h"

#include <string.h>

// The gauge behind the values, if one is named.
typedef struct {
    const Entry *tool;
    const char *calibration;
} Gauge;

static gboolean read_gauge(Take *take, Gauge *gauge, GError **error)
{
    *gauge = (Gauge){0};
    return !words_skip(&take->words, "with") ||
           take_tool(take, &gauge->tool, &gauge->calibration, error);
}

static gboolean check_count(const Take *take, const Target *target, guint count, GError **error)
{
    guint open = target->places->len;
    if (count == open)
        return TRUE;
    g_autofree char *first = places_label(target->axes, target_place(target, 0));
    g_autofree char *last = places_label(target->axes, target_place(target, open - 1));
    if (open == 1)
        return words_refuse(&take->words, target->at, error,
                            "`%s`%s%s has one place here, but %u values follow; write one",
                            target->name, *first ? ", " : "", first, count);
    return words_refuse(&take->words, target->at, error,
                        "`%s` has %u places here, from `%s` to `%s`, but %u follow; write one for "
                        "each, or name the place in brackets",
                        target->name, open, first, last, count);
}

static Entry *check_entry(Take *take, const char *kind, const Target *target, guint place)
{
    Entry *entry = take_entry(take, kind);
    entry_set_text(entry, "check", target->check->name);
    entry_set_labels(entry, target->axes, place);
    entry_set_step(take, entry, target->step);
    return entry;
}

static gboolean is_value(const PlanCheck *check)
{
    return check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY;
}

static gboolean may_be_read(const Take *take, const Target *target, GError **error)
{
    if (target->check->formula)
        return words_refuse(&take->words, target->at, error,
                            "`%s` is worked out from other checks; read those", target->name);
    if (!is_value(target->check))
        return words_refuse(&take->words, target->at, error,
                            "`%s` is answered, not measured; write `look %s …`", target->name,
                            target->name);
    return TRUE;
}

static void add_reading(Take *take, const Target *target, guint index, Reading *reading,
                        const char *state, const Gauge *gauge)
{
    g_autofree char *dial =
        gauge->tool ? read_from_zero(take, gauge->tool, target->check->unit, reading) : NULL;
    Entry *entry = check_entry(take, "read", target, target_place(target, index));
    entry_set_reading(entry, "value", reading);
    entry_set_text(entry, "state", state);
    entry_set_text(entry, "tool", gauge->tool ? entry_text(gauge->tool, "id") : NULL);
    entry_set_text(entry, "calibration", gauge->calibration);
    entry_set_text(entry, "note", dial);
}

gboolean verb_read(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    Gauge gauge;
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error) ||
        !may_be_read(take, &target, error))
        return FALSE;
    g_autoptr(GPtrArray) values = words_values(&take->words, target.check->unit, error);
    if (!values || !check_count(take, &target, values->len, error))
        return FALSE;
    const char *at = take->words.at;
    gboolean loose = words_skip(&take->words, "loose");
    gboolean moved = target.check->moved_by->len > 0;
    if (loose && !moved)
        return words_refuse(&take->words, at, error,
                            "`%s` is no setting, so it is not read loose; leave `loose` out",
                            target.name);
    if (!read_gauge(take, &gauge, error))
        return FALSE;
    const char *state = loose ? "loose" : moved ? "tightened" : NULL;
    for (guint i = 0; i < values->len; i++)
        add_reading(take, &target, i, &((WordsValue *)values->pdata[i])->reading, state, &gauge);
    return TRUE;
}

static const Limits *limits_at(const Target *target, guint place)
{
    g_auto(GStrv) labels = places_labels(target->axes, place);
    const PlanLimit *limit = check_limit_at(target->check, (const char *const *)labels);
    return limit ? limit->limits : NULL;
}

static char *read_choice(Take *take, const Target *target, const Limits *limits, GError **error)
{
    const char *const *choices = limits_choices(limits);
    guint count = g_strv_length((GStrv)choices);
    const char *answer = words_name(&take->words, choices, count);
    if (answer)
        return g_strdup(answer);
    g_autofree char *all = g_strjoinv(", ", (GStrv)choices);
    if (words_ended(&take->words))
        words_refuse(&take->words, take->words.at, error,
                     "the answer to `%s` is missing here; write one of: %s", target->name, all);
    else
        words_refuse(&take->words, take->words.at, error,
                     "this is no answer to `%s`; write one of: %s", target->name, all);
    return NULL;
}

static char *read_answer(Take *take, const Target *target, guint place, GError **error)
{
    const Limits *limits = limits_at(target, place);
    guint count = 0;
    if (limits && target->check->asks == LIMITS_ANSWER)
        return read_choice(take, target, limits, error);
    if (target->check->asks != LIMITS_COUNT)
        return words_text(&take->words, "the answer", error);
    return words_whole(&take->words, "the count", 0, &count, error) ? g_strdup_printf("%u", count)
                                                                    : NULL;
}

gboolean verb_look(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error))
        return FALSE;
    if (is_value(target.check) && target.check->formula)
        return may_be_read(take, &target, error);
    if (is_value(target.check))
        return words_refuse(&take->words, target.at, error, "`%s` is measured; write `read %s …`",
                            target.name, target.name);
    g_autoptr(GPtrArray) answers = g_ptr_array_new_with_free_func(g_free);
    while (answers->len == 0 || !words_ended(&take->words)) {
        guint index = MIN(answers->len, target.places->len - 1);
        char *answer = read_answer(take, &target, target_place(&target, index), error);
        if (!answer)
            return FALSE;
        g_ptr_array_add(answers, answer);
    }
    if (!check_count(take, &target, answers->len, error))
        return FALSE;
    for (guint i = 0; i < answers->len; i++)
        entry_set_text(check_entry(take, "look", &target, target_place(&target, i)), "answer",
                       answers->pdata[i]);
    return TRUE;
}

static gboolean read_label(Take *take, const Target *target, char **label, GError **error)
{
    const char *at = take->words.at;
    const Axis *axis = plan_axis(take->taker->plan, target->check->choose);
    *label = words_word(&take->words, "the label chosen", error);
    if (!*label || !axis || axis_find(axis, *label) >= 0)
        return *label != NULL;
    g_autoptr(GString) all = g_string_new(NULL);
    for (gsize i = 0; i < axis_size(axis); i++)
        g_string_append_printf(all, "%s%s", i ? ", " : "", axis_label(axis, i));
    return words_refuse(&take->words, at, error, "there is no %s `%s`; write one of: %s",
                        axis_name(axis), *label, all->str);
}

gboolean verb_choose(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_autofree char *label = NULL, *note = NULL;
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error))
        return FALSE;
    if (!target.check->choose)
        return words_refuse(&take->words, target.at, error,
                            "nothing is chosen at `%s`; leave the line out", target.name);
    if (!read_label(take, &target, &label, error))
        return FALSE;
    if (words_are_quoted(&take->words) && !(note = words_text(&take->words, "the remark", error)))
        return FALSE;
    for (guint i = 0; i < target.places->len; i++) {
        Entry *entry = check_entry(take, "choose", &target, target_place(&target, i));
        entry_set_text(entry, "label", label);
        entry_set_text(entry, "note", note);
    }
    return TRUE;
}

// `± 0.005` in the unit of the value before it.
static gboolean read_doubt(Take *take, const Unit *unit, Reading *doubt, GError **error)
{
    gsize length = strlen("±");
    if (strncmp(take->words.at, "±", length) != 0)
        return TRUE;
    take->words.at += length + strspn(take->words.at + length, " \t");
    return words_value(&take->words, unit, doubt, error);
}

gboolean verb_claim(Take *take, GError **error)
{
    g_auto(Target) target = {0};
    g_auto(Reading) value = {0}, doubt = {0};
    if (!take_target(take, TARGET_CHECKS, TRUE, &target, error))
        return FALSE;
    if (!is_value(target.check))
        return words_refuse(&take->words, target.at, error,
                            "`%s` has no figure that could be certified; write a note",
                            target.name);
    if (!check_count(take, &target, 1, error) ||
        !words_value(&take->words, target.check->unit, &value, error) ||
        !read_doubt(take, value.unit, &doubt, error))
        return FALSE;
    if (!words_skip(&take->words, "by"))
        return words_refuse(&take->words, take->words.at, error,
                            "who says so? write `by` and the certificate in quotes");
    g_autofree char *certificate = words_text(&take->words, "the certificate", error);
    if (!certificate)
        return FALSE;
    Entry *entry = check_entry(take, "claim", &target, target_place(&target, 0));
    entry_set_reading(entry, "value", &value);
    entry_set_text(entry, "certificate", certificate);
    if (doubt.number)
        entry_set_reading(entry, "doubt", &doubt);
    return TRUE;
}
