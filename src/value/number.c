#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/value/number.h>
#include <string.h>

struct Number {
    mpq_t value;
    gint references;
    gboolean approximate;
};

static Number *number_new(gboolean approximate)
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

// Sets `number` from digits, with at most one point among them.
static void set_digits(Number *number, const char *text, gsize length)
{
    g_autofree char *digits = g_strndup(text, length);
    char *point = strchr(digits, '.');
    gulong decimals = point ? strlen(point + 1) : 0;
    if (point) {
        memmove(point, point + 1, decimals + 1);
    }
    mpz_set_str(mpq_numref(number->value), digits, 10);
    mpz_ui_pow_ui(mpq_denref(number->value), 10, decimals);
    mpq_canonicalize(number->value);
}

static gsize digits_at(const char *text)
{
    return strspn(text, "0123456789");
}

// The length of digits with perhaps a point and more digits, at `text`.
static gsize decimal_at(const char *text)
{
    gsize whole = digits_at(text);
    gsize behind = text[whole] == '.' ? digits_at(text + whole + 1) : 0;
    return behind > 0 ? whole + 1 + behind : whole;
}

static gboolean refuse(gsize *offset, gsize at, GError **error, char *message)
{
    if (offset) {
        *offset = at;
    }
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    g_free(message);
    return FALSE;
}

Number *number_from_text(const char *text, GError **error)
{
    const char *start = text + (text[0] == '-');
    gsize front = strlen(text) > NUMBER_TEXT_LIMIT ? 0 : decimal_at(start);
    gboolean fraction = front > 0 && start[front] == '/';
    const char *under = start + front + (fraction ? 1 : 0);
    gsize below = fraction ? digits_at(under) : 0;
    gboolean zero = fraction && strspn(under, "0") == below;
    if (front == 0 || zero || under[below] != '\0') {
        g_autofree char *clean = text_clean(text, (gssize)strnlen(text, 60));
        refuse(NULL, 0, error,
               g_strdup_printf("`%s` is not a number; write it like 0.53125 or 17/32", clean));
        return NULL;
    }
    g_autoptr(Number) value = number_new(FALSE);
    set_digits(value, start, front);
    if (fraction) {
        g_autoptr(Number) divisor = number_new(FALSE);
        set_digits(divisor, under, below);
        mpq_div(value->value, value->value, divisor->value);
    }
    return start > text ? number_negate(value) : number_copy(value);
}

void number_typed_clear(NumberTyped *typed)
{
    g_clear_pointer(&typed->value, number_free);
    g_clear_pointer(&typed->place, number_free);
}

// Where the parts of a typed number stand, in bytes; 0 for a part that is not there.
typedef struct {
    gsize front; // length of the whole number or decimal
    gsize above; // start of the numerator of a mixed number
    gsize under; // start of the denominator
    gsize length;
} Shape;

static Shape shape_of(const char *text)
{
    Shape shape = {.front = decimal_at(text)};
    gsize end = shape.front;
    gboolean whole = digits_at(text) == end;
    if (text[end] == '/' && digits_at(text + end + 1) > 0) {
        shape.under = end + 1;
        end += 1 + digits_at(text + end + 1);
    } else if (whole && end > 0 && (text[end] == '-' || text[end] == ' ')) {
        gsize numerator = digits_at(text + end + 1);
        gsize slash = end + 1 + numerator;
        if (numerator > 0 && text[slash] == '/' && digits_at(text + slash + 1) > 0) {
            shape.above = end + 1;
            shape.under = slash + 1;
            end = slash + 1 + digits_at(text + slash + 1);
        }
    }
    shape.length = end;
    return shape;
}

// `1/2/4` is a half over four, or one over two quarters.
static gboolean refuse_twice(const char *text, Shape shape, gsize *offset, GError **error)
{
    int front = (int)shape.under - 1;
    int fraction = (int)(shape.length - shape.under);
    const char *end = text + shape.length + 1;
    int below = (int)digits_at(end);
    return refuse(offset, shape.length, error,
                  g_strdup_printf("`%.*s/%.*s` could be `%.*s / %.*s` or `%.*s / %.*s/%.*s`; put "
                                  "spaces round the division that is meant",
                                  (int)shape.length, text, below, end, (int)shape.length, text,
                                  below, end, front, text, fraction, text + shape.under, below,
                                  end));
}

