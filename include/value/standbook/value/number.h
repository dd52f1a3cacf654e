// Exact numbers: rationals of any size (GMP). Nothing here is floating point. A Number never
// changes once made, so copies are shared and cheap; every function that returns one gives the
// caller a reference to free with number_free.
#pragma once
#include <glib.h>
#include <gmp.h>

typedef struct Number Number;

enum {
    NUMBER_DIGITS = 40,       // most digits that one typed number may have
    NUMBER_ROOT_PLACES = 40,  // decimal places at which a root that is not exact is cut
    NUMBER_TEXT_LIMIT = 4096, // longest text that number_from_text reads
    NUMBER_BITS = 65536,      // most bits, above and below together, that a formula works with
};

Number *number_from_integer(glong value) G_GNUC_WARN_UNUSED_RESULT;
// `below` is not 0.
Number *number_from_ratio(glong above, glong below) G_GNUC_WARN_UNUSED_RESULT;
Number *number_copy(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
void number_free(Number *number); // NULL is allowed
// About the same, for estimates: within one unit of a double's last place.
double number_double(const Number *number);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Number, number_free)

Number *number_add(const Number *one, const Number *other) G_GNUC_WARN_UNUSED_RESULT;
Number *number_subtract(const Number *one, const Number *other) G_GNUC_WARN_UNUSED_RESULT;
Number *number_multiply(const Number *one, const Number *other) G_GNUC_WARN_UNUSED_RESULT;
// NULL when `other` is 0.
Number *number_divide(const Number *one, const Number *other) G_GNUC_WARN_UNUSED_RESULT;
Number *number_negate(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
Number *number_abs(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
// A whole power, -9 to 9. NULL when 0 is raised to a negative power.
Number *number_power(const Number *number, gint exponent) G_GNUC_WARN_UNUSED_RESULT;
// Exact where numerator and denominator are perfect squares; else cut (toward 0) to
// NUMBER_ROOT_PLACES decimal places and marked approximate. NULL when negative.
Number *number_sqrt(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
// 41 digits of pi, marked approximate (OEIS A000796).
Number *number_pi(void) G_GNUC_WARN_UNUSED_RESULT;
// TRUE when the number came from pi or from a root that had to be cut; travels through every
// operation. Shown as ≈.
gboolean number_is_approximate(const Number *number);

// TRUE beyond NUMBER_BITS: no measurement gives such a number, only a tower of powers does.
gboolean number_is_huge(const Number *number);

gint number_compare(const Number *one, const Number *other); // below 0, 0, above 0
gboolean number_equal(const Number *one, const Number *other);
gint number_sign(const Number *number); // -1, 0, 1

// The rational itself, to read, for the rules of the trade; it lives as long as the number. NULL
// for NULL.
mpq_srcptr number_rational(const Number *number);

// The exact value as text: a decimal where that is finite (`0.53125`, `-12`), else a fraction
// (`1/3`). Always read back by number_from_text. The caller frees with g_free.
char *number_text(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
// The exact value as GMP writes it, in lowest terms: `5979/100`, `-12`. The one form that a ledger
// keeps. Read back by number_from_text. The caller frees with g_free.
char *number_fraction(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
// For show: rounded to `decimals` places (0 to 40), half away from zero; never `-0.00`. The caller
// frees with g_free.
char *number_decimal(const Number *number, guint decimals) G_GNUC_WARN_UNUSED_RESULT;
// For show of an uncertainty, which must not look smaller than it is: the same, but away from zero
// wherever something is left over. The caller frees with g_free.
char *number_decimal_up(const Number *number, guint decimals) G_GNUC_WARN_UNUSED_RESULT;
// For show of what is set and shown in figures: exact where that has at most 8 characters and is a
// decimal, else rounded to a tenth. The caller frees with g_free.
char *number_short(const Number *number) G_GNUC_WARN_UNUSED_RESULT;
// For show: a whole number and a proper fraction with the given denominator, rounded half away
// from zero and reduced: `2-5/8`, `17/32`, `-1/4`, `3`. `below` is at least 1. The caller frees.
char *number_mixed(const Number *number, gulong below) G_GNUC_WARN_UNUSED_RESULT;
// Reads what number_text writes (sign, decimal, or whole/whole), at most NUMBER_TEXT_LIMIT
// characters. NULL and STANDBOOK_ERROR_MISUSE if it is anything else.
Number *number_from_text(const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// A number as a person types it, without a sign.
typedef struct {
    Number *value;
    Number *place;  // one unit of the last place typed: 1/1000 for `59.790`, 1/32 for `17/32`
    guint decimals; // digits behind the point, 0 for a fraction
    gsize length;   // bytes read
} NumberTyped;

// Reads the number at the start of `text` (`59.79`, `.25`, `17/32`, `2-5/8`, `2 5/8`: a whole
// number and a proper fraction); stops before `..`, an operator or a unit. A tight hyphen that
// does not make a mixed number (`5-3`, `2-40/32`), a denominator of 0 and more than NUMBER_DIGITS
// digits are errors; then FALSE, STANDBOOK_ERROR_MISUSE and the byte offset of the fault in
// *offset (NULL allowed). On TRUE, clear *typed with number_typed_clear.
gboolean number_scan(const char *text, NumberTyped *typed, gsize *offset, GError **error);
void number_typed_clear(NumberTyped *typed);
