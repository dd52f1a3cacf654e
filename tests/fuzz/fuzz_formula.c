// Formulas, and limits: an input that begins with `|` is read as limits, any other as a formula,
// which is checked and worked out over a few checks of a shop.
#include "fuzz.h"

#include <standbook/value/formula.h>
#include <standbook/value/limits.h>
#include <standbook/value/uncertainty.h>

typedef struct {
    const char *name, *unit;
    const char *axes[2]; // `name label label …`
    int first, step;     // of its readings, in tenths
} Named;

static const Named NAMED[] = {
    {"bore", "mm", {"cylinder 1 2 3", "plane T L"}, 890, 1},
    {"skirt", "mm", {"cylinder 1 2 3 4", NULL}, 889, 2},
    {"wall", "mm", {"grade A B", NULL}, 15, 1},
    {"torque", "N·m", {NULL, NULL}, 400, 0},
    {"teeth", NULL, {NULL, NULL}, 0, 0},
    {"bore temperature", "°C", {NULL, NULL}, 2900, 0},
};

static const Named *find(const char *name)
{
    for (guint i = 0; i < G_N_ELEMENTS(NAMED); i++)
        if (strcmp(NAMED[i].name, name) == 0)
            return &NAMED[i];
    return NULL;
}

static gboolean kind_of(const char *name, Kind *kind, gpointer user)
{
    (void)user;
    const Named *named = find(name);
    if (!named)
        return FALSE;
    memset(kind, 0, sizeof *kind);
    g_autoptr(Unit) unit = named->unit ? unit_parse(named->unit, NULL) : NULL;
    if (unit)
        *kind = unit_kind(unit);
    return TRUE;
}

static Axis *axis_of(const char *words)
{
    g_auto(GStrv) all = g_strsplit(words, " ", -1);
    return axis_new(all[0], (const char *const *)all + 1);
}

// The last place but one is not needed, the last is open, another in doubt.
static Array *value_of(const char *name, gpointer user)
{
    (void)user;
    const Named *named = find(name);
    if (!named)
        return NULL;
    Axis *axes[2] = {NULL, NULL};
    gsize count = 0;
    for (; count < 2 && named->axes[count]; count++)
        axes[count] = axis_of(named->axes[count]);
    Array *array = array_new((const Axis *const *)axes, count);
    gsize size = array_size(array);
    for (gsize i = 0; i < size; i++) {
        Number *number = number_from_ratio((glong)(named->first + named->step * (int)i), 10);
        array_set_reading(array, i, number, BOUND_NONE, (gint)(i + 1), i == 1);
        number_free(number);
    }
    if (size > 3) {
        array_set_not_needed(array, size - 2);
        array_set_open(array, size - 1, NULL);
    }
    while (count > 0)
        axis_free(axes[--count]);
    return array;
}

static const ReadingDoubt *doubt_of(gint source, gpointer user)
{
    return source % 2 ? user : NULL;
}

static void must_be_sound(const Array *value, const ReadingDoubt *doubt)
{
    for (gsize i = 0; i < array_size(value); i++) {
        const Place *place = array_place(value, i);
        must((place->state == PLACE_VALUE) == (place->value != NULL), "a value has a number");
        must(place->read <= place->asked || place->asked == 0, "no more is read than asked");
        Number *variance = uncertainty_variance(place, doubt_of, (gpointer)doubt);
        must(number_sign(variance) >= 0, "u² is not below nought");
        number_free(variance);
    }
}

static void try_formula(const char *text)
{
    static const char *const names[] = {
        "bore", "skirt", "wall", "torque", "teeth", "bore temperature", NULL};
    const FormulaContext context = {
        .kind = kind_of, .value = value_of, .names = names, .first_doubt = -1};
    g_autoptr(Number) expanded = number_from_ratio(1, 500);
    const ReadingDoubt doubt = {.gauge = "G", .expanded = expanded, .graduation = expanded};
    GError *error = NULL;
    gsize offset = 0;
    Kind kind;
    g_autoptr(Formula) formula = formula_parse(text, &offset, &error);
    if (!formula) {
        must(offset <= strlen(text), "the column lies in the text");
        must_say(error);
        return;
    }
    if (!formula_kind(formula, &context, &kind, &offset, &error)) {
        must_say(error);
        return;
    }
    g_autoptr(Array) value = formula_evaluate(formula, &context, &offset, &error);
    if (!value)
        must_say(error);
    else
        must_be_sound(value, &doubt);
    number_free(formula_place(formula));
    number_free(formula_constant(formula));
    formula_free(formula_copy(formula));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    g_autofree char *text = fuzz_text(data, size);
    if (*text != '|') {
        try_formula(text);
        return 0;
    }
    GError *error = NULL;
    gsize offset = 0;
    g_autoptr(Unit) unit = unit_parse("mm", NULL);
    g_autoptr(Limits) limits = limits_parse(text + 1, unit, &offset, &error);
    if (limits)
        limits_free(limits_copy(limits));
    else
        must_say(error);
    return 0;
}
