#include <check.h>
#include <standbook/value/formula.h>
#include <stdlib.h>
#include <string.h>

// An invented workshop: every name with its unit, its axes (`name: labels; …`) and its readings.
typedef struct {
    const char *name, *unit, *axes, *values;
} Known;

static const Known KNOWN[] = {
    {"bore", "mm", "cylinder:1 2;direction:T L;height:top mid bottom",
     "80.01 80.02 80.04 80.00 80.03 80.05 80.10 80.10 80.12 80.11 80.11 80.11"},
    {"skirt", "mm", "cylinder:1 2", "79.95 80.05"},
    {"bolt length", "mm", "bolt:1 2;free/tight:free tight", "50 50.2 50.1 50.25"},
    {"compression", "bar", "cylinder:1 2", "10 8"},
    {"turning torque", "N·m", "pistons:0 1 2", "10 14 19"},
    {"big-end bore", "mm", "", "45"},
    {"housing", "mm", "main:1 2", "50 51"},
    {"wall", "mm", "grade:A B", "1 2"},
    {"pan depth", "mm", "", "145.9"},
    {"pan gasket", "mm", "", "1.5"},
    {"maker's end gap", "mm", "", "0.3"},
    {"maker’s play", "mm", "", "0.2"},
    {"stop", "mm", "before/after:before after", "2 1"},
    {"run-down torque", "N·m", "", "6"},
    {"min", "mm", "", "3"},
    {"leaf", "mm", "place:1 2", "0.05 <0.03"},
};

static const char *const NAMES[] = {"bore",
                                    "skirt",
                                    "bolt length",
                                    "compression",
                                    "turning torque",
                                    "big-end bore",
                                    "housing",
                                    "wall",
                                    "pan depth",
                                    "pan gasket",
                                    "maker's end gap",
                                    "maker’s play",
                                    "stop",
                                    "run-down torque",
                                    "min",
                                    "leaf",
                                    NULL};

static const Known *find_known(const char *name)
{
    for (gsize i = 0; i < G_N_ELEMENTS(KNOWN); i++) {
        if (strcmp(KNOWN[i].name, name) == 0) {
            return &KNOWN[i];
        }
    }
    return NULL;
}

static gboolean kind_of(const char *name, Kind *kind, gpointer user)
{
    (void)user;
    const Known *known = find_known(name);
    if (known == NULL) {
        return FALSE;
    }
    g_autoptr(Unit) unit = unit_parse(known->unit, NULL);
    *kind = unit_kind(unit);
    return TRUE;
}

static Array *shape(const char *text)
{
    g_autoptr(GPtrArray) axes = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    g_auto(GStrv) parts = g_strsplit(text, ";", -1);
    for (gsize i = 0; parts[i]; i++) {
        g_auto(GStrv) halves = g_strsplit(parts[i], ":", 2);
        g_auto(GStrv) labels = g_strsplit(halves[1], " ", -1);
        g_ptr_array_add(axes, axis_new(halves[0], (const char *const *)labels));
    }
    return array_new((const Axis *const *)axes->pdata, axes->len);
}

static Array *value_of(const char *name, gpointer user)
{
    (void)user;
    const Known *known = find_known(name);
    if (known == NULL) {
        return NULL;
    }
    Array *array = shape(known->axes);
    g_autoptr(Unit) unit = unit_parse(known->unit, NULL);
    g_auto(GStrv) values = g_strsplit(known->values, " ", -1);
    for (gsize i = 0; values[i]; i++) {
        Reading reading;
        ck_assert(reading_parse(values[i], unit, &reading, NULL, NULL));
        gint source = (gint)(known - KNOWN) * 100 + (gint)i;
        array_set_reading(array, i, reading.value, reading.bound, source, 0);
        reading_clear(&reading);
    }
    return array;
}

static const FormulaContext CONTEXT = {
    .kind = kind_of, .value = value_of, .names = NAMES, .first_doubt = -1};

