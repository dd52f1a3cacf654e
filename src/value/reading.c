#include "spelling.h"
#include <standbook/base/error.h>
#include <standbook/value/formula.h>
#include <standbook/value/reading.h>
#include <string.h>

enum { READING_LENGTH = 200 };

// Where the reader stands: `at` moves through the plain spelling.
typedef struct {
    const Spelling *spelling;
    const char *at;
    const Unit *wanted; // NULL: a pure number
    gsize *offset;
    GError **error;
} Cursor;

// One value of a reading: a number with its unit, or arithmetic.
typedef struct {
    Number *number; // in `unit`
    Number *place;  // one unit of the last place typed, in `unit`
    Unit *unit;     // NULL for none
    guint decimals;
    gboolean own; // whether the unit was typed
} Amount;

static void amount_clear(Amount *amount)
{
    g_clear_pointer(&amount->number, number_free);
    g_clear_pointer(&amount->place, number_free);
    g_clear_pointer(&amount->unit, unit_free);
}

static gboolean refuse(const Cursor *cursor, const char *where, char *message)
{
    if (cursor->offset) {
        *cursor->offset = spelling_column(cursor->spelling, where);
    }
    g_set_error_literal(cursor->error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    g_free(message);
    return FALSE;
}

static void skip_blanks(Cursor *cursor)
{
    cursor->at += strspn(cursor->at, " \t");
}

static gboolean skip(Cursor *cursor, const char *mark)
{
    gboolean there = g_str_has_prefix(cursor->at, mark);
    cursor->at += there ? strlen(mark) : 0;
    return there;
}

static Bound read_bound(Cursor *cursor)
{
    Bound bound = skip(cursor, "<") ? BOUND_BELOW : skip(cursor, ">") ? BOUND_ABOVE : BOUND_NONE;
    skip_blanks(cursor);
    return bound;
}

static gboolean read_number(Cursor *cursor, Amount *amount)
{
    NumberTyped typed;
    gsize fault = 0;
    g_autoptr(GError) why = NULL;
    if (!number_scan(cursor->at, &typed, &fault, &why)) {
        return refuse(cursor, cursor->at + fault, g_strdup(why->message));
    }
    amount->number = number_copy(typed.value);
    amount->place = number_copy(typed.place);
    amount->decimals = typed.decimals;
    cursor->at += typed.length;
    number_typed_clear(&typed);
    return TRUE;
}

static gboolean check_kind(const Cursor *cursor, const char *where, const Unit *typed)
{
    const Unit *wanted = cursor->wanted;
    if (kind_equal(unit_kind(typed), unit_kind(wanted))) {
        return TRUE;
    }
    g_autofree char *has = kind_text(unit_kind(typed));
    g_autofree char *wants = kind_text(unit_kind(wanted));
    return refuse(cursor, where,
                  g_strdup_printf("`%s` is %s, but %s is read here%s%s", unit_text(typed), has,
                                  wants, wanted ? "; write it in " : "; write no unit",
                                  wanted ? unit_text(wanted) : ""));
}

// The length of the unit at the cursor, 0 for none. An inch mark is one by itself.
static gsize unit_length(const Cursor *cursor)
{
    return *cursor->at == '"' ? 1 : unit_span(cursor->at);
}

// The unit written in `word`. Primes are feet and inches, or minutes and seconds of an angle.
static Unit *unit_named(const Cursor *cursor, const char *word, GError **error)
{
    gboolean angle = kind_equal(unit_kind(cursor->wanted), (Kind){.angle = 1});
    if (strcmp(word, "'") == 0) {
        return unit_parse(angle ? "arcmin" : "ft", error);
    }
    return unit_parse_for(angle && strcmp(word, "\"") == 0 ? "arcsec" : word, cursor->wanted,
                          error);
}

static gboolean read_unit(Cursor *cursor, Amount *amount)
{
    skip_blanks(cursor);
    gsize length = unit_length(cursor);
    if (length == 0) {
        return TRUE;
    }
    g_autofree char *word = g_strndup(cursor->at, length);
    if ((*word == 'e' || *word == 'E') && g_ascii_isdigit(cursor->at[length])) {
        return refuse(cursor, cursor->at,
                      g_strdup("powers of ten are not read here; write all the digits"));
    }
    g_autoptr(GError) why = NULL;
    amount->unit = unit_named(cursor, word, &why);
    amount->own = TRUE;
    if (!amount->unit) {
        return refuse(cursor, cursor->at, g_strdup(why->message));
    }
    if (!check_kind(cursor, cursor->at, amount->unit)) {
        return FALSE;
    }
    cursor->at += length;
    skip_blanks(cursor);
    return TRUE;
}

// A unit and the smaller one that may stand behind it: `5 ft 2 in`, `12° 30'`.
static const struct {
    const char *large;
    const char *small;
    glong ratio;
} PAIRS[] = {
    {"ft", "in", 12}, {"°", "arcmin", 60}, {"arcmin", "arcsec", 60}, {"d", "h", 24},
    {"h", "min", 60}, {"min", "s", 60},    {"lb", "oz", 16},
};

static glong pair_ratio(const Unit *large, const Unit *small)
{
    for (gsize i = 0; large && small && i < G_N_ELEMENTS(PAIRS); i++) {
        if (strcmp(PAIRS[i].large, unit_text(large)) == 0 &&
            strcmp(PAIRS[i].small, unit_text(small)) == 0) {
            return PAIRS[i].ratio;
        }
    }
    return 0;
}

static void join_smaller(Amount *amount, Amount *smaller, const Number *ratio)
{
    g_autoptr(Number) large = number_multiply(amount->number, ratio);
    Amount whole = *smaller;
    whole.number = number_add(large, smaller->number);
    number_free(smaller->number);
    amount_clear(amount);
    *amount = whole;
}

// What stands behind a number and its unit: nothing, or the same value's smaller unit.
static gboolean read_smaller(Cursor *cursor, Amount *amount)
{
    const char *where = cursor->at;
    if (!g_ascii_isdigit(*where) && *where != '.') {
        return TRUE;
    }
    Amount smaller = {0};
    gboolean read = read_number(cursor, &smaller) && read_unit(cursor, &smaller);
    g_autoptr(Number) ratio =
        number_from_integer(read ? pair_ratio(amount->unit, smaller.unit) : 0);
    if (read && (number_sign(ratio) == 0 || amount->decimals > 0)) {
        read = refuse(cursor, where,
                      g_strdup("two numbers stand side by side; if they are one, write it without "
                               "the blank, else put an operator between them"));
    }
    if (read && number_compare(smaller.number, ratio) >= 0) {
        read = refuse(
            cursor, where,
            g_strdup_printf("this is a whole %s or more; carry it over", unit_text(amount->unit)));
    }
    if (!read) {
        amount_clear(&smaller);
        return FALSE;
    }
    join_smaller(amount, &smaller, ratio);
    return read_smaller(cursor, amount);
}

static gboolean check_end(const Cursor *cursor)
{
    return *cursor->at == '\0' ||
           refuse(cursor, cursor->at,
                  g_strdup("this does not belong to the number; a reading is a number and its "
                           "unit, or arithmetic"));
}

static gboolean read_plain(Cursor *cursor, Amount *amount)
{
    gboolean negative = skip(cursor, "-");
    if (!negative) {
        skip(cursor, "+");
    }
    skip_blanks(cursor);
    if (!read_number(cursor, amount) || !read_unit(cursor, amount) ||
        !read_smaller(cursor, amount) || !check_end(cursor)) {
        return FALSE;
    }
    if (negative) {
        g_autoptr(Number) positive = amount->number;
        amount->number = number_negate(positive);
    }
    return TRUE;
}

static gboolean is_arithmetic(const char *text)
{
    text += strspn(text, " \t+-");
    return strpbrk(text, "+*^()") || strstr(text, " - ") || strstr(text, " / ") ||
           strstr(text, "×") || strstr(text, "÷");
}

static const char *character(const Cursor *cursor, gsize index)
{
    return g_utf8_offset_to_pointer(cursor->at, (glong)index);
}

// Without any unit in it arithmetic is in the unit wanted; else every value must have its own.
static gboolean check_sum(const Cursor *cursor, const Formula *sum)
{
    FormulaContext none = {.first_doubt = -1};
    Kind kind;
    gsize fault = 0;
    g_autoptr(GError) why = NULL;
    if (formula_name_count(sum) > 0) {
        return refuse(cursor, character(cursor, formula_name_offset(sum, 0)),
                      g_strdup("a reading is worked out of numbers only; a formula with names "
                               "belongs into the plan"));
    }
    if (!formula_kind(sum, &none, &kind, &fault, &why)) {
        return refuse(cursor, character(cursor, fault), g_strdup(why->message));
    }
    if (!formula_has_unit(sum) || kind_equal(kind, unit_kind(cursor->wanted))) {
        return TRUE;
    }
    g_autofree char *has = kind_text(kind);
    g_autofree char *wants = kind_text(unit_kind(cursor->wanted));
    return refuse(cursor, cursor->at,
                  g_strdup_printf("this comes to %s, but %s is read here", has, wants));
}

// The amount in the unit wanted, from a value worked out.
static void set_worked_out(const Cursor *cursor, const Formula *sum, const Number *value,
                           Amount *amount)
{
    const Unit *wanted = cursor->wanted;
    g_autoptr(Number) place = formula_place(sum);
    gboolean own = formula_has_unit(sum);
    amount->own = own;
    amount->unit = wanted ? unit_copy(wanted) : NULL;
    amount->number = own ? unit_from_base(wanted, value) : number_copy(value);
    amount->place = own ? unit_width_from_base(wanted, place) : number_copy(place);
    amount->decimals = formula_term_decimals(sum);
}

static gboolean read_arithmetic(Cursor *cursor, Amount *amount)
{
    skip(cursor, "+");
    gsize fault = 0;
    g_autoptr(GError) why = NULL;
    g_autoptr(Formula) sum = formula_parse(cursor->at, &fault, &why);
    if (!sum) {
        return refuse(cursor, character(cursor, fault), g_strdup(why->message));
    }
    if (!check_sum(cursor, sum)) {
        return FALSE;
    }
    g_autoptr(Number) value = formula_constant(sum);
    if (!value) {
        return refuse(cursor, cursor->at,
                      g_strdup("this cannot be worked out: it divides by 0, or takes the root of "
                               "something below 0"));
    }
    set_worked_out(cursor, sum, value, amount);
    return TRUE;
}

static gboolean read_amount(Cursor *cursor, Amount *amount)
{
    skip_blanks(cursor);
    return is_arithmetic(cursor->at) ? read_arithmetic(cursor, amount) : read_plain(cursor, amount);
}

static gboolean check_text(const char *text, gsize *offset, GError **error)
{
    const char *end = text;
    gboolean clean = g_utf8_validate(text, -1, &end);
    if (clean && strlen(text) <= READING_LENGTH) {
        return TRUE;
    }
    if (offset) {
        *offset = (gsize)g_utf8_strlen(text, end - text);
    }
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                        clean ? "this is too long for a reading; type the number and its unit"
                              : "this is not UTF-8; type it again");
    return FALSE;
}

