// What is chosen from what there is. Common practice, no published source; the bearing grades are
// those of the demo's launch, the shims and gaskets are invented.
#include <check.h>
#include <standbook/rules/selection.h>
#include <stdlib.h>
#include <string.h>

enum { OFFERS = 6 };

static const struct {
    const char *offers; // value, and `x` behind one that does not fit; `?` where it is not known
    const char *aim;
    SelectionSide side;
    gssize best, below, above;
} rows[] = {
    // main 1: grade A would give 0.072, over 0.065; grade B is 0.013 thicker in each half
    {"0.072x 0.046", "0.046", SELECTION_NEAREST, 1, -1, 0},
    {"0.050 0.024x", "0.046", SELECTION_NEAREST, 0, 1, -1},
    // lash by shim, aim 0.30: 0.28 and 0.32 are as near, the larger is the safe side
    {"0.36 0.32 0.28 0.24", "0.30", SELECTION_NEAREST, 1, 2, 0},
    {"0.36 0.33 0.28 0.24", "0.30", SELECTION_NEAREST, 2, 3, 1},
    // not below the aim, although 0.29 is nearer; not above it
    {"0.36 0.33 0.29 0.24", "0.30", SELECTION_AT_LEAST, 1, 2, 0},
    {"0.36 0.31 0.25 0.24", "0.30", SELECTION_AT_MOST, 2, 3, 1},
    {"0.30 0.31", "0.30", SELECTION_AT_LEAST, 0, -1, 1},
    {"0.30 0.31", "0.30", SELECTION_AT_MOST, 0, -1, 1},
    // no offer on the safe side fits: the nearest that does
    {"0.36x 0.29 0.25", "0.30", SELECTION_AT_LEAST, 1, 2, 0},
    // nothing fits: its neighbours are those of the aim
    {"0.36x 0.24x 0.20x", "0.30", SELECTION_NEAREST, -1, 1, 0},
    {"? 0.28", "0.30", SELECTION_NEAREST, 1, -1, -1},
    {"? ?", "0.30", SELECTION_NEAREST, -1, -1, -1},
    // of equal values the first
    {"0.30 0.30 0.28", "0.30", SELECTION_NEAREST, 0, 2, -1},
};

START_TEST(each_row)
{
    g_auto(GStrv) words = g_strsplit(rows[_i].offers, " ", -1);
    SelectionOffer offers[OFFERS] = {0};
    gsize count = g_strv_length(words);
    for (gsize i = 0; i < count; i++) {
        offers[i].fits = !g_str_has_suffix(words[i], "x");
        if (!offers[i].fits)
            words[i][strlen(words[i]) - 1] = '\0';
        offers[i].value = *words[i] == '?' ? NULL : number_from_text(words[i], NULL);
    }
    g_autoptr(Number) aim = number_from_text(rows[_i].aim, NULL);
    Selection selection = selection_of(offers, count, aim, rows[_i].side);
    ck_assert_int_eq(selection.best, rows[_i].best);
    ck_assert_int_eq(selection.below, rows[_i].below);
    ck_assert_int_eq(selection.above, rows[_i].above);
    for (gsize i = 0; i < count; i++)
        number_free((Number *)offers[i].value);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("selection");
    TCase *tcase = tcase_create("selection");
    tcase_add_loop_test(tcase, each_row, 0, (int)G_N_ELEMENTS(rows));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
