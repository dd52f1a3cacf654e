#include <standbook/sheet/trial_window.h>

#include <standbook/sheet/strip.h>
#include <standbook/value/uncertainty.h>

void trial_window_clear(TrialWindow *window)
{
    number_free(window->from);
    number_free(window->step);
}

static void widen(Number **least, Number **most, const Number *value)
{
    if (!*least || number_compare(value, *least) < 0) {
        number_free(*least);
        *least = number_copy(value);
    }
    if (!*most || number_compare(value, *most) > 0) {
        number_free(*most);
        *most = number_copy(value);
    }
}

static void widen_by(Number **least, Number **most, const Number *value, const Number *by)
{
    g_autoptr(Number) below = number_subtract(value, by);
    g_autoptr(Number) above = number_add(value, by);
    widen(least, most, below);
    widen(least, most, above);
}

// U of a reading; NULL if there is none.
static Number *doubt_of(const Requirement *made)
{
    return made->variance ? uncertainty_expanded(made->variance) : NULL;
}

// What must be seen: limits with room beside them, the aim, every reading with its doubt.
static void find_ends(const Trials *trials, Number **least, Number **most)
{
    const Requirement *asked = trials->made[0];
    g_autoptr(Number) nothing = number_from_integer(0);
    g_autoptr(Number) width =
        asked->lower && asked->upper ? number_subtract(asked->upper, asked->lower) : NULL;
    g_autoptr(Number) quarter = number_from_ratio(1, 4);
    g_autoptr(Number) room = width ? number_multiply(width, quarter) : number_copy(nothing);
    if (asked->lower)
        widen_by(least, most, asked->lower, room);
    if (asked->upper)
        widen_by(least, most, asked->upper, room);
    if (trials->check->aim_value)
        widen(least, most, trials->check->aim_value);
    for (guint i = 0; i < trials->all->len * trials->places; i++) {
        const Trial *trial = trials->all->pdata[i / trials->places];
        const Requirement *made = trial->places[i % trials->places].made;
        if (!made || !made->value)
            continue;
        g_autoptr(Number) doubt = doubt_of(made);
        widen_by(least, most, made->value, doubt ? doubt : nothing);
    }
}

static Number *floor_of(const Number *number)
{
    g_autofree char *text = number_decimal(number, 0);
    Number *whole = number_from_text(text, NULL);
    if (number_compare(whole, number) <= 0)
        return whole;
    g_autoptr(Number) above = whole;
    g_autoptr(Number) one = number_from_integer(1);
    return number_subtract(above, one);
}

// Whether so many steps from `from` on reach the end.
static gboolean reaches(const Number *from, const Number *step, guint cells, const Number *most)
{
    g_autoptr(Number) count = number_from_integer((glong)cells - 1);
    g_autoptr(Number) length = number_multiply(step, count);
    g_autoptr(Number) end = number_add(from, length);
    return number_compare(end, most) >= 0;
}

// A window with that step: from 0 if that reaches, else from the step below the least.
static gboolean try_step(const Number *least, const Number *most, const Number *step,
                         TrialWindow *window)
{
    g_autoptr(Number) zero = number_from_integer(0);
    g_autoptr(Number) share = number_divide(least, step);
    g_autoptr(Number) whole = floor_of(share);
    g_autoptr(Number) below = number_multiply(whole, step);
    gboolean from_zero = number_sign(least) >= 0 && reaches(zero, step, window->cells, most);
    if (!from_zero && !reaches(below, step, window->cells, most))
        return FALSE;
    window->from = number_copy(from_zero ? zero : below);
    window->step = number_copy(step);
    return TRUE;
}

// The finest decimal place of a step: that which the check shows, or the next where the limits
// would lie too near to each other to tell anything.
static guint finest_place(const Trials *trials)
{
    enum { NEAREST = 8 }; // cells
    const Requirement *asked = trials->made[0];
    guint decimals = trials->check->decimals;
    if (!asked->lower || !asked->upper)
        return decimals;
    g_autoptr(Number) width = number_subtract(asked->upper, asked->lower);
    g_autoptr(Number) shown = unit_width_from_base(trials->check->unit, width);
    g_autoptr(Number) ten = number_from_integer(10), least = number_from_integer(NEAREST);
    g_autoptr(Number) scale = number_power(ten, (gint)MIN(decimals, 9));
    g_autoptr(Number) cells = number_multiply(shown, scale);
    return decimals + (number_compare(cells, least) < 0 ? 1 : 0);
}

TrialWindow trial_window(const Trials *trials, guint cells)
{
    static const glong digits[] = {1, 2, 5};
    enum { PLACES = 30 };
    TrialWindow window = {.cells = cells, .decimals = finest_place(trials)};
    g_autoptr(Number) base_least = NULL, base_most = NULL;
    find_ends(trials, &base_least, &base_most);
    if (!base_least)
        return window;
    const Unit *unit = trials->check->unit;
    g_autoptr(Number) least = unit_from_base(unit, base_least);
    g_autoptr(Number) most = unit_from_base(unit, base_most);
    g_autoptr(Number) ten = number_from_integer(10), tenth = number_from_ratio(1, 10);
    g_autoptr(Number) place = number_from_integer(1);
    for (guint i = 0; i < window.decimals; i++) {
        Number *finer = number_multiply(place, tenth);
        number_free(place);
        place = finer;
    }
    for (guint i = 0; i < PLACES * G_N_ELEMENTS(digits); i++) {
        g_autoptr(Number) digit = number_from_integer(digits[i % G_N_ELEMENTS(digits)]);
        g_autoptr(Number) step = number_multiply(place, digit);
        if (try_step(least, most, step, &window))
            return window;
        if (i % G_N_ELEMENTS(digits) == G_N_ELEMENTS(digits) - 1) {
            Number *coarser = number_multiply(place, ten);
            number_free(place);
            place = coarser;
        }
    }
    return window;
}

Number *trial_window_end(const TrialWindow *window)
{
    g_autoptr(Number) count = number_from_integer((glong)window->cells - 1);
    g_autoptr(Number) length = number_multiply(window->step, count);
    return number_add(window->from, length);
}

char *trial_strip_in(const Trials *trials, const Trial *trial, const TrialWindow *window)
{
    const Requirement *asked = trials->made[0];
    if (!window->step)
        return g_strdup("");
    const Unit *unit = trials->check->unit;
    g_autoptr(Number) end = trial_window_end(window);
    g_autoptr(Number) from = unit_to_base(unit, window->from), to = unit_to_base(unit, end);
    g_autoptr(GPtrArray) values = g_ptr_array_new();
    const Requirement *first = NULL;
    for (guint i = 0; trial && i < trials->places; i++) {
        const Requirement *made = trial->places[i].made;
        if (!made || !made->value)
            continue;
        first = first ? first : made;
        g_ptr_array_add(values, made->value);
    }
    return strip_draw(&(Strip){.lower = asked->lower,
                               .upper = asked->upper,
                               .aim = trials->check->aim_value,
                               .values = (const Number *const *)values->pdata,
                               .count = values->len,
                               .variance = first ? first->variance : NULL,
                               .bound = first ? first->bound : BOUND_NONE,
                               .from = from,
                               .to = to,
                               .cells = window->cells});
}
