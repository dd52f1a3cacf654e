#include "widget_bolts.h"

#include <check.h>
#include <string.h>

static char *drawn_in(const char *layout, const Bolt *bolts, guint count, guint width, guint height,
                      gboolean ascii)
{
    g_autoptr(Canvas) canvas = canvas_new_growing(width, ascii);
    g_autoptr(GPtrArray) rows = bolt_rows(layout, bolts, count);
    guint right, end = bolts_paint(canvas, 0, width, height, rows,
                                   layout && strcmp(layout, "circle") == 0, bolts, count, &right);
    ck_assert_uint_eq(end, canvas->height);
    return canvas_text(canvas);
}

static void expect_drawn(const char *layout, const Bolt *bolts, guint count, guint width,
                         guint height, const char *expected)
{
    g_autofree char *text = drawn_in(layout, bolts, count, width, height, FALSE);
    ck_assert_str_eq(text, expected);
}

static const Bolt head_nuts[] = {{.label = "1", .turn = 9, .look = BOLT_TO_COME},
                                 {.label = "2", .turn = 5, .look = BOLT_HERE},
                                 {.label = "3", .turn = 1, .look = BOLT_TIGHT},
                                 {.label = "4", .turn = 3, .look = BOLT_TIGHT},
                                 {.label = "5", .turn = 7, .look = BOLT_TO_COME},
                                 {.label = "6", .turn = 8, .look = BOLT_TO_COME},
                                 {.label = "7", .turn = 4, .look = BOLT_TIGHT},
                                 {.label = "8", .turn = 2, .look = BOLT_TIGHT},
                                 {.label = "9", .turn = 6, .look = BOLT_TO_COME},
                                 {.label = "10", .turn = 10, .look = BOLT_TO_COME}};
static const char *const head_layout = "1 2 3 4 5 / 6 7 8 9 10";

START_TEST(ten_head_nuts_lie_in_two_banks)
{
    expect_drawn(head_layout, head_nuts, 10, 52, 11,
                 " ┌9.─────┐ ╔5.═════╗ ┌1.─────┐ ┌3.─────┐ ┌7.─────┐\n"
                 " │   1   │ ║>  2  <║ │√  3  √│ │√  4  √│ │   5   │\n"
                 " └───────┘ ╚═══════╝ └───────┘ └───────┘ └───────┘\n"
                 "\n"
                 " ┌8.─────┐ ┌4.─────┐ ┌2.─────┐ ┌6.─────┐ ┌10.────┐\n"
                 " │   6   │ │√  7  √│ │√  8  √│ │   9   │ │   10  │\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘ └───────┘\n");
}
END_TEST

// Eight in the room of five are four and four, seven four and three.
START_TEST(a_row_too_long_is_broken_in_equal_lines)
{
    const Bolt bolts[] = {{.label = "1"}, {.label = "2"}, {.label = "3"}, {.label = "4"},
                          {.label = "5"}, {.label = "6"}, {.label = "7"}, {.label = "8"}};
    expect_drawn(NULL, bolts, 8, 52, 11,
                 " ┌───────┐ ┌───────┐ ┌───────┐ ┌───────┐\n"
                 " │   1   │ │   2   │ │   3   │ │   4   │\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘\n"
                 "\n"
                 " ┌───────┐ ┌───────┐ ┌───────┐ ┌───────┐\n"
                 " │   5   │ │   6   │ │   7   │ │   8   │\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘\n");
    expect_drawn(NULL, bolts, 7, 52, 11,
                 " ┌───────┐ ┌───────┐ ┌───────┐ ┌───────┐\n"
                 " │   1   │ │   2   │ │   3   │ │   4   │\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘\n"
                 "\n"
                 " ┌───────┐ ┌───────┐ ┌───────┐\n"
                 " │   5   │ │   6   │ │   7   │\n"
                 " └───────┘ └───────┘ └───────┘\n");
}
END_TEST

