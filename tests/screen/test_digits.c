#include "widget_digits.h"

#include <check.h>
#include <string.h>

static void expect_drawn(const char *figure, guint dot, guint high, gboolean ascii,
                         const char *expected)
{
    g_autoptr(Canvas) canvas = canvas_new_growing(80, ascii);
    digits_paint(canvas, 0, 0, dot, high, style_of(0, 0), figure);
    g_autofree char *text = canvas_text(canvas);
    ck_assert_str_eq(text, expected);
}

// The setting of the wrench: ten rows high.
START_TEST(a_target_is_ten_rows_high)
{
    ck_assert_uint_eq(digits_width("75", 4), 27);
    expect_drawn("75", 4, 2, FALSE,
                 "████████████   ████████████\n"
                 "████████████   ████████████\n"
                 "        ████   ████\n"
                 "        ████   ████\n"
                 "        ████   ████████████\n"
                 "        ████   ████████████\n"
                 "        ████           ████\n"
                 "        ████           ████\n"
                 "        ████   ████████████\n"
                 "        ████   ████████████\n");
}
END_TEST

// What the adviser says to do: five rows high.
START_TEST(advice_is_five_rows_high)
{
    ck_assert_uint_eq(digits_width("OUT 1/20", 2), 58);
    expect_drawn("out 1/20", 2, 1, FALSE,
                 "██████  ██  ██  ██████        ██        ██  ██████  ██████\n"
                 "██  ██  ██  ██    ██        ████        ██      ██  ██  ██\n"
                 "██  ██  ██  ██    ██          ██      ██    ██████  ██  ██\n"
                 "██  ██  ██  ██    ██          ██    ██      ██      ██  ██\n"
                 "██████  ██████    ██        ██████  ██      ██████  ██████\n");
}
END_TEST

START_TEST(the_far_view_is_fifteen_rows_high)
{
    ck_assert_uint_eq(digits_width("75", 5), 34);
    expect_drawn("75", 5, 3, TRUE,
                 "###############    ###############\n"
                 "###############    ###############\n"
                 "###############    ###############\n"
                 "          #####    #####\n"
                 "          #####    #####\n"
                 "          #####    #####\n"
                 "          #####    ###############\n"
                 "          #####    ###############\n"
                 "          #####    ###############\n"
                 "          #####              #####\n"
                 "          #####              #####\n"
                 "          #####              #####\n"
                 "          #####    ###############\n"
                 "          #####    ###############\n"
                 "          #####    ###############\n");
    expect_drawn("2", 5, 3, FALSE,
                 "███████████████\n"
                 "███████████████\n"
                 "███████████████\n"
                 "          █████\n"
                 "          █████\n"
                 "          █████\n"
                 "███████████████\n"
                 "███████████████\n"
                 "███████████████\n"
                 "█████\n"
                 "█████\n"
                 "█████\n"
                 "███████████████\n"
                 "███████████████\n"
                 "███████████████\n");
}
END_TEST

START_TEST(a_point_is_narrow)
{
    ck_assert_uint_eq(digits_width("90.026", 3), 63);
    expect_drawn("0.1", 2, 1, FALSE,
                 "██████        ██\n"
                 "██  ██      ████\n"
                 "██  ██        ██\n"
                 "██  ██        ██\n"
                 "██████  ██  ██████\n");
}
END_TEST

// Bolts L3 and R3 must not look alike.
START_TEST(every_figure_and_letter_differs)
{
    static const char *const all = "1234567890./-+°ABCDEFGHIJKLMNPQRSTUVWXYZ";
    g_autoptr(GHashTable) seen = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (const char *at = all; *at; at = g_utf8_next_char(at)) {
        g_autofree char *one = g_strndup(at, (gsize)(g_utf8_next_char(at) - at));
        g_autoptr(Canvas) canvas = canvas_new(10, 5, FALSE);
        digits_paint(canvas, 0, 0, 2, 1, style_of(0, 0), one);
        char *text = canvas_text(canvas);
        ck_assert_msg(strstr(text, "█") != NULL, "no shape for %s", one);
        ck_assert_msg(g_hash_table_add(seen, text), "%s looks like another:\n%s", one, text);
    }
}
END_TEST

START_TEST(the_widest_dot_that_fits_is_found)
{
    ck_assert_uint_eq(digits_dot("75", 4, 27), 4);
    ck_assert_uint_eq(digits_dot("75", 4, 26), 3);
    ck_assert_uint_eq(digits_dot("75", 4, 14), 2);
    ck_assert_uint_eq(digits_dot("75", 4, 13), 0);
    ck_assert_uint_eq(digits_dot("", 4, 0), 4);
}
END_TEST

START_TEST(what_has_no_shape_takes_no_room)
{
    ck_assert_uint_eq(digits_width("7,5?", 4), 27);
    ck_assert_uint_eq(digits_width("", 4), 0);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("digits");
    tcase_add_test(tcase, a_target_is_ten_rows_high);
    tcase_add_test(tcase, advice_is_five_rows_high);
    tcase_add_test(tcase, the_far_view_is_fifteen_rows_high);
    tcase_add_test(tcase, a_point_is_narrow);
    tcase_add_test(tcase, every_figure_and_letter_differs);
    tcase_add_test(tcase, the_widest_dot_that_fits_is_found);
    tcase_add_test(tcase, what_has_no_shape_takes_no_room);
    Suite *suite = suite_create("digits");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