// What stands right behind the number must not run on as if it belonged to it.
static gboolean check_end(const char *text, Shape shape, gsize *offset, GError **error)
{
    const char *end = text + shape.length;
    int length = (int)shape.length;
    if (end[0] == '-' && end[1] != ' ' && end[1] != '\0') {
        return refuse(offset, shape.length, error,
                      g_strdup_printf("a tight hyphen behind `%.*s` could be a mixed number or a "
                                      "minus; write ` - ` with spaces to subtract, or `2-5/8`",
                                      length, text));
    }
    if (end[0] == '/' && shape.under > 0) {
        return refuse_twice(text, shape, offset, error);
    }
    if (end[0] == '.' && end[1] != '.') {
        return refuse(offset, shape.length, error,
                      g_strdup_printf("`%.*s` is a number by itself and runs on with `.`; %s",
                                      length, text,
                                      shape.under > 0 ? "put spaces round a division"
                                                      : "put digits behind a point"));
    }
    if (end[0] == ',' && g_ascii_isdigit(end[1]) && shape.under == 0) {
        return refuse(offset, shape.length, error,
                      g_strdup("a decimal is written with a point, not a comma"));
    }
    return TRUE;
}

static guint count_digits(const char *text, gsize length)
{
    guint count = 0;
    for (gsize i = 0; i < length; i++) {
        count += g_ascii_isdigit(text[i]) ? 1 : 0;
    }
    return count;
}

static void set_place(NumberTyped *typed, gsize front, const char *text)
{
    const char *point = memchr(text, '.', front);
    typed->decimals = point ? (guint)(text + front - point - 1) : 0;
    typed->place = number_new(FALSE);
    mpz_ui_pow_ui(mpq_denref(typed->place->value), 10, typed->decimals);
    mpz_set_ui(mpq_numref(typed->place->value), 1);
}

static void divide_by(NumberTyped *typed, const Number *below)
{
    mpq_div(typed->value->value, typed->value->value, below->value);
    mpq_div(typed->place->value, typed->place->value, below->value);
    typed->decimals = 0;
}

static gboolean read_fraction(const char *text, Shape shape, NumberTyped *typed, gsize *offset,
                              GError **error)
{
    g_autoptr(Number) below = number_new(FALSE);
    set_digits(below, text + shape.under, shape.length - shape.under);
    if (number_sign(below) == 0) {
        return refuse(offset, shape.under, error, g_strdup("a fraction cannot be over 0"));
    }
    if (shape.above == 0) {
        divide_by(typed, below);
        return TRUE;
    }
    g_autoptr(Number) above = number_new(FALSE);
    set_digits(above, text + shape.above, shape.under - 1 - shape.above);
    if (number_compare(above, below) >= 0) {
        g_autofree char *fraction = g_strndup(text + shape.above, shape.length - shape.above);
        return refuse(offset, shape.above, error,
                      g_strdup_printf("`%.*s` could be `%.*s + %s` or `%.*s - %s`; write the one "
                                      "that is meant",
                                      (int)shape.length, text, (int)shape.front, text, fraction,
                                      (int)shape.front, text, fraction));
    }
    g_autoptr(Number) whole = number_copy(typed->value);
    number_free(typed->value);
    typed->value = number_multiply(whole, below);
    mpq_add(typed->value->value, typed->value->value, above->value);
    divide_by(typed, below);
    return TRUE;
}

gboolean number_scan(const char *text, NumberTyped *typed, gsize *offset, GError **error)
{
    Shape shape = shape_of(text);
    *typed = (NumberTyped){.length = shape.length};
    if (shape.front == 0) {
        return refuse(offset, 0, error, g_strdup("a number is missing here"));
    }
    if (count_digits(text, shape.length) > NUMBER_DIGITS) {
        return refuse(offset, 0, error,
                      g_strdup_printf("a number may have at most %d digits", NUMBER_DIGITS));
    }
    if (!check_end(text, shape, offset, error)) {
        return FALSE;
    }
    typed->value = number_new(FALSE);
    set_digits(typed->value, text, shape.front);
    set_place(typed, shape.front, text);
    if (shape.under > 0 && !read_fraction(text, shape, typed, offset, error)) {
        number_typed_clear(typed);
        return FALSE;
    }
    return TRUE;
}