// Parts the text at its ±: the cursor then ends before it. The place behind it, or NULL.
static char *part_at_doubt(Spelling *spelling)
{
    char *sign = strstr(spelling->plain, "±");
    if (sign) {
        *sign = '\0';
    }
    return sign ? sign + strlen("±") : NULL;
}

// What stands behind the ±: how far the value may be from the truth, in the value's unit if it has
// none of its own.
static gboolean read_doubt(Cursor *cursor, Amount *amount, Amount *doubt)
{
    skip_blanks(cursor);
    if (strstr(cursor->at, "±")) {
        return refuse(cursor, strstr(cursor->at, "±"), g_strdup("one ± is enough"));
    }
    if (!read_number(cursor, doubt) || !read_unit(cursor, doubt) || !check_end(cursor)) {
        return FALSE;
    }
    Amount *lacks = doubt->own ? amount : doubt;
    const Amount *has = doubt->own ? doubt : amount;
    if (!lacks->own && has->unit) {
        g_clear_pointer(&lacks->unit, unit_free);
        lacks->unit = unit_copy(has->unit);
    }
    return TRUE;
}

static void finish(Reading *reading, Amount *amount, Amount *doubt, const Unit *wanted,
                   const char *text)
{
    if (!amount->unit && wanted) {
        amount->unit = unit_copy(wanted);
    }
    reading->unit = g_steal_pointer(&amount->unit);
    reading->number = g_steal_pointer(&amount->number);
    reading->decimals = amount->decimals;
    reading->value = unit_to_base(reading->unit, reading->number);
    reading->place = unit_width_to_base(reading->unit, amount->place);
    const Unit *unit = doubt->unit ? doubt->unit : reading->unit;
    reading->doubt = doubt->number ? unit_width_to_base(unit, doubt->number) : NULL;
    reading->typed = g_strstrip(g_strdup(text));
}

