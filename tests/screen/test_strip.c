#include "widget_strip.h"

#include <check.h>

START_TEST(it_takes_a_column_for_each_cell)
{
    g_autoptr(Canvas) canvas = canvas_new(60, 2, FALSE);
    guint end = strip_paint(canvas, 0, 3, "    ├────▒▒█▒▒▒─────┤    ", VERDICT_PASS);
    ck_assert_uint_eq(end, 28);
    strip_paint(canvas, 1, 40, "    ├───────────────┤▒▒█▒", VERDICT_FAIL);
    g_autofree char *text = canvas_text(canvas);
    ck_assert_str_eq(text, "       ├────▒▒█▒▒▒─────┤\n"
                           "                                            ├───────────────\n");
}
END_TEST

START_TEST(ascii_spells_the_same_picture)
{
    static const struct {
        const char *strip, *expected;
    } rows[] = {
        {"    ├────▒▒█▒▒▒─────┤    ", "    |----~~#~~~-----|\n"},
        {"    ├─────▒▒▒█▒▒▒───┤    ", "    |-----~~~#~~~---|\n"},
        {"    ├───▒▒█▒▒▒──────┤    ", "    |---~~#~~~------|\n"},
        {"    ├───────────────┤▒▒█▒", "    |---------------|~~#~\n"},
        {"    ├───┼─░░░░──────┤ ║ >", "    |---+-::::------| ! >\n"},
        {"════════════════════┤═══█", "====================|===#\n"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Canvas) canvas = canvas_new(25, 1, TRUE);
        strip_paint(canvas, 0, 0, rows[i].strip, VERDICT_PASS);
        g_autofree char *text = canvas_text(canvas);
        ck_assert_str_eq(text, rows[i].expected);
    }
}
END_TEST

static void expect_roles(Verdict verdict, Role reading)
{
    g_autoptr(Canvas) canvas = canvas_new(25, 1, FALSE);
    strip_paint(canvas, 0, 0, "<   ├───┼──▒▒█▒▒────┤ ║ >", verdict);
    for (guint column = 0; column < 25; column++) {
        const Cell *cell = canvas_cell(canvas, 0, column);
        gboolean reads = cell->character == 0x2588 || cell->character == 0x2592 ||
                         cell->character == '<' || cell->character == '>';
        ck_assert_uint_eq(cell->style.role, reads ? reading : ROLE_CALM);
    }
}

START_TEST(only_the_reading_is_coloured)
{
    expect_roles(VERDICT_PASS, ROLE_CALM);
    expect_roles(VERDICT_FAIL, ROLE_HEED);
    expect_roles(VERDICT_IN_DOUBT, ROLE_UNSURE);
    expect_roles(VERDICT_CONCEDED, ROLE_GRANTED);
}
END_TEST

START_TEST(no_strip_paints_nothing)
{
    g_autoptr(Canvas) canvas = canvas_new(5, 1, FALSE);
    ck_assert_uint_eq(strip_paint(canvas, 0, 2, "", VERDICT_OPEN), 2);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("strip");
    tcase_add_test(tcase, it_takes_a_column_for_each_cell);
    tcase_add_test(tcase, ascii_spells_the_same_picture);
    tcase_add_test(tcase, only_the_reading_is_coloured);
    tcase_add_test(tcase, no_strip_paints_nothing);
    Suite *suite = suite_create("strip");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
