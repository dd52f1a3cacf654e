#include "demo.h"

#include <check.h>
#include <standbook/record/digest.h>
#include <standbook/work/entry_words.h>
#include <stdlib.h>
#include <string.h>

// All entries of the golden ledger, which has every kind.
static GPtrArray *golden(void)
{
    char *text = NULL;
    ck_assert(g_file_get_contents("tests/record/golden.ledger", &text, NULL, NULL));
    g_auto(GStrv) rows = g_strsplit(text, "\n", -1);
    GPtrArray *entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    for (guint i = 0; rows[i] && *rows[i]; i++) {
        ChainLink link;
        ck_assert(chain_row_read(rows[i], &link, NULL));
        Entry *entry = entry_read(link.line, NULL);
        ck_assert_ptr_nonnull(entry);
        g_ptr_array_add(entries, entry);
    }
    g_free(text);
    return entries;
}

static Taken *taken_of(const GPtrArray *entries, GHashTable *names)
{
    return taken_new((const Entry *const *)entries->pdata, entries->len, names);
}

static void expect_words(const Taken *taken, const GPtrArray *entries, guint seq,
                         const char *expected)
{
    g_autofree char *words = entry_words(taken, g_ptr_array_index(entries, seq - 1));
    ck_assert_str_eq(words, expected);
}

START_TEST(entries_read_like_log_lines)
{
    g_autoptr(GPtrArray) entries = golden();
    g_autoptr(Taken) taken = taken_of(entries, NULL);
    expect_words(taken, entries, 14,
                 "read main bore[1, front] 59.790 mm with G03 (½ mm from the edge)");
    expect_words(taken, entries, 15, "look free of cracks[2] yes (white light \"only\")");
    expect_words(taken, entries, 20,
                 "slacken main caps[4] 1/4 turn \"cap sits crooked\" (thread clean)");
    expect_words(taken, entries, 25, "strike #14 typing mistake: 59.790 for 59.970");
    expect_words(taken, entries, 26,
                 "concede piston clearance[1] in Returned work stage 1 to 0.12 mm "
                 "\"honed oversize outside\" customer telephone");
}
END_TEST

