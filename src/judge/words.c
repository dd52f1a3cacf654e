#include <standbook/judge/assess.h>
#include <standbook/record/kind.h>
#include <string.h>

static const char *const reasons[REASONS] = {
    [REASON_NONE] = "",
    [REASON_LOW] = "low",
    [REASON_HIGH] = "high",
    [REASON_BEYOND_WEAR] = "beyond wear",
    [REASON_LOOK] = "look",
    [REASON_GAUGE] = "gauge",
    [REASON_TOOL] = "tool",
    [REASON_ORDER] = "order",
    [REASON_BASIS] = "basis",
    [REASON_SPENT] = "spent",
    [REASON_PART] = "part",
    [REASON_WINDOW] = "window",
    [REASON_DISAGREE] = "disagree",
    [REASON_CLOCK] = "clock",
};

static const char *const sorts[] = {"read", "look", "bolt", "wait", "fit", "sign"};

const char *verdict_words(Verdict verdict)
{
    return verdict_names()[verdict];
}

const char *reason_words(Reason reason)
{
    return reasons[reason];
}

const char *reason_said(Reason reason)
{
    return reason == REASON_LOOK ? "not as asked" : reasons[reason];
}

Reason reason_of_words(const char *words)
{
    for (guint i = 1; words && i < REASONS; i++)
        if (strcmp(reasons[i], words) == 0)
            return (Reason)i;
    return REASON_NONE;
}

gboolean requirement_is_doubted(const Requirement *requirement)
{
    return requirement->verdict == VERDICT_IN_DOUBT || requirement->own_verdict == VERDICT_IN_DOUBT;
}

char *reasons_words(guint32 doubts)
{
    GString *words = g_string_new(NULL);
    for (guint i = REASON_NONE + 1; i < REASONS; i++)
        if (doubts & reason_bit((Reason)i))
            g_string_append_printf(words, "%s%s", words->len ? ", " : "", reasons[i]);
    return g_string_free(words, FALSE);
}

char *requirement_reasons(const Requirement *requirement, Reason reason)
{
    gboolean doubt = (requirement->doubts & reason_bit(reason)) != 0;
    return doubt ? reasons_words(requirement->doubts) : g_strdup(reasons[reason]);
}

guint32 reason_bit(Reason reason)
{
    return reason == REASON_NONE ? 0 : 1U << reason;
}

const char *asked_words(Asked asked)
{
    return sorts[asked];
}

gboolean requirement_is_left(const Requirement *requirement)
{
    switch (requirement->verdict) {
    case VERDICT_OPEN:
        return !requirement->optional;
    case VERDICT_FAIL:
    case VERDICT_IN_DOUBT:
        return TRUE;
    default:
        return FALSE;
    }
}

gint plan_gate(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->gates->len; i++)
        if (strcmp(plan->gates->pdata[i], name) == 0)
            return (gint)i;
    return -1;
}
