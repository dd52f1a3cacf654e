// The functions of the trade against published figures; the source stands beside each. Where there
// is none the figure is plain arithmetic, and the rule common practice.
#include <check.h>
#include <standbook/value/formula.h>
#include <standbook/value/trade.h>
#include <standbook/value/uncertainty.h>
#include <stdlib.h>
#include <string.h>

static const struct {
    const char *formula, *unit;
    guint decimals;
    const char *value, *doubt; // U, k = 2, to the same decimals; NULL: none is in it
} rows[] = {
    // Heywood, Internal Combustion Engine Fundamentals, ch. 2: V_d = π/4·B²·L, r_c = (V_d +
    // V_c)/V_c
    {"swept volume(86 mm, 86 mm)", "cc", 6, "499.557214", NULL},
    {"4 * swept volume(86 mm, 86 mm)", "cc", 4, "1998.2289", NULL},     // sold as 1998 cc
    {"8 * swept volume(4.00 in, 3.48 in)", "in³", 4, "349.8478", NULL}, // sold as 350 cubic inches
    {"clearance volume(45.0 cc, 87 mm, 0.70 mm, 86 mm, 0.20 mm, 3.0 cc)", "cc", 6, "53.323036",
     NULL},
    {"clearance volume(64.0 cc, 4.100 in, 0.041 in, 4.030 in, 0.025 in, 5.0 cc)", "cc", 6,
     "83.096047", NULL},
    {"clearance volume(62.0 cc, 97 mm, 1.20 mm, 96 mm, -0.10 mm, -12.0 cc)", "cc", 6, "58.143951",
     NULL},
    {"compression ratio(swept volume(86 mm, 86 mm), clearance volume(45.0 cc, 87 mm, 0.70 mm, "
     "86 mm, 0.20 mm, 3.0 cc))",
     "", 6, "10.368507", NULL},
    {"compression ratio(swept volume(4.030 in, 3.480 in), 83.096047 cc)", "", 6, "9.753868", NULL},
    {"compression ratio(500 cc, 50 cc)", "", 6, "11.000000", NULL},
    // dV = π/2·B·L·dB = 0.1162 cc, first order (JCGM 100:2008, 5.1.2)
    {"swept volume(86 ± 0.01 mm, 86 mm)", "cc", 4, "499.5572", "0.1162"},
    // ISO 286-1:2010: 50 H7/g6 has a clearance of 9 to 50 µm, 50 H7/p6 an interference of 1 to 42
    {"clearance(50.000 mm, 49.991 mm)", "µm", 0, "9", NULL},
    {"clearance(50.025 mm, 49.975 mm)", "µm", 0, "50", NULL},
    {"clearance(50.000 mm, 50.042 mm)", "µm", 0, "-42", NULL},
    // ISO 898-1:2013: M10 has 58.0 mm², by the formula 57.9895
    {"stress area(10 mm, 1.5 mm)", "mm²", 4, "57.9895", NULL},
    // F = E·A·δ/L (Shigley, 9th ed., ch. 8): 3/8-24, 9054.4 lbf; M10 of two sections, 36.3505 kN
    {"elastic stretch(9054.4 lbf, 1.60 in, 0.0878 in², 30000000 psi)", "in", 5, "0.00550", NULL},
    {"elastic stretch(36.3505 kN, 40 mm, 78.540 mm², 207000 MPa) + elastic stretch(36.3505 kN, 20 "
     "mm, 57.99 mm², 207000 MPa)",
     "mm", 5, "0.15000", NULL},
    // ISO 1:2022, L/(1 + α·ΔT), with steel of ISO 3650:1998, 11.5·10⁻⁶ ± 1.0·10⁻⁶ per kelvin:
    // ΔL = L·ΔT·U_α = 0.000496
    {"at20(62.000 mm, 12 °C, steel)", "mm", 7, "62.0057045", "0.0004961"},
    {"at20(62.000 mm, 53.6 °F, steel)", "mm", 7, "62.0057045", "0.0004961"},
    // below zero: 62 / (1 - 0.0000115 · 28), and ΔL = 62 · 28 · 0.000001
    {"at20(62.000 mm, -8 °C, steel)", "mm", 7, "62.0199704", "0.0017371"},
    // √(0.002² + (62 · 0.0000115 · 1)² + 0.000496²)
    {"at20(62.000 ± 0.002 mm, 12 ± 1 °C, steel)", "mm", 6, "62.005705", "0.002181"},
    // the coefficients of iron and aluminium are typical of handbooks, from memory
    {"at20(101.60 mm, 26 °C, iron)", "mm", 7, "101.5935996", "0.0006095"},
    {"at20(86.012 mm, 28 °C, aluminium)", "mm", 7, "85.9961767", "0.0013757"},
    // a steel micrometer at 24 °C, an aluminium part at 28 °C: R·(1 + α_m·4)/(1 + α_p·8);
    // √((R · 4 · 0.000001)² + (L · 8 · 0.000002)²)
    {"at20(86.012 mm, 28 °C, aluminium, 24 °C, steel)", "mm", 7, "86.0001325", "0.0014181"},
    // one material is one source of doubt: it goes out of a difference of equals
    {"at20(62 mm, 12 °C, steel) - at20(62 mm, 12 °C, steel)", "mm", 7, "0.0000000", "0.0000000"},
    // common practice, no published source
    {"hole wear(80.05 mm, 80.00 mm)", "mm", 2, "0.05", NULL},
    {"shaft wear(59.95 mm, 60.00 mm)", "mm", 2, "0.05", NULL},
    {"shim wanted(2.50 mm, 0.38 mm, 0.30 mm)", "mm", 2, "2.58", NULL},
    {"bolt stretch(60.132 ± 0.002 mm, 60.000 ± 0.002 mm)", "mm", 4, "0.1320", "0.0028"},
    {"spring rate(700 N, 250 N, 30 mm, 40 mm)", "N/mm", 1, "45.0", NULL},
    {"bind margin(36.0 mm, 9.5 mm, 25.0 mm)", "mm", 1, "1.5", NULL},
    {"midpoint(98°, 118°)", "°", 1, "108.0", NULL},
    {"midpoint(350°, 390°)", "°", 1, "370.0", NULL},
};

