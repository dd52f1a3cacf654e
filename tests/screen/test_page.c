#include "page.h"

#include <check.h>
#include <string.h>

// The page of the mock-up of a bench, without its body.
static Page bench_page(void)
{
    Page page;
    page_init(&page, 80, FALSE);
    page_say(&page.status, "TL-0412 Marigold  H23-4/01187");
    page_say(&page.status_right, "MO  10:42");
    page_say(&page.head, "S13  Check returned work by own measurement");
    page_say(&page.count, "19 of 24 bores read");
    page_say(&page.next, "cyl 4, mid, T   G03 bore gauge, zeroed in G02");
    page.field = ASKS_NUMBER;
    page_say(&page.unit, "mm");
    page.means = TRUE;
    page_say(&page.then, "90.026 mm");
    page_say(&page.last, "cyl 4, top, T   90.027   10:41 MO");
    page_key(&page, ACTION_STRIKE, NULL);
    page_key(&page, ACTION_PUT_DOWN, NULL);
    page_key(&page, ACTION_ON, NULL);
    page_key(&page, ACTION_BACK, NULL);
    page_key(&page, ACTION_MORE, NULL);
    page_key(&page, ACTION_HELP, NULL);
    return page;
}

static GStrv paint(const Page *page, const char *typed, guint width, guint height)
{
    guint row, column;
    g_autoptr(Canvas) canvas = canvas_new(width, height, FALSE);
    page_paint(page, typed, canvas, &row, &column);
    g_autofree char *text = canvas_text(canvas);
    return g_strsplit(text, "\n", -1);
}

START_TEST(five_rows_never_move)
{
    static const struct {
        guint row; // from below
        const char *text;
    } rows[] = {
        {4, "NEXT  cyl 4, mid, T   G03 bore gauge, zeroed in G02          [90.026       ] mm"},
        {3, "=     90.026 mm"},
        {2, "last  cyl 4, top, T   90.027   10:41 MO"},
        {1, "* strike   / put down   +Enter on   -Enter back   .Enter more   ? help"},
    };
    static const guint heights[] = {24, 43, 70};
    Page page = bench_page();
    for (gsize h = 0; h < G_N_ELEMENTS(heights); h++) {
        g_auto(GStrv) lines = paint(&page, "90.026", 80, heights[h]);
        ck_assert_str_eq(
            lines[0],
            "TL-0412 Marigold  H23-4/01187                                          MO  10:42");
        ck_assert_str_eq(
            lines[1],
            "S13  Check returned work by own measurement                  19 of 24 bores read");
        for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
            ck_assert_str_eq(lines[heights[h] - rows[i].row], rows[i].text);
        ck_assert(g_str_has_prefix(lines[2], "────"));
        ck_assert(g_str_has_prefix(lines[heights[h] - 5], "────"));
    }
    page_clear(&page);
}
END_TEST

START_TEST(a_long_warning_has_two_rows)
{
    Page page = bench_page();
    page.warns = TRUE;
    page_say(&page.last, "these are no limits; write `0.05 to 0.08 mm`, `0.05 ± 0.01`, "
                         "`at least 90 %%`, `max 0.1`, `exactly 4`, `any`, `yes` or `text`");
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert_str_eq(lines[21],
                     "!     these are no limits; write `0.05 to 0.08 mm`, `0.05 ± 0.01`, "
                     "`at least 90");
    ck_assert_str_eq(lines[22], "!     %`, `max 0.1`, `exactly 4`, `any`, `yes` or `text`");
    page_say(&page.last, "too late");
    g_auto(GStrv) again = paint(&page, "", 80, 24);
    ck_assert_str_eq(again[21], "=     90.026 mm");
    ck_assert_str_eq(again[22], "!     too late");
    page_clear(&page);
}
END_TEST

START_TEST(the_field_is_at_column_62_whatever_stands_there)
{
    static const Asks fields[] = {ASKS_NUMBER, ASKS_TICK, ASKS_LINE, ASKS_DIGIT};
    Page page = bench_page();
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        guint row, column;
        page.field = fields[i];
        g_autoptr(Canvas) canvas = canvas_new(80, 24, FALSE);
        page_paint(&page, "", canvas, &row, &column);
        ck_assert_uint_eq(canvas_cell(canvas, 20, 61)->character, '[');
        ck_assert_uint_eq(row, 20);
        ck_assert_uint_eq(column, 62);
        ck_assert_uint_eq(canvas_cell(canvas, 20, 63)->style.type, TYPE_REVERSE);
    }
    page_clear(&page);
}
END_TEST

START_TEST(a_long_number_shows_its_end)
{
    Page page = bench_page();
    g_auto(GStrv) lines = paint(&page, "12345678901234567", 80, 24);
    ck_assert_ptr_nonnull(strstr(lines[20], "[678901234567 ] mm"));
    page_clear(&page);
}
END_TEST

START_TEST(the_body_is_moved_so_that_the_focus_is_seen)
{
    Page page = bench_page();
    for (guint i = 0; i < 40; i++) {
        g_autofree char *text = g_strdup_printf("line %u", i);
        canvas_put(page.body, i, 0, 0, style_of(0, 0), text);
    }
    page.focus = 30;
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert_str_eq(lines[3], "line 16");
    ck_assert_str_eq(lines[18], "line 31");
    page_clear(&page);
}
END_TEST

START_TEST(a_burst_without_a_field_stands_in_the_rule)
{
    Page page = bench_page();
    page_say(&page.unplaced, "141.72");
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert(g_str_has_prefix(lines[19], "─── UNPLACED  141.72   t takes it   *6 strikes it ───"));
    page_clear(&page);
}
END_TEST

