#include <standbook/base/error.h>
#include <standbook/value/reading.h>
#include <string.h>

enum { READING_LENGTH = 200 };

// Where the reader stands: `at` moves through `text`.
typedef struct {
    const char *text;
    const char *at;
    gsize *offset;
} Cursor;

static gboolean fail_at(const Cursor *cursor, const char *where)
{
    if (cursor->offset) {
        *cursor->offset = (gsize)g_utf8_pointer_to_offset(cursor->text, where);
    }
    return FALSE;
}

static gboolean skip(Cursor *cursor, const char *word)
{
    gboolean there = g_str_has_prefix(cursor->at, word);
    cursor->at += there ? strlen(word) : 0;
    return there;
}

static void skip_blanks(Cursor *cursor)
{
    cursor->at += strspn(cursor->at, " \t");
}

static Bound read_bound(Cursor *cursor)
{
    Bound bound = skip(cursor, "<") ? BOUND_BELOW : skip(cursor, ">") ? BOUND_ABOVE : BOUND_NONE;
    skip_blanks(cursor);
    return bound;
}

static gboolean read_sign(Cursor *cursor)
{
    gboolean negative = skip(cursor, "-") || skip(cursor, "−");
    if (!negative) {
        skip(cursor, "+");
    }
    skip_blanks(cursor);
    return negative;
}

static gboolean read_digits(Cursor *cursor, Reading *reading, gboolean negative, GError **error)
{
    NumberTyped typed;
    gsize fault = 0;
    if (!number_scan(cursor->at, &typed, &fault, error)) {
        return fail_at(cursor, cursor->at + fault);
    }
    reading->number = negative ? number_negate(typed.value) : number_copy(typed.value);
    reading->place = number_copy(typed.place);
    reading->decimals = typed.decimals;
    cursor->at += typed.length;
    number_typed_clear(&typed);
    return TRUE;
}

static gboolean check_kind(const Unit *typed, const Unit *wanted, GError **error)
{
    if (kind_equal(unit_kind(typed), unit_kind(wanted))) {
        return TRUE;
    }
    g_autofree char *has = kind_text(unit_kind(typed));
    g_autofree char *wants = kind_text(unit_kind(wanted));
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "`%s` is %s, but %s is read here%s%s", unit_text(typed), has, wants,
                wanted ? "; write it in " : "; write no unit", wanted ? unit_text(wanted) : "");
    return FALSE;
}

static gboolean read_unit(Cursor *cursor, const Unit *wanted, Reading *reading, GError **error)
{
    skip_blanks(cursor);
    if (*cursor->at == '\0') {
        reading->unit = wanted ? unit_copy(wanted) : NULL;
        return TRUE;
    }
    g_autofree char *rest = g_strchomp(g_strdup(cursor->at));
    reading->unit = unit_parse(rest, error);
    if (reading->unit == NULL || !check_kind(reading->unit, wanted, error)) {
        return fail_at(cursor, cursor->at);
    }
    return TRUE;
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

static void finish(Reading *reading, const char *text)
{
    g_autoptr(Number) place = g_steal_pointer(&reading->place);
    reading->value = unit_to_base(reading->unit, reading->number);
    reading->place = unit_width_to_base(reading->unit, place);
    reading->typed = g_strstrip(g_strdup(text));
}

gboolean reading_parse(const char *text, const Unit *unit, Reading *reading, gsize *offset,
                       GError **error)
{
    *reading = (Reading){0};
    if (!check_text(text, offset, error)) {
        return FALSE;
    }
    Cursor cursor = {text, text, offset};
    skip_blanks(&cursor);
    reading->bound = read_bound(&cursor);
    gboolean negative = read_sign(&cursor);
    if (!read_digits(&cursor, reading, negative, error) ||
        !read_unit(&cursor, unit, reading, error)) {
        reading_clear(reading);
        return FALSE;
    }
    finish(reading, text);
    return TRUE;
}

void reading_clear(Reading *reading)
{
    g_clear_pointer(&reading->number, number_free);
    g_clear_pointer(&reading->value, number_free);
    g_clear_pointer(&reading->place, number_free);
    g_clear_pointer(&reading->unit, unit_free);
    g_clear_pointer(&reading->typed, g_free);
}