START_TEST(a_unit_is_said_once)
{
    static const char *const rows[][3] = {
        {"0.002 mm", "mm", "0.002 mm"},
        {"0.002", "mm", "0.002 mm"},
        {"90", "°", "90°"},
        {"90 °", "°", "90 °"},
        {"5", "", "5"},
        {"1 psi", "psi", "1 psi"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        json_t *value = json_pack("{s:s,s:s}", "typed", rows[i][0], "unit", rows[i][1]);
        g_autofree char *words = value_words(value);
        ck_assert_str_eq(words, rows[i][2]);
        json_decref(value);
    }
    g_autofree char *none = value_words(NULL);
    ck_assert_str_eq(none, "");
}
END_TEST

START_TEST(a_second_seal_says_its_number)
{
    g_autoptr(GPtrArray) entries = golden();
    g_autoptr(Taken) taken = taken_of(entries, NULL);
    Entry *seal = g_ptr_array_index(entries, 41);
    json_object_set_new(seal->body, "supplement", json_integer(2));
    expect_words(taken, entries, 42, "seal first start, supplement 2, covers entries 1 to 41");
    json_object_set_new(seal->body, "supplement", json_integer(0));
    expect_words(taken, entries, 42, "seal first start, covers entries 1 to 41");
}
END_TEST

START_TEST(every_kind_is_told)
{
    g_autoptr(GPtrArray) entries = golden();
    g_autoptr(Taken) taken = taken_of(entries, NULL);
    for (guint i = 0; i < entries->len; i++) {
        g_autofree char *words = entry_words(taken, g_ptr_array_index(entries, i));
        ck_assert_msg(strchr(words, ' ') != NULL, "entry %u says only `%s`", i + 1, words);
    }
}
END_TEST

START_TEST(what_was_taken_is_found_again)
{
    g_autoptr(GPtrArray) entries = golden();
    g_autoptr(Taken) taken = taken_of(entries, NULL);
    const char *id = "6f1c2d30-0000-4000-8000-000000000021";
    ck_assert_str_eq(taken_text(taken, "calibration", id, "certificate"), "C-25-118");
    ck_assert_str_eq(taken_only(taken, "calibration", "found"), "good");
    ck_assert_ptr_null(taken_text(taken, "tool", id, "label"));
    ck_assert_ptr_null(taken_text(taken, "calibration", NULL, "found"));
    g_autoptr(GPtrArray) ids = taken_ids(taken, "calibration");
    ck_assert_uint_eq(ids->len, 2);
}
END_TEST

START_TEST(names_come_from_outside_the_chain)
{
    g_autoptr(GPtrArray) entries = golden();
    GHashTable *names = g_hash_table_new(g_str_hash, g_str_equal);
    g_hash_table_insert(names, "aa", "Mab Orrin");
    g_autoptr(Taken) taken = taken_of(entries, names);
    ck_assert_str_eq(taken_name(taken, "aa"), "Mab Orrin");
    ck_assert_str_eq(taken_name(taken, "0123456789"), "01234567");
    ck_assert_ptr_null(taken_name(taken, NULL));
    g_hash_table_unref(names);
}
END_TEST

START_TEST(when_is_when_it_was_done)
{
    g_autoptr(GPtrArray) entries = golden();
    g_autofree char *typed = entry_when(g_ptr_array_index(entries, 13));
    g_autofree char *done = entry_when(g_ptr_array_index(entries, 9));
    ck_assert_str_eq(typed, "2025-03-13 10:14");
    ck_assert_str_eq(done, "2025-03-12 17:05");
}
END_TEST

// The newest entry of the demo that is told with these words.
static void expect_said(Demo *demo, const LineTaker *taker, guint entry, const char *expected)
{
    const GPtrArray *entries = line_taker_entries(taker);
    g_autoptr(Taken) taken = taken_of(entries, NULL);
    g_autofree char *said = entry_said(demo->plan, taken, entries->pdata[entry - 1]);
    ck_assert_str_eq(said, expected);
}

static guint feed(Demo *demo, LineTaker *taker, const char *line)
{
    g_autofree char *problem = demo_try(demo, taker, line);
    ck_assert_msg(!problem, "%s: %s", line, problem);
    return line_taker_entries(taker)->len;
}

START_TEST(at_the_stand_an_entry_is_said_as_the_work)
{
    Demo *demo = demo_new();
    LineTaker *taker = demo_build(demo, "TL-0412");
    static const char *const rows[][2] = {
        {"2025-03-05 08:49 MO read top ring gap[2] 0.42 with G08", "top ring gap 2 · 0.42 mm"},
        {"tighten head nuts[3] in Head on stage 1 with W4", "bolt 3 · 30 N·m · W4"},
        {"tighten head nuts in Head on stage 2 from 3 to 8 with W4", "bolts 3, 8 · 55 N·m · W4"},
        {"tighten sump stage 1 all with W1", "all 18 · 5 N·m · W1"},
        {"tighten water pump[4] 18.5 with W1 adapter X1",
         "bolt 4 · 20 N·m · shown 18.5 N·m · W1 with X1, set 18.5 N·m"},
        {"note \"card found\"", "note \"card found\""},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        expect_said(demo, taker, feed(demo, taker, rows[i][0]), rows[i][1]);
    demo_free(demo);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("words");
    TCase *tcase = tcase_create("words");
    tcase_add_test(tcase, entries_read_like_log_lines);
    tcase_add_test(tcase, a_unit_is_said_once);
    tcase_add_test(tcase, at_the_stand_an_entry_is_said_as_the_work);
    tcase_add_test(tcase, a_second_seal_says_its_number);
    tcase_add_test(tcase, every_kind_is_told);
    tcase_add_test(tcase, what_was_taken_is_found_again);
    tcase_add_test(tcase, names_come_from_outside_the_chain);
    tcase_add_test(tcase, when_is_when_it_was_done);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
