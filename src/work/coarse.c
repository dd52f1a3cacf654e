#include <standbook/work/coarse.h>

#include <string.h>

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

static Number *times(const Number *number, glong above, glong below)
{
    g_autoptr(Number) ratio = number_from_ratio(above, below);
    return number_multiply(number, ratio);
}

static char *rounded(const Number *number, guint decimals, gboolean up)
{
    g_autofree char *text = number_decimal_up(number, decimals);
    g_autoptr(Number) above = number_from_text(text, NULL), ten = number_from_integer(10);
    if (up || !above || number_equal(above, number))
        return g_steal_pointer(&text);
    g_autoptr(Number) last = number_power(ten, -(gint)decimals);
    g_autoptr(Number) below = number_subtract(above, last);
    return number_decimal(below, decimals);
}

// A width in the check's unit, above 0, rounded up or down, with more decimals where it would be 0.
static char *width_rounded(const PlanCheck *check, const Number *width, gboolean up)
{
    enum { DECIMALS_MORE = 3 };
    g_autoptr(Number) shown = unit_width_from_base(check->unit, width);
    for (guint more = 0;; more++) {
        char *text = rounded(shown, check->decimals + more, up);
        if (more == DECIMALS_MORE || strpbrk(text, "123456789"))
            return text;
        g_free(text);
    }
}

// The largest doubt U with which this value would be decided.
static Number *settling_doubt(const Requirement *made, const Number *distance)
{
    Number *guarded = times(distance, 40, 33); // 2 / 1.65
    if (!made->lower || !made->upper)
        return guarded;
    g_autoptr(Number) width = number_subtract(made->upper, made->lower);
    g_autoptr(Number) eighth = times(width, 1, 8);
    if (number_compare(eighth, guarded) <= 0)
        return guarded;
    number_free(guarded);
    return g_steal_pointer(&eighth);
}

GPtrArray *coarse_sentences(const Requirement *made)
{
    GPtrArray *sentences = g_ptr_array_new_with_free_func(g_free);
    const Number *limit = nearest_limit(made);
    g_autoptr(Number) doubt = expanded(made), inside = inside_of(made, limit);
    g_autoptr(Number) least = number_subtract(made->value, doubt);
    g_autoptr(Number) most = number_add(made->value, doubt), distance = number_abs(inside);
    g_autoptr(Number) guard = times(doubt, 33, 40), settles = settling_doubt(made, distance);
    g_autofree char *from = check_value_words(made->check, least),
                    *to = check_value_words(made->check, most),
                    *at = check_value_words(made->check, limit),
                    *by = check_width_words(made->check, distance),
                    *needs = width_rounded(made->check, guard, TRUE),
                    *settled = width_rounded(made->check, settles, FALSE);
    g_ptr_array_add(sentences, g_strdup_printf("The true value may be %s to %s; the limit is %s.",
                                               from, to, at));
    g_autofree char *last = number_sign(settles) > 0
                                ? g_strdup_printf(" A doubt of ±%s settles it.", settled)
                                : g_strdup("");
    gboolean outside = number_sign(inside) < 0;
    g_ptr_array_add(sentences, g_strdup_printf("%s by %s; with this doubt a %s needs %s.%s",
                                               outside ? "Outside" : "Inside", by,
                                               outside ? "fail" : "pass", needs, last));
    return sentences;
}
