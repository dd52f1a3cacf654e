#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/value/unit.h>
#include <string.h>

struct Unit {
    char *text;
    Kind kind;
    Number *factor; // of one unit, in base units
    Number *offset; // what 0 of the unit is in base units; NULL for none
    gint references;
};

// Kinds of the table.
#define LENGTH                                                                                     \
    {                                                                                              \
        .length = 1                                                                                \
    }
#define VOLUME                                                                                     \
    {                                                                                              \
        .length = 3                                                                                \
    }
#define MASS                                                                                       \
    {                                                                                              \
        .mass = 1                                                                                  \
    }
#define TIME                                                                                       \
    {                                                                                              \
        .time = 1                                                                                  \
    }
#define ANGLE                                                                                      \
    {                                                                                              \
        .angle = 1                                                                                 \
    }
#define SPEED                                                                                      \
    {                                                                                              \
        .angle = 1, .time = -1                                                                     \
    }
#define TEMPERATURE                                                                                \
    {                                                                                              \
        .temperature = 1                                                                           \
    }
#define FORCE                                                                                      \
    {                                                                                              \
        .length = 1, .mass = 1, .time = -2                                                         \
    }
#define TORQUE                                                                                     \
    {                                                                                              \
        .length = 2, .mass = 1, .time = -2                                                         \
    }
#define PRESSURE                                                                                   \
    {                                                                                              \
        .length = -1, .mass = 1, .time = -2                                                        \
    }

// One row per unit. `factor` and `offset` are exact, in m kg s ° K. A joined unit stands here only
// where its parts cannot say it (psi) or its spelling has no joint (Nm).
static const UnitListed UNITS[] = {
    {"mm", "", "0.001", NULL, LENGTH},
    {"cm", "", "0.01", NULL, LENGTH},
    {"m", "", "1", NULL, LENGTH},
    {"µm", "μm um micron microns", "0.000001", NULL, LENGTH},
    {"in", "\" ″ inch inches", "0.0254", NULL, LENGTH},
    {"thou", "mil mils", "0.0000254", NULL, LENGTH},
    {"ft", "' foot feet", "0.3048", NULL, LENGTH},
    {"cc", "ccm", "0.000001", NULL, VOLUME},
    {"ml", "mL", "0.000001", NULL, VOLUME},
    {"l", "L litre litres liter liters", "0.001", NULL, VOLUME},
    {"g", "gram grams", "0.001", NULL, MASS},
    {"kg", "", "1", NULL, MASS},
    {"lb", "lbs", "0.45359237", NULL, MASS},
    {"oz", "", "0.028349523125", NULL, MASS},
    {"s", "sec second seconds", "1", NULL, TIME},
    {"min", "mins minute minutes", "60", NULL, TIME},
    {"h", "hr hrs hour hours", "3600", NULL, TIME},
    {"d", "day days", "86400", NULL, TIME},
    {"°", "deg degree degrees", "1", NULL, ANGLE},
    {"arcmin", "", "1/60", NULL, ANGLE},
    {"arcsec", "", "1/3600", NULL, ANGLE},
    {"turn", "turns rev revs", "360", NULL, ANGLE},
    {"rpm", "r/min", "6", NULL, SPEED},
    {"K", "", "1", NULL, TEMPERATURE},
    {"°C", "℃ degC C", "1", "273.15", TEMPERATURE},
    {"°F", "℉ degF F", "5/9", "45967/180", TEMPERATURE}, // 459.67 × 5/9
    {"N", "", "1", NULL, FORCE},
    {"kN", "", "1000", NULL, FORCE},
    {"kgf", "kp", "9.80665", NULL, FORCE},
    {"lbf", "", "4.4482216152605", NULL, FORCE},
    {"N·m", "Nm N.m N-m", "1", NULL, TORQUE},
    {"N·cm", "Ncm cN·m cNm", "0.01", NULL, TORQUE},
    {"kgf·m", "kgf-m kgm kg-m mkgf", "9.80665", NULL, TORQUE},
    {"kgf·cm", "kgf-cm kg-cm", "0.0980665", NULL, TORQUE},
    {"lbf·ft", "lbf-ft lb-ft lbft lb·ft ft·lb ft·lbf ft-lb ft-lbf ft-lbs ftlb",
     "1.3558179483314004", NULL, TORQUE},
    {"lbf·in", "lbf-in lb-in lbin lb·in in·lb in·lbf in-lb in-lbf in-lbs inlb",
     "0.1129848290276167", NULL, TORQUE},
    {"Pa", "", "1", NULL, PRESSURE},
    {"kPa", "", "1000", NULL, PRESSURE},
    {"MPa", "N/mm²", "1000000", NULL, PRESSURE},
    {"bar", "", "100000", NULL, PRESSURE},
    {"mbar", "hPa", "100", NULL, PRESSURE},
    {"psi", "lbf/in² PSI", "444822161.52605/64516", NULL, PRESSURE}, // lbf / (25.4 mm)²
    {"kgf/cm²", "kg/cm² kg/cm2 kgf/cm2 kp/cm²", "98066.5", NULL, PRESSURE},
    {"inHg", "", "3386.388640341", NULL, PRESSURE}, // 25.4 × 13.5951 × 9.80665
    {"mmHg", "", "133.322387415", NULL, PRESSURE},  // 13.5951 × 9.80665
    {"‰", "permille", "0.001", NULL, {0}},
    {":1", "", "1", NULL, {0}},
    {"%", "percent", "0.01", NULL, {0}},
};

