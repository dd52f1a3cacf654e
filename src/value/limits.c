#include "node.h"
#include <standbook/base/error.h>
#include <standbook/value/limits.h>
#include <string.h>

struct Limits {
    LimitsForm form;
    char *text;
    Formula *lower;
    Formula *upper;
    Unit *unit;
    gboolean has_unit;
    guint decimals;
    gulong count;
    char *wanted;
    char **choices;
    gint references;
};

// What is being read, and where a fault is put.
typedef struct {
    const char *text;
    Limits *limits;
    gsize *offset;
    GError **error;
} Reader;

static gsize offset_of(const Reader *reader, const char *at)
{
    return (gsize)g_utf8_pointer_to_offset(reader->text, at);
}

static gboolean refuse(const Reader *reader, const char *at, const char *message)
{
    if (reader->offset) {
        *reader->offset = offset_of(reader, at);
    }
    g_set_error_literal(reader->error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, message);
    return FALSE;
}

static Formula *read_side(const Reader *reader, const char *start, const char *end)
{
    Formula *side = formula_parse_part(start, (gsize)(end - start), offset_of(reader, start),
                                       reader->offset, reader->error);
    if (side && formula_doubt_count(side) > 0) {
        refuse(reader, start + strspn(start, " "),
               "a limit has no `±` of its own; write both limits with `..`");
        g_clear_pointer(&side, formula_free);
    }
    return side;
}

static const char *text_end(const Reader *reader)
{
    return reader->text + strlen(reader->text);
}

static gboolean read_lower(Reader *reader, const char *rest)
{
    reader->limits->lower = read_side(reader, rest, text_end(reader));
    return reader->limits->lower != NULL;
}

static gboolean read_upper(Reader *reader, const char *rest)
{
    reader->limits->upper = read_side(reader, rest, text_end(reader));
    return reader->limits->upper != NULL;
}

static gboolean read_count(Reader *reader, const char *rest)
{
    const char *digits = rest + strspn(rest, " ");
    gsize length = strspn(digits, "0123456789");
    if (length == 0 || length > 9 || digits[length + strspn(digits + length, " ")] != '\0') {
        return refuse(reader, digits, "behind `exactly` stands a count, as in `exactly 4`");
    }
    reader->limits->form = LIMITS_COUNT;
    reader->limits->count = strtoul(digits, NULL, 10);
    return TRUE;
}

typedef struct {
    const char *words;
    gboolean (*read)(Reader *reader, const char *rest);
} Front;

static const Front FRONTS[] = {
    {"at least ", read_lower}, {"min ", read_lower},     {"≥", read_lower},
    {">=", read_lower},        {"at most ", read_upper}, {"max ", read_upper},
    {"≤", read_upper},         {"<=", read_upper},       {"exactly ", read_count},
};

// NULL if the text begins with none of them; `min (` and `max (` are functions.
static const Front *front_of(const char *text)
{
    for (gsize i = 0; i < G_N_ELEMENTS(FRONTS); i++) {
        const char *rest = text + strlen(FRONTS[i].words);
        gboolean call = text[0] == 'm' && g_str_has_prefix(text + strcspn(text, " "), " (");
        if (g_str_has_prefix(text, FRONTS[i].words) && rest[strspn(rest, " ")] && !call) {
            return &FRONTS[i];
        }
    }
    return NULL;
}

// What stands between two limits, or between a middle and its width.
typedef struct {
    const char *at; // NULL: it is not there
    gsize length;
} Mark;

static Mark find_mark(const char *text, const char *const marks[])
{
    for (gsize i = 0; marks[i]; i++) {
        const char *at = strstr(text, marks[i]);
        if (at) {
            return (Mark){at, strlen(marks[i])};
        }
    }
    return (Mark){NULL, 0};
}