START_TEST(ascii_spells_the_same_boxes)
{
    g_autofree char *text = drawn_in(head_layout, head_nuts, 10, 52, 11, TRUE);
    ck_assert_str_eq(text, " +9.-----+ #5.=====# +1.-----+ +3.-----+ +7.-----+\n"
                           " |   1   | #>  2  <# |+  3  +| |+  4  +| |   5   |\n"
                           " +-------+ #=======# +-------+ +-------+ +-------+\n"
                           "\n"
                           " +8.-----+ +4.-----+ +2.-----+ +6.-----+ +10.----+\n"
                           " |   6   | |+  7  +| |+  8  +| |   9   | |   10  |\n"
                           " +-------+ +-------+ +-------+ +-------+ +-------+\n");
}
END_TEST

START_TEST(six_bolts_lie_on_a_circle)
{
    static const Bolt bolts[] = {
        {.label = "1", .turn = 1, .look = BOLT_TIGHT},
        {.label = "2", .turn = 6, .look = BOLT_TO_COME},
        {.label = "3", .turn = 3, .look = BOLT_TIGHT},
        {.label = "4", .turn = 2, .look = BOLT_TIGHT},
        {.label = "5", .turn = 5, .look = BOLT_TO_COME},
        {.label = "6", .turn = 4, .look = BOLT_QUESTION},
    };
    expect_drawn("circle", bolts, 6, 47, 13,
                 "                   ┌1.─────┐\n"
                 "                   │√  1  √│\n"
                 "                   └───────┘\n"
                 "       ╔4.═════╗               ┌6.─────┐\n"
                 "       ║?  6  ?║               │   2   │\n"
                 "       ╚═══════╝               └───────┘\n"
                 "\n"
                 "       ┌5.─────┐               ┌3.─────┐\n"
                 "       │   5   │               │√  3  √│\n"
                 "       └───────┘               └───────┘\n"
                 "                   ┌2.─────┐\n"
                 "                   │√  4  √│\n"
                 "                   └───────┘\n");
    g_autofree char *low = drawn_in("circle", bolts, 6, 47, 12, FALSE);
    ck_assert_msg(g_str_has_prefix(low, " ┌1.─────┐ ┌6.─────┐"), "no room for a circle:\n%s", low);
}
END_TEST

START_TEST(every_look_has_its_mark)
{
    static const Bolt bolts[] = {
        {.label = "1", .turn = 1, .look = BOLT_TIGHT, .by = "JT"},
        {.label = "12", .turn = 2, .look = BOLT_TIGHT, .by = "JT"},
        {.label = "13", .turn = 3, .look = BOLT_TIGHT, .by = "JTK"},
        {.label = "14", .turn = 4, .look = BOLT_DOUBT},
        {.label = "15", .look = BOLT_NOT_NEEDED},
    };
    expect_drawn(NULL, bolts, 5, 52, 3,
                 " ┌1.─────┐ ┌2.─────┐ ┌3.─────┐ ┌4.─────┐ ┌───────┐\n"
                 " │JT 1  √│ │JT 12 √│ │√  13 √│ │?  14 ?│ │−  15 −│\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘ └───────┘\n");
    static const Bolt faults[] = {{.label = "1", .look = BOLT_LOW},
                                  {.label = "2", .look = BOLT_HIGH, .by = "JT"},
                                  {.label = "3", .look = BOLT_CONCEDED}};
    expect_drawn(NULL, faults, 3, 52, 3,
                 " ┌───────┐ ┌───────┐ ┌───────┐\n"
                 " │▼  1  ▼│ │JT 2  ▲│ │◆  3  ◆│\n"
                 " └───────┘ └───────┘ └───────┘\n");
}
END_TEST

