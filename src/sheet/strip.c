#include <standbook/sheet/strip.h>
#include <standbook/value/uncertainty.h>

#include <gmp.h>

enum { NOWHERE = -1000 };

// Two values and the cells they stand on, and where the posts are.
typedef struct {
    Number *low, *high;
    gint low_cell, high_cell, cells;
    gint lower, upper, wear; // NOWHERE without one, or off the strip
    gboolean wear_above;     // the service limit is passed upwards
} Scale;

// NUMBERS TO CELLS ------------------------------------------------------------------------------

static gint floor_of(const Number *number)
{
    mpz_t whole;
    mpz_init(whole);
    mpq_srcptr rational = number_rational(number);
    mpz_fdiv_q(whole, mpq_numref(rational), mpq_denref(rational));
    gint floor = mpz_fits_sint_p(whole) ? (gint)mpz_get_si(whole)
                                        : (mpz_sgn(whole) < 0 ? G_MININT : G_MAXINT);
    mpz_clear(whole);
    return floor;
}

// The nearest cell, not yet held back by posts; just off the strip is -1 or `cells`.
static gint nearest_cell(const Scale *scale, const Number *value)
{
    g_autoptr(Number) width = number_subtract(scale->high, scale->low);
    if (number_sign(width) == 0)
        return number_compare(value, scale->low) < 0 ? scale->low_cell - 1 : scale->low_cell + 1;
    g_autoptr(Number) from = number_subtract(value, scale->low);
    g_autoptr(Number) share = number_divide(from, width);
    g_autoptr(Number) between = number_from_integer(scale->high_cell - scale->low_cell);
    g_autoptr(Number) at = number_multiply(share, between);
    g_autoptr(Number) half = number_from_ratio(1, 2);
    g_autoptr(Number) rounded = number_add(at, half);
    return CLAMP(floor_of(rounded), -1 - scale->low_cell, scale->cells - scale->low_cell) +
           scale->low_cell;
}

// Keeps a cell on the value's side of a post that is passed upwards or downwards.
static gint beside(gint cell, gint post, const Number *limit, const Number *value, gboolean upwards)
{
    if (post == NOWHERE)
        return cell;
    gint order = number_compare(value, limit);
    gboolean outside = upwards ? order > 0 : order < 0;
    return outside == upwards ? MAX(cell, post + 1) : MIN(cell, post - 1);
}

static gint cell_of(const Scale *scale, const Strip *strip, const Number *value)
{
    gint cell = nearest_cell(scale, value);
    cell = beside(cell, scale->wear, strip->wear, value, scale->wear_above);
    cell = beside(cell, scale->lower, strip->lower, value, FALSE);
    cell = beside(cell, scale->upper, strip->upper, value, TRUE);
    return CLAMP(cell, -1, scale->cells);
}

// SCALE -----------------------------------------------------------------------------------------

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

static void place_ends(const Strip *strip, Scale *scale)
{
    if (strip->from) {
        gint cells = (gint)CLAMP(strip->cells, 2, STRIP_MOST);
        *scale = (Scale){.low = number_copy(strip->from),
                         .high = number_copy(strip->to),
                         .high_cell = cells - 1,
                         .cells = cells};
        return;
    }
    const Number *lower = strip->lower, *upper = strip->upper;
    *scale = (Scale){.low = lower ? number_copy(lower) : free_side(upper, TRUE),
                     .high = upper ? number_copy(upper) : free_side(lower, FALSE),
                     .low_cell = STRIP_LOWER,
                     .high_cell = STRIP_UPPER,
                     .cells = STRIP_CELLS};
}

// The cell of a post.
static gint post_at(const Scale *scale, gint cell)
{
    return cell >= 0 && cell < scale->cells ? cell : NOWHERE;
}

static gboolean above_middle(const Scale *scale, const Number *value)
{
    g_autoptr(Number) ends = number_add(scale->low, scale->high);
    g_autoptr(Number) both = twice(value);
    return number_compare(both, ends) > 0;
}

// Between two posts there is always a cell to stand on.
static void place_posts(const Strip *strip, Scale *scale)
{
    const Number *wear = strip->wear, *lower = strip->lower, *upper = strip->upper;
    scale->lower = scale->upper = scale->wear = NOWHERE;
    if (lower)
        scale->lower = strip->from ? post_at(scale, nearest_cell(scale, lower)) : STRIP_LOWER;
    if (upper)
        scale->upper = strip->from ? post_at(scale, nearest_cell(scale, upper)) : STRIP_UPPER;
    if (lower && upper && scale->upper != NOWHERE)
        scale->upper = MAX(scale->upper, scale->lower + 2);
    if (!wear || (lower && number_equal(wear, lower)) || (upper && number_equal(wear, upper)))
        return;
    scale->wear = nearest_cell(scale, wear);
    scale->wear_above = above_middle(scale, wear);
    if (upper && number_compare(wear, upper) > 0)
        scale->wear = MAX(scale->wear, scale->upper + 2);
    if (lower && number_compare(wear, lower) < 0)
        scale->wear = MIN(scale->wear, scale->lower - 2);
    scale->wear = post_at(scale, scale->wear);
}