// What a key would not do in that field is not promised.
START_TEST(the_rule_promises_what_works_there)
{
    static const struct {
        Asks field;
        const char *typed, *ways;
    } rows[] = {{ASKS_TICK, "", "   t takes it   *6 strikes it"},
                {ASKS_NUMBER, "3.6", ""},
                {ASKS_LINE, "", "   at a field t takes it   *6 strikes it"},
                {ASKS_LINE, "1", ""},
                {ASKS_NOTHING, "", "   at a field t takes it   *6 strikes it"},
                {ASKS_TEXT, "", "   .Enter 7 takes it"},
                {ASKS_TEXT, "the", ""},
                {ASKS_NAME, "", "   .Enter 7 takes it   *6 strikes it"},
                {ASKS_DIGIT, "", "   answer first; then t takes it"},
                {ASKS_KEY, "", ""}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Page page = bench_page();
        page.field = rows[i].field;
        page_say(&page.unplaced, "141.72");
        g_auto(GStrv) lines = paint(&page, rows[i].typed, 80, 24);
        g_autofree char *rule = g_strdup_printf("─── UNPLACED  141.72%s ───", rows[i].ways);
        ck_assert_msg(g_str_has_prefix(lines[19], rule), "%s", lines[19]);
        page_clear(&page);
    }
}
END_TEST

START_TEST(a_long_burst_leaves_room_for_its_ways)
{
    Page page = bench_page();
    page.field = ASKS_LINE;
    page_say(&page.unplaced, "%s", "a paste that is longer than the rule has room for");
    page.unplaced_more = 12;
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert_str_eq(
        lines[19],
        "─── UNPLACED  a paste t… and 12 more   at a field t takes it   *6 strikes it ───");
    page_clear(&page);
}
END_TEST

START_TEST(a_wide_screen_keeps_the_left_part_to_the_column)
{
    Page page = bench_page();
    g_auto(GStrv) narrow = paint(&page, "", 80, 43);
    page.detail = canvas_new_growing(page_detail_width(132), FALSE);
    canvas_put(page.detail, 0, 1, 0, style_of(0, 0), "cyl 4, mid, T");
    canvas_put(page.detail, 1, 1, 0, style_of(0, 0), "now");
    g_auto(GStrv) wide = paint(&page, "", 132, 43);
    for (guint i = 0; i < 43; i++) {
        g_autofree char *left = g_utf8_substring(wide[i], 0, 80);
        ck_assert_str_eq(g_strchomp(left), narrow[i]);
    }
    ck_assert(g_str_has_suffix(wide[1], "│ cyl 4, mid, T"));
    ck_assert(g_str_has_suffix(wide[3], "│ now"));
    page_clear(&page);
}
END_TEST

START_TEST(a_long_remark_goes_on_under_its_beginning)
{
    Page page = bench_page();
    page_say(&page.remark, "W2 was due 31 Jan.\n  Found good it stands, in standbook log --shop: "
                           "INITIALS calibration W2 2025-03-04 good");
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert_str_eq(lines[16], " W2 was due 31 Jan.");
    ck_assert_str_eq(lines[17],
                     "   Found good it stands, in standbook log --shop: INITIALS calibration W2");
    ck_assert_str_eq(lines[18], "   2025-03-04 good");
    page_clear(&page);
}
END_TEST

START_TEST(a_unit_is_never_cut)
{
    static const char *const units[] = {"mm", "thou", "lbf·ft"};
    for (gsize i = 0; i < G_N_ELEMENTS(units); i++) {
        Page page = bench_page();
        page_say(&page.unit, "%s", units[i]);
        g_auto(GStrv) lines = paint(&page, "0.05", 80, 24);
        g_autofree char *end = g_strconcat("] ", units[i], NULL);
        ck_assert_msg(g_str_has_suffix(lines[20], end), "%s", lines[20]);
        ck_assert(strstr(lines[20], "[0.05 "));
        page_clear(&page);
    }
}
END_TEST

START_TEST(heads_and_a_remark_stay_where_the_body_is_moved)
{
    Page page = bench_page();
    for (guint i = 0; i < 60; i++) {
        g_autofree char *words = g_strdup_printf("row %u", i);
        canvas_put(page.body, i, 0, 0, style_of(0, 0), words);
    }
    page.heads = 2;
    page.focus = 57;
    page_say(&page.remark, "it reads low\ndo it again");
    g_auto(GStrv) lines = paint(&page, "", 80, 24);
    ck_assert_str_eq(lines[3], "row 0");
    ck_assert_str_eq(lines[4], "row 1");
    ck_assert_str_eq(lines[15], "row 58"); // what must be seen, and one row behind it
    ck_assert_str_eq(lines[16], "");
    ck_assert_str_eq(lines[17], " it reads low");
    ck_assert_str_eq(lines[18], " do it again");
    page_clear(&page);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {five_rows_never_move,
                                  a_long_warning_has_two_rows,
                                  the_field_is_at_column_62_whatever_stands_there,
                                  a_long_number_shows_its_end,
                                  the_body_is_moved_so_that_the_focus_is_seen,
                                  heads_and_a_remark_stay_where_the_body_is_moved,
                                  a_long_remark_goes_on_under_its_beginning,
                                  a_unit_is_never_cut,
                                  a_burst_without_a_field_stands_in_the_rule,
                                  the_rule_promises_what_works_there,
                                  a_long_burst_leaves_room_for_its_ways,
                                  a_wide_screen_keeps_the_left_part_to_the_column};
    TCase *tcase = tcase_create("page");
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    Suite *suite = suite_create("page");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