static const struct {
    Kind kind;
    const char *text;
} KINDS[] = {
    {{0}, "a pure number"},
    {LENGTH, "a length"},
    {{.length = 2}, "an area"},
    {VOLUME, "a volume"},
    {MASS, "a mass"},
    {TIME, "a time"},
    {ANGLE, "an angle"},
    {SPEED, "a speed of turning"},
    {TEMPERATURE, "a temperature"},
    {FORCE, "a force"},
    {TORQUE, "a torque"},
    {PRESSURE, "a pressure"},
    {{.length = 1, .time = -1}, "a speed"},
};

char *kind_text(Kind kind)
{
    for (gsize i = 0; i < G_N_ELEMENTS(KINDS); i++) {
        if (kind_equal(KINDS[i].kind, kind)) {
            return g_strdup(KINDS[i].text);
        }
    }
    const char *names[] = {"m", "kg", "s", "°", "K"};
    gint exponents[] = {kind.length, kind.mass, kind.time, kind.angle, kind.temperature};
    GString *text = g_string_new("a value in ");
    const char *joint = "";
    for (gsize i = 0; i < G_N_ELEMENTS(names); i++) {
        if (exponents[i] == 0) {
            continue;
        }
        g_string_append_printf(text, "%s%s", joint, names[i]);
        if (exponents[i] != 1) {
            g_string_append_printf(text, "^%d", exponents[i]);
        }
        joint = "·";
    }
    return g_string_free(text, FALSE);
}

static Unit *unit_new(const char *text, Kind kind, Number *factor, Number *offset)
{
    Unit *unit = g_new0(Unit, 1);
    *unit = (Unit){g_strdup(text), kind, factor, offset, 1};
    return unit;
}

static gboolean row_has(const UnitListed *row, const char *text, gsize length)
{
    if (strlen(row->text) == length && strncmp(row->text, text, length) == 0) {
        return TRUE;
    }
    for (const char *word = row->spellings; *word;) {
        gsize size = strcspn(word, " ");
        if (size == length && strncmp(word, text, length) == 0) {
            return TRUE;
        }
        word += size + (word[size] == ' ');
    }
    return FALSE;
}

static const UnitListed *find_row(const char *text, gsize length)
{
    for (gsize i = 0; i < G_N_ELEMENTS(UNITS); i++) {
        if (row_has(&UNITS[i], text, length)) {
            return &UNITS[i];
        }
    }
    return NULL;
}

// A torque whose two parts a blank joins: `lbf ft`. Not `lb in`: in lines `in` goes before a step.
static const UnitListed *torque_of_two(const char *text, gsize first, gsize second)
{
    static const char *const joints[] = {"·", "-"};
    const char *other = text + first + 1;
    const UnitListed *row = NULL;
    gboolean can = first && second && !(second == 2 && strncmp(other, "in", 2) == 0);
    for (gsize i = 0; i < G_N_ELEMENTS(joints) && can && !row; i++) {
        g_autofree char *joined =
            g_strdup_printf("%.*s%s%.*s", (int)first, text, joints[i], (int)second, other);
        row = find_row(joined, strlen(joined));
    }
    return row && kind_equal(row->kind, (Kind)TORQUE) ? row : NULL;
}

static Unit *unit_from_row(const UnitListed *row)
{
    Number *offset = row->offset ? number_from_text(row->offset, NULL) : NULL;
    return unit_new(row->text, row->kind, number_from_text(row->factor, NULL), offset);
}

static const struct {
    const char *text;
    gint exponent;
} POWERS[] = {{"²", 2}, {"³", 3}, {"2", 2}, {"3", 3}};

