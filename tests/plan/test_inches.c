// Inch work: a value as the nearest 64th and what is over. Worked by hand: 2 17/32 is 2.53125.
#include <check.h>
#include <standbook/plan/plan.h>
#include <stdlib.h>
#include <string.h>

static const char text[] = "plan: Inches\nunits: [in]\nsteps:\n  Read:\n    checks:\n"
                           "      coarse: {limits: 0.10..9.00, decimals: 2}\n"
                           "      fine: {limits: 0.1000..9.0000, decimals: 4}\n"
                           "      metric: {limits: 1..900 mm, decimals: 2}\n";

static const struct {
    const char *check, *inches, *words;
} rows[] = {
    {"fine", "2.5309", "2 17/32 -.00035"},
    {"fine", "2.5320", "2 17/32 +.00075"},
    {"fine", "17/32", "17/32"},
    {"fine", "-17/32", "-17/32"},
    {"fine", "2", "2"},
    {"fine", "2.0512", "2 3/64 +.004325"}, // 2.046875; 2 1/16 is 2.0625
    {"fine", "-2.5309", "-2 17/32 +.00035"},
    {"fine", "2.53126", "2 17/32"}, // nothing that would show is over
    {"coarse", "2.53", "2 17/32 -.00125"},
    {"coarse", "1.688", "1 11/16 +.0005"},
    {"fine", "0.0021", NULL}, // nearer to 0 than to 1/64
    {"fine", "0.0156", "1/64"},
    {"metric", "2", NULL},
};

START_TEST(each_row)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(plan);
    g_autoptr(Unit) inch = unit_parse("in", NULL);
    g_autoptr(Number) inches = number_from_text(rows[_i].inches, NULL);
    g_autoptr(Number) value = unit_to_base(inch, inches);
    g_autofree char *words = check_inch_words(plan_check(plan, rows[_i].check), value);
    ck_assert_pstr_eq(words, rows[_i].words);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("inches");
    TCase *tcase = tcase_create("inches");
    tcase_add_loop_test(tcase, each_row, 0, (int)G_N_ELEMENTS(rows));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