// The hyphen or dash of `0.03-0.065 mm`: behind a number, perhaps with its unit, and before another
// number; a fraction such as `2-5/8` is one number.
static Mark find_dash(const char *text)
{
    static const char DIGITS[] = "0123456789.";
    const char *first = text + strspn(text, "+-");
    const char *behind = first + strspn(first, DIGITS);
    const char *dash = behind + strcspn(behind, "-+*/()[]");
    const char *wide = strstr(behind, "–");
    Mark mark = wide ? (Mark){wide, strlen("–")} : (Mark){*dash == '-' ? dash : NULL, 1};
    if (first == behind || mark.at == NULL) {
        return (Mark){NULL, 0};
    }
    const char *second = mark.at + mark.length;
    second += strspn(second, " ");
    second += strspn(second, "-");
    const char *end = second + strspn(second, DIGITS);
    gboolean fraction = *end == '/' && g_ascii_isdigit(end[1]);
    return end == second || fraction ? (Mark){NULL, 0} : mark;
}

// A unit written goes before the default.
static void set_unit(Limits *limits, const Unit *unit)
{
    Unit *written = unit_copy(unit);
    unit_free(limits->unit);
    limits->unit = written;
    limits->has_unit = TRUE;
}

// `8 ± 2 °`
static gboolean read_tolerance(Reader *reader, const char *start, Mark mark)
{
    Limits *limits = reader->limits;
    g_autoptr(Formula) middle = read_side(reader, start, mark.at);
    g_autoptr(Formula) width =
        middle ? read_side(reader, mark.at + mark.length, text_end(reader)) : NULL;
    if (width == NULL) {
        return FALSE;
    }
    formula_make_width(width);
    limits->lower = formula_join(ARRAY_SUBTRACT, middle, width);
    limits->upper = formula_join(ARRAY_ADD, middle, width);
    return TRUE;
}

static gboolean read_range(Reader *reader, const char *start, Mark between)
{
    Limits *limits = reader->limits;
    const char *second = between.at + between.length;
    limits->lower = read_side(reader, start, between.at);
    limits->upper = limits->lower ? read_side(reader, second, text_end(reader)) : NULL;
    return limits->upper != NULL;
}

static gboolean set_answer(Reader *reader, const char *wanted, char **choices)
{
    reader->limits->form = LIMITS_ANSWER;
    reader->limits->wanted = g_strdup(wanted);
    reader->limits->choices = choices;
    return TRUE;
}

// `dry of dry/damp/wet`
static gboolean read_choice(Reader *reader, const char *start, const char *of)
{
    g_autofree char *wanted = g_strstrip(g_strndup(start, (gsize)(of - start)));
    g_auto(GStrv) choices = g_strsplit(of + strlen(" of "), "/", -1);
    for (gsize i = 0; choices[i]; i++) {
        if (*g_strstrip(choices[i]) == '\0') {
            return refuse(reader, of + strlen(" of "),
                          "one of the choices is empty; write "
                          "`dry of dry/damp/wet`");
        }
    }
    if (!g_strv_contains((const char *const *)choices, wanted)) {
        return refuse(reader, start,
                      "the answer wanted is not among the choices; write "
                      "`dry of dry/damp/wet`");
    }
    return set_answer(reader, wanted, g_steal_pointer(&choices));
}

static gboolean read_word(Reader *reader, const char *word, gboolean *known)
{
    *known = TRUE;
    if (strcmp(word, "any") == 0) {
        reader->limits->form = LIMITS_ANY;
        return TRUE;
    }
    if (strcmp(word, "text") == 0) {
        reader->limits->form = LIMITS_TEXT;
        return TRUE;
    }
    if (strcmp(word, "yes") == 0 || strcmp(word, "no") == 0) {
        return set_answer(reader, word, g_strsplit("yes/no", "/", -1));
    }
    *known = FALSE;
    return FALSE;
}

// Two limits, a middle and its width, or an answer out of some.
static gboolean read_parts(Reader *reader, const char *start)
{
    static const char *const DOTS[] = {"..", NULL}, *const WORD[] = {" to ", NULL};
    static const char *const AROUND[] = {"±", "+/-", "+-", NULL};
    Mark between = find_mark(start, DOTS), around = find_mark(start, AROUND);
    const char *of = strstr(start, " of ");
    if (!between.at && around.at) {
        return read_tolerance(reader, start, around);
    }
    if (!between.at && of && strchr(of, '/')) {
        return read_choice(reader, start, of);
    }
    between = between.at ? between : find_mark(start, WORD);
    between = between.at ? between : find_dash(start);
    return between.at ? read_range(reader, start, between)
                      : refuse(reader, start,
                               "these are no limits; write `0.05 to 0.08 mm`, `0.05 ± 0.01`, "
                               "`at least 90 %`, `max 0.1`, `exactly 4`, `any`, `yes`, `text` or "
                               "`dry of dry/wet`");
}

