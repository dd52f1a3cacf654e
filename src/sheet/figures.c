#include <standbook/sheet/figures.h>
#include <standbook/value/uncertainty.h>
#include <standbook/work/part_cause.h>
#include <standbook/work/tool_cause.h>

#include <string.h>

// The unit of a bolt's stage whose figure the plan writes without one; "" where it says it, or
// where something else was shown.
static const char *stage_unit(const Requirement *requirement)
{
    const PlanTightening *tightening = plan_tightening(requirement->step, requirement->name);
    const Stage *stage = tightening ? tightening->stages->pdata[requirement->stage - 1] : NULL;
    gboolean asked = stage && stage->bare && g_strcmp0(requirement->answer, stage->text) == 0;
    const Unit *unit = asked ? formula_first_unit(stage->formula) : NULL;
    return unit ? unit_text(unit) : "";
}

const char *figure_unit(const Requirement *requirement)
{
    if (requirement->asked == ASKED_BOLT)
        return stage_unit(requirement);
    const Unit *unit = requirement->check ? requirement->check->unit : NULL;
    return unit && requirement->value ? unit_text(unit) : "";
}

char *figure_number(const Requirement *requirement, const Number *number)
{
    return requirement->check ? check_limit_words(requirement->check, number)
                              : number_text(number);
}

char *figure_value(const Requirement *requirement)
{
    if (!requirement->value || !requirement->check)
        return g_strdup(requirement->answer ? requirement->answer : "");
    g_autofree char *digits =
        check_typed_words(requirement->check, requirement->value, requirement->decimals);
    const char *bound = requirement->bound == BOUND_BELOW   ? "<"
                        : requirement->bound == BOUND_ABOVE ? ">"
                                                            : "";
    return g_strconcat(bound, digits, NULL);
}

char *figure_doubt(const Requirement *requirement)
{
    if (!requirement->value || !requirement->check || !requirement->variance ||
        number_sign(requirement->variance) == 0)
        return g_strdup("");
    g_autoptr(Number) expanded = uncertainty_expanded(requirement->variance);
    g_autofree char *digits =
        check_doubt_beside(requirement->check, requirement->value, requirement->decimals, expanded);
    return g_strconcat("±", digits, NULL);
}

// The answer or count wanted at that place.
static char *limits_words(const Requirement *requirement)
{
    const PlanCheck *check = requirement->check;
    const PlanLimit *limit =
        check ? check_limit_at(check, (const char *const *)requirement->labels) : NULL;
    if (limit && limits_form(limit->limits) == LIMITS_ANSWER)
        return g_strdup(limits_wanted(limit->limits));
    if (limit && limits_form(limit->limits) == LIMITS_COUNT)
        return g_strdup(limits_text(limit->limits));
    return g_strdup("");
}

char *figure_limits(const Requirement *requirement)
{
    const Number *lower = requirement->lower, *upper = requirement->upper;
    if (!lower && !upper)
        return limits_words(requirement);
    g_autofree char *least = lower ? figure_number(requirement, lower) : NULL;
    g_autofree char *most = upper ? figure_number(requirement, upper) : NULL;
    if (least && most)
        return g_strconcat(least, " to ", most, NULL);
    return g_strconcat(least ? "at least " : "at most ", least ? least : most, NULL);
}

char *figure_asked(const Requirement *requirement)
{
    g_autofree char *limits = figure_limits(requirement);
    return g_strstrip(g_strconcat(limits, " ", figure_unit(requirement), NULL));
}

char *figure_outside(const Requirement *requirement)
{
    const Number *value = requirement->value;
    const Number *lower = requirement->lower, *upper = requirement->upper;
    gboolean under = value && lower && number_compare(value, lower) < 0;
    gboolean over = value && upper && number_compare(value, upper) > 0;
    if ((!under && !over) || !requirement->check)
        return g_strdup("");
    g_autoptr(Number) far = number_subtract(value, under ? lower : upper);
    g_autoptr(Number) distance = number_abs(far);
    g_autofree char *digits = check_excess_words(requirement->check, distance);
    return g_strconcat(digits, under ? " under" : " over", NULL);
}

