#include "place.h"

#include "awaited.h"

static const char BOUND_NOTE[] = "only min and max can use a `<` or `>`; read the value itself";

static void weight_clear(gpointer data)
{
    Weight *weight = data;
    number_free(weight->weight);
    number_free(weight->doubt);
}

static GArray *weights_new(void)
{
    GArray *weights = g_array_new(FALSE, FALSE, sizeof(Weight));
    g_array_set_clear_func(weights, weight_clear);
    return weights;
}

static void append(GArray *weights, const Weight *from, const Number *by)
{
    Weight weight = {from->source, number_multiply(from->weight, by),
                     from->doubt ? number_copy(from->doubt) : NULL};
    g_array_append_val(weights, weight);
}

static void add_last(GArray *weights, const Weight *from, const Number *by)
{
    Weight *last = &g_array_index(weights, Weight, weights->len - 1);
    g_autoptr(Number) more = number_multiply(from->weight, by);
    g_autoptr(Number) before = last->weight;
    last->weight = number_add(before, more);
}

static const Weight *weight_at(const GArray *weights, guint index)
{
    return weights && index < weights->len ? &g_array_index(weights, Weight, index) : NULL;
}

// one · by_one + other · by_other, source by source. NULL is no weights.
static GArray *weights_sum(const GArray *one, const Number *by_one, const GArray *other,
                           const Number *by_other)
{
    if (one == NULL && other == NULL) {
        return NULL;
    }
    GArray *sum = weights_new();
    guint i = 0;
    guint j = 0;
    for (;;) {
        const Weight *left = weight_at(one, i);
        const Weight *right = weight_at(other, j);
        if (left == NULL && right == NULL) {
            return sum;
        }
        gboolean both = left && right && left->source == right->source;
        if (left && (right == NULL || left->source <= right->source)) {
            append(sum, left, by_one);
            i++;
        }
        if (both) {
            add_last(sum, right, by_other);
            j++;
        } else if (right && (left == NULL || right->source < left->source)) {
            append(sum, right, by_other);
            j++;
        }
    }
}

static GArray *weight_one(gint source, const Number *doubt)
{
    GArray *weights = weights_new();
    Weight weight = {source, number_from_integer(1), doubt ? number_copy(doubt) : NULL};
    g_array_append_val(weights, weight);
    return weights;
}

// Weights may be shared with another place: the value gets its own.
void place_add_doubt(Place *place, const Number *doubt, gint source)
{
    if (place->state != PLACE_VALUE)
        return;
    g_autoptr(Number) unity = number_from_integer(1);
    g_autoptr(GArray) before = place->weights;
    g_autoptr(GArray) added = weight_one(source, doubt);
    place->weights = weights_sum(added, unity, before, unity);
}

Place place_reading(const Number *value, Bound bound, gint source, guint32 doubts)
{
    return (Place){.state = PLACE_VALUE,
                   .value = number_copy(value),
                   .bound = bound,
                   .doubts = doubts,
                   .weights = weight_one(source, NULL),
                   .read = 1,
                   .asked = 1};
}

Place place_constant(const Number *value, const Number *doubt, gint source)
{
    return (Place){.state = PLACE_VALUE,
                   .value = number_copy(value),
                   .weights = doubt ? weight_one(source, doubt) : NULL};
}

Place place_open(const char *note)
{
    return (Place){.state = PLACE_OPEN, .asked = 1, .note = note};
}

Place place_copy(const Place *place)
{
    Place copy = *place;
    copy.value = place->value ? number_copy(place->value) : NULL;
    copy.weights = place->weights ? g_array_ref(place->weights) : NULL; // never changed once made
    copy.awaits = awaited_copy(place->awaits);
    return copy;
}

void place_clear(Place *place)
{
    g_clear_pointer(&place->value, number_free);
    g_clear_pointer(&place->weights, g_array_unref);
    g_clear_pointer(&place->awaits, awaited_free);
}

// What a result knows of its members whatever its value: doubts and their cause, counts, the first
// note, what is missing.
static void gather(Place *result, const Place *member)
{
    result->doubts |= member->doubts;
    result->cause = MAX(result->cause, member->cause);
    result->read += member->read;
    result->asked += member->asked;
    result->note = result->note ? result->note : member->note;
    Awaited *before = result->awaits;
    result->awaits = awaited_both(before, member->awaits);
    awaited_free(before);
}

// TRUE when the operands settle the state by themselves: not needed, open, or a bound.
static gboolean settled(Place *result, const Place *one, const Place *other)
{
    if (one->state == PLACE_NOT_NEEDED || other->state == PLACE_NOT_NEEDED) {
        *result = (Place){.state = PLACE_NOT_NEEDED};
        return TRUE;
    }
    *result = (Place){.state = PLACE_OPEN};
    gather(result, one);
    if (other != one) {
        gather(result, other);
    }
    if (one->state == PLACE_OPEN || other->state == PLACE_OPEN) {
        return TRUE;
    }
    if (one->bound != BOUND_NONE || other->bound != BOUND_NONE) {
        result->note = BOUND_NOTE;
        return TRUE;
    }
    result->state = PLACE_VALUE;
    return FALSE;
}

