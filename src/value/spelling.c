#include "spelling.h"
#include <standbook/base/error.h>
#include <string.h>

// What is typed, and what it stands for. The fractions are those of the Unicode block Number Forms
// and of Latin-1.
static const struct {
    const char *typed;
    const char *plain;
} SIGNS[] = {
    {"−", "-"},   {"‐", "-"},      {"‑", "-"},      {"‒", "-"},      {"–", "-"},   {"⁄", "/"},
    {"∕", "/"},   {"\u00a0", " "}, {"\u2009", " "}, {"\u202f", " "}, {"＋", "+"},  {"⅒", "1/10"},
    {"½", "1/2"}, {"⅓", "1/3"},    {"⅔", "2/3"},    {"¼", "1/4"},    {"¾", "3/4"}, {"⅕", "1/5"},
    {"⅖", "2/5"}, {"⅗", "3/5"},    {"⅘", "4/5"},    {"⅙", "1/6"},    {"⅚", "5/6"}, {"⅐", "1/7"},
    {"⅛", "1/8"}, {"⅜", "3/8"},    {"⅝", "5/8"},    {"⅞", "7/8"},    {"⅑", "1/9"}, {"''", "\""},
    {"’’", "\""}, {"′′", "\""},    {"”", "\""},     {"″", "\""},     {"’", "'"},   {"′", "'"},
    {"+/-", "±"},
};

// Digits set high or low around a fraction stroke: `⁵⁄₈`, `⁵/₈`.
static const char *const RAISED[] = {"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
static const char *const LOWERED[] = {"₀", "₁", "₂", "₃", "₄", "₅", "₆", "₇", "₈", "₉"};

static gint digit_of(const char *at, const char *const *digits)
{
    gboolean plain = (guchar)*at < 0x80; // no digit of a set is
    for (gint digit = 0; !plain && digit < 10; digit++) {
        if (g_str_has_prefix(at, digits[digit])) {
            return digit;
        }
    }
    return -1;
}

// Appends one plain spelling for what stands at `at`, which is the character `column`.
static const char *add(Spelling *spelling, GString *plain, const char *at, gsize size,
                       const char *written, gsize *column)
{
    for (gsize i = 0; written[i]; i++) {
        g_array_append_val(spelling->columns, *column);
    }
    g_string_append(plain, written);
    *column += (gsize)g_utf8_strlen(at, (gssize)size);
    return at + size;
}

// Digits, one by one, from another set; a raised run parts itself from a whole number before it.
static const char *add_digits(Spelling *spelling, GString *plain, const char *at,
                              const char *const *digits, gsize *column)
{
    gint digit;
    while ((digit = digit_of(at, digits)) >= 0) {
        const char written[] = {(char)('0' + digit), '\0'};
        at = add(spelling, plain, at, strlen(digits[digit]), written, column);
    }
    return at;
}

static gboolean ends_in_digit(const GString *plain)
{
    return plain->len && g_ascii_isdigit(plain->str[plain->len - 1]);
}

static void part_from_whole(Spelling *spelling, GString *plain, gsize column)
{
    if (ends_in_digit(plain)) {
        g_array_append_val(spelling->columns, column);
        g_string_append_c(plain, ' ');
    }
}

// Whether a raised run is the top of a fraction; else it is a power (`mm²`).
static gboolean is_numerator(const char *at)
{
    gint digit;
    while ((digit = digit_of(at, RAISED)) >= 0) {
        at += strlen(RAISED[digit]);
    }
    return *at == '/' || g_str_has_prefix(at, "⁄") || g_str_has_prefix(at, "∕");
}

static const char *add_sign(Spelling *spelling, GString *plain, const char *at, gsize *column)
{
    for (gsize i = 0; i < G_N_ELEMENTS(SIGNS); i++) {
        if (*at != *SIGNS[i].typed || !g_str_has_prefix(at, SIGNS[i].typed)) {
            continue;
        }
        if (g_ascii_isdigit(SIGNS[i].plain[0])) {
            part_from_whole(spelling, plain, *column);
        }
        return add(spelling, plain, at, strlen(SIGNS[i].typed), SIGNS[i].plain, column);
    }
    char one[7] = {0};
    gsize size = (gsize)(g_utf8_next_char(at) - at);
    memcpy(one, at, size);
    return add(spelling, plain, at, size, one, column);
}

static const char *add_next(Spelling *spelling, GString *plain, const char *at, gsize *column)
{
    if (digit_of(at, RAISED) >= 0 && is_numerator(at)) {
        part_from_whole(spelling, plain, *column);
        return add_digits(spelling, plain, at, RAISED, column);
    }
    if (digit_of(at, LOWERED) >= 0 && g_str_has_suffix(plain->str, "/")) {
        return add_digits(spelling, plain, at, LOWERED, column);
    }
    return add_sign(spelling, plain, at, column);
}

// Digits with every mark in them but the one at `kept` taken out, and that one a point.
static char *with_one_point(const char *text, gsize length, gsize kept)
{
    GString *read = g_string_new(NULL);
    for (gsize i = 0; i < length; i++) {
        if (g_ascii_isdigit(text[i])) {
            g_string_append_c(read, text[i]);
        } else if (i == kept) {
            g_string_append_c(read, '.');
        }
    }
    return g_string_free(read, FALSE);
}

// Where the marks stand that have a digit behind them, in a run of digits, points and commas.
typedef struct {
    gsize length;
    gsize first;
    gsize last;
    guint count;
    gboolean comma;
} Marks;

static Marks marks_of(const char *run)
{
    Marks marks = {.length = strspn(run, "0123456789.,")};
    for (gsize i = 0; i + 1 < marks.length; i++) {
        if (!g_ascii_isdigit(run[i]) && g_ascii_isdigit(run[i + 1])) {
            marks.first = marks.count ? marks.first : i;
            marks.last = i;
            marks.count++;
            marks.comma |= run[i] == ',';
        }
    }
    return marks;
}

static gboolean refuse_marks(const Spelling *spelling, const char *run, Marks marks, gsize *offset,
                             GError **error)
{
    g_autofree char *one = with_one_point(run, marks.length, marks.last);
    g_autofree char *other = with_one_point(run, marks.length, marks.first);
    if (offset) {
        *offset = spelling_column(spelling, run + marks.last);
    }
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "`%.*s` could be %s or %s; write the one that is meant", (int)marks.length, run,
                one, other);
    return FALSE;
}