static const ReadingDoubt *no_reading(gint source, gpointer user)
{
    (void)source;
    (void)user;
    return NULL;
}

static char *doubt_of(const Place *place, const Unit *unit, guint decimals)
{
    g_autoptr(Number) variance = uncertainty_variance(place, no_reading, NULL);
    g_autoptr(Number) four = number_from_integer(4);
    g_autoptr(Number) square = number_multiply(variance, four);
    g_autoptr(Number) expanded = number_sqrt(square);
    g_autoptr(Number) shown = unit_width_from_base(unit, expanded);
    return number_decimal(shown, decimals);
}

START_TEST(each_row)
{
    const FormulaContext none = {.first_doubt = -1};
    g_autoptr(Formula) formula = formula_parse(rows[_i].formula, NULL, NULL);
    ck_assert_msg(formula != NULL, "%s", rows[_i].formula);
    g_autoptr(Unit) unit = *rows[_i].unit ? unit_parse(rows[_i].unit, NULL) : NULL;
    Kind kind;
    ck_assert(formula_kind(formula, &none, &kind, NULL, NULL));
    ck_assert(kind_equal(kind, unit_kind(unit)));
    g_autoptr(Array) array = formula_evaluate(formula, &none, NULL, NULL);
    g_autoptr(Number) shown = unit_from_base(unit, array_place(array, 0)->value);
    g_autofree char *value = number_decimal(shown, rows[_i].decimals);
    ck_assert_str_eq(value, rows[_i].value);
    g_autoptr(Number) zero = number_from_integer(0);
    g_autofree char *nothing = number_decimal(zero, rows[_i].decimals);
    g_autofree char *doubt = doubt_of(array_place(array, 0), unit, rows[_i].decimals);
    ck_assert_str_eq(doubt, rows[_i].doubt ? rows[_i].doubt : nothing);
}
END_TEST

