#include "limits_marks.h"
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
    gboolean any_order; // two deviations, of which either may stand first
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

// In the place of one limit, a number less another one may be meant as two limits.
static gboolean refuse_difference(const Reader *reader, const char *start, const char *end)
{
    Mark between = mark_between(start, end);
    g_autofree char *one = between.at ? g_strndup(start, (gsize)(between.at - start)) : NULL;
    const char *behind = between.at + between.length;
    g_autofree char *other = one ? g_strndup(behind, (gsize)(end - behind)) : NULL;
    g_autofree char *message =
        one ? g_strdup_printf("two limits, or a number less another one? Write `%s to %s` alone "
                              "for two limits, else what is left over as one number",
                              g_strstrip(one), g_strstrip(other))
            : NULL;
    return message && !refuse(reader, start + strspn(start, " "), message);
}

static Formula *read_side(const Reader *reader, const char *start, const char *end)
{
    if (refuse_difference(reader, start, end)) {
        return NULL;
    }
    g_autofree char *part = mark_points(start, end);
    Formula *side = formula_parse_part(part, strlen(part), offset_of(reader, start), reader->offset,
                                       reader->error);
    if (side && formula_doubt_count(side) > 0) {
        refuse(reader, start + strspn(start, " "),
               "a limit has no `±` of its own; write both limits with `..`");
        g_clear_pointer(&side, formula_free);
    }
    return side;
}

static Formula *read_mark(const Reader *reader, Mark mark)
{
    return read_side(reader, mark.at, mark.at + mark.length);
}

static const char *text_end(const Reader *reader)
{
    return reader->text + strlen(reader->text);
}

static gboolean read_lower(Reader *reader, const char *start, const char *end)
{
    reader->limits->lower = read_side(reader, start, end);
    return reader->limits->lower != NULL;
}

static gboolean read_upper(Reader *reader, const char *start, const char *end)
{
    reader->limits->upper = read_side(reader, start, end);
    return reader->limits->upper != NULL;
}

static gboolean read_count(Reader *reader, const char *start, const char *end)
{
    const char *digits = start + strspn(start, " ");
    gsize length = strspn(digits, "0123456789");
    const char *behind = digits + length;
    if (length == 0 || length > 9 || behind + strspn(behind, " \t") < end) {
        return refuse(reader, digits,
                      "behind `exactly` or `=` stands a count without a unit, as in `exactly 4`");
    }
    reader->limits->form = LIMITS_COUNT;
    reader->limits->count = strtoul(digits, NULL, 10);
    return TRUE;
}

// Words before or behind one limit, or a count.
typedef struct {
    const char *words;
    gboolean (*read)(Reader *reader, const char *start, const char *end);
} Side;

// A limit itself is inside: `>` is read as `≥`.
static const Side FRONTS[] = {
    {"at least ", read_lower}, {"min ", read_lower},     {"min. ", read_lower},
    {"minimum ", read_lower},  {"≥", read_lower},        {">=", read_lower},
    {">", read_lower},         {"at most ", read_upper}, {"max ", read_upper},
    {"max. ", read_upper},     {"maximum ", read_upper}, {"up to ", read_upper},
    {"≤", read_upper},         {"<=", read_upper},       {"<", read_upper},
    {"exactly ", read_count},  {"=", read_count},
};
static const Side TAILS[] = {
    {" min", read_lower}, {" min.", read_lower}, {" minimum", read_lower},
    {" max", read_upper}, {" max.", read_upper}, {" maximum", read_upper},
};

static gboolean begins(const char *text, const char *words)
{
    return g_ascii_strncasecmp(text, words, strlen(words)) == 0;
}

// NULL if the text begins with none of them; `min (` and `max (` are functions.
static const Side *front_of(const char *text)
{
    gboolean call = text[0] == 'm' && g_str_has_prefix(text + strcspn(text, " "), " (");
    for (gsize i = 0; i < G_N_ELEMENTS(FRONTS); i++) {
        const char *rest = text + strlen(FRONTS[i].words);
        if (begins(text, FRONTS[i].words) && rest[strspn(rest, " ")] && !call) {
            return &FRONTS[i];
        }
    }
    return NULL;
}

// What ends with them is one number with its unit; else, as in `5 to 10 min`, they are its unit.
static const Side *tail_of(const char *text, const char *end, gboolean *unit)
{
    for (gsize i = 0; i < G_N_ELEMENTS(TAILS); i++) {
        gsize length = strlen(TAILS[i].words);
        const char *at = (gsize)(end - text) > length ? end - length : NULL;
        if (at && begins(at, TAILS[i].words) && mark_quantity(text, at, unit)) {
            return &TAILS[i];
        }
    }
    return NULL;
}

