// Lines of the shop: tools, their calibrations, lots.
#include "build.h"

#include <standbook/work/entry_words.h>

START_TEST(a_calibration_is_news_to_all_who_took_the_tool)
{
    LineTaker *other = demo_build(demo, "TL-0418");
    char *refusal = demo_try(demo, other, "2025-03-01 09:00 MO tighten drain plug all with W2");
    ck_assert_ptr_null(refusal);
    guint before = line_taker_entries(other)->len;
    take("2025-03-11 09:40 JT shop calibration W2 2025-03-11 certificate KF-118 wrong \"low\"");
    ck_assert_uint_eq(count_of("news"), 0); // this build has not used it
    const GPtrArray *entries = line_taker_entries(other);
    ck_assert_uint_eq(entries->len, before + 2);
    expect_text(entries->pdata[before], "what", "person"); // who says so is not known there yet
    expect_kind(entries->pdata[before + 1], "news");
    ck_assert_int_eq(entry_number(entries->pdata[before + 1], "seq"), shop_last(demo->shop));
    take("tighten drain plug all with W2");
    ck_assert_uint_eq(count_of("news"), 0); // taken at first use
    take("shop calibration W2 2025-03-11 adjusted");
    ck_assert_uint_eq(count_of("news"), 1);
    ck_assert_uint_eq(entries->len, before + 3);
}
END_TEST

// What a calibration of W2 (range 20..120 N·m) keeps of what it gave.
static const struct {
    const char *typed, *kept;
} gave_rows[] = {
    {"U 2 N·m repeats 1 gave 91 at 100, 41 at 45",
     "calibration 2025-03-11 wrong \"low\" U 2 N·m repeats 1 N·m gave 91 N·m at 100 N·m, 41 N·m at "
     "45 N·m"},
    {"gave 91at 100", "calibration 2025-03-11 wrong \"low\" gave 91 N·m at 100 N·m"},
    // The unit written last holds for all without one.
    {"gave 67 at 74, 30 at 33.5 lbf·ft",
     "calibration 2025-03-11 wrong \"low\" gave 67 lbf·ft at 74 lbf·ft, 30 lbf·ft at 33.5 lbf·ft"},
    {"gave 91 N·m at 74 lbf·ft", "calibration 2025-03-11 wrong \"low\" gave 91 N·m at 74 lbf·ft"},
    {"repeats 1 gave 91 at 100 from paper",
     "calibration 2025-03-11 wrong \"low\" repeats 1 N·m gave 91 N·m at 100 N·m"},
};

START_TEST(a_calibration_keeps_what_the_tool_gave)
{
    take("2025-03-12 09:00 MO tighten drain plug all with W2");
    for (gsize i = 0; i < G_N_ELEMENTS(gave_rows); i++) {
        g_autofree char *line =
            g_strconcat("shop calibration W2 2025-03-11 wrong \"low\" ", gave_rows[i].typed, NULL);
        take(line);
        const Entry *entry = shop_entry(demo->shop, shop_last(demo->shop));
        g_autofree char *kept = entry_words(NULL, entry);
        ck_assert_str_eq(kept, gave_rows[i].kept);
        // The copy that the build was told carries it.
        ck_assert(json_equal(json_object_get(last(0)->body, "body"), entry->body));
    }
}
END_TEST

START_TEST(a_range_is_written_as_people_type_it)
{
    static const char *const ranges[] = {"10..100 lbf·ft", "10..100 lbf ft",   "10 to 100 ft-lb",
                                         "10..100 ft lb",  "10 .. 100 ft lbs", "10-100 lbf ft",
                                         "10–100 lbf·ft",  "10 - 100 ft-lb"};
    for (guint i = 0; i < G_N_ELEMENTS(ranges); i++) {
        g_autofree char *label = g_strdup_printf("W9%u", i);
        g_autofree char *line = g_strdup_printf(
            "MO shop tool %s \"x\" kind torque wrench range %s reach 400 mm", label, ranges[i]);
        take(line);
        const Entry *tool = shop_find(demo->shop, "tool", label);
        ck_assert_str_eq(entry_value(tool, "greatest", "unit"), "lbf·ft");
        ck_assert_str_eq(entry_value(tool, "least", "value"), "10");
        ck_assert_str_eq(entry_value(tool, "reach", "value"), "400");
    }
}
END_TEST

START_TEST(a_kind_stands_in_quotes_too)
{
    take("MO shop tool W91 \"x\" kind \"torque wrench\" range 10..100 N·m");
    const Entry *tool = shop_find(demo->shop, "tool", "W91");
    expect_text(tool, "sort", "torque wrench");
    ck_assert_str_eq(entry_value(tool, "least", "value"), "10");
}
END_TEST

START_TEST(a_recalled_lot_says_so)
{
    take("2025-03-13 11:36 MO fit thrust washers lot RB-1182-B new");
    take("shop recall lot RB-1182-B \"supplier's letter\"");
    expect_kind(last(0), "news");
    expect_text(last(0), "what", "recall");
    LineTaker *other = demo_build(demo, "TL-0418");
    ck_assert_ptr_null(demo_try(demo, other,
                                "2025-03-14 08:00 MO fit thrust washers lot RB-1182-B "
                                "new"));
    const GPtrArray *entries = line_taker_entries(other);
    expect_text(entries->pdata[entries->len - 2], "what", "recall"); // taken with the lot
}
END_TEST

START_TEST(what_is_said_of_a_lot_has_no_order)
{
    take("2025-03-13 11:36 MO shop lot Q-1 \"shells\" expires 2026-01-01 grade A quantity 3");
    const Entry *lot = shop_find(demo->shop, "lot", "Q-1");
    expect_text(lot, "expires", "2026-01-01");
    expect_text(lot, "grade", "A");
    ck_assert_int_eq(entry_number(lot, "quantity"), 3);
    take("shop consumable gasket sealant lot Q-2 expires 2026-01-01 supplier Corran");
    expect_text(shop_find(demo->shop, "consumable", "Q-2"), "supplier", "Corran");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_calibration_is_news_to_all_who_took_the_tool,
        a_calibration_keeps_what_the_tool_gave,
        a_range_is_written_as_people_type_it,
        a_kind_stands_in_quotes_too,
        a_recalled_lot_says_so,
        what_is_said_of_a_lot_has_no_order,
    };
    return run_on_build("line, shop", tests, G_N_ELEMENTS(tests), 0);
}
