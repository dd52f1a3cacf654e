#include <check.h>
#include <standbook/value/unit.h>
#include <stdlib.h>
#include <string.h>

static Unit *known(const char *text)
{
    GError *error = NULL;
    Unit *unit = unit_parse(text, &error);
    ck_assert_msg(unit != NULL, "%s: %s", text, error ? error->message : "");
    return unit;
}

static char *convert(const char *value, const char *from, const char *to)
{
    g_autoptr(Unit) one = known(from);
    g_autoptr(Unit) other = known(to);
    ck_assert(kind_equal(unit_kind(one), unit_kind(other)));
    g_autoptr(Number) number = number_from_text(value, NULL);
    g_autoptr(Number) base = unit_to_base(one, number);
    g_autoptr(Number) result = unit_from_base(other, base);
    return number_text(result);
}

// Exact factors: international yard and pound agreement 1959; g_n of the 3rd CGPM 1901;
// NIST SP 811:2008, appendix B.
START_TEST(exact_conversions)
{
    static const struct {
        const char *value, *from, *to, *result;
    } rows[] = {
        {"1", "in", "mm", "25.4"},
        {"1", "\"", "mm", "25.4"},
        {"1", "thou", "mm", "0.0254"},
        {"1", "mil", "µm", "25.4"},
        {"1", "lb", "g", "453.59237"},
        {"1", "oz", "g", "28.349523125"},
        {"22", "oz", "g", "623.68950875"},
        {"1", "lbf", "N", "4.4482216152605"},
        {"1", "kgf", "N", "9.80665"},
        {"1", "lbf·ft", "N·m", "1.3558179483314004"},
        {"1", "ft-lb", "Nm", "1.3558179483314004"},
        {"1", "lbf·in", "N·m", "0.1129848290276167"},
        {"1", "kgf·m", "N·m", "9.80665"},
        {"20", "lbf·ft", "lbf·in", "240"},
        {"65", "lbf·ft", "N·m", "88.128166641541026"},
        {"1", "bar", "kPa", "100"},
        {"1", "kgf/cm²", "kPa", "98.0665"},
        {"1", "in³", "cc", "16.387064"},
        {"350", "in3", "cc", "5735.4724"},
        {"1", "cm³", "ml", "1"},
        {"1", "l", "cc", "1000"},
        {"20", "°C", "°F", "68"},
        {"-40", "°C", "°F", "-40"},
        {"37.5", "°C", "°F", "99.5"},
        {"0", "°C", "K", "273.15"},
        {"200", "°F", "°C", "280/3"},
        {"1/4", "turn", "°", "90"},
        {"2", "h", "min", "120"},
        {"1", "d", "h", "24"},
        {"90", "%", "percent", "90"},
        {"1", "N/mm²", "MPa", "1"},
        {"1", "N·m/°", "N·m/turn", "360"},
        {"1", "rpm", "°/s", "6"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *result = convert(rows[i].value, rows[i].from, rows[i].to);
        ck_assert_msg(strcmp(result, rows[i].result) == 0, "%s %s = %s %s", rows[i].value,
                      rows[i].from, result, rows[i].to);
    }
}
END_TEST

// NIST SP 811:2008, appendix B, and GNU units 2.22 with the same digits.
START_TEST(rounded_conversions)
{
    static const struct {
        const char *value, *from, *to, *result;
        guint decimals;
    } rows[] = {
        {"1", "psi", "kPa", "6.89475729316836", 14},
        {"1", "bar", "psi", "14.5037737730209", 13},
        {"1", "N·m", "lbf·ft", "0.737562149277265", 15},
        {"1", "N·m", "lbf·in", "8.85074579132718", 14},
        {"1", "N·m", "kgf·m", "0.101971621297793", 15},
        {"1", "cc", "in³", "0.0610237440947323", 16},
        {"150", "psi", "bar", "10.342135940", 9},
        {"133", "N·m", "lbf·ft", "98.095765854", 9},
        {"22.5", "°C", "°F", "73", 0},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *exact = convert(rows[i].value, rows[i].from, rows[i].to);
        g_autoptr(Number) number = number_from_text(exact, NULL);
        g_autofree char *shown = number_decimal(number, rows[i].decimals);
        ck_assert_str_eq(shown, rows[i].result);
    }
}
END_TEST

START_TEST(unknown_units_are_refused)
{
    static const struct {
        const char *text, *says;
    } rows[] = {{"lbf·fr", "lbf·ft"}, {"", "write one"}, {"furlong", "write one"},
                {"mm·", "mm"},        {"/mm", "mm"},     {"°C/min", "no unit"},
                {"mmm", "mm"},        {"N··m", "N·m"},   {"\x1b[2J", "\\x1B[2J"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(GError) error = NULL;
        ck_assert_msg(unit_parse(rows[i].text, &error) == NULL, "%s", rows[i].text);
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s", error->message);
    }
}
END_TEST

START_TEST(only_units_of_the_kind_wanted_are_suggested)
{
    static const struct {
        const char *text, *wanted, *says;
    } rows[] = {{"mn", "mm", "did you mean `mm`?"},    {"mn", "N·m", "write it in N·m"},
                {"N·n", "N·m", "did you mean `N·m`?"}, {"barr", "psi", "did you mean `bar`?"},
                {"barr", "mm", "write it in mm"},      {"barr", NULL, "did you mean `bar`?"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(GError) error = NULL;
        g_autoptr(Unit) wanted = rows[i].wanted ? unit_parse(rows[i].wanted, NULL) : NULL;
        ck_assert_ptr_null(unit_parse_for(rows[i].text, wanted, &error));
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s", error->message);
    }
}
END_TEST

START_TEST(the_span_of_a_unit)
{
    static const struct {
        const char *text;
        gsize span;
    } rows[] = {{"mm + 3", 2},      {"N·m", 4},    {"% of", 1},
                {"°", 2},           {"ft-lb)", 5}, {"mm - x", 2},
                {"mm/2", 2},        {"N.m", 3},    {"mm.", 2},
                {"' ", 1},          {"mm²", 4},    {"kgf/cm2]", 7},
                {"3", 0},           {"²", 0},      {"lbf ft with W3", 6},
                {"ft lbs", 6},      {"N m", 3},    {"lb in Crank", 2},
                {"mm with G03", 2}, {"N 3", 1}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        ck_assert_msg(unit_span(rows[i].text) == rows[i].span, "%s: %zu", rows[i].text,
                      unit_span(rows[i].text));
    }
}
END_TEST

START_TEST(kinds_multiply_and_have_names)
{
    g_autoptr(Unit) millimetre = known("mm");
    g_autoptr(Unit) newton = known("N");
    g_autoptr(Unit) psi = known("psi");
    Kind length = unit_kind(millimetre);
    Kind torque = kind_multiply(unit_kind(newton), length);
    g_autofree char *name = kind_text(torque);
    ck_assert_str_eq(name, "a torque");
    ck_assert(kind_equal(kind_divide(unit_kind(newton), kind_power(length, 2)), unit_kind(psi)));
    Kind root;
    ck_assert(!kind_root(length, &root));
    ck_assert(kind_root(kind_power(length, 2), &root));
    ck_assert(kind_equal(root, length));
    ck_assert(kind_is_pure(kind_divide(length, length)));
    g_autofree char *odd = kind_text((Kind){.length = 1, .temperature = -1});
    ck_assert_str_eq(odd, "a value in m·K^-1");
}
END_TEST

START_TEST(values_are_shown)
{
    static const struct {
        const char *value, *unit, *shown;
        guint decimals;
    } rows[] = {
        {"59.79", "mm", "59.790 mm", 3},
        {"8", "°", "8°", 0},
        {"92.5", "%", "93 %", 0},
        {"20", "°C", "20.0 °C", 1},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Unit) unit = known(rows[i].unit);
        g_autoptr(Number) number = number_from_text(rows[i].value, NULL);
        g_autoptr(Number) base = unit_to_base(unit, number);
        g_autofree char *shown = unit_show(unit, base, rows[i].decimals);
        ck_assert_str_eq(shown, rows[i].shown);
    }
    g_autoptr(Unit) celsius = known("°C");
    g_autoptr(Unit) kelvin = unit_of_difference(celsius);
    ck_assert_str_eq(unit_text(kelvin), "K");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("unit");
    TCase *tcase = tcase_create("unit");
    tcase_add_test(tcase, exact_conversions);
    tcase_add_test(tcase, rounded_conversions);
    tcase_add_test(tcase, unknown_units_are_refused);
    tcase_add_test(tcase, only_units_of_the_kind_wanted_are_suggested);
    tcase_add_test(tcase, the_span_of_a_unit);
    tcase_add_test(tcase, kinds_multiply_and_have_names);
    tcase_add_test(tcase, values_are_shown);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