// A comma before a digit is a decimal comma, if it is the only mark in its number.
static gboolean read_commas(Spelling *spelling, gsize *offset, GError **error)
{
    for (char *run = spelling->plain; *run;) {
        Marks marks = marks_of(run);
        if (marks.comma && marks.count > 1) {
            return refuse_marks(spelling, run, marks, offset, error);
        }
        if (marks.comma) {
            run[marks.first] = '.';
        }
        run += MAX(marks.length, 1);
    }
    return TRUE;
}

gboolean spelling_read(const char *text, Spelling *spelling, gsize *offset, GError **error)
{
    GString *plain = g_string_new(NULL);
    *spelling = (Spelling){.columns = g_array_new(FALSE, FALSE, sizeof(gsize))};
    gsize column = 0;
    for (const char *at = text; *at;) {
        at = add_next(spelling, plain, at, &column);
    }
    g_array_append_val(spelling->columns, column);
    spelling->plain = g_string_free(plain, FALSE);
    if (!read_commas(spelling, offset, error)) {
        spelling_clear(spelling);
        return FALSE;
    }
    return TRUE;
}

void spelling_clear(Spelling *spelling)
{
    g_clear_pointer(&spelling->plain, g_free);
    g_clear_pointer(&spelling->columns, g_array_unref);
}

gsize spelling_column(const Spelling *spelling, const char *at)
{
    return g_array_index(spelling->columns, gsize, (gsize)(at - spelling->plain));
}
