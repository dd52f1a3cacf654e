// The adapter of a wrench, as it is written.
#include <check.h>
#include <standbook/plan/adapter.h>
#include <stdlib.h>
#include <string.h>

static void expect(const char *words, const char *label, const char *angle)
{
    g_autofree char *found = NULL;
    g_autoptr(Number) at = NULL;
    g_autoptr(GError) error = NULL;
    gboolean read = adapter_read(words, &found, &at, &error);
    g_autofree char *text = at ? number_text(at) : NULL;
    ck_assert(read == (error == NULL));
    ck_assert_pstr_eq(found, label);
    ck_assert_pstr_eq(text, angle);
}

START_TEST(a_label_and_its_angle)
{
    expect("X1", "X1", NULL);
    expect("X1 at 90°", "X1", "90");
    expect("X1 at 0", "X1", "0");
    expect("X1 at 1/8 turn", "X1", "45");
    expect("holding tool at the rim", "holding tool at the rim", NULL);
}
END_TEST

START_TEST(an_angle_that_cannot_be)
{
    static const char *const rows[] = {"X1 at 181°",    "X1 at -5°",  "X1 at 90 mm",
                                       "X1 at 90 ± 5°", "X1 at <90°", "X1 at 9x"};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        expect(rows[i], NULL, NULL);
}
END_TEST

START_TEST(the_bolts_it_is_for)
{
    const char *bolts = NULL;
    g_autofree char *front = adapter_front("X1 at 90° on bolts 2, 4", &bolts);
    ck_assert_str_eq(front, "X1 at 90°");
    ck_assert_str_eq(bolts, "2, 4");
    g_autofree char *all = adapter_front("X1 on the rim", &bolts);
    ck_assert_str_eq(all, "X1 on the rim");
    ck_assert_ptr_null(bolts);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("adapter");
    TCase *tcase = tcase_create("adapter");
    tcase_add_test(tcase, a_label_and_its_angle);
    tcase_add_test(tcase, an_angle_that_cannot_be);
    tcase_add_test(tcase, the_bolts_it_is_for);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
