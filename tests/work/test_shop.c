#include <check.h>
#include <standbook/work/shop.h>
#include <stdlib.h>

static Shop *shop;

static void make(void)
{
    shop = shop_new();
}

static void clear(void)
{
    shop_free(shop);
}

// Adds an entry with up to four fields, name and text in turn, ending in NULL.
static void add(const char *kind, const char *const *fields)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->seq = shop_last(shop) + 1;
    for (; fields[0]; fields += 2)
        entry_set_text(entry, fields[0], fields[1]);
    ck_assert(shop_add(shop, entry, NULL));
}

static void tool(const char *label, const char *sort, const char *id)
{
    add("tool", (const char *const[]){"label", label, "sort", sort, "id", id, NULL});
}

static void calibration(const char *id, const char *tool_id, const char *date)
{
    add("calibration", (const char *const[]){"id", id, "tool", tool_id, "date", date, NULL});
}

static void strike(gint64 seq)
{
    Entry *entry = entry_new(kind_newest("strike"));
    entry->seq = shop_last(shop) + 1;
    entry_set_number(entry, "entry", seq);
    ck_assert(shop_add(shop, entry, NULL));
}

static const char *id_of(const char *kind, const char *label)
{
    const Entry *entry = shop_find(shop, kind, label);
    return entry ? entry_text(entry, "id") : NULL;
}

START_TEST(things_are_found_by_what_stands_on_them)
{
    tool("G03", "bore gauge", "g3");
    add("person", (const char *const[]){"initials", "JT", "id", "jt", NULL});
    add("engine", (const char *const[]){"serial", "ST-0042", "id", "e", NULL});
    add("build", (const char *const[]){"number", "TL-0412", "id", "b", NULL});
    add("consumable", (const char *const[]){"label", "tube", "lot", "SS-9921", "id", "c", NULL});
    add("plan", (const char *const[]){"name", "Small twin", "digest", "ff", NULL});
    ck_assert_str_eq(id_of("tool", "G03"), "g3");
    ck_assert_str_eq(id_of("person", "JT"), "jt");
    ck_assert_str_eq(id_of("engine", "ST-0042"), "e");
    ck_assert_str_eq(id_of("build", "TL-0412"), "b");
    ck_assert_str_eq(id_of("consumable", "SS-9921"), "c");
    ck_assert_ptr_null(id_of("tool", "JT")); // another kind's label
    ck_assert_ptr_eq(shop_by_id(shop, "plan", "ff"), shop_find(shop, "plan", "Small twin"));
    ck_assert_ptr_eq(shop_by_id(shop, "tool", "g3"), shop_entry(shop, 1));
    ck_assert_ptr_null(shop_entry(shop, 7));
}
END_TEST

START_TEST(the_nearest_label_is_of_the_same_kind)
{
    tool("G03", "bore gauge", "g3");
    add("lot", (const char *const[]){"label", "MB-2417-C", "id", "l", NULL});
    ck_assert_str_eq(shop_nearest(shop, "tool", "G30"), "G03");
    ck_assert_str_eq(shop_nearest(shop, "lot", "MB-2471-C"), "MB-2417-C");
    ck_assert_ptr_null(shop_nearest(shop, "tool", "MB-2417-C"));
    ck_assert_ptr_null(shop_nearest(shop, "owner", "G03"));
}
END_TEST

START_TEST(a_later_entry_replaces_and_a_strike_brings_back)
{
    tool("G03", "bore gauge", "old");
    tool("G03", "bore gauge", "new");
    ck_assert_str_eq(id_of("tool", "G03"), "new");
    strike(2);
    ck_assert_str_eq(id_of("tool", "G03"), "old");
    strike(3); // the strike itself
    ck_assert_str_eq(id_of("tool", "G03"), "new");
    strike(2);
    strike(1);
    ck_assert_ptr_null(id_of("tool", "G03"));
}
END_TEST

START_TEST(tools_of_a_sort)
{
    tool("G03", "bore gauge", "a");
    tool("G01", "micrometer", "b");
    tool("G02", "micrometer", "c");
    tool("G01", "micrometer", "b"); // its range corrected
    GPtrArray *found = shop_all(shop, "tool", "micrometer");
    ck_assert_uint_eq(found->len, 2);
    ck_assert_str_eq(shop_label(found->pdata[0]), "G02");
    ck_assert_str_eq(shop_label(found->pdata[1]), "G01");
    g_ptr_array_unref(found);
    found = shop_all(shop, "tool", NULL);
    ck_assert_uint_eq(found->len, 3);
    g_ptr_array_unref(found);
}
END_TEST

static const char *in_force(const char *day)
{
    const Entry *entry = shop_calibration_on(shop, "w2", day);
    return entry ? entry_text(entry, "id") : "none";
}

START_TEST(the_calibration_in_force_is_the_last_until_that_day)
{
    calibration("march", "w2", "2025-03-11");
    calibration("other", "w1", "2025-02-01");
    calibration("january", "w2", "2024-01-30"); // entered later, made before
    ck_assert_str_eq(in_force("2024-01-29"), "none");
    ck_assert_str_eq(in_force("2024-01-30"), "january");
    ck_assert_str_eq(in_force("2025-03-10"), "january");
    ck_assert_str_eq(in_force("2025-03-11"), "march");
    calibration("again", "w2", "2025-03-11"); // of one day the later entry
    ck_assert_str_eq(in_force("2025-04-01"), "again");
    strike(4);
    ck_assert_str_eq(in_force("2025-04-01"), "march");
    GPtrArray *all = shop_calibrations(shop, "w2");
    ck_assert_uint_eq(all->len, 2);
    ck_assert_str_eq(entry_text(all->pdata[0], "id"), "january");
    g_ptr_array_unref(all);
}
END_TEST

START_TEST(a_recall_is_found_by_its_lot)
{
    calibration("c", "l", "2025-01-01");
    ck_assert_ptr_null(shop_recall(shop, "l"));
    add("recall", (const char *const[]){"lot", "l", "why", "letter", NULL});
    ck_assert_str_eq(entry_text(shop_recall(shop, "l"), "why"), "letter");
    ck_assert_ptr_null(shop_recall(shop, "m"));
}
END_TEST

START_TEST(entries_come_in_turn)
{
    GError *error = NULL;
    Entry *entry = entry_new(kind_newest("owner"));
    entry->seq = 2;
    ck_assert(!shop_add(shop, entry, &error));
    ck_assert_str_eq(error->message, "entry 2 of the shop's ledger is out of turn");
    g_error_free(error);
    ck_assert_int_eq(shop_last(shop), 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("shop");
    TCase *tcase = tcase_create("shop");
    tcase_add_checked_fixture(tcase, make, clear);
    tcase_add_test(tcase, things_are_found_by_what_stands_on_them);
    tcase_add_test(tcase, the_nearest_label_is_of_the_same_kind);
    tcase_add_test(tcase, a_later_entry_replaces_and_a_strike_brings_back);
    tcase_add_test(tcase, tools_of_a_sort);
    tcase_add_test(tcase, the_calibration_in_force_is_the_last_until_that_day);
    tcase_add_test(tcase, a_recall_is_found_by_its_lot);
    tcase_add_test(tcase, entries_come_in_turn);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
