#include <check.h>
#include <standbook/value/reading.h>
#include <stdlib.h>
#include <string.h>

static Unit *known(const char *text)
{
    return text ? unit_parse(text, NULL) : NULL;
}

static char *text_of(const Number *number)
{
    return number ? number_text(number) : g_strdup("-");
}

typedef struct {
    const char *typed, *unit, *number, *shown, *value, *place;
} Taken;

static void check_taken(const Taken *row)
{
    g_autoptr(Unit) unit = known(row->unit);
    Reading reading;
    g_autoptr(GError) error = NULL;
    gboolean read = reading_parse(row->typed, unit, &reading, NULL, &error);
    ck_assert_msg(read, "%s: %s", row->typed, error ? error->message : "");
    g_autofree char *number = text_of(reading.number);
    g_autofree char *value = text_of(reading.value);
    g_autofree char *place = text_of(reading.place);
    ck_assert_msg(strcmp(number, row->number) == 0, "%s: number %s", row->typed, number);
    ck_assert_msg(strcmp(value, row->value) == 0, "%s: value %s", row->typed, value);
    ck_assert_msg(strcmp(place, row->place) == 0, "%s: place %s", row->typed, place);
    ck_assert_str_eq(reading.unit ? unit_text(reading.unit) : "-", row->shown);
    reading_clear(&reading);
}

static void check_all(const Taken *rows, gsize count)
{
    for (gsize i = 0; i < count; i++) {
        check_taken(&rows[i]);
    }
}

START_TEST(a_number_and_its_unit)
{
    static const Taken rows[] = {
        {"59.790", "mm", "59.79", "mm", "0.05979", "0.000001"},
        {"2.0512", "in", "2.0512", "in", "0.05210048", "0.00000254"},
        {".0021", "in", "0.0021", "in", "0.00005334", "0.00000254"},
        {" 17/32 in ", "mm", "0.53125", "in", "0.01349375", "0.00079375"},
        {"4.5/32", "in", "0.140625", "in", "0.003571875", "0.000079375"},
        {"2-5/8", "in", "2.625", "in", "0.066675", "0.003175"},
        {"2 5/8\"", "mm", "2.625", "in", "0.066675", "0.003175"},
        {"-0.02", "mm", "-0.02", "mm", "-0.00002", "0.00001"},
        {"+3", "mm", "3", "mm", "0.003", "0.001"},
        {"0.4 thou", "mm", "0.4", "thou", "0.00001016", "0.00000254"},
        {"25 lbf·ft", "N·m", "25", "lbf·ft", "33.89544870828501", "1.3558179483314004"},
        {"25 lbf ft", "N·m", "25", "lbf·ft", "33.89544870828501", "1.3558179483314004"},
        {"25 ft lbs", "N·m", "25", "lbf·ft", "33.89544870828501", "1.3558179483314004"},
        {"65ft-lb", "N·m", "65", "lbf·ft", "88.128166641541026", "1.3558179483314004"},
        {"68 °F", "°C", "68", "°F", "293.15", "5/9"},
        {"90 %", "%", "90", "%", "0.9", "0.01"},
        {"4", NULL, "4", "-", "4", "1"},
        {"7.6:1", NULL, "7.6", ":1", "7.6", "0.1"},
        {"3 ‰", "%", "3", "‰", "0.003", "0.001"},
    };
    check_all(rows, G_N_ELEMENTS(rows));
}
END_TEST

// A comma is a decimal comma; signs of Unicode mean what they look like.
START_TEST(the_many_ways_to_type_it)
{
    static const Taken rows[] = {
        {"63,51 mm", "mm", "63.51", "mm", "0.06351", "0.00001"},
        {"1,234", "mm", "1.234", "mm", "0.001234", "0.000001"},
        {",5", "mm", "0.5", "mm", "0.0005", "0.0001"},
        {"2⅝″", "mm", "2.625", "in", "0.066675", "0.003175"},
        {"2 ⅝ ”", "mm", "2.625", "in", "0.066675", "0.003175"},
        {"⅞''", "mm", "0.875", "in", "0.022225", "0.003175"},
        {"2 ⁵⁄₈ in", "mm", "2.625", "in", "0.066675", "0.003175"},
        {"2⁵/₈ in", "mm", "2.625", "in", "0.066675", "0.003175"},
        {"17⁄32 in", "mm", "0.53125", "in", "0.01349375", "0.00079375"},
        {"−3 thou", "mm", "-3", "thou", "-0.0000762", "0.0000254"},
        {"–0.02", "mm", "-0.02", "mm", "-0.00002", "0.00001"},
        {"3 kg/cm²", "bar", "3", "kgf/cm²", "294199.5", "98066.5"},
        {"5 mm", "mm", "5", "mm", "0.005", "0.001"},
    };
    check_all(rows, G_N_ELEMENTS(rows));
}
END_TEST

