#include <check.h>
#include <standbook/rules/slip.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
    const char *value, *others, *lower, *upper, *step;
    SlipKind expected;
    const char *meant;
} Row;

// The first are values of the example and rules of our own, no published source.
static const Row rows[] = {
    {"900.26", "90.005 90.007 90.004", NULL, NULL, "0.001", SLIP_TEN_TIMES, "90.026"},
    {"9.0026", "90.005 90.007 90.004", NULL, NULL, "0.001", SLIP_A_TENTH, "90.026"},
    {"2286", "90.005 90.007", NULL, NULL, "0.001", SLIP_INCH_TIMES, "90"},
    {"3.5", "90.005", NULL, NULL, "0.001", SLIP_INCH_PART, "88.9"},
    {"-90.026", "90.005 90.007 90.004", NULL, NULL, "0.001", SLIP_SIGN, "90.026"},
    {"90.5", "90.005 90.007 90.004", NULL, NULL, "0.001", SLIP_FAR, NULL},
    // a true extreme of the example, and the others of it
    {"90.026", "90.005 90.007 90.004", NULL, NULL, "0.001", SLIP_NONE, NULL},
    {"0.086", "0.064 0.067 0.062", "0.050", "0.080", "0.001", SLIP_NONE, NULL},
    // against limits where nothing else is known
    {"3.6", "", "0.30", "0.50", "0.01", SLIP_TEN_TIMES, "0.36"},
    {"3.0", "", "0.30", "0.50", "0.01", SLIP_TEN_TIMES, "0.3"},
    {"5.0", "", "0.30", "0.50", "0.01", SLIP_TEN_TIMES, "0.5"},
    {"3.6", "0.36 0.38", "0.30", "0.50", "0.01", SLIP_TEN_TIMES, "0.36"},
    {"0.55", "", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    {"3.6", "", NULL, "0.50", "0.01", SLIP_NONE, NULL},
    // inside both limits nothing is asked, however far the others are
    {"0.49", "0.31 0.31 0.31 0.31", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    {"10", "1 1 1", "0", "20", "0.01", SLIP_NONE, NULL},
    // a few steps are no ratio, and others that scatter tell none
    {"0.010", "0.001 0.001 0.002", NULL, "0.020", "0.001", SLIP_NONE, NULL},
    {"0.010", "0.001 0.001", NULL, "0.020", "0.001", SLIP_NONE, NULL},
    {"0.211", "0.021 0.060 0.040", NULL, NULL, "0.001", SLIP_NONE, NULL},
    // all others alike: MAD is 0, a step stands for it
    {"0.40", "0.30 0.30 0.30", NULL, NULL, "0.01", SLIP_NONE, NULL},
    {"0.42", "0.30 0.30 0.30", NULL, NULL, "0.01", SLIP_FAR, NULL},
    // two others and both limits
    {"0.9", "0.36 0.40", "0.30", "0.50", "0.01", SLIP_FAR, NULL},
    {"0.69", "0.36 0.40", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    {"0.9", "0.36 0.44", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    {"0.9", "0.36", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    // two others are too few to be far from where a limit is not known
    {"0.9", "0.36 0.40", NULL, "0.50", "0.01", SLIP_NONE, NULL},
    {"90.5", "90.005 90.007", NULL, NULL, "0.001", SLIP_NONE, NULL},
    // nought is neither ten times nor a tenth of anything
    {"0", "0.30 0.31", NULL, NULL, "0.01", SLIP_NONE, NULL},
    // 17/32 typed where 13.49 is meant, with and without anything to compare it with
    {"17/32", "", NULL, NULL, "0.01", SLIP_FRACTION, "13.49375"},
    {"17/32", "13.5 13.6", "13.0", "14.0", "0.01", SLIP_FRACTION, "13.49375"},
    {"1/2", "", "0.30", "0.50", "0.01", SLIP_NONE, NULL},
    {"1/2", "0.48 0.52", NULL, NULL, "0.01", SLIP_NONE, NULL},
};

static Number *number(const char *text)
{
    return text ? number_from_text(text, NULL) : NULL;
}

static GPtrArray *numbers(const char *text)
{
    GPtrArray *all = g_ptr_array_new_with_free_func((GDestroyNotify)number_free);
    g_auto(GStrv) words = g_strsplit(text, " ", -1);
    for (guint i = 0; words[i]; i++)
        g_ptr_array_add(all, number(words[i]));
    return all;
}

static SlipKind slip_of(const Row *row, gboolean length, Number **meant)
{
    g_autoptr(GPtrArray) others = numbers(row->others);
    g_autoptr(Number) value = number(row->value), step = number(row->step);
    g_autoptr(Number) lower = number(row->lower), upper = number(row->upper);
    SlipQuestion question = {value, (const Number *const *)others->pdata, others->len, lower, upper,
                             step,  strchr(row->value, '/') != NULL,      length};
    return slip_likely(&question, meant);
}

START_TEST(test_slips)
{
    const Row *row = &rows[_i];
    g_autoptr(Number) meant = NULL;
    SlipKind kind = slip_of(row, TRUE, &meant);
    ck_assert_msg(kind == row->expected, "%s against %s: %d, not %d", row->value, row->others, kind,
                  row->expected);
    g_autofree char *text = meant ? number_text(meant) : NULL;
    ck_assert_pstr_eq(text, row->meant);
}
END_TEST

// An inch is mistaken for a millimetre; no unit of a torque for another one by that factor.
START_TEST(test_inches_are_of_a_length)
{
    SlipKind length = rows[_i].expected, other = slip_of(&rows[_i], FALSE, NULL);
    gboolean inches = length == SLIP_INCH_TIMES || length == SLIP_INCH_PART;
    ck_assert_int_eq(other, inches ? SLIP_NONE : length);
}
END_TEST

// Worked by hand, the data from memory: of 2.1 2.6 2.4 2.5 2.3 2.1 2.3 2.6 8.2 8.3 the median is
// 2.45 and the MAD 0.15, so that 8.2 has 0.6745 * 5.75 / 0.15 = 25.9 and 2.6 has 0.7. The
// threshold is met by 2.45 ± 3.5 * 0.15 / 0.6745, that is 3.2284 and 1.6716.
static const struct {
    const char *value;
    gboolean outlier;
} scores[] = {{"8.2", TRUE},   {"2.6", FALSE},  {"3.228", FALSE},
              {"3.229", TRUE}, {"1.671", TRUE}, {"1.672", FALSE}};

START_TEST(test_modified_z_score)
{
    g_autoptr(GPtrArray) others = numbers("2.1 2.6 2.4 2.5 2.3 2.1 2.3 2.6 8.2 8.3");
    g_autoptr(Number) value = number(scores[_i].value), least = number("0.001");
    ck_assert_int_eq(
        slip_is_outlier(value, (const Number *const *)others->pdata, others->len, least),
        scores[_i].outlier);
}
END_TEST

int main(void)
{
    TCase *of = tcase_create("slips");
    tcase_add_loop_test(of, test_slips, 0, G_N_ELEMENTS(rows));
    tcase_add_loop_test(of, test_inches_are_of_a_length, 0, G_N_ELEMENTS(rows));
    tcase_add_loop_test(of, test_modified_z_score, 0, G_N_ELEMENTS(scores));
    Suite *suite = suite_create("slip");
    suite_add_tcase(suite, of);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
