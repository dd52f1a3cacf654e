#include <standbook/rules/gauge.h>

const char *gauge_outlook_words(GaugeOutlook outlook)
{
    static const char *const words[] = {
        [GAUGE_SETTLES] = "settles it",
        [GAUGE_CAN] = "not close to a limit",
        [GAUGE_CANNOT] = "cannot",
    };
    return words[outlook];
}

// The width between the limits; NULL where one is missing.
static Number *width_of(const GaugeQuestion *question)
{
    return question->lower && question->upper ? number_subtract(question->upper, question->lower)
                                              : NULL;
}

static gboolean has_limit(const GaugeQuestion *question)
{
    return question->lower || question->upper;
}

// Whether every value with this doubt is decided as it reads.
static gboolean is_believed(const GaugeQuestion *question, const Number *width,
                            const Number *variance)
{
    if (!has_limit(question) || number_sign(variance) == 0)
        return TRUE;
    return width &&
           decision_fitness(number_rational(width), number_rational(variance)) == FITNESS_GOOD;
}

GaugeOutlook gauge_outlook(const GaugeQuestion *question, const Number *variance)
{
    g_autoptr(Number) width = width_of(question);
    mpq_srcptr u_squared = number_rational(variance);
    if (is_believed(question, width, variance))
        return GAUGE_SETTLES;
    if (question->value) {
        const DecisionLimits limits = {.lower = number_rational(question->lower),
                                       .upper = number_rational(question->upper)};
        Decision decision =
            decide(READ_AS_IS, number_rational(question->value), u_squared, &limits);
        return decision == DECISION_IN_DOUBT_GAUGE ? GAUGE_CANNOT : GAUGE_SETTLES;
    }
    gboolean can = !width || decision_can_ever_pass(number_rational(width), u_squared);
    return can ? GAUGE_CAN : GAUGE_CANNOT;
}

static Number *times(const Number *number, glong over, glong under)
{
    g_autoptr(Number) factor = number_from_ratio(over, under);
    return number_multiply(number, factor);
}

Number *gauge_inside(const GaugeQuestion *question, const Number *variance)
{
    g_autoptr(Number) width = width_of(question);
    if (is_believed(question, width, variance))
        return NULL;
    g_autoptr(Number) square = times(variance, 1089, 400);
    return number_sqrt(square);
}

// The least distance inside the limits, negative outside; NULL without a limit.
static Number *inside_of(const GaugeQuestion *question)
{
    g_autoptr(Number) above =
        question->lower ? number_subtract(question->value, question->lower) : NULL;
    g_autoptr(Number) below =
        question->upper ? number_subtract(question->upper, question->value) : NULL;
    gboolean first = above && (!below || number_compare(above, below) <= 0);
    return first ? g_steal_pointer(&above) : g_steal_pointer(&below);
}

Number *gauge_doubt_wanted(const GaugeQuestion *question)
{
    if (!question->value || !has_limit(question))
        return NULL;
    g_autoptr(Number) inside = inside_of(question);
    g_autoptr(Number) distance = number_abs(inside);
    g_autoptr(Number) guarded = times(distance, 40, 33);
    g_autoptr(Number) width = width_of(question);
    g_autoptr(Number) believed = width ? times(width, 1, 8) : NULL;
    return number_copy(believed && number_compare(believed, guarded) > 0 ? believed : guarded);
}