// `value value …` of the result in `unit`, the first place named before a colon if it has axes.
static char *work_out(const char *text, const char *unit_name)
{
    GError *error = NULL;
    g_autoptr(Formula) formula = formula_parse(text, NULL, &error);
    ck_assert_msg(formula != NULL, "%s: %s", text, error ? error->message : "");
    Kind kind;
    ck_assert_msg(formula_kind(formula, &CONTEXT, &kind, NULL, &error), "%s: %s", text,
                  error ? error->message : "");
    g_autoptr(Unit) unit = *unit_name ? unit_parse(unit_name, NULL) : NULL;
    ck_assert_msg(kind_equal(kind, unit_kind(unit)), "%s", text);
    g_autoptr(Array) array = formula_evaluate(formula, &CONTEXT, NULL, &error);
    ck_assert_msg(array != NULL, "%s: %s", text, error ? error->message : "");
    GString *result = g_string_new(NULL);
    static const char *const bounds[] = {"", "<", ">"};
    for (gsize i = 0; i < array_size(array); i++) {
        const Place *place = array_place(array, i);
        g_autoptr(Number) shown = place->value ? unit_from_base(unit, place->value) : NULL;
        g_autofree char *number = shown ? number_text(shown) : g_strdup("open");
        g_string_append_printf(result, "%s%s%s", i ? " " : "", bounds[place->bound], number);
    }
    return g_string_free(result, FALSE);
}