START_TEST(a_smaller_unit_behind)
{
    static const Taken rows[] = {
        {"5′ 2 1/2″", "mm", "62.5", "in", "1.5875", "0.0127"},
        {"5' 2\"", "in", "62", "in", "1.5748", "0.0254"},
        {"1 ft 3 in", "mm", "15", "in", "0.381", "0.0254"},
        {"12°30'", "°", "750", "arcmin", "12.5", "1/60"},
        {"12° 30′ 15″", "°", "45015", "arcsec", "12.5041666666666666666666666666666666667", ""},
        {"1 h 20 min", "min", "80", "min", "4800", "60"},
        {"-1 lb 4 oz", "kg", "-20", "oz", "-0.5669904625", "0.028349523125"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        if (*rows[i].place) {
            check_taken(&rows[i]);
        }
    }
    Reading angle;
    g_autoptr(Unit) degree = known("°");
    ck_assert(reading_parse("12° 30′ 15″", degree, &angle, NULL, NULL));
    g_autoptr(Number) wanted = number_from_ratio(45015, 3600);
    ck_assert(number_equal(angle.value, wanted));
    reading_clear(&angle);
}
END_TEST

// Arithmetic without units is in the unit wanted, else every value has its own.
START_TEST(arithmetic)
{
    static const Taken rows[] = {
        {"90.026 - 89", "mm", "1.026", "mm", "0.001026", "0.000001"},
        {"12,5 + 0,25", "mm", "12.75", "mm", "0.01275", "0.0001"},
        {"(90.026 + 90.024) / 2", "mm", "90.025", "mm", "0.090025", "0.000001"},
        {"1 in + 1/32 in", "mm", "26.19375", "mm", "0.02619375", "0.00079375"},
        {"3*10 %", "%", "30", "%", "0.3", "0.01"},
        {"2 - 5/8", "in", "1.375", "in", "0.034925", "0.003175"},
        {"1 / 3/8", "mm", "8/3", "mm", "1/375", "0.000125"},
        {"-2 + 5", "mm", "3", "mm", "0.003", "0.001"},
        {"+2 + 5", "mm", "7", "mm", "0.007", "0.001"},
        {"3 × 12", NULL, "36", "-", "36", "1"},
        {"1.5 m * 2 m / 3 m", "mm", "1000", "mm", "1", "0.1"},
    };
    check_all(rows, G_N_ELEMENTS(rows));
}
END_TEST

START_TEST(a_doubt_of_its_own)
{
    static const struct {
        const char *typed, *unit, *value, *doubt;
    } rows[] = {
        {"0.05 ± 0.01", "mm", "0.00005", "0.00001"},
        {"0.05±0.01 mm", "in", "0.00005", "0.00001"},
        {"0.05 mm ± 1 thou", "in", "0.00005", "0.0000254"},
        {"20 +/- 1 °C", "°F", "293.15", "1"},
        {"90 ± 2 %", "%", "0.9", "0.02"},
        {"90.01 - 89 ± .02", "mm", "0.00101", "0.00002"},
        {"3", "mm", "0.003", "-"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Unit) unit = known(rows[i].unit);
        Reading reading;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(reading_parse(rows[i].typed, unit, &reading, NULL, &error), "%s: %s",
                      rows[i].typed, error ? error->message : "");
        g_autofree char *value = text_of(reading.value);
        g_autofree char *doubt = text_of(reading.doubt);
        ck_assert_msg(strcmp(value, rows[i].value) == 0, "%s: %s", rows[i].typed, value);
        ck_assert_msg(strcmp(doubt, rows[i].doubt) == 0, "%s: %s", rows[i].typed, doubt);
        reading_clear(&reading);
    }
}
END_TEST

START_TEST(bounds)
{
    static const struct {
        const char *typed, *value;
        Bound bound;
    } rows[] = {
        {"<0.03", "0.00003", BOUND_BELOW},
        {"> 0.25 mm", "0.00025", BOUND_ABOVE},
        {"< 0,1 + 0,2", "0.0003", BOUND_BELOW},
        {"0.03", "0.00003", BOUND_NONE},
    };
    g_autoptr(Unit) unit = known("mm");
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Reading reading;
        ck_assert(reading_parse(rows[i].typed, unit, &reading, NULL, NULL));
        g_autofree char *value = text_of(reading.value);
        ck_assert_str_eq(value, rows[i].value);
        ck_assert_int_eq(reading.bound, rows[i].bound);
        reading_clear(&reading);
    }
}
END_TEST

