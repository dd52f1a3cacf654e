#include <standbook/rules/decision.h>

// (33/20)², (33/10)² and 16² as the weights of u² that a squared distance is compared with.
static const struct weight {
    unsigned long over, under;
} GUARD_BAND = {1089, 400}, BOTH_GUARD_BANDS = {1089, 100}, BELIEVED = {256, 1},
  HALF_FINE = {64, 1}, TWICE_BOTH = {4, 1};

enum { TENTHS_MOST = 9999 };

// Compares length² with weight · u².
static int compare_squared(mpq_srcptr length, struct weight weight, mpq_srcptr u_squared)
{
    mpq_t square, bound;
    mpq_inits(square, bound, NULL);
    mpq_mul(square, length, length);
    mpq_set_ui(bound, weight.over, weight.under);
    mpq_mul(bound, bound, u_squared);
    int comparison = mpq_cmp(square, bound);
    mpq_clears(square, bound, NULL);
    return comparison;
}

typedef enum { INSIDE, UNSURE, OUTSIDE } Standing;

typedef enum { LOWER, UPPER } Side;

typedef struct {
    DecisionReading reading;
    mpq_srcptr value, u_squared;
    gboolean as_read;
} Evidence;

// Where the typed figure stands to one limit. A bound excludes itself, so that on the limit it has
// already left the side it points away from.
static Standing figure_standing(const Evidence *evidence, mpq_srcptr limit, Side side,
                                gboolean excluded)
{
    mpq_t inside;
    mpq_init(inside);
    if (side == LOWER)
        mpq_sub(inside, evidence->value, limit);
    else
        mpq_sub(inside, limit, evidence->value);
    int sign = mpq_sgn(inside);
    gboolean sure =
        evidence->as_read || compare_squared(inside, GUARD_BAND, evidence->u_squared) >= 0;
    mpq_clear(inside);
    gboolean outside = sign < 0 || (excluded && sign == 0);
    return !sure ? UNSURE : outside ? OUTSIDE : INSIDE;
}

static Standing standing(const Evidence *evidence, mpq_srcptr limit, Side side)
{
    if (!limit)
        return INSIDE;
    if (evidence->reading == READ_AS_IS)
        return figure_standing(evidence, limit, side, FALSE);
    gboolean points_out = (evidence->reading == READ_LESS_THAN) == (side == LOWER);
    Standing figure = figure_standing(evidence, limit, side, points_out);
    return figure == (points_out ? OUTSIDE : INSIDE) ? figure : UNSURE;
}

static gboolean believed_as_read(const DecisionLimits *limits, mpq_srcptr u_squared)
{
    if (!limits->lower || !limits->upper)
        return FALSE;
    mpq_t width;
    mpq_init(width);
    mpq_sub(width, limits->upper, limits->lower);
    gboolean believed = compare_squared(width, BELIEVED, u_squared) >= 0;
    mpq_clear(width);
    return believed;
}

DecisionWear decision_wear_side(const DecisionLimits *limits)
{
    if (!limits->wear || (!limits->lower && !limits->upper))
        return WEAR_NONE;
    if (limits->upper && mpq_cmp(limits->wear, limits->upper) >= 0)
        return WEAR_ABOVE;
    if (limits->lower && mpq_cmp(limits->wear, limits->lower) <= 0)
        return WEAR_BELOW;
    return WEAR_INSIDE;
}

static Decision fail(const Evidence *evidence, const DecisionLimits *limits, Side side)
{
    gboolean wears_here = decision_wear_side(limits) == (side == LOWER ? WEAR_BELOW : WEAR_ABOVE);
    if (wears_here && standing(evidence, limits->wear, side) == OUTSIDE)
        return DECISION_BEYOND_WEAR;
    return side == LOWER ? DECISION_FAIL_LOW : DECISION_FAIL_HIGH;
}

Decision decide(DecisionReading reading, mpq_srcptr value, mpq_srcptr u_squared,
                const DecisionLimits *limits)
{
    if (!limits->lower && !limits->upper)
        return DECISION_NO_LIMIT;
    Evidence evidence = {reading, value, u_squared, believed_as_read(limits, u_squared)};
    Standing lower = standing(&evidence, limits->lower, LOWER);
    Standing upper = standing(&evidence, limits->upper, UPPER);
    if (lower == OUTSIDE)
        return fail(&evidence, limits, LOWER);
    if (upper == OUTSIDE)
        return fail(&evidence, limits, UPPER);
    return lower == INSIDE && upper == INSIDE ? DECISION_PASS : DECISION_IN_DOUBT_GAUGE;
}

const char *decision_words(Decision decision)
{
    static const char *const words[] = {
        [DECISION_PASS] = "pass",
        [DECISION_FAIL_LOW] = "fail low",
        [DECISION_FAIL_HIGH] = "fail high",
        [DECISION_BEYOND_WEAR] = "fail beyond wear",
        [DECISION_IN_DOUBT_GAUGE] = "in doubt gauge",
        [DECISION_NO_LIMIT] = "no limit known",
    };
    return words[decision];
}

gboolean decision_can_ever_pass(mpq_srcptr width, mpq_srcptr u_squared)
{
    return compare_squared(width, BOTH_GUARD_BANDS, u_squared) >= 0;
}

gboolean decision_disagree(mpq_srcptr difference, mpq_srcptr u_a_squared, mpq_srcptr u_b_squared)
{
    mpq_t sum;
    mpq_init(sum);
    mpq_add(sum, u_a_squared, u_b_squared);
    gboolean disagree = compare_squared(difference, TWICE_BOTH, sum) > 0;
    mpq_clear(sum);
    return disagree;
}

DecisionFitness decision_fitness(mpq_srcptr width, mpq_srcptr u_squared)
{
    if (compare_squared(width, BELIEVED, u_squared) >= 0)
        return FITNESS_GOOD;
    if (compare_squared(width, HALF_FINE, u_squared) >= 0)
        return FITNESS_USABLE;
    return decision_can_ever_pass(width, u_squared) ? FITNESS_POOR : FITNESS_NEVER;
}

// Whole twentieths n <= 20 Cm, by n² <= (5 T / u)², then paired into tenths: exact, since half up
// of 10 Cm is floor((floor(20 Cm) + 1) / 2).
guint decision_fitness_tenths(mpq_srcptr width, mpq_srcptr u_squared)
{
    if (mpq_sgn(u_squared) == 0)
        return TENTHS_MOST;
    mpq_t ratio;
    mpz_t twentieths;
    mpq_init(ratio);
    mpz_init(twentieths);
    mpq_mul(ratio, width, width);
    mpq_div(ratio, ratio, u_squared);
    mpz_mul_ui(twentieths, mpq_numref(ratio), 25);
    mpz_fdiv_q(twentieths, twentieths, mpq_denref(ratio));
    mpz_sqrt(twentieths, twentieths);
    gboolean large = mpz_cmp_ui(twentieths, 2 * TENTHS_MOST) >= 0;
    guint tenths = large ? TENTHS_MOST : (guint)((mpz_get_ui(twentieths) + 1) / 2);
    mpq_clear(ratio);
    mpz_clear(twentieths);
    return tenths;
}