// Takes a power off the end of a part: `mm²`, `mm2`. *length shrinks to what is before it.
static gint power_of(const char *text, gsize *length)
{
    for (gsize i = 0; i < G_N_ELEMENTS(POWERS); i++) {
        gsize size = strlen(POWERS[i].text);
        if (*length > size && strncmp(text + *length - size, POWERS[i].text, size) == 0) {
            *length -= size;
            return POWERS[i].exponent;
        }
    }
    return 1;
}

// One part of a joined unit, with its power; NULL if there is none of that name. A temperature with
// an offset cannot be a part.
static Unit *unit_part(const char *text, gsize length)
{
    gint exponent = power_of(text, &length);
    const UnitListed *row = find_row(text, length);
    if (row == NULL || row->offset) {
        return NULL;
    }
    g_autoptr(Number) factor = number_from_text(row->factor, NULL);
    const char *mark = exponent == 2 ? "²" : exponent == 3 ? "³" : "";
    g_autofree char *shown = g_strconcat(row->text, mark, NULL);
    return unit_new(shown, kind_power(row->kind, exponent), number_power(factor, exponent), NULL);
}

static Unit *join(const Unit *one, const char *joint, const Unit *other)
{
    gboolean over = joint[0] == '/';
    g_autofree char *text = g_strconcat(one->text, over ? "/" : "·", other->text, NULL);
    Kind kind = over ? kind_divide(one->kind, other->kind) : kind_multiply(one->kind, other->kind);
    Number *factor = over ? number_divide(one->factor, other->factor)
                          : number_multiply(one->factor, other->factor);
    return unit_new(text, kind, factor, NULL);
}

// The length of the text before the next joint.
static gsize part_length(const char *text)
{
    const char *dot = strstr(text, "·");
    gsize slash = strcspn(text, "/");
    return dot && (gsize)(dot - text) < slash ? (gsize)(dot - text) : slash;
}

// `lbf·ft/min`: the longest front that is a row of the table, then part by part.
static Unit *unit_joined(const char *text)
{
    g_autoptr(Unit) unit = NULL;
    const char *joint = "";
    for (int parts = 0; parts < 6; parts++) {
        gsize length = part_length(text);
        gsize two = length + (g_str_has_prefix(text + length, "·") ? 2 : 0);
        two = two > length ? two + part_length(text + two) : length;
        Unit *part = unit_part(text, two); // `N·m` before `N`
        if (part == NULL) {
            part = unit_part(text, length);
        } else {
            length = two;
        }
        if (part == NULL) {
            return NULL;
        }
        Unit *joined = unit ? join(unit, joint, part) : unit_copy(part);
        unit_free(part);
        unit_free(unit);
        unit = joined;
        joint = text + length;
        if (*joint == '\0') {
            return g_steal_pointer(&unit);
        }
        text = joint + (*joint == '/' ? 1 : 2);
    }
    return NULL;
}

static void refuse_unit(const char *text, const Unit *wanted, GError **error)
{
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    for (gsize i = 0; i < G_N_ELEMENTS(UNITS); i++) {
        if (!wanted || kind_equal(UNITS[i].kind, wanted->kind)) {
            g_ptr_array_add(names, g_strdup(UNITS[i].text));
        }
    }
    const char *near = text_nearest(text, (const char *const *)names->pdata, names->len);
    g_autofree char *clean = text_clean(text, (gssize)strnlen(text, 60));
    g_autofree char *hint =
        near     ? g_strdup_printf("did you mean `%s`?", near)
        : wanted ? g_strdup_printf("write it in %s", unit_text(wanted))
                 : g_strdup("write one such as mm, in, N·m, lbf·ft, °, bar, psi, g, min or %");
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, "there is no unit `%s`; %s", clean,
                hint);
}

Unit *unit_parse_for(const char *text, const Unit *wanted, GError **error)
{
    gsize length = strlen(text), first = strcspn(text, " ");
    const UnitListed *row =
        first < length ? torque_of_two(text, first, length - first - 1) : find_row(text, length);
    Unit *unit = row ? unit_from_row(row) : unit_joined(text);
    if (unit == NULL) {
        refuse_unit(text, wanted, error);
    }
    return unit;
}

Unit *unit_parse(const char *text, GError **error)
{
    return unit_parse_for(text, NULL, error);
}

static gboolean unit_letter(gunichar letter)
{
    return g_unichar_isalpha(letter) || letter == 0xB0 || letter == '"' || letter == 0x2033 ||
           letter == 0x2103 || letter == 0x2109;
}