static gboolean read_tail(Reader *reader, const Side *tail, gboolean unit, const char *start,
                          const char *end)
{
    if (!unit && begins(" min.", tail->words)) {
        return refuse(reader, start,
                      "this could be so many minutes, or a lower limit; write `at least 5 min`, or "
                      "`min 40 psi`");
    }
    return tail->read(reader, start, end - strlen(tail->words));
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

// `80 +0.02 -0.01 mm`
static gboolean read_deviations(Reader *reader, Deviations deviations)
{
    Limits *limits = reader->limits;
    g_autoptr(Formula) middle = read_mark(reader, deviations.middle);
    g_autoptr(Formula) one = middle ? read_mark(reader, deviations.one) : NULL;
    g_autoptr(Formula) other = one ? read_mark(reader, deviations.other) : NULL;
    if (other == NULL) {
        return FALSE;
    }
    formula_make_width(one);
    formula_make_width(other);
    limits->upper = formula_join(ARRAY_ADD, middle, one);
    limits->lower = formula_join(ARRAY_ADD, middle, other);
    reader->any_order = TRUE;
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
    // A unit alone: read in it, no limit known. `min` alone is a limit that lacks its number.
    g_autoptr(Unit) unit = strcmp(word, "min") == 0 ? NULL : unit_parse(word, NULL);
    if (unit) {
        reader->limits->form = LIMITS_ANY;
        set_unit(reader->limits, unit);
        return TRUE;
    }
    *known = FALSE;
    return FALSE;
}

static gboolean refuse_form(const Reader *reader, const char *start)
{
    gboolean unit = FALSE;
    if (mark_quantity(start, text_end(reader), &unit)) {
        g_autofree char *one = g_strchomp(g_strdup(start));
        g_autofree char *message = g_strdup_printf(
            "one number alone is no limits; write `min %s`, `max %s`, or how far to "
            "either side: `80 ± 0.02 mm`",
            one, one);
        return refuse(reader, start, message);
    }
    gboolean number = *start && strchr("0123456789.,+-", *start);
    return refuse(reader, start,
                  number ? "these are no limits; write `0.03 to 0.065 mm`, `max 0.05 mm` or "
                           "`80 +0.02 -0 mm`"
                         : "these are no limits; write `0.05 to 0.08 mm`, `0.05 ± 0.01`, "
                           "`at least 90 %`, `max 0.1`, `exactly 4`, `any`, `yes`, `text` or "
                           "`dry of dry/wet`");
}

static gboolean read_span(Reader *reader, const char *start, const char *end)
{
    Deviations deviations;
    Mark between = mark_words(&start);
    if (!between.at && mark_deviations(start, end, &deviations)) {
        return read_deviations(reader, deviations);
    }
    between = between.at ? between : mark_between(start, end);
    between = between.at ? between : mark_dash(start);
    return between.at ? read_range(reader, start, between) : refuse_form(reader, start);
}

// Two limits, a middle and its width, or an answer out of some.
static gboolean read_parts(Reader *reader, const char *start, const char *end)
{
    static const char *const AROUND[] = {"±", "+/-", "+-", NULL};
    gboolean doubtful = FALSE;
    Mark dots = mark_dots(start, &doubtful), around = mark_find(start, AROUND);
    const char *of = strstr(start, " of ");
    if (doubtful) {
        return refuse(reader, dots.at,
                      "behind `...` the last point could be that of the number; write `0.1 to 5`, "
                      "or `0.1 to 0.5`");
    }
    if (dots.at) {
        return read_range(reader, start, dots);
    }
    if (around.at) {
        return read_tolerance(reader, start, around);
    }
    return of && strchr(of, '/') ? read_choice(reader, start, of) : read_span(reader, start, end);
}

static gboolean read_form(Reader *reader)
{
    const char *start = reader->text + strspn(reader->text, " \t");
    gboolean known = FALSE, unit = FALSE;
    g_autofree char *word = g_strchomp(g_strdup(start));
    const char *end = start + strlen(word);
    gboolean read = read_word(reader, word, &known);
    Mark both = mark_both(&start);
    if (both.at) {
        return read_range(reader, start, both);
    }
    const Side *front = known ? NULL : front_of(start);
    const Side *tail = known || front ? NULL : tail_of(start, end, &unit);
    if (front) {
        return front->read(reader, start + strlen(front->words), text_end(reader));
    }
    if (tail) {
        return read_tail(reader, tail, unit, start, end);
    }
    return known ? read : read_parts(reader, start, end);
}

// The last unit written holds for the numbers without one; two units must be of one kind.
static gboolean settle_units(Reader *reader)
{
    Limits *limits = reader->limits;
    const Unit *first = limits->lower ? formula_term_unit(limits->lower, NULL) : NULL;
    const Unit *last = limits->upper ? formula_term_unit(limits->upper, NULL) : NULL;
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
    if (reader->any_order) {
        Formula *lower = limits->upper;
        limits->upper = limits->lower;
        limits->lower = lower;
        return TRUE;
    }
    return refuse(reader, reader->text + strspn(reader->text, " \t"),
                  "the limits are upside down; write the smaller one first");
}

gboolean limits_could_be_two(const char *text)
{
    return mark_between(text, text + strlen(text)).at != NULL;
}

Limits *limits_parse(const char *text, const Unit *unit, gsize *offset, GError **error)
{
    Limits *limits = g_new0(Limits, 1);
    limits->references = 1;
    Reader reader = {text, limits, offset, error, FALSE};
    const char *fault = text;
    if (!g_utf8_validate(text, -1, &fault)) {
        g_autofree char *front = g_strndup(text, (gsize)(fault - text));
        Reader before = {front, limits, offset, error, FALSE};
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
