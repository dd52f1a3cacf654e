#include <check.h>
#include <standbook/rules/shown.h>
#include <stdlib.h>

// Common practice, no published source: more than a tenth of what is asked, exact.
static const struct {
    const char *shown, *asked;
    Shown expected;
} rows[] = {
    {"20", "20", SHOWN_AS_ASKED},
    {"18", "20", SHOWN_AS_ASKED},
    {"17999999999999/1000000000000", "20", SHOWN_LOW},
    {"18000000000001/1000000000000", "20", SHOWN_AS_ASKED},
    {"22", "20", SHOWN_AS_ASKED},
    {"21999999999999/1000000000000", "20", SHOWN_AS_ASKED},
    {"22000000000001/1000000000000", "20", SHOWN_HIGH},
    {"5", "20", SHOWN_LOW},
    {"200", "20", SHOWN_HIGH},
    {"9", "90", SHOWN_LOW},
    {"1/3", "1/3", SHOWN_AS_ASKED},
    {"3/10", "1/3", SHOWN_AS_ASKED},
    {"299/1000", "1/3", SHOWN_LOW},
    // nothing is asked
    {"5", "0", SHOWN_AS_ASKED},
    {"5", "-20", SHOWN_AS_ASKED},
};

START_TEST(a_tenth_is_as_asked_and_more_is_not)
{
    g_autoptr(Number) shown = number_from_text(rows[_i].shown, NULL);
    g_autoptr(Number) asked = number_from_text(rows[_i].asked, NULL);
    ck_assert_int_eq(shown_against(shown, asked), rows[_i].expected);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("shown");
    TCase *tcase = tcase_create("shown");
    tcase_add_loop_test(tcase, a_tenth_is_as_asked_and_more_is_not, 0, G_N_ELEMENTS(rows));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