START_TEST(smaller_boxes_where_the_room_is_small)
{
    expect_drawn(head_layout, head_nuts, 10, 51, 6,
                 " ┌9.─────┐ ╔5.═════╗ ┌1.─────┐ ┌3.─────┐ ┌7.─────┐\n"
                 " │   1   │ ║>  2  <║ │√  3  √│ │√  4  √│ │   5   │\n"
                 " └───────┘ ╚═══════╝ └───────┘ └───────┘ └───────┘\n"
                 " ┌8.─────┐ ┌4.─────┐ ┌2.─────┐ ┌6.─────┐ ┌10.────┐\n"
                 " │   6   │ │√  7  √│ │√  8  √│ │   9   │ │   10  │\n"
                 " └───────┘ └───────┘ └───────┘ └───────┘ └───────┘\n");
    expect_drawn(head_layout, head_nuts, 10, 31, 6,
                 " ┌9.──┐╔5.══╗┌1.──┐┌3.──┐┌7.──┐\n"
                 " │  1 │║> 2<║│√ 3√││√ 4√││  5 │\n"
                 " └────┘╚════╝└────┘└────┘└────┘\n"
                 " ┌8.──┐┌4.──┐┌2.──┐┌6.──┐┌10.─┐\n"
                 " │  6 ││√ 7√││√ 8√││  9 ││ 10 │\n"
                 " └────┘└────┘└────┘└────┘└────┘\n");
    expect_drawn(head_layout, head_nuts, 10, 52, 3,
                 " [  1  ] [> 2 <] [√ 3 √] [√ 4 √] [  5  ]\n"
                 "\n"
                 " [  6  ] [√ 7 √] [√ 8 √] [  9  ] [  10 ]\n");
    expect_drawn(head_layout, head_nuts, 10, 26, 2,
                 " [  1][> 2][√ 3][√ 4][  5]\n"
                 " [  6][√ 7][√ 8][  9][ 10]\n");
}
END_TEST

START_TEST(uneven_rows_lie_as_they_are)
{
    expect_drawn("1 2 3 / 4 5", head_nuts, 5, 31, 9,
                 " ┌9.─────┐ ╔5.═════╗ ┌1.─────┐\n"
                 " │   1   │ ║>  2  <║ │√  3  √│\n"
                 " └───────┘ ╚═══════╝ └───────┘\n"
                 "\n"
                 " ┌3.─────┐ ┌7.─────┐\n"
                 " │√  4  √│ │   5   │\n"
                 " └───────┘ └───────┘\n");
}
END_TEST

static void expect_right(const char *layout, guint count, guint expected)
{
    g_autoptr(Canvas) canvas = canvas_new_growing(52, FALSE);
    g_autoptr(GPtrArray) rows = bolt_rows(layout, head_nuts, count);
    guint right, end = bolts_paint(canvas, 2, 52, layout ? 11 : 13, rows,
                                   g_strcmp0(layout, "circle") == 0, head_nuts, count, &right);
    ck_assert_uint_gt(end, 2);
    ck_assert_uint_eq(right, expected);
}

START_TEST(the_column_behind_the_last_box_is_told)
{
    expect_right(head_layout, 10, 1 + 5 * 10 - 1);
    expect_right("1 2 / 3 4", 4, 1 + 2 * 10 - 1);
    expect_right(NULL, 1, 10);
}
END_TEST

// A set of bolts of which each label is between two marks that stand nowhere else.
typedef struct {
    GPtrArray *labels;
    GArray *bolts;
} Set;

static Set *set_new(const char *prefixes, const char *ending, guint each)
{
    Set *set = g_new0(Set, 1);
    set->labels = g_ptr_array_new_with_free_func(g_free);
    set->bolts = g_array_new(FALSE, FALSE, sizeof(Bolt));
    for (const char *prefix = prefixes; *prefix; prefix++)
        for (guint i = 1; i <= each; i++) {
            g_autofree char *start = g_strndup(prefix, *prefix == ' ' ? 0 : 1);
            char *label = g_strdup_printf("%s%u%s", start, i, ending);
            Bolt bolt = {.label = label, .turn = set->bolts->len + 1, .look = BOLT_TIGHT};
            g_ptr_array_add(set->labels, label);
            g_array_append_val(set->bolts, bolt);
        }
    return set;
}

static void set_free(Set *set)
{
    g_ptr_array_unref(set->labels);
    g_array_unref(set->bolts);
    g_free(set);
}

// How often a text stands there, no letter or digit beside it.
static guint times(const char *text, const char *label)
{
    guint count = 0;
    gsize length = strlen(label);
    for (const char *at = text; (at = strstr(at, label)); at += length)
        if ((at == text || !g_ascii_isalnum(at[-1])) && !g_ascii_isalnum(at[length]) &&
            at[length] != '.')
            count++;
    return count;
}

static guint signs(const char *text, const char *sign)
{
    guint count = 0;
    for (const char *at = text; (at = strstr(at, sign)); at += strlen(sign))
        count++;
    return count;
}

