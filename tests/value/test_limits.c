#include <check.h>
#include <standbook/value/limits.h>
#include <stdlib.h>
#include <string.h>

static Limits *known(const char *text, const char *unit_name)
{
    g_autoptr(Unit) unit = unit_name ? unit_parse(unit_name, NULL) : NULL;
    GError *error = NULL;
    Limits *limits = limits_parse(text, unit, NULL, &error);
    ck_assert_msg(limits != NULL, "%s: %s", text, error ? error->message : "");
    return limits;
}

// A constant limit in the unit of the limits; `-` where there is none, its text where it is a
// formula of names.
static char *side_text(const Limits *limits, const Formula *side)
{
    if (side == NULL) {
        return g_strdup("-");
    }
    g_autoptr(Number) base = formula_constant(side);
    if (base == NULL) {
        return g_strdup(formula_text(side));
    }
    g_autoptr(Number) number = unit_from_base(limits_unit(limits), base);
    return number_text(number);
}

START_TEST(limits_on_values)
{
    static const struct {
        const char *text, *unit, *low, *high, *shown;
        gboolean written;
        guint decimals;
    } rows[] = {
        {"0.050..0.080", "mm", "0.05", "0.08", "mm", FALSE, 3},
        {"0.050 .. 0.080", "mm", "0.05", "0.08", "mm", FALSE, 3},
        {"2..3 thou", "mm", "2", "3", "thou", TRUE, 0},
        {"0.05..0.1 in", NULL, "0.05", "0.1", "in", TRUE, 2},
        {"0.05 mm..0.1", "in", "0.05", "0.1", "mm", TRUE, 2},
        {"-0.02..0.02", "mm", "-0.02", "0.02", "mm", FALSE, 2},
        {".05...5", "mm", "0.05", "0.5", "mm", FALSE, 2},
        {"7..7", "mm", "7", "7", "mm", FALSE, 0},
        {"8 ± 2 °", NULL, "6", "10", "°", TRUE, 0},
        {"1/4 +/- 1/64 in", "mm", "0.234375", "0.265625", "in", TRUE, 0},
        {"90 ± 5 °C", NULL, "85", "95", "°C", TRUE, 0},
        {"200 ± 9 °F", NULL, "191", "209", "°F", TRUE, 0},
        {"-20..40", "°C", "-20", "40", "°C", FALSE, 0},
        {"at least -5 °F", NULL, "-5", "-", "°F", TRUE, 0},
        {"at least 90 %", NULL, "90", "-", "%", TRUE, 0},
        {"at most 0.05", "mm", "-", "0.05", "mm", FALSE, 2},
        {"≤ 0.05", "mm", "-", "0.05", "mm", FALSE, 2},
        {">= 4 bar", "mm", "4", "-", "bar", TRUE, 0},
        {"0.3 % * skirt .. 0.5 % * skirt", "mm", "0.3 % * skirt", "0.5 % * skirt", "mm", FALSE, 0},
        {"0.03 to 0.065", "mm", "0.03", "0.065", "mm", FALSE, 3},
        {"0.03 mm to 65 µm", "mm", "30", "65", "µm", TRUE, 2},
        {"0.03-0.065", "mm", "0.03", "0.065", "mm", FALSE, 3},
        {"0.03 - 0.065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"min 0.030 max 0.060", "in", "0.03", "0.06", "in", FALSE, 3},
        {"at least 5 mm at most 8 mm", NULL, "5", "8", "mm", TRUE, 0},
        {"1/2 - 3/4 in", NULL, "0.5", "0.75", "in", TRUE, 0},
        {"1-1/2 in - 1-3/4 in", NULL, "1.5", "1.75", "in", TRUE, 0},
        {"0,038  -  0,051", "mm", "0.038", "0.051", "mm", FALSE, 3},
        {"0.038 − 0.051", "mm", "0.038", "0.051", "mm", FALSE, 3},
        {"0.03mm-0.065mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"0.03–0.065", "mm", "0.03", "0.065", "mm", FALSE, 3},
        {"-0.02 - -0.01", "mm", "-0.02", "-0.01", "mm", FALSE, 2},
        {"min 0.03", "mm", "0.03", "-", "mm", FALSE, 2},
        {"max 0.1 mm", NULL, "-", "0.1", "mm", TRUE, 1},
        {">= 90", "mm", "90", "-", "mm", FALSE, 0},
        {"<=0.05", "mm", "-", "0.05", "mm", FALSE, 2},
        {"0.05 ±0.01", "mm", "0.04", "0.06", "mm", FALSE, 2},
        {"0.05 +-0.01 mm", NULL, "0.04", "0.06", "mm", TRUE, 2},
        {"min (skirt) .. 90", "mm", "min (skirt)", "90", "mm", FALSE, 0},
        {"at most pan depth - 0.5", "mm", "-", "pan depth - 0.5", "mm", FALSE, 1},
        {"80.00 +0.02 -0.00", "mm", "80", "80.02", "mm", FALSE, 2},
        {"80 +0.02/-0.01", "mm", "79.99", "80.02", "mm", FALSE, 2},
        {"80 +0.02 / -0.01 mm", NULL, "79.99", "80.02", "mm", TRUE, 2},
        {"80 +0.02 0 mm", NULL, "80", "80.02", "mm", TRUE, 2},
        {"80 +0.02/0 mm", NULL, "80", "80.02", "mm", TRUE, 2},
        {"80 0 -0.02 mm", NULL, "79.98", "80", "mm", TRUE, 2},
        {"80 mm -0.01 −0.03", "in", "79.97", "79.99", "mm", TRUE, 2},
        {"80 mm +20 µm -10 µm", NULL, "79990", "80020", "µm", TRUE, 0},
        {"80 -0.03 -0.01", "mm", "79.97", "79.99", "mm", FALSE, 2},
        {"80,00 +0,02 -0,00 mm", "in", "80", "80.02", "mm", TRUE, 2},
        {"2 1/2 +1/64 -0 in", NULL, "2.5", "2.515625", "in", TRUE, 0},
        {"20 °C +5 -3", NULL, "17", "25", "°C", TRUE, 0},
        {"0,05 - 0,25 mm", NULL, "0.05", "0.25", "mm", TRUE, 2},
        {"0,05-0,25", "mm", "0.05", "0.25", "mm", FALSE, 2},
        {"0,05..0,25", "mm", "0.05", "0.25", "mm", FALSE, 2},
        {"max 0,05 mm", NULL, "-", "0.05", "mm", TRUE, 2},
        {"8,5 ± ,5 °", NULL, "8", "9", "°", TRUE, 1},
        {"min(3, 5) .. 90,5", "mm", "3", "90.5", "mm", FALSE, 1},
        {"0.05 mm max", NULL, "-", "0.05", "mm", TRUE, 2},
        {"0.05 max.", "mm", "-", "0.05", "mm", FALSE, 2},
        {"2 1/2 in MAX", NULL, "-", "2.5", "in", TRUE, 0},
        {"40 psi min ", NULL, "40", "-", "psi", TRUE, 0},
        {"40 ft-lb minimum", NULL, "40", "-", "lbf·ft", TRUE, 0},
        {"10 min max", NULL, "-", "10", "min", TRUE, 0},
        {"5 to 10 min", NULL, "5", "10", "min", TRUE, 0},
        {"5 - 10 min", NULL, "5", "10", "min", TRUE, 0},
        {"max. 0.05 mm", NULL, "-", "0.05", "mm", TRUE, 2},
        {"Min. 40 psi", NULL, "40", "-", "psi", TRUE, 0},
        {"up to 0.05 mm", NULL, "-", "0.05", "mm", TRUE, 2},
        {"> 40 psi", NULL, "40", "-", "psi", TRUE, 0},
        {">40 psi", NULL, "40", "-", "psi", TRUE, 0},
        {"< 0.05", "mm", "-", "0.05", "mm", FALSE, 2},
        {"between 0.03 and 0.065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"from 0.03 to 0.065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"0.03...0.065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"0,03 ... 0,065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"0.03…0.065 mm", NULL, "0.03", "0.065", "mm", TRUE, 3},
        {"0.1 ... 5", "mm", "0.1", "5", "mm", FALSE, 1},
        {"-0.02...-0.01", "mm", "-0.02", "-0.01", "mm", FALSE, 2},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Limits) limits = known(rows[i].text, rows[i].unit);
        ck_assert_int_eq(limits_form(limits), LIMITS_VALUE);
        g_autofree char *low = side_text(limits, limits_lower(limits));
        g_autofree char *high = side_text(limits, limits_upper(limits));
        ck_assert_str_eq(low, rows[i].low);
        ck_assert_str_eq(high, rows[i].high);
        ck_assert_str_eq(unit_text(limits_unit(limits)), rows[i].shown);
        ck_assert_msg(limits_has_unit(limits) == rows[i].written, "%s", rows[i].text);
        ck_assert_msg(limits_decimals(limits) == rows[i].decimals, "%s", rows[i].text);
    }
}
END_TEST

START_TEST(a_unit_alone_is_read_in)
{
    g_autoptr(Limits) limits = limits_parse(" thou ", NULL, NULL, NULL);
    ck_assert_str_eq(unit_text(limits_unit(limits)), "thou");
    ck_assert_ptr_null(limits_parse("min", NULL, NULL, NULL)); // its number is missing
}
END_TEST

START_TEST(other_forms)
{
    static const struct {
        const char *text;
        LimitsForm form;
        const char *wanted, *choices;
    } rows[] = {
        {"any", LIMITS_ANY, NULL, NULL},
        {"mm", LIMITS_ANY, NULL, NULL},
        {" text ", LIMITS_TEXT, NULL, NULL},
        {"yes", LIMITS_ANSWER, "yes", "yes/no"},
        {"no", LIMITS_ANSWER, "no", "yes/no"},
        {"dry of dry/damp/wet", LIMITS_ANSWER, "dry", "dry/damp/wet"},
        {"no crack of crack / no crack", LIMITS_ANSWER, "no crack", "crack/no crack"},
        {"exactly 4", LIMITS_COUNT, NULL, NULL},
        {"= 3", LIMITS_COUNT, NULL, NULL},
        {"=3 ", LIMITS_COUNT, NULL, NULL},
        {"grade 1,5 of grade 1,5/grade 2", LIMITS_ANSWER, "grade 1,5", "grade 1,5/grade 2"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Limits) limits = known(rows[i].text, NULL);
        ck_assert_int_eq(limits_form(limits), rows[i].form);
        ck_assert_ptr_null(limits_lower(limits));
        ck_assert_pstr_eq(limits_wanted(limits), rows[i].wanted);
        if (rows[i].choices) {
            g_autofree char *choices = g_strjoinv("/", (char **)limits_choices(limits));
            ck_assert_str_eq(choices, rows[i].choices);
        }
    }
    g_autoptr(Limits) count = known("exactly 4", NULL);
    ck_assert_uint_eq(limits_count(count), 4);
}
END_TEST

START_TEST(what_are_no_limits)
{
    static const struct {
        const char *text;
        gsize offset;
        const char *says;
    } rows[] = {
        {"0.08..0.05", 0, "upside down"},
        {" 8 ± -2 mm", 1, "upside down"},
        {"0.05", 0, "no limits"},
        {"", 0, "no limits"},
        {"0.05..", 6, "missing"},
        {"..0.05", 0, "missing"},
        {"at least", 0, "no limits"},
        {"at least 5-3", 10, "subtract"},
        {"≤ 0.05 mn", 7, "no unit"},
        {"1 mm..2 bar", 0, "different kinds"},
        {"exactly 4.5", 8, "count"},
        {"exactly four", 8, "count"},
        {"wet of dry/damp", 0, "not among"},
        {"dry of dry//wet", 7, "empty"},
        {"1 ± 0.1..2", 0, "`±`"},
        {"8 ± 2 ± 1", 4, "`±`"},
        {"maybe", 0, "no limits"},
        {"2-5/8", 0, "no limits"},
        {"0.065-0.03", 0, "upside down"},
        {"0.065 - 0.03", 0, "upside down"},
        {"4.2 l", 0, "one number alone is no limits; write `min 4.2 l`"},
        {"max 0.038 - 0.051 mm", 4, "Write `0.038 to 0.051 mm` alone"},
        {"at least 0.038 – 0.051", 9, "two limits, or a number less another one?"},
        {"0.045 ± 0.038 - 0.051", 8, "two limits, or"},
        {"0.038 - 0.051 - 0.001", 8, "two limits, or"},
        {"skirt - 0.5", 0, "no limits"},
        {"min ", 0, "no limits"},
        {"0.03/0.065 mm", 0, "write `0.03 to 0.065 mm`, `max 0.05 mm` or `80 +0.02 -0 mm`"},
        {"0.03 0.065 mm", 0, "write `0.03 to 0.065 mm`, `max 0.05 mm` or `80 +0.02 -0 mm`"},
        {"80 +0.02", 0, "no limits"},
        {"80 + 0.02 - 0.01", 0, "no limits"},
        {"80 +0.02 -0.01 +0.03", 0, "no limits"},
        {"80 0 0 mm", 0, "no limits"},
        {"skirt +0.02 -0.01", 0, "no limits"},
        {"80 +0.02 -0.01 mn", 15, "no unit"},
        {"80 mm +0.02 -0.01 bar", 0, "different kinds"},
        {"40 min", 0, "minutes"},
        {"40 min.", 0, "minutes"},
        {"0.03 - 0.065 mm max", 16, "two words"},
        {"0.05 mm  max 1", 0, "no limits"},
        {"skirt max", 0, "no limits"},
        {"0.1...5 mm", 3, "`0.1 to 5`, or `0.1 to 0.5`"},
        {"1,234.5 to 2", 1, "comma"},
        {"between 0.03 mm", 0, "no limits"},
        {"between 0.065 and 0.03 mm", 0, "upside down"},
        {"= 3 mm", 2, "count"},
        {"=> 3", 1, "count"},
        {"> ", 0, "no limits"},
        {"1..\xff", 3, "UTF-8"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        gsize offset = 99;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(limits_parse(rows[i].text, NULL, &offset, &error) == NULL, "%s",
                      rows[i].text);
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s: %s", rows[i].text,
                      error->message);
        ck_assert_msg(offset == rows[i].offset, "%s: %zu", rows[i].text, offset);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("limits");
    TCase *tcase = tcase_create("limits");
    tcase_add_test(tcase, limits_on_values);
    tcase_add_test(tcase, a_unit_alone_is_read_in);
    tcase_add_test(tcase, other_forms);
    tcase_add_test(tcase, what_are_no_limits);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
