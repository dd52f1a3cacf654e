#include <check.h>
#include <standbook/base/text.h>
#include <stdlib.h>

static void expect_clean(const char *bytes, gssize length, const char *expected)
{
    char *clean = text_clean(bytes, length);
    ck_assert_str_eq(clean, expected);
    g_free(clean);
}

START_TEST(clean_shows_what_cannot_be_shown)
{
    expect_clean("main bore", -1, "main bore");
    expect_clean("½ turn, 45°", -1, "½ turn, 45°");
    expect_clean("\x1b[2Jgone", -1, "\\x1B[2Jgone");
    expect_clean("a\0b", 3, "a\\x00b");
    expect_clean("caf\xe9", -1, "caf\\xE9"); // Latin-1, not UTF-8
    expect_clean("\xc2\x9b"
                 "31m",
                 -1, "\\xC2\\x9B31m"); // the eight-bit escape (C1)
    expect_clean("\xe2\x80\xae"
                 "9.51",
                 -1,
                 "\\xE2\\x80\\xAE"
                 "9.51");                       // right-to-left override
    expect_clean("\xe2\x82", -1, "\\xE2\\x82"); // cut in the middle of a character
}
END_TEST

START_TEST(a_path_can_be_pasted)
{
    static const char *const rows[][2] = {
        {"/home/tess/H23-4.db", "/home/tess/H23-4.db"},
        {"/home/Tess Bell/a.txt", "'/home/Tess Bell/a.txt'"},
        {"it's", "'it'\\''s'"},
        {"café/½.txt", "café/½.txt"},
        {"-x", "'-x'"},
        {"a$b", "'a$b'"},
        {"caf\xe9 'n\\\n", "$'caf\\xE9 \\'n\\\\\\x0A'"},
        {"", "''"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *shown = text_path(rows[i][0]);
        ck_assert_str_eq(shown, rows[i][1]);
    }
}
END_TEST

START_TEST(slips_are_counted)
{
    ck_assert_uint_eq(text_slips("skirt", "skirt"), 0);
    ck_assert_uint_eq(text_slips("skrit", "skirt"), 1); // a swap is one
    ck_assert_uint_eq(text_slips("Skirt", "skirts"), 1);
    ck_assert_uint_eq(text_slips("kitten", "sitting"), 3); // the textbook example
    ck_assert_uint_eq(text_slips("", "abc"), 3);
}
END_TEST

START_TEST(nearest_is_within_one_slip_per_four_letters)
{
    const char *names[] = {"bore", "skirt", "main bore", "main journal"};
    ck_assert_str_eq(text_nearest("skrit", names, 4), "skirt");
    ck_assert_str_eq(text_nearest("mian bore", names, 4), "main bore");
    ck_assert_ptr_null(text_nearest("torque", names, 4));
    const char *const letters[] = {"g", "N"};
    ck_assert_ptr_null(text_nearest("x", letters, 2)); // shares nothing with either
}
END_TEST

START_TEST(a_count_has_its_plural)
{
    static const struct {
        guint64 count;
        const char *noun, *words;
    } rows[] = {{0, "line", "0 lines"},  {1, "line", "1 line"},     {2, "bolt set", "2 bolt sets"},
                {1, "entry", "1 entry"}, {3, "entry", "3 entries"}, {2, "day", "2 days"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *words = text_counted(rows[i].count, rows[i].noun);
        ck_assert_str_eq(words, rows[i].words);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("text");
    TCase *tcase = tcase_create("text");
    tcase_add_test(tcase, a_count_has_its_plural);
    tcase_add_test(tcase, clean_shows_what_cannot_be_shown);
    tcase_add_test(tcase, a_path_can_be_pasted);
    tcase_add_test(tcase, slips_are_counted);
    tcase_add_test(tcase, nearest_is_within_one_slip_per_four_letters);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
