#include <standbook/value/uncertainty.h>
#include <standbook/work/coarse.h>
#include <string.h>

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

static gboolean are_apart(const char *from, const char *to, const char *at)
{
    return strcmp(from, to) != 0 && strcmp(from, at) != 0 && strcmp(to, at) != 0;
}

// The ends of a doubt, in words that differ from each other and from the limit between them.
static void ends_apart(const PlanCheck *check, const Number *least, const Number *most,
                       const Number *limit, char **from, char **to)
{
    enum { MORE_DECIMALS = 6 };
    g_autofree char *at = check_limit_words(check, limit);
    *from = check_value_words(check, least);
    *to = check_value_words(check, most);
    for (guint more = 1; more <= MORE_DECIMALS && !are_apart(*from, *to, at); more++) {
        g_free(*from);
        g_free(*to);
        g_free(at);
        *from = check_words_finer(check, least, more);
        *to = check_words_finer(check, most, more);
        at = check_words_finer(check, limit, more);
    }
}

char *coarse_sentence(const Requirement *made)
{
    const Number *limit;
    g_autoptr(Number) inside = nearest_inside(made, &limit);
    g_autoptr(Number) doubt = uncertainty_expanded(made->variance);
    g_autoptr(Number) least = number_subtract(made->value, doubt);
    g_autoptr(Number) most = number_add(made->value, doubt);
    g_autofree char *from = NULL, *to = NULL, *at = check_limit_words(made->check, limit);
    ends_apart(made->check, least, most, limit, &from, &to);
    if (made->bound != BOUND_NONE)
        return g_strdup_printf("The true value may be anything %s %s; the limit is %s.",
                               made->bound == BOUND_BELOW ? "up to" : "from",
                               made->bound == BOUND_BELOW ? to : from, at);
    return g_strdup_printf("The true value may be %s to %s; the limit is %s.", from, to, at);
}
