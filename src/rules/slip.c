#include <standbook/rules/slip.h>

enum { LEAST_STEPS = 20, FAR_RANGES = 10, LEAST_OTHERS = 3, LEAST_WITH_LIMITS = 2 };

static gint compare_numbers(gconstpointer one, gconstpointer other)
{
    return number_compare(*(const Number *const *)one, *(const Number *const *)other);
}

// Takes over the numbers, at least one, and gives their median.
static Number *median_taken(GPtrArray *numbers)
{
    g_ptr_array_sort(numbers, compare_numbers);
    g_autoptr(Number) two = number_from_integer(2);
    g_autoptr(Number) sum =
        number_add(numbers->pdata[(numbers->len - 1) / 2], numbers->pdata[numbers->len / 2]);
    g_ptr_array_unref(numbers);
    return number_divide(sum, two);
}

static GPtrArray *numbers_new(void)
{
    return g_ptr_array_new_with_free_func((GDestroyNotify)number_free);
}

static Number *median_of(const Number *const *others, gsize count)
{
    GPtrArray *copies = numbers_new();
    for (gsize i = 0; i < count; i++)
        g_ptr_array_add(copies, number_copy(others[i]));
    return median_taken(copies);
}

static Number *distance(const Number *one, const Number *other)
{
    g_autoptr(Number) between = number_subtract(one, other);
    return number_abs(between);
}

static Number *median_distance(const Number *median, const Number *const *others, gsize count)
{
    GPtrArray *distances = numbers_new();
    for (gsize i = 0; i < count; i++)
        g_ptr_array_add(distances, distance(others[i], median));
    return median_taken(distances);
}

static Number *range_of(const Number *const *others, gsize count)
{
    const Number *least = others[0], *most = others[0];
    for (gsize i = 1; i < count; i++) {
        least = number_compare(others[i], least) < 0 ? others[i] : least;
        most = number_compare(others[i], most) > 0 ? others[i] : most;
    }
    return number_subtract(most, least);
}

// Whether one > above/below of the other.
static gboolean is_beyond(const Number *one, const Number *other, glong above, glong below)
{
    g_autoptr(Number) ratio = number_from_ratio(above, below);
    g_autoptr(Number) bound = number_multiply(other, ratio);
    return number_compare(one, bound) > 0;
}

gboolean slip_is_outlier(const Number *value, const Number *const *others, gsize count,
                         const Number *least)
{
    g_autoptr(Number) median = median_of(others, count);
    g_autoptr(Number) away = distance(value, median);
    g_autoptr(Number) mad = median_distance(median, others, count);
    const Number *spread = number_compare(mad, least) < 0 ? least : mad;
    return is_beyond(away, spread, 35000, 6745); // 0.6745 away / MAD > 3.5
}

static gboolean has_limits(const SlipQuestion *question)
{
    return question->lower && question->upper;
}

static gboolean is_inside(const SlipQuestion *question, const Number *value)
{
    return has_limits(question) && number_compare(value, question->lower) >= 0 &&
           number_compare(value, question->upper) <= 0;
}

static gboolean is_near(const SlipQuestion *question, const Number *value)
{
    if (question->count == 0)
        return FALSE;
    g_autoptr(Number) median = median_of(question->others, question->count);
    g_autoptr(Number) size = number_abs(median), two = number_from_integer(2);
    g_autoptr(Number) half = number_divide(size, two), away = distance(value, median);
    g_autoptr(Number) range = range_of(question->others, question->count);
    g_autoptr(Number) reach = number_add(range, half);
    return number_compare(away, reach) <= 0;
}

// Whether a ratio to the others, or else to the limits, tells something.
static gboolean tells(const SlipQuestion *question)
{
    if (question->count == 0)
        return has_limits(question);
    g_autoptr(Number) median = median_of(question->others, question->count);
    g_autoptr(Number) size = number_abs(median);
    g_autoptr(Number) range = range_of(question->others, question->count);
    return !is_beyond(question->step, size, 1, LEAST_STEPS) && !is_beyond(range, size, 1, 2);
}

static gboolean is_likely(const SlipQuestion *question, const Number *value)
{
    return question->count ? is_near(question, value) : is_inside(question, value);
}

// Whether it lies outside the limits by more than so many of their widths.
static gboolean is_outside_by(const Number *value, const Number *lower, const Number *upper,
                              glong widths)
{
    g_autoptr(Number) width = number_subtract(upper, lower), times = number_from_integer(widths);
    g_autoptr(Number) most = number_multiply(width, times);
    g_autoptr(Number) low = number_subtract(lower, most), high = number_add(upper, most);
    return number_compare(value, low) < 0 || number_compare(value, high) > 0;
}

gboolean slip_is_beyond_all(const Number *value, const Number *lower, const Number *upper)
{
    return is_outside_by(value, lower, upper, FAR_RANGES);
}

static gboolean is_outside_by_a_width(const SlipQuestion *question)
{
    return !has_limits(question) ||
           is_outside_by(question->value, question->lower, question->upper, 1);
}

static gboolean is_far(const SlipQuestion *question)
{
    gsize least = has_limits(question) ? LEAST_WITH_LIMITS : LEAST_OTHERS;
    if (question->count < least || !is_outside_by_a_width(question))
        return FALSE;
    g_autoptr(Number) median = median_of(question->others, question->count);
    g_autoptr(Number) away = distance(question->value, median);
    g_autoptr(Number) range = range_of(question->others, question->count);
    const Number *spread = number_compare(range, question->step) < 0 ? question->step : range;
    return is_beyond(away, spread, FAR_RANGES, 1) &&
           slip_is_outlier(question->value, question->others, question->count, question->step);
}

static Number *times(const Number *value, glong above, glong below)
{
    g_autoptr(Number) factor = number_from_ratio(above, below);
    return number_multiply(value, factor);
}

// What the value is multiplied with to have it without the slip.
static const struct {
    SlipKind kind;
    glong above, below;
    gboolean length; // only of one
} undoings[] = {
    {SLIP_SIGN, -1, 1, FALSE},        {SLIP_TEN_TIMES, 1, 10, FALSE},  {SLIP_A_TENTH, 10, 1, FALSE},
    {SLIP_INCH_TIMES, 10, 254, TRUE}, {SLIP_INCH_PART, 254, 10, TRUE},
};

static SlipKind find_factor(const SlipQuestion *question, Number **meant)
{
    for (gsize i = 0; i < G_N_ELEMENTS(undoings); i++) {
        g_autoptr(Number) without = times(question->value, undoings[i].above, undoings[i].below);
        if ((undoings[i].length && !question->length) || !is_likely(question, without))
            continue;
        if (meant)
            *meant = g_steal_pointer(&without);
        return undoings[i].kind;
    }
    return SLIP_NONE;
}

SlipKind slip_likely(const SlipQuestion *question, Number **meant)
{
    if (meant)
        *meant = NULL;
    if (number_sign(question->value) == 0 || is_inside(question, question->value) ||
        is_near(question, question->value))
        // 90.5 is near 90.005 by ratio and yet far by their spread.
        return !is_inside(question, question->value) && is_far(question) ? SLIP_FAR : SLIP_NONE;
    if (question->fraction) {
        if (meant)
            *meant = times(question->value, 254, 10);
        return SLIP_FRACTION;
    }
    SlipKind kind = tells(question) ? find_factor(question, meant) : SLIP_NONE;
    return kind == SLIP_NONE && is_far(question) ? SLIP_FAR : kind;
}
