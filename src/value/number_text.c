// A number as text: exact for a ledger, rounded for show.
#include "exact.h"

// How often `prime` divides the denominator; what is left stays in `rest`.
static gulong take_out(mpz_t rest, gulong prime)
{
    mpz_t factor;
    mpz_init_set_ui(factor, prime);
    gulong times = mpz_remove(rest, rest, factor);
    mpz_clear(factor);
    return times;
}

static char *integer_text(mpz_srcptr integer)
{
    gsize size = mpz_sizeinbase(integer, 10) + 2; // sign and NUL
    return mpz_get_str(g_malloc(size), 10, integer);
}

// |number| times 10^decimals as a whole number: rounded half away from zero, or up wherever
// something is left over.
static void scale_whole(mpz_t scaled, const Number *number, gulong decimals, gboolean up)
{
    mpz_ui_pow_ui(scaled, 10, decimals);
    mpz_mul(scaled, scaled, mpq_numref(number->value));
    mpz_abs(scaled, scaled);
    if (up) {
        mpz_cdiv_q(scaled, scaled, mpq_denref(number->value));
        return;
    }
    mpz_t twice;
    mpz_init(twice);
    mpz_mul_ui(scaled, scaled, 2);
    mpz_add(scaled, scaled, mpq_denref(number->value)); // floor(|x| + 1/2)
    mpz_mul_ui(twice, mpq_denref(number->value), 2);
    mpz_fdiv_q(scaled, scaled, twice);
    mpz_clear(twice);
}

// The number with so many decimals, the point put in.
static char *rounded_text(const Number *number, gulong decimals, gboolean up)
{
    mpz_t scaled;
    mpz_init(scaled);
    scale_whole(scaled, number, decimals, up);
    gboolean negative = number_sign(number) < 0 && mpz_sgn(scaled) != 0;
    char *digits = integer_text(scaled);
    mpz_clear(scaled);
    GString *text = g_string_new(digits);
    g_free(digits);
    while (text->len <= decimals) {
        g_string_prepend_c(text, '0');
    }
    if (decimals > 0) {
        g_string_insert_c(text, (gssize)(text->len - decimals), '.');
    }
    if (negative) {
        g_string_prepend_c(text, '-');
    }
    return g_string_free(text, FALSE);
}

static char *fixed_text(const Number *number, gulong decimals)
{
    return rounded_text(number, decimals, FALSE);
}

char *number_fraction(const Number *number)
{
    char *above = integer_text(mpq_numref(number->value));
    if (mpz_cmp_ui(mpq_denref(number->value), 1) == 0) {
        return above;
    }
    g_autofree char *below = integer_text(mpq_denref(number->value));
    char *text = g_strconcat(above, "/", below, NULL);
    g_free(above);
    return text;
}

char *number_text(const Number *number)
{
    mpz_t rest;
    mpz_init_set(rest, mpq_denref(number->value));
    gulong twos = take_out(rest, 2);
    gulong fives = take_out(rest, 5);
    gboolean finite = mpz_cmp_ui(rest, 1) == 0;
    mpz_clear(rest);
    if (finite) {
        return fixed_text(number, MAX(twos, fives));
    }
    g_autofree char *above = integer_text(mpq_numref(number->value));
    g_autofree char *below = integer_text(mpq_denref(number->value));
    return g_strconcat(above, "/", below, NULL);
}

char *number_decimal(const Number *number, guint decimals)
{
    return fixed_text(number, MIN(decimals, NUMBER_ROOT_PLACES));
}

char *number_decimal_up(const Number *number, guint decimals)
{
    return rounded_text(number, MIN(decimals, NUMBER_ROOT_PLACES), TRUE);
}

char *number_short(const Number *number)
{
    enum { MOST = 8 }; // characters of an exact one
    g_autofree char *exact = number_text(number);
    return strlen(exact) <= MOST && !strchr(exact, '/') ? g_steal_pointer(&exact)
                                                        : number_decimal(number, 1);
}

char *number_mixed(const Number *number, gulong below)
{
    g_autoptr(Number) scale = number_new(FALSE);
    mpq_set_ui(scale->value, below, 1);
    g_autoptr(Number) parts = number_multiply(number, scale);
    g_autofree char *rounded = fixed_text(parts, 0);
    g_autoptr(Number) whole = number_new(FALSE);
    mpq_t part;
    mpq_init(part);
    mpz_set_str(mpq_numref(part), rounded, 10);
    mpz_set_ui(mpq_denref(part), below);
    mpq_canonicalize(part);
    gboolean negative = mpq_sgn(part) < 0;
    mpq_abs(part, part);
    mpz_fdiv_qr(mpq_numref(whole->value), mpq_numref(part), mpq_numref(part), mpq_denref(part));
    g_autofree char *front = integer_text(mpq_numref(whole->value));
    g_autofree char *above = integer_text(mpq_numref(part));
    g_autofree char *under = integer_text(mpq_denref(part));
    gboolean plain = mpq_sgn(part) == 0;
    gboolean proper = number_sign(whole) == 0;
    mpq_clear(part);
    if (plain) {
        return g_strconcat(negative ? "-" : "", front, NULL);
    }
    return g_strconcat(negative ? "-" : "", proper ? "" : front, proper ? "" : "-", above, "/",
                       under, NULL);
}
