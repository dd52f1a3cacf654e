#include <standbook/work/coarse.h>

gboolean is_coarse(const Requirement *made)
{
    return made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_GAUGE && made->value &&
           made->variance && made->check && (made->lower || made->upper);
}

// How far a value lies inside a limit, below 0 outside.
static Number *inside_of(const Requirement *made, const Number *limit)
{
    return limit == made->lower ? number_subtract(made->value, limit)
                                : number_subtract(limit, made->value);
}

// The limit that the value is nearest to.
static const Number *nearest_limit(const Requirement *made)
{
    if (!made->lower || !made->upper)
        return made->lower ? made->lower : made->upper;
    g_autoptr(Number) above = inside_of(made, made->lower), below = inside_of(made, made->upper);
    g_autoptr(Number) one = number_abs(above), other = number_abs(below);
    return number_compare(one, other) <= 0 ? made->lower : made->upper;
}

static Number *expanded(const Requirement *made)
{
    g_autoptr(Number) four = number_from_integer(4);
    g_autoptr(Number) square = number_multiply(made->variance, four);
    return number_sqrt(square);
}

char *coarse_sentence(const Requirement *made)
{
    g_autoptr(Number) doubt = expanded(made), least = number_subtract(made->value, doubt);
    g_autoptr(Number) most = number_add(made->value, doubt);
    g_autofree char *from = check_value_words(made->check, least),
                    *to = check_value_words(made->check, most),
                    *at = check_value_words(made->check, nearest_limit(made));
    return g_strdup_printf("The true value may be %s to %s; the limit is %s.", from, to, at);
}
