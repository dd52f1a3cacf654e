#include <check.h>
#include <standbook/base/error.h>
#include <standbook/base/moment.h>
#include <stdlib.h>

static Moment read_moment(const char *text)
{
    Moment moment = 0;
    GError *error = NULL;
    ck_assert_msg(moment_parse(text, &moment, &error), "%s", error ? error->message : text);
    return moment;
}

START_TEST(moments_are_read_and_printed)
{
    // 1 000 000 000 seconds after the epoch (POSIX.1-2017, 4.16, gives the formula).
    ck_assert_int_eq(read_moment("2001-09-09T01:46:40"), 1000000000);
    ck_assert_int_eq(read_moment("1970-01-01 00:01"), 60);
    char *text = moment_text(read_moment("2024-02-29 23:59"));
    ck_assert_str_eq(text, "2024-02-29T23:59:00");
    g_free(text);
}
END_TEST

START_TEST(moments_are_subtracted)
{
    ck_assert_int_eq(read_moment("2025-03-01 00:00") - read_moment("2025-02-28 23:48"), 12 * 60);
    ck_assert_int_eq(read_moment("2024-03-01 00:00") - read_moment("2024-02-28 23:48"),
                     24 * 3600 + 12 * 60);
}
END_TEST

static const char *const no_moments[] = {
    "",           "2025-03-13",         "2025-02-29 10:00",       "2025-13-01 10:00",
    "24:00",      "2025-03-13 24:00",   "2025-03-13 11:60",       "0001-03-13 11:36",
    "13.3. 9:00", "2025-03-13 11:36:7", "2025-03-13T11:36+01:00", "2025-03-13 11:36\n",
};

START_TEST(what_is_no_moment_is_refused)
{
    Moment moment = 7;
    GError *error = NULL;
    ck_assert_msg(!moment_parse(no_moments[_i], &moment, &error), "%s", no_moments[_i]);
    ck_assert_int_eq(error->code, STANDBOOK_ERROR_MISUSE);
    ck_assert_int_eq(moment, 7);
    g_clear_error(&error);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("moment");
    TCase *tcase = tcase_create("moment");
    tcase_add_test(tcase, moments_are_read_and_printed);
    tcase_add_test(tcase, moments_are_subtracted);
    tcase_add_loop_test(tcase, what_is_no_moment_is_refused, 0, G_N_ELEMENTS(no_moments));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