static const struct {
    const char *formula, *fault;
} faults[] = {
    {"swept volume(86, 86 mm)",
     "13: `swept volume` takes as its bore a length, in mm or the like, and this is a pure number"},
    {"compression ratio(500 cc, 50 mm)",
     "26: `compression ratio` takes as its clearance a volume, in cc or the like, and this is a "
     "length"},
    {"swept volume(86 mm)", "0: write `swept volume(bore, stroke)`"},
    {"at20(62 mm, 12 °C)",
     "0: write `at20(length, temperature, material)` or `at20(length, temperature, material, gauge "
     "temperature, gauge material)`"},
    {"at20(62 mm, 12 °C, cheese)",
     "19: a material stands here: steel, iron, aluminium, brass, bronze, magnesium or titanium"},
    {"at20(62 mm, 12 °C, 3)",
     "19: a material stands here: steel, iron, aluminium, brass, bronze, magnesium or titanium"},
    {"at20(62 mm, 12 mm, steel)", "12: `at20` takes as its temperature a temperature, in °C or the "
                                  "like, and this is a length"},
    {"midpoint(98° over cylinder)",
     "13: `over` folds the axes of one value; use min, max, mean, range or sum of one value"},
};

START_TEST(each_fault)
{
    const FormulaContext none = {.first_doubt = -1};
    gsize offset = 0;
    Kind kind;
    g_autoptr(GError) error = NULL;
    g_autoptr(Formula) formula = formula_parse(faults[_i].formula, &offset, &error);
    ck_assert(!formula || !formula_kind(formula, &none, &kind, &offset, &error));
    g_autofree char *said = g_strdup_printf("%" G_GSIZE_FORMAT ": %s", offset, error->message);
    ck_assert_str_eq(said, faults[_i].fault);
}
END_TEST

static Array *nothing_of(const char *name, gpointer names)
{
    g_ptr_array_add(names, g_strdup(name));
    return array_new(NULL, 0);
}

// The formula of each function uses its parameters and nothing else.
START_TEST(each_function_uses_its_parameters)
{
    for (gsize i = 0; trade_function(i); i++) {
        const TradeFunction *function = trade_function(i);
        g_autoptr(Formula) formula = formula_parse(function->formula, NULL, NULL);
        ck_assert_msg(formula != NULL, "%s", function->name);
        ck_assert_uint_eq(formula_name_count(formula), trade_parameters(function));
        for (guint j = 0; j < trade_parameters(function); j++)
            ck_assert_msg(formula_uses(formula, function->parameters[j].name), "%s",
                          function->parameters[j].name);
    }
}
END_TEST

// Names of the plan may be those of the parameters: what is written in a call stands for itself.
START_TEST(arguments_are_not_mistaken_for_parameters)
{
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    const FormulaContext context = {.value = nothing_of, .user = names};
    g_autoptr(Formula) formula = formula_parse("swept volume(stroke, bore)", NULL, NULL);
    g_autoptr(Array) array = formula_evaluate(formula, &context, NULL, NULL);
    ck_assert_uint_eq(names->len, 2); // π/4 · stroke² · bore: in the order of the formula
    ck_assert_str_eq(names->pdata[0], "stroke");
    ck_assert_str_eq(names->pdata[1], "bore");
    ck_assert(formula_uses(formula, "bore"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("trade");
    TCase *tcase = tcase_create("trade");
    tcase_add_loop_test(tcase, each_row, 0, (int)G_N_ELEMENTS(rows));
    tcase_add_loop_test(tcase, each_fault, 0, (int)G_N_ELEMENTS(faults));
    tcase_add_test(tcase, each_function_uses_its_parameters);
    tcase_add_test(tcase, arguments_are_not_mistaken_for_parameters);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