static gboolean read_form(Reader *reader)
{
    const char *start = reader->text + strspn(reader->text, " \t");
    gboolean known = FALSE;
    g_autofree char *word = g_strchomp(g_strdup(start));
    gboolean read = read_word(reader, word, &known);
    const Front *front = known ? NULL : front_of(start);
    if (front) {
        return front->read(reader, start + strlen(front->words));
    }
    return known ? read : read_parts(reader, start);
}

// The last unit written holds for the numbers without one; two units must be of one kind.
static gboolean settle_units(Reader *reader)
{
    Limits *limits = reader->limits;
    const Unit *first = limits->lower ? formula_term_unit(limits->lower) : NULL;
    const Unit *last = limits->upper ? formula_term_unit(limits->upper) : NULL;
    if (first && last && !kind_equal(unit_kind(first), unit_kind(last))) {
        return refuse(reader, reader->text,
                      "the two limits have units of different kinds; write both in one unit");
    }
    last = last ? last : first;
    if (last && !limits->has_unit) {
        set_unit(limits, last);
    }
    for (gsize i = 0; i < 2; i++) {
        Formula *side = i == 0 ? limits->lower : limits->upper;
        if (side) {
            limits->decimals = MAX(limits->decimals, formula_term_decimals(side));
            formula_give_unit(side, limits->unit);
        }
    }
    return TRUE;
}

static gboolean check_order(Reader *reader)
{
    Limits *limits = reader->limits;
    g_autoptr(Number) low = limits->lower ? formula_constant(limits->lower) : NULL;
    g_autoptr(Number) high = limits->upper ? formula_constant(limits->upper) : NULL;
    if (low == NULL || high == NULL || number_compare(low, high) <= 0) {
        return TRUE;
    }
    return refuse(reader, reader->text + strspn(reader->text, " \t"),
                  "the limits are upside down; write the smaller one first");
}

Limits *limits_parse(const char *text, const Unit *unit, gsize *offset, GError **error)
{
    Limits *limits = g_new0(Limits, 1);
    limits->references = 1;
    Reader reader = {text, limits, offset, error};
    const char *fault = text;
    if (!g_utf8_validate(text, -1, &fault)) {
        g_autofree char *front = g_strndup(text, (gsize)(fault - text));
        Reader before = {front, limits, offset, error};
        refuse(&before, front + strlen(front), "this is not UTF-8; type it again");
        limits_free(limits);
        return NULL;
    }
    limits->text = g_strstrip(g_strdup(text));
    limits->unit = unit ? unit_copy(unit) : NULL;
    if (!read_form(&reader) || !settle_units(&reader) || !check_order(&reader)) {
        limits_free(limits);
        return NULL;
    }
    return limits;
}

Limits *limits_copy(const Limits *limits)
{
    Limits *shared = (Limits *)limits; // only the count is written
    shared->references++;
    return shared;
}

void limits_free(Limits *limits)
{
    if (limits == NULL || --limits->references > 0) {
        return;
    }
    g_free(limits->text);
    formula_free(limits->lower);
    formula_free(limits->upper);
    unit_free(limits->unit);
    g_free(limits->wanted);
    g_strfreev(limits->choices);
    g_free(limits);
}

LimitsForm limits_form(const Limits *limits)
{
    return limits->form;
}

const char *limits_text(const Limits *limits)
{
    return limits->text;
}

const Formula *limits_lower(const Limits *limits)
{
    return limits->lower;
}

const Formula *limits_upper(const Limits *limits)
{
    return limits->upper;
}

const Unit *limits_unit(const Limits *limits)
{
    return limits->unit;
}

gboolean limits_has_unit(const Limits *limits)
{
    return limits->has_unit;
}

guint limits_decimals(const Limits *limits)
{
    return limits->decimals;
}

gulong limits_count(const Limits *limits)
{
    return limits->count;
}

const char *limits_wanted(const Limits *limits)
{
    return limits->wanted;
}

const char *const *limits_choices(const Limits *limits)
{
    return (const char *const *)limits->choices;
}
