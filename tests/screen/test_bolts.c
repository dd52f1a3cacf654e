#include "widget_bolts.h"

#include <check.h>
#include <string.h>

static char *drawn(const char *layout, const Bolt *bolts, guint count, guint width, guint height)
{
    g_autoptr(Canvas) canvas = canvas_new_growing(width + 20, FALSE);
    g_autoptr(GPtrArray) rows = bolt_rows(layout, bolts, count);
    bolts_paint(canvas, 0, width, height, rows, layout && strcmp(layout, "circle") == 0, bolts,
                count);
    return canvas_text(canvas);
}

START_TEST(ten_head_nuts_lie_in_two_banks)
{
    static const Bolt bolts[] = {
        {"1", 9, BOLT_TO_COME}, {"2", 5, BOLT_HERE},    {"3", 1, BOLT_TIGHT}, {"4", 3, BOLT_TIGHT},
        {"5", 7, BOLT_TO_COME}, {"6", 8, BOLT_TO_COME}, {"7", 4, BOLT_TIGHT}, {"8", 2, BOLT_TIGHT},
        {"9", 6, BOLT_TO_COME}, {"10", 10, BOLT_DOUBT}};
    g_autofree char *text = drawn("1 2 3 4 5 / 6 7 8 9 10", bolts, 10, 52, 9);
    ck_assert_str_eq(text, " ┌9.─────┐ ╔5.═════╗ ┌1.─────┐ ┌3.─────┐ ┌7.─────┐\n"
                           " │   1   │ ║>  2  <║ │√  3  √│ │√  4  √│ │   5   │\n"
                           " └───────┘ ╚═══════╝ └───────┘ └───────┘ └───────┘\n"
                           "\n"
                           " ┌8.─────┐ ┌4.─────┐ ┌2.─────┐ ┌6.─────┐ ┌10.────┐\n"
                           " │   6   │ │√  7  √│ │√  8  √│ │   9   │ │?  10 ?│\n"
                           " └───────┘ └───────┘ └───────┘ └───────┘ └───────┘\n");
}
END_TEST

START_TEST(six_bolts_lie_on_a_circle)
{
    static const Bolt bolts[] = {{"1", 1, BOLT_TIGHT},   {"2", 6, BOLT_TO_COME},
                                 {"3", 3, BOLT_TIGHT},   {"4", 2, BOLT_TIGHT},
                                 {"5", 5, BOLT_TO_COME}, {"6", 4, BOLT_QUESTION}};
    g_autofree char *text = drawn("circle", bolts, 6, 52, 13);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    ck_assert_uint_eq(g_strv_length(lines), 14);
    ck_assert_ptr_nonnull(strstr(lines[1], "│√  1  √│"));
    ck_assert_ptr_nonnull(strstr(lines[11], "│√  4  √│"));
    ck_assert_ptr_nonnull(strstr(text, "║?  6  ?║"));
}
END_TEST

// Whatever the layout and the room: each label once, and no box upon another.
static void expect_all(const char *layout, const char *prefixes, guint each, guint width)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GArray) bolts = g_array_new(FALSE, FALSE, sizeof(Bolt));
    for (const char *prefix = prefixes; *prefix; prefix++)
        for (guint i = 1; i <= each; i++) {
            char *label =
                *prefix == ' ' ? g_strdup_printf("%u", i) : g_strdup_printf("%c%u", *prefix, i);
            g_ptr_array_add(labels, label);
            g_array_append_val(bolts, ((Bolt){label, bolts->len + 1, BOLT_TIGHT}));
        }
    g_autofree char *text =
        drawn(layout, (const Bolt *)(gpointer)bolts->data, bolts->len, width, 13);
    guint marks = 0;
    for (const char *at = text; (at = strstr(at, "√")); at += strlen("√"))
        marks++;
    ck_assert_msg(marks == 2 * bolts->len, "%u marks of %u bolts:\n%s", marks, bolts->len, text);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    ck_assert_uint_le(g_strv_length(lines), 14);
}

START_TEST(every_bolt_finds_room)
{
    static const guint counts[] = {1, 2, 3, 5, 8, 10, 12, 18, 26, 60};
    static const guint widths[] = {52, 60, 80, 120};
    for (gsize c = 0; c < G_N_ELEMENTS(counts); c++)
        for (gsize w = 0; w < G_N_ELEMENTS(widths); w++) {
            expect_all(NULL, " ", counts[c], widths[w]);
            expect_all("circle", " ", counts[c], widths[w]);
        }
    expect_all(NULL, "LR", 9, 52);
    expect_all(NULL, "ABCD", 7, 80);
    expect_all("1 2 3 / 4 5", " ", 5, 52);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("bolts");
    tcase_add_test(tcase, ten_head_nuts_lie_in_two_banks);
    tcase_add_test(tcase, six_bolts_lie_on_a_circle);
    tcase_add_test(tcase, every_bolt_finds_room);
    Suite *suite = suite_create("bolts");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