// Whatever the layout and the room: each label once, each box whole, none over the edge.
static void expect_all(const Set *set, const char *layout, guint width, guint height)
{
    const Bolt *bolts = (const Bolt *)(gpointer)set->bolts->data;
    guint count = set->bolts->len;
    g_autofree char *text = drawn_in(layout, bolts, count, width, height, FALSE);
    for (guint i = 0; i < count; i++)
        ck_assert_msg(times(text, bolts[i].label) == 1, "%s:\n%s", bolts[i].label, text);
    guint corners = signs(text, "┌");
    ck_assert_uint_eq(corners + signs(text, "["), count);
    ck_assert_uint_eq(corners, signs(text, "┐"));
    ck_assert_uint_eq(corners, signs(text, "└"));
    ck_assert_uint_eq(corners, signs(text, "┘"));
    ck_assert_uint_eq(2 * corners, signs(text, "│"));
    ck_assert_uint_eq(signs(text, "["), signs(text, "]"));
    ck_assert_uint_eq(signs(text, "\n[") + signs(text, "\n│"), 0); // the first column stays free
    ck_assert_msg(signs(text, "\n") <= height, "%u by %u:\n%s", width, height, text);
}

START_TEST(every_bolt_finds_room)
{
    static const guint counts[] = {1, 2, 3, 4, 5, 6, 8, 10, 12, 18, 24, 26, 36, 60};
    static const guint widths[] = {52, 60, 80, 120};
    static const guint heights[] = {11, 13, 14};
    for (gsize c = 0; c < G_N_ELEMENTS(counts); c++)
        for (gsize w = 0; w < G_N_ELEMENTS(widths); w++)
            for (gsize h = 0; h < G_N_ELEMENTS(heights); h++) {
                Set *plain = set_new(" ", "", counts[c]);
                Set *banks = set_new("LR", "", MAX(1, counts[c] / 2));
                Set *axes = set_new(" ", ", b", counts[c]);
                expect_all(plain, NULL, widths[w], heights[h]);
                expect_all(plain, "circle", widths[w], heights[h]);
                expect_all(banks, NULL, widths[w], heights[h]);
                expect_all(axes, NULL, widths[w], heights[h]);
                expect_all(axes, "circle", widths[w], heights[h]);
                set_free(plain);
                set_free(banks);
                set_free(axes);
            }
    Set *four = set_new("ABCD", "", 7);
    expect_all(four, NULL, 80, 14);
    set_free(four);
}
END_TEST

START_TEST(long_labels_are_never_cut)
{
    Set *set = set_new(" ", ", front, outside", 12);
    expect_all(set, NULL, 80, 14);
    expect_all(set, NULL, 52, 14);
    expect_all(set, "circle", 80, 14);
    g_autofree char *text =
        drawn_in(NULL, (const Bolt *)(gpointer)set->bolts->data, 12, 24, 3, FALSE);
    ck_assert_ptr_nonnull(strstr(text, "12, front, outside"));
    set_free(set);
}
END_TEST

START_TEST(banks_are_not_broken_while_they_fit)
{
    Set *set = set_new("LR", "", 8);
    g_autofree char *text =
        drawn_in(NULL, (const Bolt *)(gpointer)set->bolts->data, 16, 52, 14, FALSE);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    ck_assert_ptr_nonnull(strstr(lines[1], "L1"));
    ck_assert_ptr_nonnull(strstr(lines[1], "L8"));
    ck_assert_ptr_nonnull(strstr(lines[4], "R8"));
    set_free(set);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("bolts");
    tcase_add_test(tcase, ten_head_nuts_lie_in_two_banks);
    tcase_add_test(tcase, a_row_too_long_is_broken_in_equal_lines);
    tcase_add_test(tcase, ascii_spells_the_same_boxes);
    tcase_add_test(tcase, six_bolts_lie_on_a_circle);
    tcase_add_test(tcase, every_look_has_its_mark);
    tcase_add_test(tcase, smaller_boxes_where_the_room_is_small);
    tcase_add_test(tcase, uneven_rows_lie_as_they_are);
    tcase_add_test(tcase, the_column_behind_the_last_box_is_told);
    tcase_add_test(tcase, every_bolt_finds_room);
    tcase_add_test(tcase, long_labels_are_never_cut);
    tcase_add_test(tcase, banks_are_not_broken_while_they_fit);
    Suite *suite = suite_create("bolts");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