START_TEST(the_formulas_of_a_plan)
{
    static const struct {
        const char *text, *unit, *result;
    } rows[] = {
        {"bore[T, mid] - skirt", "mm", "0.07 0.05"},
        {"max(range(bore over height) over direction)", "mm", "0.05 0.02"},
        {"range(bore over direction, height)", "mm", "0.05 0.02"},
        {"bolt length[tight] - bolt length[free]", "mm", "0.2 0.15"},
        {"min(compression) / max(compression)", "%", "80"},
        {"housing - big-end bore - 2 * wall", "mm", "3 1 4 2"},
        {"turning torque - turning torque[pistons - 1]", "N·m", "4 5"},
        {"(stop[before] - stop[after]) / 2", "mm", "0.5"},
        {"(stop[before]-stop[after])/2", "mm", "0.5"}, // behind ] a minus is a minus
        {"pan depth - 135.9 mm + pan gasket", "mm", "11.5"},
        {"60 N·m + run-down torque", "N·m", "66"},
        {"maker's end gap - maker’s play", "mm", "0.1"},
        {"0.3 % * skirt", "mm", "0.23985 0.24015"},
        {"max(skirt, 80 mm)", "mm", "80 80.05"},
        {"mean(compression)", "bar", "9"},
        {"sum(compression) - 1 bar", "bar", "17"},
        {"min", "mm", "3"}, // a name where no bracket follows
        {"min(min)", "mm", "3"},
        {"skirt[1]", "mm", "79.95"},
        {"skirt[cylinder 2]", "mm", "80.05"},
        {"min(leaf)", "mm", "<0.03"},
        {"max(leaf)", "mm", "0.05"},
        {"leaf - 0.01 mm", "mm", "0.04 open"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *result = work_out(rows[i].text, rows[i].unit);
        ck_assert_msg(strcmp(result, rows[i].result) == 0, "%s = %s", rows[i].text, result);
    }
}
END_TEST

START_TEST(numbers_and_precedence)
{
    static const struct {
        const char *text, *unit, *result;
    } rows[] = {
        {"2 - 5/8", "", "1.375"},    {"2-5/8", "", "2.625"},
        {"2 5/8 in", "in", "2.625"}, {"3/8 in", "mm", "9.525"},
        {"1 / 3/8", "", "8/3"},      {"1 + 2 * 3", "", "7"},
        {"10 - 3 - 2", "", "5"},     {"12 / 3 / 2", "", "2"},
        {"-2^2", "", "-4"},          {"(-2)^2", "", "4"},
        {"2^-1", "", "0.5"},         {"2²", "", "4"},
        {"2 * -3", "", "-6"},        {"5 −3", "", "2"},
        {"4 × 3 ÷ 2", "", "6"},      {"sqrt(9/4)", "", "1.5"},
        {"abs(3 - 5)", "", "2"},     {"sqrt(16 mm²)", "mm", "4"},
        {"3 mm * 2 mm", "mm²", "6"}, {"1 lbf * 1 ft", "lbf·ft", "1"},
        {"-40 °C", "°F", "-40"},     {"27315 K / 0 °C", "", "100"},
        {"25 °C - 20 °C", "K", "5"}, {"range(3, 7, 5)", "", "4"},
        {"1 ± 0.2 + 1", "", "2"},    {"(2 mm)^3", "mm³", "8"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *result = work_out(rows[i].text, rows[i].unit);
        ck_assert_msg(strcmp(result, rows[i].result) == 0, "%s = %s", rows[i].text, result);
    }
}
END_TEST

START_TEST(what_is_no_formula_is_refused_at_its_column)
{
    static const struct {
        const char *text;
        gsize offset;
        const char *says;
    } rows[] = {
        {"", 0, "missing at the end"},
        {"5-3", 1, "subtract"},
        {"2-40/32", 2, "`2 + 40/32` or `2 - 40/32`"},
        {"bore[T]-5-3", 9, "subtract"},
        {"5 mm bore", 5, "`mm` is its unit"},
        {"2 bore", 2, "no unit"},
        {"2 3", 2, "side by side"},
        {"(1 + 2", 6, "missing at the end"},
        {"1 + 2)", 5, "closes nothing"},
        {"1 +", 3, "missing at the end"},
        {"* 2", 0, "before `*`"},
        {"x^10", 2, "one whole digit"},
        {"x^1.5", 2, "one whole digit"},
        {"median(x)", 0, "no function `median`"},
        {"a b (c)", 0, "no function `a b`"},
        {"max(x over)", 10, "name of an axis"},
        {"max(x, y over z)", 9, "one value"},
        {"abs(x over z)", 6, "one value"},
        {"abs(x, y)", 0, "takes one value"},
        {"x[]", 2, "a place"},
        {"x[1, ]", 5, "a place"},
        {"x[1", 3, "missing"},
        {"over", 0, "`over` is no name"},
        {"½ + 5-3", 0, "before `½`"},
        {"ä + 5-3", 5, "subtract"}, // columns are characters
        {"x, y", 1, "`,` cannot stand here"},
        {"x ° y", 2, "cannot stand here"},
        {"1/0", 2, "over 0"},
        {"8 ± mm", 4, "number is missing"},
        {"x\xff", 1, "UTF-8"},
        {"--x", 1, "before `-`"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        gsize offset = 999;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(formula_parse(rows[i].text, &offset, &error) == NULL, "%s", rows[i].text);
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s: %s", rows[i].text,
                      error->message);
        ck_assert_msg(offset == rows[i].offset, "%s: %zu %s", rows[i].text, offset, error->message);
    }
}
END_TEST

START_TEST(sizes_are_bounded)
{
    static const struct {
        int brackets;
        gboolean fine;
    } rows[] = {{64, TRUE}, {65, FALSE}, {500, FALSE}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *open = g_strnfill((gsize)rows[i].brackets, '(');
        g_autofree char *close = g_strnfill((gsize)rows[i].brackets, ')');
        g_autofree char *text = g_strconcat(open, "1", close, NULL);
        g_autoptr(GError) error = NULL;
        g_autoptr(Formula) formula = formula_parse(text, NULL, &error);
        ck_assert((formula != NULL) == rows[i].fine);
    }
    g_autofree char *blanks = g_strnfill(FORMULA_LENGTH - 1, ' ');
    g_autofree char *longest = g_strconcat(blanks, "1", NULL);
    g_autofree char *longer = g_strconcat(longest, "1", NULL);
    g_autoptr(Formula) formula = formula_parse(longest, NULL, NULL);
    ck_assert_ptr_nonnull(formula);
    gsize offset = 0;
    ck_assert_ptr_null(formula_parse(longer, &offset, NULL));
    ck_assert_uint_eq(offset, FORMULA_LENGTH);
}
END_TEST

START_TEST(kinds_are_checked)
{
    static const struct {
        const char *text;
        gsize offset;
        const char *says;
    } rows[] = {
        {"bore - 89", 7, "a length and a pure number"},
        {"bore / 0 mm", 7, "divides by 0"},
        {"bore + compression", 7, "a length and a pressure"},
        {"max(bore, compression)", 10, "compared"},
        {"sqrt(bore)", 0, "no square root"},
        {"bore - skrit", 7, "did you mean `skirt`?"},
        {"bore-skirt", 0, "`bore - skirt`"},
        {"big-end bore-skirt", 0, "`big-end bore - skirt`"},
        {"((bore^9)^9)^9", 2, "beyond any"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Formula) formula = formula_parse(rows[i].text, NULL, NULL);
        ck_assert_msg(formula != NULL, "%s", rows[i].text);
        gsize offset = 999;
        g_autoptr(GError) error = NULL;
        Kind kind;
        ck_assert_msg(!formula_kind(formula, &CONTEXT, &kind, &offset, &error), "%s", rows[i].text);
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s", error->message);
        ck_assert_msg(offset == rows[i].offset, "%s: %zu", rows[i].text, offset);
    }
}
END_TEST

START_TEST(shapes_are_checked)
{
    static const struct {
        const char *text;
        gsize offset;
        const char *says;
    } rows[] = {
        {"max(bore over plane)", 14, "no axis `plane`"},
        {"bore[T, middle]", 8, "no place"},
        {"bore - nothing", 7, "nothing called"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Formula) formula = formula_parse(rows[i].text, NULL, NULL);
        gsize offset = 999;
        g_autoptr(GError) error = NULL;
        ck_assert_ptr_null(formula_evaluate(formula, &CONTEXT, &offset, &error));
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s", error->message);
        ck_assert_msg(offset == rows[i].offset, "%s: %zu", rows[i].text, offset);
    }
}
END_TEST

START_TEST(names_units_and_doubts_are_told)
{
    g_autoptr(Formula) formula =
        formula_parse("max(big-end bore, skirt) - skirt + 1.50 ± 0.2 - 2 * 3", NULL, NULL);
    ck_assert_uint_eq(formula_name_count(formula), 2);
    ck_assert_str_eq(formula_name(formula, 0), "big-end bore");
    ck_assert_uint_eq(formula_name_offset(formula, 1), 18);
    ck_assert_uint_eq(formula_doubt_count(formula), 1);
    ck_assert_uint_eq(formula_term_decimals(formula), 2);
    ck_assert_ptr_null(formula_term_unit(formula, NULL));
    ck_assert_ptr_null(formula_constant(formula));
    g_autoptr(Formula) stage = formula_parse("60 + 2 * 5", NULL, NULL);
    g_autoptr(Unit) torque = unit_parse("N·m", NULL);
    formula_give_unit(stage, torque);
    ck_assert_str_eq(unit_text(formula_term_unit(stage, NULL)), "N·m");
    Kind kind;
    g_autoptr(GError) error = NULL;
    ck_assert(!formula_kind(stage, &CONTEXT, &kind, NULL, &error)); // 2 * 5 stays pure
    g_autoptr(Formula) pi = formula_parse("pi * 2", NULL, NULL);
    g_autoptr(Number) value = formula_constant(pi);
    ck_assert(number_is_approximate(value));
    g_autofree char *digits = number_decimal(value, 10);
    ck_assert_str_eq(digits, "6.2831853072"); // OEIS A019692
}
END_TEST

// The readings of a fold of a fold: the weight lands on the extremes and nowhere else.
START_TEST(weights_follow_the_readings)
{
    g_autoptr(Formula) formula =
        formula_parse("max(range(bore over height) over direction) + 1 mm ± 0.2", NULL, NULL);
    ck_assert_ptr_null(formula); // the unit stands behind the ±
    formula = formula_parse("max(range(bore over height) over direction) + 1 ± 0.2 mm", NULL, NULL);
    g_autoptr(Array) array = formula_evaluate(formula, &CONTEXT, NULL, NULL);
    const GArray *weights = array_place(array, 0)->weights;
    ck_assert_uint_eq(weights->len, 3);
    const Weight *constant = &g_array_index(weights, Weight, 0);
    ck_assert_int_eq(constant->source, -1);
    g_autofree char *doubt = number_text(constant->doubt);
    ck_assert_str_eq(doubt, "0.0002");
    ck_assert_int_eq(g_array_index(weights, Weight, 1).source, 3); // L top, 80.00
    ck_assert_int_eq(g_array_index(weights, Weight, 2).source, 5); // L bottom, 80.05
}
END_TEST

START_TEST(towers_of_powers_stay_small)
{
    GString *text = g_string_new("7");
    for (int i = 0; i < 60; i++) {
        g_string_prepend_c(text, '(');
        g_string_append(text, "^9)");
    }
    g_autofree char *tower = g_string_free(text, FALSE);
    g_autoptr(Formula) formula = formula_parse(tower, NULL, NULL);
    ck_assert_ptr_nonnull(formula);
    g_autoptr(Array) array = formula_evaluate(formula, &CONTEXT, NULL, NULL);
    ck_assert_int_eq(array_place(array, 0)->state, PLACE_OPEN);
    ck_assert(strstr(array_place(array, 0)->note, "too large") != NULL);
}
END_TEST

START_TEST(a_sum_falls_into_its_terms)
{
    static const struct {
        const char *text, *terms;
    } sums[] = {
        {"bore[T, mid] - skirt", "+bore[T, mid] -skirt"},
        {" pan depth − pick-up depth + 1.5 mm ", "+pan depth -pick-up depth +1.5 mm"},
        {"(bore - skirt) - (pan depth + pan gasket)", "+bore -skirt -(pan depth + pan gasket)"},
        {"(bore + skirt) * 2 - 3", "+(bore + skirt) * 2 -3"},
        {"min(bore over height) - max(skirt)-1", "+min(bore over height) -max(skirt) -1"},
        {"abs(bore - skirt)", "+abs(bore - skirt)"},
        {"-bore + skirt", "+-bore +skirt"},
        {"(bore)", "+(bore)"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(sums); i++) {
        g_autoptr(Formula) formula = formula_parse(sums[i].text, NULL, NULL);
        g_autoptr(GArray) terms = formula_terms(formula);
        g_autoptr(GString) words = g_string_new(NULL);
        for (guint j = 0; j < terms->len; j++) {
            const FormulaTerm *term = &g_array_index(terms, FormulaTerm, j);
            g_string_append_printf(words, "%s%c%s", j ? " " : "", term->subtracted ? '-' : '+',
                                   formula_text(term->formula));
        }
        ck_assert_str_eq(words->str, sums[i].terms);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("formula");
    TCase *tcase = tcase_create("formula");
    tcase_add_test(tcase, the_formulas_of_a_plan);
    tcase_add_test(tcase, numbers_and_precedence);
    tcase_add_test(tcase, what_is_no_formula_is_refused_at_its_column);
    tcase_add_test(tcase, sizes_are_bounded);
    tcase_add_test(tcase, kinds_are_checked);
    tcase_add_test(tcase, shapes_are_checked);
    tcase_add_test(tcase, names_units_and_doubts_are_told);
    tcase_add_test(tcase, weights_follow_the_readings);
    tcase_add_test(tcase, a_sum_falls_into_its_terms);
    tcase_add_test(tcase, towers_of_powers_stay_small);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
