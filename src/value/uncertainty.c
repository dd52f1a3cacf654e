#include <standbook/value/uncertainty.h>
#include <string.h>

// What one gauge has gathered: its description and the sums of its readings' weights.
typedef struct {
    const ReadingDoubt *doubt;
    Number *sum;     // Σc
    Number *squares; // Σc²
} Gauge;

static void gauge_clear(gpointer data)
{
    Gauge *gauge = data;
    number_free(gauge->sum);
    number_free(gauge->squares);
}

static void add_to(Number **total, const Number *more)
{
    Number *sum = number_add(*total, more);
    number_free(*total);
    *total = sum;
}

static gboolean same_gauge(const ReadingDoubt *one, const ReadingDoubt *other)
{
    return one->gauge && other->gauge && strcmp(one->gauge, other->gauge) == 0;
}

// The gauge of a reading; a reading without a named gauge stands alone.
static Gauge *find_gauge(GArray *gauges, const ReadingDoubt *doubt)
{
    for (guint i = 0; i < gauges->len; i++) {
        Gauge *gauge = &g_array_index(gauges, Gauge, i);
        if (same_gauge(gauge->doubt, doubt)) {
            return gauge;
        }
    }
    Gauge gauge = {doubt, number_from_integer(0), number_from_integer(0)};
    g_array_append_val(gauges, gauge);
    return &g_array_index(gauges, Gauge, gauges->len - 1);
}

static void add_weight(GArray *gauges, const ReadingDoubt *doubt, const Number *weight)
{
    Gauge *gauge = find_gauge(gauges, doubt);
    g_autoptr(Number) square = number_power(weight, 2);
    add_to(&gauge->sum, weight);
    add_to(&gauge->squares, square);
}

// factor · width² / below
static Number *share(const Number *factor, const Number *width, glong below)
{
    g_autoptr(Number) square = number_power(width, 2);
    g_autoptr(Number) product = number_multiply(factor, square);
    g_autoptr(Number) divisor = number_from_integer(below);
    return number_divide(product, divisor);
}

static const Number *greater(const Number *one, const Number *other)
{
    return number_compare(one, other) >= 0 ? one : other;
}

// ((Σc)² (U² - r²) + Σc² r²) / 4; a repeat said to be beyond U leaves nothing fixed.
static Number *with_repeat(const Gauge *gauge, const Number *together)
{
    g_autoptr(Number) apart = share(gauge->squares, gauge->doubt->repeat, 4);
    if (number_compare(gauge->doubt->repeat, gauge->doubt->expanded) > 0) {
        return number_copy(apart);
    }
    g_autoptr(Number) whole = share(together, gauge->doubt->expanded, 4);
    g_autoptr(Number) part = share(together, gauge->doubt->repeat, 4);
    g_autoptr(Number) fixed = number_subtract(whole, part);
    return number_add(fixed, apart);
}

static Number *gauge_variance(const Gauge *gauge)
{
    const ReadingDoubt *doubt = gauge->doubt;
    if (doubt->expanded == NULL) {
        return doubt->graduation ? share(gauge->squares, doubt->graduation, 12)
                                 : number_from_integer(0);
    }
    g_autoptr(Number) together = number_power(gauge->sum, 2);
    if (doubt->repeat) {
        return with_repeat(gauge, together);
    }
    return share(greater(together, gauge->squares), doubt->expanded, 4);
}

static void add_constant(Number **total, const Weight *weight)
{
    g_autoptr(Number) square = number_power(weight->weight, 2);
    g_autoptr(Number) part = share(square, weight->doubt, 4);
    add_to(total, part);
}

Number *uncertainty_variance(const Place *place, ReadingDoubtOf doubt_of, gpointer user)
{
    Number *total = number_from_integer(0);
    g_autoptr(GArray) gauges = g_array_new(FALSE, FALSE, sizeof(Gauge));
    g_array_set_clear_func(gauges, gauge_clear);
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        const ReadingDoubt *doubt = weight->doubt ? NULL : doubt_of(weight->source, user);
        if (weight->doubt) {
            add_constant(&total, weight);
        } else if (doubt) {
            add_weight(gauges, doubt, weight->weight);
        }
    }
    for (guint i = 0; i < gauges->len; i++) {
        g_autoptr(Number) part = gauge_variance(&g_array_index(gauges, Gauge, i));
        add_to(&total, part);
    }
    return total;
}

Number *uncertainty_expanded(const Number *variance)
{
    g_autoptr(Number) four = number_from_integer(4), square = number_multiply(variance, four);
    return number_sqrt(square);
}

Number *uncertainty_add(const Number *variance, const Number *expanded)
{
    g_autoptr(Number) one = number_from_integer(1);
    g_autoptr(Number) part = share(one, expanded, 4);
    return number_add(variance, part);
}