// MARKS -----------------------------------------------------------------------------------------

typedef struct {
    const Strip *strip;
    Scale scale;
    const char *cells[STRIP_MOST];
} Drawing;

static void put(Drawing *drawing, gint cell, const char *sign)
{
    if (cell >= 0 && cell < drawing->scale.cells)
        drawing->cells[cell] = sign;
}

// From cell to cell, whichever is first, but not upon a post.
static void put_cells(Drawing *drawing, gint one, gint other, const char *sign)
{
    const Scale *scale = &drawing->scale;
    for (gint cell = MIN(one, other); cell <= MAX(one, other); cell++)
        if (cell != scale->lower && cell != scale->upper && cell != scale->wear)
            put(drawing, cell, sign);
}

static void put_between(Drawing *drawing, const Number *from, const Number *to, const char *sign)
{
    put_cells(drawing, cell_of(&drawing->scale, drawing->strip, from),
              cell_of(&drawing->scale, drawing->strip, to), sign);
}

static void put_line(Drawing *drawing)
{
    const Strip *strip = drawing->strip;
    const Scale *scale = &drawing->scale;
    for (gint cell = 0; cell < scale->cells; cell++)
        drawing->cells[cell] = " ";
    if (strip->lower || strip->upper)
        put_cells(drawing, scale->lower == NOWHERE ? scale->low_cell : scale->lower,
                  scale->upper == NOWHERE ? scale->high_cell : scale->upper, "─");
    put(drawing, scale->lower, "├");
    put(drawing, scale->upper, "┤");
    put(drawing, scale->wear, "║");
    if (strip->aim)
        put_between(drawing, strip->aim, strip->aim, "┼");
    if (strip->least && strip->most)
        put_between(drawing, strip->least, strip->most, "░");
    if (strip->as_new && strip->count)
        put_between(drawing, strip->as_new, strip->values[0], "═");
}

// U = 2u, cut far behind what a cell can show.
static Number *doubt_of(const Strip *strip)
{
    if (!strip->variance || number_sign(strip->variance) <= 0)
        return NULL;
    return uncertainty_expanded(strip->variance);
}

static void put_doubt(Drawing *drawing, const Number *value, const Number *doubt)
{
    const Strip *strip = drawing->strip;
    const Scale *scale = &drawing->scale;
    gint cell = cell_of(scale, strip, value);
    if (doubt) {
        g_autoptr(Number) least = number_subtract(value, doubt);
        g_autoptr(Number) most = number_add(value, doubt);
        put_between(drawing, least, most, "▒");
    }
    if (strip->bound == BOUND_BELOW)
        put_cells(drawing, strip->lower ? 0 : scale->low_cell, cell, "▒");
    if (strip->bound == BOUND_ABOVE)
        put_cells(drawing, cell, strip->upper ? scale->cells - 1 : scale->high_cell, "▒");
}

// A value off the strip is seen at its end.
static void put_value(Drawing *drawing, const Number *value)
{
    gint cell = cell_of(&drawing->scale, drawing->strip, value), last = drawing->scale.cells - 1;
    put(drawing, CLAMP(cell, 0, last), cell < 0 ? "<" : cell > last ? ">" : "█");
}

static void put_values(Drawing *drawing)
{
    const Strip *strip = drawing->strip;
    g_autoptr(Number) doubt = doubt_of(strip);
    const Number *least = NULL, *most = NULL;
    for (guint i = 0; i < strip->count; i++) {
        const Number *value = strip->values[i];
        put_doubt(drawing, value, doubt);
        least = least && number_compare(least, value) <= 0 ? least : value;
        most = most && number_compare(most, value) >= 0 ? most : value;
    }
    if (strip->filled && least)
        put_between(drawing, least, most, "█");
    for (guint i = 0; i < strip->count; i++)
        put_value(drawing, strip->values[i]);
}

char *strip_draw(const Strip *strip)
{
    Drawing drawing = {.strip = strip};
    if (!strip->lower && !strip->upper && !strip->from)
        return g_strdup("");
    place_ends(strip, &drawing.scale);
    place_posts(strip, &drawing.scale);
    put_line(&drawing);
    put_values(&drawing);
    GString *text = g_string_new(NULL);
    for (gint cell = 0; cell < drawing.scale.cells; cell++)
        g_string_append(text, drawing.cells[cell]);
    number_free(drawing.scale.low);
    number_free(drawing.scale.high);
    return g_string_free(text, FALSE);
}

// REQUIREMENTS ----------------------------------------------------------------------------------

static Strip strip_of(const Requirement *made)
{
    gboolean aimed = made->check && made->check->aim == AIM_VALUE;
    return (Strip){.lower = made->lower,
                   .upper = made->upper,
                   .wear = made->wear,
                   .aim = aimed ? made->check->aim_value : NULL};
}

char *strip_text(const Requirement *made)
{
    const Number *value = made->value;
    Strip strip = strip_of(made);
    strip.values = &value;
    strip.count = value ? 1 : 0;
    strip.variance = made->variance;
    strip.bound = made->bound;
    return strip_draw(&strip);
}
