// What stands in no ledger, written and read again.
#include "unplaced.h"

#include <check.h>
#include <standbook/base/moment.h>
#include <stdlib.h>

static GHashTable *drafts_new(void)
{
    return g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_strfreev);
}

static Moment moment(const char *text)
{
    Moment moment = 0;
    ck_assert(moment_parse(text, &moment, NULL));
    return moment;
}

START_TEST(it_comes_back_as_it_was)
{
    GPtrArray *all = unplaced_new(), *again = unplaced_new();
    GHashTable *drafts = drafts_new(), *begun = drafts_new();
    const char *const lines[] = {"honed \"oversize\"", "", "über", NULL};
    Moment came = moment("2026-03-12 15:08:07"), now = moment("2026-03-12 16:00");
    unplaced_add(all, "4711-0815", NULL, came);
    unplaced_add(all, "0.041", "bore 4, mid, T, TL-0412", came);
    g_hash_table_insert(drafts, g_strdup("TL-0412 bore 4"), g_strdupv((GStrv)lines));
    ck_assert_ptr_null(unplaced_how(all, 0, now));
    g_autofree char *text = unplaced_write(all, drafts);
    unplaced_read(text, again, begun);
    ck_assert_uint_eq(again->len, 2);
    ck_assert_str_eq(unplaced_text(again, 0), "4711-0815");
    ck_assert_str_eq(unplaced_text(again, 1), "0.041");
    g_autofree char *burst = unplaced_how(again, 0, now), *typed = unplaced_how(again, 1, now);
    g_autofree char *next_day = unplaced_how(again, 0, moment("2026-03-13 07:00"));
    ck_assert_str_eq(burst, "from 15:08");
    ck_assert_str_eq(typed, "from 15:08 at bore 4, mid, T, TL-0412");
    ck_assert_str_eq(next_day, "from 12 Mar 15:08");
    ck_assert(g_strv_equal(g_hash_table_lookup(begun, "TL-0412 bore 4"), lines));
    g_ptr_array_unref(all);
    g_ptr_array_unref(again);
    g_hash_table_unref(drafts);
    g_hash_table_unref(begun);
}
END_TEST

START_TEST(nothing_is_written_of_nothing)
{
    GPtrArray *all = unplaced_new();
    GHashTable *drafts = drafts_new();
    g_hash_table_insert(drafts, g_strdup("TL-0412 bore 4"), g_new0(char *, 1));
    g_autofree char *text = unplaced_write(all, drafts);
    ck_assert_str_eq(text, "");
    g_ptr_array_unref(all);
    g_hash_table_unref(drafts);
}
END_TEST

// What somebody else wrote into the file does no harm.
START_TEST(what_cannot_be_read_is_left_out)
{
    static const char *const texts[] = {
        "",
        "0.041",
        "{",
        "[1, 2]",
        "{\"unplaced\": 3, \"drafts\": []}",
        "{\"unplaced\": [1, {}, {\"text\": \"\"}, {\"text\": 4}], \"drafts\": {\"a\": 1}}"};
    GPtrArray *all = unplaced_new();
    GHashTable *drafts = drafts_new();
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++)
        unplaced_read(texts[i], all, drafts);
    ck_assert_uint_eq(all->len, 0);
    unplaced_read("{\"unplaced\": [{\"text\": \"1\", \"came\": \"noon\"}]}", all, drafts);
    ck_assert_uint_eq(all->len, 1);
    ck_assert_ptr_null(unplaced_how(all, 0, 0));
    g_ptr_array_unref(all);
    g_hash_table_unref(drafts);
}
END_TEST

START_TEST(it_is_taken_piece_by_piece)
{
    GPtrArray *all = unplaced_new();
    unplaced_add(all, "0.041", NULL, 0);
    unplaced_shorten(all, 0, 2);
    ck_assert_str_eq(unplaced_text(all, 0), "041");
    unplaced_shorten(all, 0, 3);
    ck_assert_uint_eq(all->len, 0);
    g_ptr_array_unref(all);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("unplaced");
    TCase *tcase = tcase_create("unplaced");
    tcase_add_test(tcase, it_comes_back_as_it_was);
    tcase_add_test(tcase, nothing_is_written_of_nothing);
    tcase_add_test(tcase, what_cannot_be_read_is_left_out);
    tcase_add_test(tcase, it_is_taken_piece_by_piece);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
