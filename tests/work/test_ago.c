// Moments as screens say them; the sentences of screens.md: `14:12, 47 min ago`; from 90 min
// `09:12, 3 h ago`; other days `4 Mar`, other years `4 Mar 2024`.
#include <check.h>
#include <standbook/work/ago.h>
#include <stdlib.h>

static const struct {
    const char *moment, *now, *words;
} rows[] = {
    {"2025-03-13 14:12", "2025-03-13 14:59", "14:12, 47 min ago"},
    {"2025-03-13 14:12:30", "2025-03-13 14:13:29", "14:12, now"},
    {"2025-03-13 14:12:30", "2025-03-13 14:13:30", "14:12, 1 min ago"},
    {"2025-03-13 14:12:30", "2025-03-13 15:42:29", "14:12, 89 min ago"},
    {"2025-03-13 14:12:30", "2025-03-13 15:42:30", "14:12, 2 h ago"},
    {"2025-03-13 09:12", "2025-03-13 12:12", "09:12, 3 h ago"},
    {"2025-03-13 09:12", "2025-03-13 12:41:59", "09:12, 3 h ago"},
    {"2025-03-13 09:12", "2025-03-13 12:42", "09:12, 4 h ago"},
    {"2025-03-13 00:00", "2025-03-13 23:59", "00:00, 24 h ago"},
    // Not yet 90 minutes ago is no other day.
    {"2025-03-12 23:50", "2025-03-13 00:10", "23:50, 20 min ago"},
    {"2024-12-31 23:50", "2025-01-01 01:19", "23:50, 89 min ago"},
    {"2024-12-31 23:50", "2025-01-01 01:20", "31 Dec 2024"},
    {"2025-03-12 23:50", "2025-03-13 01:20", "12 Mar"},
    {"2025-03-04 10:05", "2025-03-13 14:12", "4 Mar"},
    {"2024-03-04 10:05", "2025-03-13 14:12", "4 Mar 2024"},
    {"2024-03-13 10:05", "2025-03-13 14:12", "13 Mar 2024"},
    // A clock that was set back.
    {"2025-03-13 14:12", "2025-03-13 13:00", "14:12"},
    {"2025-03-14 00:10", "2025-03-13 23:50", "14 Mar"},
    {"2026-03-14 00:10", "2025-03-13 23:50", "14 Mar 2026"},
};

static const struct {
    const char *moment, *now, *words; // NULL: nothing is said
} since_rows[] = {
    {"2025-03-13 14:12", "2025-03-13 14:59", "47 min ago"},
    {"2025-03-13 14:12:30", "2025-03-13 14:13:29", "now"},
    {"2025-03-13 09:12", "2025-03-13 12:42", "4 h ago"},
    {"2025-03-12 23:50", "2025-03-13 00:10", "20 min ago"},
    {"2024-12-31 23:50", "2025-01-01 01:20", "31 Dec 2024"},
    {"2025-03-13 14:12", "2025-03-13 13:00", NULL},
    {"2025-03-14 00:10", "2025-03-13 23:50", "14 Mar"},
};

START_TEST(since_alone)
{
    Moment moment, now;
    ck_assert(moment_parse(since_rows[_i].moment, &moment, NULL));
    ck_assert(moment_parse(since_rows[_i].now, &now, NULL));
    g_autofree char *words = ago_since(moment, now);
    ck_assert_pstr_eq(words, since_rows[_i].words);
}
END_TEST

START_TEST(the_clock_comes_first_then_since)
{
    Moment moment, now;
    ck_assert(moment_parse(rows[_i].moment, &moment, NULL));
    ck_assert(moment_parse(rows[_i].now, &now, NULL));
    g_autofree char *words = ago_words(moment, now);
    ck_assert_str_eq(words, rows[_i].words);
}
END_TEST

START_TEST(a_day_names_its_year_only_if_it_is_another)
{
    Moment moment, now;
    ck_assert(moment_parse("2025-03-13 09:00", &moment, NULL));
    ck_assert(moment_parse("2025-03-13 14:12", &now, NULL));
    g_autofree char *same = ago_day(moment, now);
    g_autofree char *other = ago_day(moment, now + 366 * (Moment)86400);
    ck_assert_str_eq(same, "13 Mar");
    ck_assert_str_eq(other, "13 Mar 2025");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("ago");
    TCase *tcase = tcase_create("words");
    tcase_add_loop_test(tcase, since_alone, 0, G_N_ELEMENTS(since_rows));
    tcase_add_loop_test(tcase, the_clock_comes_first_then_since, 0, G_N_ELEMENTS(rows));
    tcase_add_test(tcase, a_day_names_its_year_only_if_it_is_another);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