char *figure_far(const Requirement *requirement)
{
    if (requirement->asked == ASKED_BOLT && requirement->value_verdict == VERDICT_FAIL)
        return g_strdup(requirement->answer);
    g_autofree char *outside = figure_outside(requirement);
    const char *unit = figure_unit(requirement), *side = strrchr(outside, ' ');
    return side && *unit ? g_strdup_printf("%.*s %s%s", (int)(side - outside), outside, unit, side)
                         : g_steal_pointer(&outside);
}

char *figure_verdict(const Requirement *requirement)
{
    const char *verdict = verdict_words(requirement->verdict);
    if (requirement->withdrawn)
        return g_strdup("withdrawn");
    g_autofree char *reasons = requirement_reasons(requirement, requirement->reason);
    if (requirement->verdict == VERDICT_IN_DOUBT)
        return g_strconcat(verdict, ": ", reasons, NULL);
    if (requirement->verdict != VERDICT_FAIL)
        return g_strdup(verdict);
    g_autofree char *outside = figure_outside(requirement);
    return *outside ? g_strconcat(verdict, ", ", outside, NULL)
                    : g_strconcat(verdict, ": ", reasons, NULL);
}

const char *reason_sentence(Reason reason)
{
    static const char *const sentences[REASONS] = {
        [REASON_NONE] = "",
        [REASON_LOW] = "It lies below what was asked for.",
        [REASON_HIGH] = "It lies above what was asked for.",
        [REASON_BEYOND_WEAR] = "It lies beyond the wear limit.",
        [REASON_LOOK] = "What was seen is not what was asked for.",
        [REASON_GAUGE] = "The gauge used cannot decide this: its own doubt reaches over the limit.",
        [REASON_TOOL] = "The tool used had no valid calibration, was out of its range, or was found wrong.",
        [REASON_ORDER] = "It was not done in the order asked for.",
        [REASON_BASIS] = "What it was measured on was disturbed afterwards.",
        [REASON_SPENT] = "A fastener meant for one use was tightened again; fit a new one.",
        [REASON_PART] = "The part or material used is expired, recalled or not the one asked for.",
        [REASON_WINDOW] = "It was done too soon or too late for the time asked for.",
        [REASON_DISAGREE] = "Two readings differ by more than their doubt allows.",
        [REASON_CLOCK] = "The clock went back, so that the time kept cannot be shown.",
    };
    return sentences[reason];
}

// The tool is told of once: where it is in doubt for that, not for what stands on it.
char *figure_doubted(const Requirement *requirement, Reason doubt, const Taken *taken,
                     const Entry *const *entries)
{
    gboolean of_tool = doubt == REASON_TOOL ||
                       (doubt == REASON_BASIS && requirement->reason != REASON_TOOL);
    char *words = of_tool                ? tool_cause_words(taken, entries, requirement)
                  : doubt == REASON_PART ? part_cause_words(taken, requirement)
                                         : NULL;
    if (doubt == REASON_ORDER && requirement->pulled_again)
        return g_strdup_printf("It was %s.", requirement_pulled_said());
    if (doubt == REASON_BASIS && requirement->asked == ASKED_SIGN)
        return g_strdup_printf("It was signed, but %s.", requirement_undone_said());
    return words ? words : g_strdup(reason_sentence(doubt));
}

char *figure_reason(const Requirement *requirement, const Taken *taken, const Entry *const *entries)
{
    guint32 doubts = requirement->doubts;
    if (requirement->verdict != VERDICT_IN_DOUBT || !doubts)
        return figure_doubted(requirement, requirement->reason, taken, entries);
    g_autoptr(GString) all = g_string_new(NULL);
    for (guint i = REASON_NONE + 1; i < REASONS; i++) {
        if (!(doubts & reason_bit((Reason)i)))
            continue;
        g_autofree char *one = figure_doubted(requirement, (Reason)i, taken, entries);
        g_string_append_printf(all, "%s%s", all->len ? " " : "", one);
    }
    return g_string_free(g_steal_pointer(&all), FALSE);
}

const Entry *source_entry(const SheetSource *source, gint64 seq)
{
    return seq > 0 && (gsize)seq <= source->count ? source->entries[seq - 1] : NULL;
}

const char *unit_said(const char *unit)
{
    return strcmp(unit, "in") == 0 ? "inches" : unit;
}
