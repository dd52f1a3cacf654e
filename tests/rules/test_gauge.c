// What a gauge can tell: the rule of ISO 14253-1:2017 (guard band 1.65 u) and of JCGM 106:2012 (Cm
// >= 4: as read), turned round. The pick-up clearance is invented.
#include <check.h>
#include <standbook/rules/gauge.h>
#include <stdlib.h>

static Number *number(const char *text)
{
    return text ? number_from_text(text, NULL) : NULL;
}

// u² of an expanded uncertainty U, k = 2.
static Number *variance_of(const char *expanded)
{
    g_autoptr(Number) whole = number(expanded);
    g_autoptr(Number) square = number_power(whole, 2);
    g_autoptr(Number) four = number_from_integer(4);
    return number_divide(square, four);
}

static const struct {
    const char *lower, *upper, *value, *expanded;
    GaugeOutlook outlook;
    const char *inside, *wanted; // to four places, NULL: none
} rows[] = {
    // before it is read: T = 4, U = 0.5 is T/8
    {"7.0", "11.0", NULL, "0.5", GAUGE_SETTLES, NULL, NULL},
    {"7.0", "11.0", NULL, "0.5001", GAUGE_CAN, "0.4126", NULL},
    // T = 3.3 u: the two guard bands meet at U = T/1.65
    {"0", "0.33", NULL, "0.2", GAUGE_CAN, "0.1650", NULL},
    {"0", "0.33", NULL, "0.2001", GAUGE_CANNOT, "0.1651", NULL},
    // one limit: never believed as read, never hopeless
    {"7.0", NULL, NULL, "5", GAUGE_CAN, "4.1250", NULL},
    {NULL, NULL, NULL, "5", GAUGE_SETTLES, NULL, NULL},
    {"7.0", NULL, NULL, "0", GAUGE_SETTLES, NULL, NULL},
    // read: 7.5 is 0.5 inside; 0.5 / 0.825 = 0.6061
    {"7.0", "11.0", "7.5", "0.73", GAUGE_CANNOT, "0.6023", "0.6061"},
    {"7.0", "11.0", "7.5", "0.606", GAUGE_SETTLES, "0.5000", "0.6061"},
    {"7.0", "11.0", "7.5", "0.607", GAUGE_CANNOT, "0.5008", "0.6061"},
    // 7.1 is so near that only a gauge believed as read decides it: T/8
    {"7.0", "11.0", "7.1", "0.51", GAUGE_CANNOT, "0.4208", "0.5000"},
    // outside the limit by 0.33
    {NULL, "1.0", "1.33", "0.4", GAUGE_SETTLES, "0.3300", "0.4000"},
    {NULL, "1.0", "1.33", "0.41", GAUGE_CANNOT, "0.3383", "0.4000"},
};

static void expect(const Number *got, const char *expected)
{
    g_autofree char *words = got ? number_decimal(got, 4) : g_strdup("none");
    ck_assert_str_eq(words, expected ? expected : "none");
}

START_TEST(each_row)
{
    g_autoptr(Number) lower = number(rows[_i].lower), upper = number(rows[_i].upper);
    g_autoptr(Number) value = number(rows[_i].value), variance = variance_of(rows[_i].expanded);
    const GaugeQuestion question = {lower, upper, value};
    ck_assert_str_eq(gauge_outlook_words(gauge_outlook(&question, variance)),
                     gauge_outlook_words(rows[_i].outlook));
    g_autoptr(Number) inside = gauge_inside(&question, variance);
    g_autoptr(Number) wanted = gauge_doubt_wanted(&question);
    expect(inside, rows[_i].inside);
    expect(wanted, rows[_i].wanted);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("gauge");
    TCase *tcase = tcase_create("gauge");
    tcase_add_loop_test(tcase, each_row, 0, (int)G_N_ELEMENTS(rows));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
