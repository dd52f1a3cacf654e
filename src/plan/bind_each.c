// Settings whose places have each an adjuster of their own.
#include "bind.h"

// A reading that goes into two places of the setting; NULL if there is none.
static const PlanCheck *shared_of(const GArray *inputs)
{
    g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (guint i = 0; i < inputs->len; i++) {
        const PlanInput *input = &g_array_index(inputs, PlanInput, i);
        char *reading = g_strdup_printf("%s[%u]", input->check->name, input->place);
        guint behind = GPOINTER_TO_UINT(g_hash_table_lookup(seen, reading)); // its place, from 1
        g_hash_table_insert(seen, reading, GUINT_TO_POINTER(input->of + 1));
        if (behind && behind != input->of + 1)
            return input->check;
    }
    return NULL;
}

static gboolean is_beyond(const Limits *limits, const Number *aim)
{
    const Formula *lower = limits ? limits_lower(limits) : NULL;
    const Formula *upper = limits ? limits_upper(limits) : NULL;
    g_autoptr(Number) least = lower ? formula_constant(lower) : NULL;
    g_autoptr(Number) most = upper ? formula_constant(upper) : NULL;
    return (least && number_compare(aim, least) < 0) || (most && number_compare(aim, most) > 0);
}

// Limits that the aim lies outside of; NULL if there are none.
static const PlanLimit *beyond_of(const PlanCheck *setting)
{
    for (guint i = 0; setting->aim_value && i < setting->limits->len; i++) {
        const PlanLimit *limit = setting->limits->pdata[i];
        if (is_beyond(limit->limits, setting->aim_value))
            return limit;
    }
    return NULL;
}

static void check_aim(Reader *reader, const PlanCheck *setting, const char *where)
{
    const PlanLimit *beyond = beyond_of(setting);
    if (!beyond)
        return;
    g_autofree char *aim = check_value_words(setting, setting->aim_value);
    g_autofree char *message =
        g_strdup_printf("the aim %s lies outside the limits%s%s%s; write `low` or `high`, which "
                        "each place takes by "
                        "its own limits, or leave `aim` out",
                        aim, beyond->label ? " of `" : "", beyond->label ? beyond->label : "",
                        beyond->label ? "`" : "");
    fault_at(reader, check_says_itself(setting, "aim"), 0, where, message);
}

void bind_each(Reader *reader, const PlanCheck *setting)
{
    if (!setting->setting->each)
        return;
    const TreeNode *each = schema_get(&schema_of_set, check_says_itself(setting, "set"), "each");
    const PlanCheck *shared = shared_of(setting->setting->inputs);
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", setting->step->name, setting->name);
    check_aim(reader, setting, where);
    if (places_count(setting->places) == 1) {
        fault_at(reader, each, 0, where,
                 "`each` is for a check of several places, and this has one; leave it out");
    } else if (shared) {
        g_autofree char *message = g_strdup_printf(
            "a reading of `%s` goes into several places, so they cannot be set each "
            "by itself; leave `each` out",
            shared->name);
        fault_at(reader, each, 0, where, message);
    }
}