// Leaves a place open whose number has run away.
static Place bounded(Place result)
{
    if (result.value && number_is_huge(result.value)) {
        place_clear(&result);
        result.state = PLACE_OPEN;
        result.note = "the number has grown too large; check the powers";
    }
    return result;
}

static void divide(Place *result, const Place *one, const Place *other)
{
    g_autoptr(Number) unity = number_from_integer(1);
    g_autoptr(Number) by_one = number_divide(unity, other->value);
    if (by_one == NULL) {
        result->state = PLACE_OPEN;
        result->note = "divided by 0";
        return;
    }
    result->value = number_multiply(one->value, by_one);
    g_autoptr(Number) slope = number_multiply(result->value, by_one);
    g_autoptr(Number) by_other = number_negate(slope);
    result->weights = weights_sum(one->weights, by_one, other->weights, by_other);
}

Place place_combine(ArrayOperation operation, const Place *one, const Place *other)
{
    Place result;
    if (settled(&result, one, other)) {
        return result;
    }
    g_autoptr(Number) plus = number_from_integer(1);
    g_autoptr(Number) minus = number_from_integer(-1);
    switch (operation) {
    case ARRAY_ADD:
        result.value = number_add(one->value, other->value);
        result.weights = weights_sum(one->weights, plus, other->weights, plus);
        break;
    case ARRAY_SUBTRACT:
        result.value = number_subtract(one->value, other->value);
        result.weights = weights_sum(one->weights, plus, other->weights, minus);
        break;
    case ARRAY_MULTIPLY:
        result.value = number_multiply(one->value, other->value);
        result.weights = weights_sum(one->weights, other->value, other->weights, one->value);
        break;
    case ARRAY_DIVIDE:
        divide(&result, one, other);
        break;
    }
    return bounded(result);
}

// A function of one value: its value (taken over) and its slope there.
static void set_slope(Place *result, const Place *place, Number *value, const Number *slope)
{
    result->value = value;
    result->weights = weights_sum(place->weights, slope, NULL, NULL);
}

Place place_negate(const Place *place)
{
    Place result;
    if (!settled(&result, place, place)) {
        g_autoptr(Number) slope = number_from_integer(-1);
        set_slope(&result, place, number_negate(place->value), slope);
    }
    return result;
}

Place place_abs(const Place *place)
{
    Place result;
    if (!settled(&result, place, place)) {
        g_autoptr(Number) slope = number_from_integer(number_sign(place->value) < 0 ? -1 : 1);
        set_slope(&result, place, number_abs(place->value), slope);
    }
    return result;
}

static void refuse_root(Place *result, const char *note)
{
    result->state = PLACE_OPEN;
    result->note = note;
}

Place place_sqrt(const Place *place)
{
    Place result;
    if (settled(&result, place, place)) {
        return result;
    }
    if (number_sign(place->value) < 0) {
        refuse_root(&result, "the root of a number below 0");
        return result;
    }
    g_autoptr(Number) root = number_sqrt(place->value);
    g_autoptr(Number) half = number_from_ratio(1, 2);
    g_autoptr(Number) slope = number_divide(half, root);
    if (slope == NULL && place->weights) {
        refuse_root(&result, "the root of a reading of 0 has no uncertainty");
        return result;
    }
    set_slope(&result, place, number_copy(root), slope ? slope : half);
    return result;
}

Place place_power(const Place *place, gint exponent)
{
    Place result;
    if (settled(&result, place, place)) {
        return result;
    }
    g_autoptr(Number) value = number_power(place->value, exponent);
    if (value == NULL) {
        refuse_root(&result, "divided by 0");
        return result;
    }
    // n·x^n/x, and for x = 0 (n positive) 1 when n is 1, else 0
    g_autoptr(Number) times = number_from_integer(exponent);
    g_autoptr(Number) risen = number_multiply(times, value);
    g_autoptr(Number) slope = number_divide(risen, place->value);
    g_autoptr(Number) at_zero = number_from_integer(exponent == 1 ? 1 : 0);
    set_slope(&result, place, number_copy(value), slope ? slope : at_zero);
    return bounded(result);
}

// The members of a fold that hold a value, and how it ranks them.
typedef struct {
    const Place *const *members;
    gsize count;
    ArrayVariance variance;
    gpointer user;
} Members;

static gboolean larger_doubt(const Members *members, const Place *one, const Place *other)
{
    if (members->variance == NULL) {
        return FALSE;
    }
    g_autoptr(Number) first = members->variance(one, members->user);
    g_autoptr(Number) second = members->variance(other, members->user);
    return number_compare(first, second) > 0;
}

