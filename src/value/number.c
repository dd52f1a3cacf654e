#include "exact.h"

Number *number_new(gboolean approximate)
{
    Number *number = g_new0(Number, 1);
    mpq_init(number->value);
    number->references = 1;
    number->approximate = approximate;
    return number;
}

Number *number_from_integer(glong value)
{
    Number *number = number_new(FALSE);
    mpq_set_si(number->value, value, 1);
    return number;
}

Number *number_from_ratio(glong above, glong below)
{
    g_return_val_if_fail(below != 0, NULL);
    g_autoptr(Number) one = number_from_integer(above);
    g_autoptr(Number) other = number_from_integer(below);
    return number_divide(one, other);
}

// Shared, because a Number never changes; the count is the only field written after making it.
Number *number_copy(const Number *number)
{
    Number *shared = (Number *)number;
    shared->references++;
    return shared;
}

void number_free(Number *number)
{
    if (number == NULL || --number->references > 0) {
        return;
    }
    mpq_clear(number->value);
    g_free(number);
}

static Number *combine(void (*operation)(mpq_t, const mpq_t, const mpq_t), const Number *one,
                       const Number *other)
{
    Number *result = number_new(one->approximate || other->approximate);
    operation(result->value, one->value, other->value);
    return result;
}

// GMP's names may be macros or inline functions; these have an address for certain.
static void add(mpq_t result, const mpq_t one, const mpq_t other)
{
    mpq_add(result, one, other);
}

static void subtract(mpq_t result, const mpq_t one, const mpq_t other)
{
    mpq_sub(result, one, other);
}

static void multiply(mpq_t result, const mpq_t one, const mpq_t other)
{
    mpq_mul(result, one, other);
}

static void divide(mpq_t result, const mpq_t one, const mpq_t other)
{
    mpq_div(result, one, other);
}

double number_double(const Number *number)
{
    return mpq_get_d(number->value);
}

Number *number_add(const Number *one, const Number *other)
{
    return combine(add, one, other);
}

Number *number_subtract(const Number *one, const Number *other)
{
    return combine(subtract, one, other);
}

Number *number_multiply(const Number *one, const Number *other)
{
    return combine(multiply, one, other);
}

Number *number_divide(const Number *one, const Number *other)
{
    return number_sign(other) == 0 ? NULL : combine(divide, one, other);
}

Number *number_negate(const Number *number)
{
    Number *result = number_new(number->approximate);
    mpq_neg(result->value, number->value);
    return result;
}

Number *number_abs(const Number *number)
{
    return number_sign(number) < 0 ? number_negate(number) : number_copy(number);
}

Number *number_power(const Number *number, gint exponent)
{
    g_return_val_if_fail(exponent >= -9 && exponent <= 9, NULL);
    if (exponent < 0 && number_sign(number) == 0) {
        return NULL;
    }
    Number *result = number_new(number->approximate);
    gulong times = (gulong)ABS(exponent);
    mpz_pow_ui(mpq_numref(result->value), mpq_numref(number->value), times);
    mpz_pow_ui(mpq_denref(result->value), mpq_denref(number->value), times);
    if (exponent < 0) {
        mpq_inv(result->value, result->value);
    }
    return result;
}

static void root_cut(Number *result, const Number *number)
{
    mpz_t scaled;
    mpz_t scale;
    mpz_init(scaled);
    mpz_init(scale);
    mpz_ui_pow_ui(scale, 10, NUMBER_ROOT_PLACES);
    mpz_mul(scaled, mpq_numref(number->value), scale);
    mpz_mul(scaled, scaled, scale);
    mpz_tdiv_q(scaled, scaled, mpq_denref(number->value));
    mpz_sqrt(mpq_numref(result->value), scaled);
    mpz_set(mpq_denref(result->value), scale);
    mpq_canonicalize(result->value);
    mpz_clear(scaled);
    mpz_clear(scale);
}

Number *number_sqrt(const Number *number)
{
    if (number_sign(number) < 0) {
        return NULL;
    }
    mpz_srcptr above = mpq_numref(number->value);
    mpz_srcptr below = mpq_denref(number->value);
    gboolean exact = mpz_perfect_square_p(above) && mpz_perfect_square_p(below);
    Number *result = number_new(number->approximate || !exact);
    if (exact) {
        mpz_sqrt(mpq_numref(result->value), above);
        mpz_sqrt(mpq_denref(result->value), below);
    } else {
        root_cut(result, number);
    }
    return result;
}

Number *number_pi(void)
{
    Number *pi = number_new(TRUE);
    mpz_set_str(mpq_numref(pi->value), "31415926535897932384626433832795028841971", 10);
    mpz_ui_pow_ui(mpq_denref(pi->value), 10, 40);
    mpq_canonicalize(pi->value);
    return pi;
}

gboolean number_is_approximate(const Number *number)
{
    return number->approximate;
}

gboolean number_is_huge(const Number *number)
{
    return mpz_sizeinbase(mpq_numref(number->value), 2) +
               mpz_sizeinbase(mpq_denref(number->value), 2) >
           NUMBER_BITS;
}

gint number_compare(const Number *one, const Number *other)
{
    return mpq_cmp(one->value, other->value);
}

gboolean number_equal(const Number *one, const Number *other)
{
    return mpq_equal(one->value, other->value) != 0;
}

mpq_srcptr number_rational(const Number *number)
{
    return number ? number->value : NULL;
}

gint number_sign(const Number *number)
{
    return mpq_sgn(number->value);
}
