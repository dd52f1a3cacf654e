#include <standbook/sheet/strip.h>

#include <check.h>

// Numbers as decimals of one thousandth; U is the expanded uncertainty, k = 2. 0 limits: -1.
typedef struct {
    const char *value, *doubt, *lower, *upper, *expected;
} Row;

static Number *number_or_null(const char *text)
{
    return text ? number_from_text(text, NULL) : NULL;
}

static char *drawn(const Row *row)
{
    g_autoptr(Number) doubt = number_or_null(row->doubt);
    g_autoptr(Number) square = number_multiply(doubt, doubt);
    g_autoptr(Number) four = number_from_integer(4);
    g_autoptr(Number) variance = number_divide(square, four);
    g_autoptr(Number) value = number_or_null(row->value), lower = number_or_null(row->lower);
    g_autoptr(Number) upper = number_or_null(row->upper);
    const Requirement made = {.value = value, .variance = variance, .lower = lower, .upper = upper};
    return strip_text(&made);
}

// The pictures that the design draws, their numbers beside them.
START_TEST(limits_stand_on_cells_4_and_20)
{
    static const Row rows[] = {
        {"0.064", "0.005", "0.050", "0.080", "    ├────▒▒█▒▒▒─────┤    "},
        {"0.067", "0.005", "0.050", "0.080", "    ├─────▒▒▒█▒▒▒───┤    "},
        {"0.062", "0.005", "0.050", "0.080", "    ├───▒▒█▒▒▒──────┤    "},
        {"0.086", "0.005", "0.050", "0.080", "    ├───────────────┤▒▒█▒"},
        {"7.5", "0.7", "7.0", "11.0", "   ▒├▒█▒▒▒──────────┤    "},
        {"0.12", "0.01", "0.05", "0.25", "    ├────▒█─────────┤    "},
        {"0.30", "0.01", "0.27", "0.33", "    ├────▒▒▒█▒▒▒────┤    "},
        {"0.004", "0.002", NULL, "0.010", "    ───▒▒▒█▒▒▒▒─────┤    "},
        {"0.003", "0.002", NULL, "0.010", "    ──▒▒▒█▒▒▒───────┤    "},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *text = drawn(&rows[i]);
        ck_assert_str_eq(text, rows[i].expected);
    }
}
END_TEST

START_TEST(a_mark_is_never_rounded_across_a_post)
{
    static const Row rows[] = {
        {"0.050", "0", "0.050", "0.080", "    ├█──────────────┤    "},
        {"0.080", "0", "0.050", "0.080", "    ├──────────────█┤    "},
        {"0.0499999", "0", "0.050", "0.080", "   █├───────────────┤    "},
        {"0.0800001", "0", "0.050", "0.080", "    ├───────────────┤█   "},
        {"9", "0", "0.050", "0.080", "    ├───────────────┤   >"},
        {"-9", "0", "0.050", "0.080", "<   ├───────────────┤    "},
        {"95", "0", "90", NULL, "    ├█───────────────    "},
        {"0", "0", NULL, "0", "    ───────────────█┤    "},
        {"-3", "0", NULL, "-2", "    ────────█───────┤    "},
        {"5", "0", "5", "5", "    ├█──────────────┤    "},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *text = drawn(&rows[i]);
        ck_assert_str_eq(text, rows[i].expected);
    }
}
END_TEST

START_TEST(a_range_is_drawn_from_the_least_to_the_greatest)
{
    g_autoptr(Number) lower = number_from_text("0.08", NULL);
    g_autoptr(Number) upper = number_from_text("0.18", NULL);
    g_autoptr(Number) least = number_from_text("0.11", NULL);
    g_autoptr(Number) greatest = number_from_text("0.17", NULL);
    const Requirement made = {.lower = lower, .upper = upper};
    g_autofree char *text = strip_range(&made, least, greatest);
    ck_assert_str_eq(text, "    ├────██████████─┤    ");
}
END_TEST

START_TEST(without_limits_there_is_no_strip)
{
    g_autofree char *text = drawn(&(Row){"5", "1", NULL, NULL, ""});
    ck_assert_str_eq(text, "");
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("strip");
    tcase_add_test(tcase, limits_stand_on_cells_4_and_20);
    tcase_add_test(tcase, a_mark_is_never_rounded_across_a_post);
    tcase_add_test(tcase, a_range_is_drawn_from_the_least_to_the_greatest);
    tcase_add_test(tcase, without_limits_there_is_no_strip);
    Suite *suite = suite_create("strip");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
