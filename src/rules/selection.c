#include <standbook/rules/selection.h>

static gboolean on_side(const Number *value, const Number *aim, SelectionSide side)
{
    gint compared = number_compare(value, aim);
    return side == SELECTION_NEAREST ||
           (side == SELECTION_AT_LEAST ? compared >= 0 : compared <= 0);
}

// Below 0 if one lies nearer to the aim than the other, or as near and larger.
static gint compare_near(const Number *one, const Number *other, const Number *aim)
{
    g_autoptr(Number) first = number_subtract(one, aim), second = number_subtract(other, aim);
    g_autoptr(Number) near = number_abs(first), far = number_abs(second);
    gint compared = number_compare(near, far);
    return compared ? compared : number_compare(other, one);
}

static gssize nearest(const SelectionOffer *offers, gsize count, const Number *aim,
                      SelectionSide side)
{
    gssize best = -1;
    for (gsize i = 0; i < count; i++)
        if (offers[i].value && offers[i].fits && on_side(offers[i].value, aim, side) &&
            (best < 0 || compare_near(offers[i].value, offers[best].value, aim) < 0))
            best = (gssize)i;
    return best;
}

// The next value on one side (1: larger, -1: smaller) of another.
static gssize beside(const SelectionOffer *offers, gsize count, const Number *value, gint side)
{
    gssize next = -1;
    for (gsize i = 0; i < count; i++)
        if (offers[i].value && number_compare(offers[i].value, value) * side > 0 &&
            (next < 0 || number_compare(offers[i].value, offers[next].value) * side < 0))
            next = (gssize)i;
    return next;
}

Selection selection_of(const SelectionOffer *offers, gsize count, const Number *aim,
                       SelectionSide side)
{
    Selection selection = {.best = nearest(offers, count, aim, side)};
    if (selection.best < 0)
        selection.best = nearest(offers, count, aim, SELECTION_NEAREST);
    const Number *from = selection.best < 0 ? aim : offers[selection.best].value;
    selection.below = beside(offers, count, from, -1);
    selection.above = beside(offers, count, from, 1);
    return selection;
}
