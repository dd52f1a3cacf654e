#include <standbook/sheet/strip.h>

#include <gmp.h>

enum { BETWEEN = STRIP_UPPER - STRIP_LOWER };

// What cells 4 and 20 stand for.
typedef struct {
    Number *lower, *upper;
    gboolean lower_post, upper_post;
} Scale;

static Number *twice(const Number *number)
{
    return number_add(number, number);
}

// The free side of a limit: 0, or twice the limit where 0 lies on the wrong side of it.
static Number *free_side(const Number *limit, gboolean below)
{
    gint sign = number_sign(limit);
    if (sign == 0)
        return number_from_integer(below ? -1 : 1);
    return (sign > 0) == below ? number_from_integer(0) : twice(limit);
}

static gboolean scale_of(const Requirement *made, Scale *scale)
{
    if (!made->lower && !made->upper)
        return FALSE;
    scale->lower_post = made->lower != NULL;
    scale->upper_post = made->upper != NULL;
    scale->lower = made->lower ? number_copy(made->lower) : free_side(made->upper, TRUE);
    scale->upper = made->upper ? number_copy(made->upper) : free_side(made->lower, FALSE);
    return TRUE;
}

static void scale_clear(Scale *scale)
{
    number_free(scale->lower);
    number_free(scale->upper);
}

static gint floor_of(const Number *number)
{
    mpz_t whole;
    mpz_init(whole);
    mpq_srcptr rational = number_rational(number);
    mpz_fdiv_q(whole, mpq_numref(rational), mpq_denref(rational));
    gint floor = mpz_fits_sint_p(whole) ? (gint)mpz_get_si(whole)
                                        : (mpz_sgn(whole) < 0 ? G_MININT / 2 : G_MAXINT / 2);
    mpz_clear(whole);
    return floor;
}

// The nearest cell, not yet held back by posts or ends.
static gint nearest_cell(const Scale *scale, const Number *value)
{
    g_autoptr(Number) width = number_subtract(scale->upper, scale->lower);
    if (number_sign(width) == 0)
        return number_compare(value, scale->lower) < 0 ? STRIP_LOWER - 1 : STRIP_LOWER + 1;
    g_autoptr(Number) from = number_subtract(value, scale->lower);
    g_autoptr(Number) share = number_divide(from, width);
    g_autoptr(Number) cells = number_from_integer(BETWEEN);
    g_autoptr(Number) at = number_multiply(share, cells);
    g_autoptr(Number) half = number_from_ratio(1, 2);
    g_autoptr(Number) rounded = number_add(at, half);
    return floor_of(rounded) + STRIP_LOWER;
}

// The cell of a value: on its side of each post, and on the strip or just off it (-1 and 25).
static gint cell_of(const Scale *scale, const Number *value)
{
    gint cell = nearest_cell(scale, value);
    gboolean under = number_compare(value, scale->lower) < 0;
    gboolean over = number_compare(value, scale->upper) > 0;
    if (scale->lower_post)
        cell = under ? MIN(cell, STRIP_LOWER - 1) : MAX(cell, STRIP_LOWER + 1);
    if (scale->upper_post)
        cell = over ? MAX(cell, STRIP_UPPER + 1) : MIN(cell, STRIP_UPPER - 1);
    return CLAMP(cell, -1, STRIP_CELLS);
}

static void put(const char **cells, gint cell, const char *sign)
{
    if (cell >= 0 && cell < STRIP_CELLS)
        cells[cell] = sign;
}

static gboolean is_post(const Scale *scale, gint cell)
{
    return (cell == STRIP_LOWER && scale->lower_post) || (cell == STRIP_UPPER && scale->upper_post);
}

static void put_line(const char **cells, const Scale *scale, const Requirement *made)
{
    for (gint cell = 0; cell < STRIP_CELLS; cell++)
        cells[cell] = cell >= STRIP_LOWER && cell <= STRIP_UPPER ? "─" : " ";
    if (scale->lower_post)
        cells[STRIP_LOWER] = "├";
    if (scale->upper_post)
        cells[STRIP_UPPER] = "┤";
    const PlanCheck *check = made->check;
    if (check && check->aim_value && check->aim == AIM_VALUE)
        put(cells, cell_of(scale, check->aim_value), "┼");
    if (made->wear)
        put(cells, cell_of(scale, made->wear), "║");
}

static void put_span(const char **cells, const Scale *scale, gint from, gint to, const char *sign)
{
    for (gint cell = MAX(from, 0); cell <= MIN(to, STRIP_CELLS - 1); cell++)
        if (!is_post(scale, cell))
            cells[cell] = sign;
}

static void put_doubt(const char **cells, const Scale *scale, const Requirement *made)
{
    if (!made->variance || number_sign(made->variance) == 0)
        return;
    g_autoptr(Number) four = number_from_integer(4);
    g_autoptr(Number) square = number_multiply(made->variance, four);
    g_autoptr(Number) doubt = number_sqrt(square);
    g_autoptr(Number) least = number_subtract(made->value, doubt);
    g_autoptr(Number) greatest = number_add(made->value, doubt);
    put_span(cells, scale, cell_of(scale, least), cell_of(scale, greatest), "▒");
}

// A value off the strip is seen at its end.
static void put_values(const char **cells, const Scale *scale, const Number *least,
                       const Number *greatest)
{
    gint from = cell_of(scale, least), to = cell_of(scale, greatest);
    put_span(cells, scale, from, to, "█");
    if (from < 0)
        cells[0] = "<";
    if (to >= STRIP_CELLS)
        cells[STRIP_CELLS - 1] = ">";
}

static char *joined(const char **cells)
{
    GString *text = g_string_new(NULL);
    for (gint cell = 0; cell < STRIP_CELLS; cell++)
        g_string_append(text, cells[cell]);
    return g_string_free(text, FALSE);
}

static char *strip(const Requirement *made, const Number *least, const Number *greatest,
                   gboolean doubt)
{
    const char *cells[STRIP_CELLS];
    Scale scale;
    if (!scale_of(made, &scale))
        return g_strdup("");
    put_line(cells, &scale, made);
    if (doubt)
        put_doubt(cells, &scale, made);
    if (least && greatest)
        put_values(cells, &scale, least, greatest);
    scale_clear(&scale);
    return joined(cells);
}

char *strip_text(const Requirement *made)
{
    return strip(made, made->value, made->value, made->value != NULL);
}

char *strip_range(const Requirement *made, const Number *least, const Number *greatest)
{
    return strip(made, least, greatest, FALSE);
}
