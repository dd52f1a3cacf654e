#include <standbook/value/uncertainty.h>
#include <standbook/work/coarse.h>

gboolean is_coarse(const Requirement *made)
{
    return made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_GAUGE && made->value &&
           made->variance && made->check && (made->lower || made->upper);
}

Number *nearest_inside(const Requirement *made, const Number **limit)
{
    g_autoptr(Number) low = made->lower ? number_subtract(made->value, made->lower) : NULL;
    g_autoptr(Number) high = made->upper ? number_subtract(made->upper, made->value) : NULL;
    gboolean lower = low && (!high || number_compare(low, high) <= 0);
    if (limit)
        *limit = lower ? made->lower : made->upper;
    return lower ? g_steal_pointer(&low) : g_steal_pointer(&high);
}

char *coarse_sentence(const Requirement *made)
{
    const Number *limit;
    g_autoptr(Number) inside = nearest_inside(made, &limit);
    g_autoptr(Number) doubt = uncertainty_expanded(made->variance);
    g_autoptr(Number) least = number_subtract(made->value, doubt);
    g_autoptr(Number) most = number_add(made->value, doubt);
    g_autofree char *from = check_value_words(made->check, least),
                    *to = check_value_words(made->check, most),
                    *at = check_limit_words(made->check, limit);
    if (made->bound != BOUND_NONE)
        return g_strdup_printf("The true value may be anything %s %s; the limit is %s.",
                               made->bound == BOUND_BELOW ? "up to" : "from",
                               made->bound == BOUND_BELOW ? to : from, at);
    return g_strdup_printf("The true value may be %s to %s; the limit is %s.", from, to, at);
}