// Whether what follows `/`, `·` or a tight hyphen goes on with the unit.
static gboolean goes_on(const char *text)
{
    return unit_letter(g_utf8_get_char(text));
}

// Whether a power stands at `at`, behind what `text` begins with: `mm²`, `mm2`, but not the next
// number in `12°30'`.
static gboolean is_power(const char *text, const char *at)
{
    gunichar letter = g_utf8_get_char(at);
    if (letter == 0xB2 || letter == 0xB3) {
        return TRUE;
    }
    return (letter == '2' || letter == '3') && at > text && g_ascii_isalpha(at[-1]) &&
           !g_ascii_isdigit(at[1]);
}

// A blank and a word behind the span that go on with it: `lbf ft`; 0 for none.
static gsize blank_span(const char *text, gsize span)
{
    gsize second = 0;
    while (text[span] == ' ' && g_ascii_isalpha(text[span + 1 + second]))
        second++;
    return torque_of_two(text, span, second) ? 1 + second : 0;
}

gsize unit_span(const char *text)
{
    if (text[0] == '%' || text[0] == '\'') {
        return 1;
    }
    if (g_str_has_prefix(text, "‰")) {
        return strlen("‰");
    }
    if (g_str_has_prefix(text, ":1") && !g_ascii_isdigit(text[2])) {
        return 2;
    }
    const char *at = text;
    while (*at) {
        gunichar letter = g_utf8_get_char(at);
        gboolean power = is_power(text, at);
        gboolean joint = letter == '/' || letter == 0xB7 || letter == '-' || letter == '.';
        const char *next = g_utf8_next_char(at);
        if (!unit_letter(letter) && (at == text || !(power || (joint && goes_on(next))))) {
            break;
        }
        at = next;
    }
    gsize span = (gsize)(at - text);
    return span + blank_span(text, span);
}

gboolean unit_listed(gsize index, UnitListed *unit)
{
    if (index >= G_N_ELEMENTS(UNITS)) {
        return FALSE;
    }
    *unit = UNITS[index];
    return TRUE;
}

Unit *unit_copy(const Unit *unit)
{
    Unit *shared = (Unit *)unit; // only the count is written
    shared->references++;
    return shared;
}

void unit_free(Unit *unit)
{
    if (unit == NULL || --unit->references > 0) {
        return;
    }
    g_free(unit->text);
    number_free(unit->factor);
    number_free(unit->offset);
    g_free(unit);
}

const char *unit_text(const Unit *unit)
{
    return unit->text;
}

Kind unit_kind(const Unit *unit)
{
    return unit ? unit->kind : (Kind){0};
}

gboolean unit_equal(const Unit *one, const Unit *other)
{
    return strcmp(one->text, other->text) == 0;
}

Number *unit_width_to_base(const Unit *unit, const Number *width)
{
    return unit ? number_multiply(width, unit->factor) : number_copy(width);
}

Number *unit_width_from_base(const Unit *unit, const Number *base)
{
    return unit ? number_divide(base, unit->factor) : number_copy(base);
}

Number *unit_to_base(const Unit *unit, const Number *number)
{
    Number *base = unit_width_to_base(unit, number);
    if (unit == NULL || unit->offset == NULL) {
        return base;
    }
    Number *moved = number_add(base, unit->offset);
    number_free(base);
    return moved;
}

Number *unit_from_base(const Unit *unit, const Number *base)
{
    if (unit == NULL || unit->offset == NULL) {
        return unit_width_from_base(unit, base);
    }
    g_autoptr(Number) moved = number_subtract(base, unit->offset);
    return unit_width_from_base(unit, moved);
}

Unit *unit_of_difference(const Unit *unit)
{
    return unit->offset ? unit_from_row(find_row("K", 1)) : unit_copy(unit);
}

static char *show_digits(const Unit *unit, const Number *base, const char *digits)
{
    const char *mark = number_is_approximate(base) ? "≈" : "";
    if (unit == NULL) {
        return g_strconcat(mark, digits, NULL);
    }
    const char *space = strcmp(unit->text, "°") == 0 ? "" : " "; // ISO 80000-1:2009, 7.1.4
    return g_strconcat(mark, digits, space, unit->text, NULL);
}

char *unit_show(const Unit *unit, const Number *base, guint decimals)
{
    g_autoptr(Number) number = unit_from_base(unit, base);
    g_autofree char *digits = number_decimal(number, decimals);
    return show_digits(unit, base, digits);
}

char *unit_show_short(const Unit *unit, const Number *base)
{
    g_autoptr(Number) number = unit_from_base(unit, base);
    g_autofree char *digits = number_short(number);
    return show_digits(unit, base, digits);
}
