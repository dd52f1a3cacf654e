#include <check.h>
#include <standbook/base/error.h>
#include <standbook/rules/pattern.h>
#include <stdlib.h>

// Bolts are given as labels parted by blanks; the answer is the order as a plan would list it.
static char *order_of(const char *bolts, const char *words, const char *layout, GError **error)
{
    g_auto(GStrv) labels = *bolts ? g_strsplit(bolts, " ", -1) : g_new0(char *, 1);
    gsize count = g_strv_length(labels);
    g_autoptr(GArray) order =
        pattern_order(words, layout, (const char *const *)labels, count, error);
    if (!order)
        return NULL;
    g_autoptr(GString) list = g_string_new(NULL);
    for (guint i = 0; i < order->len; i++)
        g_string_append_printf(list, "%s%s", i ? "-" : "", labels[g_array_index(order, guint, i)]);
    return g_strdup(list->str);
}

static void expect_order(const char *bolts, const char *words, const char *layout,
                         const char *expected)
{
    g_autoptr(GError) error = NULL;
    g_autofree char *order = order_of(bolts, words, layout, &error);
    ck_assert_msg(order != NULL, "%s of %s: %s", words, bolts, error ? error->message : "");
    ck_assert_str_eq(order, expected);
}

static void expect_refused(const char *bolts, const char *words, const char *layout,
                           const char *message)
{
    g_autoptr(GError) error = NULL;
    g_autofree char *order = order_of(bolts, words, layout, &error);
    ck_assert_ptr_null(order);
    ck_assert(g_error_matches(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO));
    ck_assert_str_eq(error->message, message);
}

static char *numbers_to(guint last)
{
    g_autoptr(GString) numbers = g_string_new(NULL);
    for (guint i = 1; i <= last; i++)
        g_string_append_printf(numbers, "%s%u", i > 1 ? " " : "", i);
    return g_strdup(numbers->str);
}

START_TEST(as_numbered_and_as_listed)
{
    expect_order("1 2 3 4 5 6", NULL, NULL, "1-2-3-4-5-6");
    expect_order("1 2 3", "", "circle", "1-2-3");
    expect_order("1 2 3", "as numbered", NULL, "1-2-3");
    expect_order("1 2 3 4 5 6", "3-4-1-2-5-6", "1 2 / 3 4 / 5 6", "3-4-1-2-5-6");
    expect_order("L1 L2 R1 R2", "L2 R2, L1 - R1", NULL, "L2-R2-L1-R1");
    expect_order("1", "1", NULL, "1");
    expect_order("", NULL, NULL, "");
}
END_TEST

// Common practice, no published source: manifold nuts of 8, rocker pedestals of 4, a pump body
// of 3.
START_TEST(a_row_goes_from_the_middle_to_both_ends)
{
    expect_order("1 2 3 4 5 6 7 8", "row", NULL, "4-5-3-6-2-7-1-8");
    expect_order("1 2 3 4", "row", NULL, "2-3-1-4");
    expect_order("1 2 3", "row", NULL, "2-1-3");
    expect_order("1 2 3 4 5", "row", NULL, "3-2-4-1-5");
    expect_order("1 2", "row", NULL, "1-2");
    expect_order("1", "row", NULL, "1");
    expect_order("", "row", NULL, "");
    expect_order("1 2 3 4", "row", "4 2 1 3", "2-1-4-3"); // as they lie, not as numbered
}
END_TEST

