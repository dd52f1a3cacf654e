// A number out of text: as a ledger keeps it, and as a person types it.
#include "exact.h"

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <string.h>

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

// `0.038-0.051`, as a strip is read between two of its marks: the middle and half the way, which
// the reading notation takes. NULL if it is no decimal and a greater one. The caller frees.
static char *between_words(const char *text, Shape shape)
{
    const char *second = text + shape.length + 1;
    gsize length = decimal_at(second);
    gboolean decimals = memchr(text, '.', shape.length) && memchr(second, '.', length);
    if (shape.under || !decimals || second[length] == '/')
        return NULL;
    g_autoptr(Number) from = number_new(FALSE), to = number_new(FALSE);
    set_digits(from, text, shape.length);
    set_digits(to, second, length);
    if (number_compare(from, to) >= 0)
        return NULL;
    g_autoptr(Number) two = number_from_integer(2), sum = number_add(from, to);
    g_autoptr(Number) way = number_subtract(to, from), half = number_divide(way, two);
    g_autoptr(Number) middle = number_divide(sum, two);
    g_autofree char *middle_text = number_text(middle), *half_text = number_text(half);
    return g_strdup_printf("`%.*s-%.*s` says no one size; if it lies between the two write the "
                           "middle and half the way, `%s ± %s`",
                           (int)shape.length, text, (int)length, second, middle_text, half_text);
}

// What stands right behind the number must not run on as if it belonged to it.
static gboolean check_end(const char *text, Shape shape, gsize *offset, GError **error)
{
    const char *end = text + shape.length;
    int length = (int)shape.length;
    char *between = end[0] == '-' ? between_words(text, shape) : NULL;
    if (between)
        return refuse(offset, shape.length, error, between);
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