static gboolean read_all(Cursor *cursor, Spelling *spelling, Reading *reading, const char *text)
{
    Amount amount = {0};
    Amount doubt = {0};
    char *behind = part_at_doubt(spelling);
    skip_blanks(cursor);
    reading->bound = read_bound(cursor);
    gboolean read = read_amount(cursor, &amount);
    if (read && behind) {
        cursor->at = behind;
        read = reading->bound ? refuse(cursor, behind, g_strdup("a bound has no ± of its own"))
                              : read_doubt(cursor, &amount, &doubt);
    }
    if (read) {
        finish(reading, &amount, &doubt, cursor->wanted, text);
    }
    amount_clear(&amount);
    amount_clear(&doubt);
    return read;
}

gboolean reading_parse(const char *text, const Unit *unit, Reading *reading, gsize *offset,
                       GError **error)
{
    *reading = (Reading){0};
    g_auto(Spelling) spelling = {0};
    if (!check_text(text, offset, error) || !spelling_read(text, &spelling, offset, error)) {
        return FALSE;
    }
    Cursor cursor = {&spelling, spelling.plain, unit, offset, error};
    return read_all(&cursor, &spelling, reading, text);
}

void reading_clear(Reading *reading)
{
    g_clear_pointer(&reading->number, number_free);
    g_clear_pointer(&reading->value, number_free);
    g_clear_pointer(&reading->place, number_free);
    g_clear_pointer(&reading->doubt, number_free);
    g_clear_pointer(&reading->unit, unit_free);
    g_clear_pointer(&reading->typed, g_free);
}