// 4 and 6: common practice, no published source. 8, 12, 16, 20, 24: legacy pattern of ASME PCC-1,
// from memory. 2, 3, 5, 7, 10: common practice, no published source.
START_TEST(criss_cross_goes_to_the_other_side)
{
    static const struct {
        guint bolts;
        const char *expected;
    } rows[] = {
        {1, "1"},
        {2, "1-2"},
        {3, "1-2-3"},
        {4, "1-3-2-4"},
        {5, "1-3-5-2-4"},
        {6, "1-4-3-6-5-2"},
        {7, "1-4-7-3-6-2-5"},
        {8, "1-5-3-7-2-6-4-8"},
        {10, "1-6-3-8-5-10-7-2-9-4"},
        {12, "1-7-4-10-2-8-5-11-3-9-6-12"},
        {16, "1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16"},
        {20, "1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19"},
        {24, "1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *bolts = numbers_to(rows[i].bolts);
        expect_order(bolts, "criss-cross", i % 2 ? "circle" : NULL, rows[i].expected);
    }
}
END_TEST

// Head of ten and cover of four: common practice, no published source.
START_TEST(a_spiral_begins_at_the_centre)
{
    expect_order("1 2 3 4 5 6 7 8 9 10", "spiral", "1 2 3 4 5 / 6 7 8 9 10",
                 "3-8-4-7-2-9-5-6-1-10");
    expect_order("1 2 3 4", "spiral", "1 2 / 3 4", "2-3-1-4");
    expect_order("1 2 3 4 5 6 7 8 9", "spiral", "1 2 3/4 5 6/7 8 9", "5-2-8-6-4-3-7-1-9");
    // Rows of three, two and three: the short row is centred.
    expect_order("a b c d e f g h", "spiral", "a b c / d e / f g h", "e-d-b-g-c-f-a-h");
    // Without an opposite bolt the next one follows.
    expect_order("a b c", "spiral", "a / b c", "a-c-b");
}
END_TEST

START_TEST(every_pattern_takes_every_bolt_once)
{
    static const char *const patterns[] = {"row", "criss-cross"};
    for (guint count = 1; count <= 60; count++) {
        for (gsize i = 0; i < G_N_ELEMENTS(patterns); i++) {
            g_autofree char *bolts = numbers_to(count);
            g_autofree char *order = order_of(bolts, patterns[i], NULL, NULL);
            expect_order(bolts, order, NULL, order); // a list is checked for twice and left out
        }
    }
}
END_TEST

START_TEST(a_fault_is_named)
{
    const char *six = "1 2 3 4 5 6";
    expect_refused(six, "3-4-1-2-5", NULL, "order: bolt 6 is left out; write every bolt once");
    expect_refused(six, "3-4-1-2", NULL, "order: bolts 5, 6 are left out; write every bolt once");
    expect_refused(six, "3-4-3-1-2-5-6", NULL,
                   "order: bolt 3 is there twice; write every bolt once");
    expect_refused(six, "3-4-1-2-5-7", NULL,
                   "order: there is no bolt `7`; the bolts are `1`, `2`, `3`, `4`, `5`, `6`");
    expect_refused("front rear", "front-raer", NULL,
                   "order: there is no bolt `raer`; did you mean `rear`?");
    expect_refused("1 2", "1-\x1b[2J", NULL,
                   "order: there is no bolt `\\x1B[2J`; the bolts are `1`, `2`");
    expect_refused(six, "spirl", NULL,
                   "order: there is no order called `spirl`; did you mean `spiral`?");
    expect_refused(six, "cris-cros", NULL,
                   "order: there is no order called `cris-cros`; did you mean `criss-cross`?");
    expect_refused("1 2 3", NULL, "1 2", "layout: bolt 3 is left out; write every bolt once");
    expect_refused("1 2 3", NULL, "1 2 / 2 3",
                   "layout: bolt 2 is there twice; write every bolt once");
}
END_TEST

START_TEST(order_and_layout_must_fit)
{
    expect_refused("1 2", "spiral", NULL,
                   "order: `spiral` needs to know how the bolts lie; write `layout:` with rows "
                   "parted by `/`, such as `1 2 3 / 4 5 6`");
    expect_refused("1 2", "row", "1 / 2",
                   "order: `row` is for bolts in one row; write `spiral`, or list the bolts");
    expect_refused("1 2", "row", "circle",
                   "order: `row` is for bolts in one row; write `criss-cross`, or list the bolts");
    expect_refused("1 2", "criss-cross", "1 2",
                   "order: `criss-cross` goes round a circle, but the layout has rows; write "
                   "`layout: circle` or `order: spiral`");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("pattern");
    TCase *tcase = tcase_create("pattern");
    tcase_add_test(tcase, as_numbered_and_as_listed);
    tcase_add_test(tcase, a_row_goes_from_the_middle_to_both_ends);
    tcase_add_test(tcase, criss_cross_goes_to_the_other_side);
    tcase_add_test(tcase, a_spiral_begins_at_the_centre);
    tcase_add_test(tcase, every_pattern_takes_every_bolt_once);
    tcase_add_test(tcase, a_fault_is_named);
    tcase_add_test(tcase, order_and_layout_must_fit);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