// Each with the column of the fault, in what was typed, and a part of the sentence.
START_TEST(what_is_no_reading_is_refused_at_its_column)
{
    static const struct {
        const char *typed;
        gsize offset;
        const char *says;
    } rows[] = {
        {"", 0, "missing"},
        {"<", 1, "missing"},
        {"ok", 0, "missing"},
        {"5-3", 1, "subtract"},
        {"2-40/32", 2, "`2 + 40/32` or `2 - 40/32`"},
        {"1/2/4", 3, "`1/2 / 4` or `1 / 2/4`"},
        {"1/0", 2, "over 0"},
        {"1 / 0", 4, "divides by 0"},
        {"1 / (2 - 2)", 0, "divides by 0"},
        {"0,5,0", 3, "could be 05.0 or 0.50"},
        {"1,234.5", 5, "could be 1234.5 or 1.2345"},
        {"1.234,5 mm", 5, "could be 1234.5 or 1.2345"},
        {"1e999", 1, "powers of ten"},
        {"12 bar", 3, "pressure"},
        {"12 mn", 3, "no unit"},
        {"− 5 N·m", 4, "torque"},
        {"3 Nm + 1 in", 7, "cannot be added"},
        {"25.4 mm + 0.1", 10, "cannot be added"},
        {"3 N + 1 N", 0, "a force"},
        {"(1 + 2", 6, "missing at the end"},
        {"bore - 3", 0, "numbers only"},
        {"2⅝ - skirt", 5, "numbers only"},
        {"12 13", 3, "side by side"},
        {"5 mm mm", 5, "does not belong"},
        {"5 mm 3", 5, "side by side"},
        {"5.5' 3\"", 5, "side by side"},
        {"5' 14\"", 3, "carry it over"},
        {"0.05 ± ", 7, "missing"},
        {"0.05 ± 0.01 ± 0.1", 12, "one ±"},
        {"<0.05 ± 0.01", 7, "no ±"},
        {"50 ± 2 %", 7, "a length"},
        {"± 2", 0, "missing"},
        {"3\xff", 1, "UTF-8"},
    };
    g_autoptr(Unit) unit = known("mm");
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Reading reading;
        gsize offset = 99;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(!reading_parse(rows[i].typed, unit, &reading, &offset, &error), "%s",
                      rows[i].typed);
        ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s: %s", rows[i].typed,
                      error->message);
        ck_assert_msg(offset == rows[i].offset, "%s: %zu", rows[i].typed, offset);
    }
    Reading count;
    ck_assert(!reading_parse("4 mm", NULL, &count, NULL, NULL));
}
END_TEST

START_TEST(nothing_too_long_is_read)
{
    g_autoptr(Unit) unit = known("mm");
    g_autofree char *brackets = g_strnfill(10000, '(');
    g_autofree char *digits = g_strnfill(1000000, '7');
    const char *const texts[] = {brackets, digits};
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++) {
        Reading reading;
        g_autoptr(GError) error = NULL;
        ck_assert(!reading_parse(texts[i], unit, &reading, NULL, &error));
        ck_assert_ptr_nonnull(strstr(error->message, "too long"));
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("reading");
    TCase *tcase = tcase_create("reading");
    tcase_add_test(tcase, a_number_and_its_unit);
    tcase_add_test(tcase, the_many_ways_to_type_it);
    tcase_add_test(tcase, a_smaller_unit_behind);
    tcase_add_test(tcase, arithmetic);
    tcase_add_test(tcase, a_doubt_of_its_own);
    tcase_add_test(tcase, bounds);
    tcase_add_test(tcase, what_is_no_reading_is_refused_at_its_column);
    tcase_add_test(tcase, nothing_too_long_is_read);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