gboolean reading_begins(const char *text)
{
    gboolean fraction = g_unichar_type(g_utf8_get_char(text)) == G_UNICODE_OTHER_NUMBER;
    text += *text == '.' || *text == ',';
    return g_ascii_isdigit(*text) || fraction;
}

// The bytes before the first thing that cannot be in a number: a letter, a bracket, a quote.
static gsize number_like(const char *text)
{
    gsize length = 0;
    while (text[length] && !g_ascii_isalpha(text[length]) && !strchr("\"[](){}#", text[length])) {
        length++;
    }
    return length;
}

static gsize byte_at(const char *text, gsize column)
{
    return (gsize)(g_utf8_offset_to_pointer(text, (glong)column) - text);
}

gboolean reading_span(const char *text, gsize *length, gsize *offset, GError **error)
{
    g_autofree char *front = g_strndup(text, number_like(text));
    g_auto(Spelling) spelling = {0};
    gsize fault = 0;
    NumberTyped typed;
    if (!spelling_read(front, &spelling, &fault, error)) {
        *offset = byte_at(front, fault);
        return FALSE;
    }
    if (!number_scan(spelling.plain, &typed, &fault, error)) {
        *offset = byte_at(front, spelling_column(&spelling, spelling.plain + fault));
        return FALSE;
    }
    *length = byte_at(front, spelling_column(&spelling, spelling.plain + typed.length));
    number_typed_clear(&typed);
    return TRUE;
}
