#include "cells.h"

#include <check.h>

static void expect_text(const Canvas *canvas, const char *expected)
{
    g_autofree char *text = canvas_text(canvas);
    ck_assert_str_eq(text, expected);
}

START_TEST(text_is_cut_at_its_width_and_says_so)
{
    g_autoptr(Canvas) canvas = canvas_new(10, 2, FALSE);
    ck_assert_uint_eq(canvas_put(canvas, 0, 1, 5, style_of(0, 0), "0.041"), 6);
    ck_assert_uint_eq(canvas_put(canvas, 1, 6, 0, style_of(0, 0), "clearance"), 10);
    canvas_put(canvas, 9, 0, 0, style_of(0, 0), "below");
    expect_text(canvas, " 0.041\n      cle…\n");
}
END_TEST

START_TEST(signs_have_an_ascii_spelling)
{
    g_autoptr(Canvas) canvas = canvas_new(20, 1, TRUE);
    canvas_put(canvas, 0, 0, 0, style_of(0, 0), "0.05 ±.004 √ é");
    expect_text(canvas, "0.05 +-.004 + ?\n");
    ck_assert_uint_eq(canvas_text_width(canvas, "±"), 2);
}
END_TEST

START_TEST(what_acts_on_a_terminal_is_not_put)
{
    g_autoptr(Canvas) canvas = canvas_new(20, 1, FALSE);
    canvas_put(canvas, 0, 0, 0, style_of(0, 0),
               "a\x1b[2J\x07\xff\xe2\x80\xae"
               "b\xc2\x9b");
    expect_text(canvas, "a?[2J???b?\n");
}
END_TEST

START_TEST(wide_characters_take_two_cells)
{
    g_autoptr(Canvas) canvas = canvas_new(5, 1, FALSE);
    ck_assert_uint_eq(canvas_put(canvas, 0, 0, 0, style_of(TYPE_BOLD, 0), "漢字x"), 5);
    ck_assert_uint_eq(canvas_cell(canvas, 0, 1)->character, 0);
    ck_assert_uint_eq(canvas_cell(canvas, 0, 4)->character, 'x');
    expect_text(canvas, "漢字x\n");
}
END_TEST

START_TEST(a_growing_canvas_is_copied_into_a_fixed_one)
{
    g_autoptr(Canvas) body = canvas_new_growing(8, FALSE);
    canvas_put(body, 2, 0, 0, style_of(0, ROLE_HEED), "third");
    canvas_put_right(body, 3, 8, style_of(0, 0), "end");
    ck_assert_uint_eq(body->height, 4);
    g_autoptr(Canvas) screen = canvas_new(8, 2, FALSE);
    canvas_copy(screen, 0, 1, body, 2, 9);
    expect_text(screen, " third\n      en\n");
    ck_assert_uint_eq(canvas_cell(screen, 0, 1)->style.role, ROLE_HEED);
    canvas_put(body, ROWS_MOST, 0, 0, style_of(0, 0), "too far");
    ck_assert_uint_eq(body->height, 4);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("cells");
    tcase_add_test(tcase, text_is_cut_at_its_width_and_says_so);
    tcase_add_test(tcase, signs_have_an_ascii_spelling);
    tcase_add_test(tcase, what_acts_on_a_terminal_is_not_put);
    tcase_add_test(tcase, wide_characters_take_two_cells);
    tcase_add_test(tcase, a_growing_canvas_is_copied_into_a_fixed_one);
    Suite *suite = suite_create("cells");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
