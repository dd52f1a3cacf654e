#include <check.h>
#include <math.h>
#include <standbook/rules/line.h>
#include <stdlib.h>

// Published figures stand in tests/outside/fits.py; here is what a line cannot be drawn through,
// and a line worked by hand.
static const struct {
    double x[3];
    gsize count;
    gboolean through_origin, tells;
} rows[] = {
    {{1, 2, 3}, 3, FALSE, TRUE},  {{1, 2}, 2, FALSE, FALSE},  {{1, 2}, 2, TRUE, TRUE},
    {{2, 2, 2}, 3, FALSE, FALSE}, {{2, 2, 2}, 3, TRUE, TRUE}, {{0, 0, 0}, 3, TRUE, FALSE},
    {{1}, 1, TRUE, FALSE},        {{0}, 0, FALSE, FALSE},
};

START_TEST(test_refusals)
{
    static const double y[] = {1, 2, 4};
    Line line;
    ck_assert_int_eq(line_fit(rows[_i].x, y, rows[_i].count, rows[_i].through_origin, &line),
                     rows[_i].tells);
}
END_TEST

// y 1 2 4 at x 1 2 3: slope 3/2, intercept -2/3, squares 1/6.
START_TEST(test_by_hand)
{
    static const double x[] = {1, 2, 3}, y[] = {1, 2, 4};
    Line line;
    ck_assert(line_fit(x, y, 3, FALSE, &line));
    ck_assert_double_eq_tol(line.slope, 1.5, 1e-14);
    ck_assert_double_eq_tol(line.intercept, -2.0 / 3, 1e-14);
    ck_assert_double_eq_tol(line.residual_sd, sqrt(1.0 / 6), 1e-14);
    ck_assert_uint_eq(line.freedom, 1);
    // At the middle the line varies by s²/3: the half is t times s √(4/3).
    double half, value = line_predict(&line, 2, 0.95, &half);
    ck_assert_double_eq_tol(value, 7.0 / 3, 1e-14);
    ck_assert_double_eq_tol(half, 12.7062047361747 * sqrt(4.0 / 18), 1e-11);
}
END_TEST

int main(void)
{
    TCase *of = tcase_create("lines");
    tcase_add_loop_test(of, test_refusals, 0, G_N_ELEMENTS(rows));
    tcase_add_test(of, test_by_hand);
    Suite *suite = suite_create("line");
    suite_add_tcase(suite, of);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