// Whether `one` is more extreme than `best` in the direction `sign` (1: greatest, -1: least). Of
// equals a value goes before a bound, then the larger doubt.
static gboolean beats(const Members *members, gint sign, const Place *one, const Place *best)
{
    gint order = sign * number_compare(one->value, best->value);
    if (order != 0) {
        return order > 0;
    }
    if ((one->bound == BOUND_NONE) != (best->bound == BOUND_NONE)) {
        return one->bound == BOUND_NONE;
    }
    return larger_doubt(members, one, best);
}

// The extreme member, leaving out `without` and members bound by `skip`; NULL if none is left.
static const Place *extreme(const Members *members, gint sign, const Place *without, Bound skip)
{
    const Place *best = NULL;
    for (gsize i = 0; i < members->count; i++) {
        const Place *one = members->members[i];
        gboolean out = one == without || (skip != BOUND_NONE && one->bound == skip);
        if (!out && (best == NULL || beats(members, sign, one, best))) {
            best = one;
        }
    }
    return best;
}

static gboolean has_bound(const Members *members, Bound bound)
{
    for (gsize i = 0; i < members->count; i++) {
        if (members->members[i]->bound == bound) {
            return TRUE;
        }
    }
    return FALSE;
}

// The least of `v` and `<b` is below the least of v and b, whatever else is only above something;
// the least of `v` and `>c` is v, or above c where c is less. The greatest mirrors it.
static void fold_extreme(Place *result, const Members *members, gint sign)
{
    Bound toward = sign < 0 ? BOUND_BELOW : BOUND_ABOVE;
    Bound away = sign < 0 ? BOUND_ABOVE : BOUND_BELOW;
    gboolean pulled = has_bound(members, toward);
    const Place *best = extreme(members, sign, NULL, pulled ? away : BOUND_NONE);
    result->value = number_copy(best->value);
    result->bound = pulled ? toward : best->bound;
    result->weights = best->weights ? g_array_ref(best->weights) : NULL;
}

// Greatest less least. With all equal they are still two members, each with its own doubt.
static void fold_range(Place *result, const Members *members)
{
    g_autoptr(Number) plus = number_from_integer(1);
    g_autoptr(Number) minus = number_from_integer(-1);
    const Place *most = extreme(members, 1, NULL, BOUND_NONE);
    const Place *least = extreme(members, -1, members->count > 1 ? most : NULL, BOUND_NONE);
    result->value = number_subtract(most->value, least->value);
    result->weights = weights_sum(most->weights, plus, least->weights, minus);
}

static void fold_sum(Place *result, const Members *members, const Number *share)
{
    g_autoptr(Number) unity = number_from_integer(1);
    result->value = number_from_integer(0);
    for (gsize i = 0; i < members->count; i++) {
        g_autoptr(Number) before = result->value;
        g_autoptr(GArray) weights = result->weights;
        g_autoptr(Number) part = number_multiply(members->members[i]->value, share);
        result->value = number_add(before, part);
        result->weights = weights_sum(weights, unity, members->members[i]->weights, share);
    }
}

static void fold_values(Place *result, Fold fold, const Members *members)
{
    g_autoptr(Number) share = number_from_ratio(1, fold == FOLD_MEAN ? (glong)members->count : 1);
    switch (fold) {
    case FOLD_MIN:
        fold_extreme(result, members, -1);
        break;
    case FOLD_MAX:
        fold_extreme(result, members, 1);
        break;
    case FOLD_RANGE:
        fold_range(result, members);
        break;
    case FOLD_MEAN:
    case FOLD_SUM:
        fold_sum(result, members, share);
        break;
    }
}

Place place_fold(Fold fold, const Place *const *members, gsize count, ArrayVariance variance,
                 gpointer user)
{
    g_autofree const Place **needed = g_new0(const Place *, count);
    Members values = {needed, 0, variance, user};
    Place result = {.state = PLACE_VALUE};
    for (gsize i = 0; i < count; i++) {
        if (members[i]->state == PLACE_NOT_NEEDED) {
            continue;
        }
        gather(&result, members[i]);
        result.state = members[i]->state == PLACE_OPEN ? PLACE_OPEN : result.state;
        needed[values.count++] = members[i];
    }
    if (values.count == 0) {
        return (Place){.state = PLACE_NOT_NEEDED};
    }
    if (result.state == PLACE_OPEN) {
        return result;
    }
    gboolean bound = has_bound(&values, BOUND_BELOW) || has_bound(&values, BOUND_ABOVE);
    if (bound && fold != FOLD_MIN && fold != FOLD_MAX) {
        result.state = PLACE_OPEN;
        result.note = BOUND_NOTE;
        return result;
    }
    fold_values(&result, fold, &values);
    return bounded(result);
}
