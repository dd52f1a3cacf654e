// What stands against a tool before it is used, on the demo's shop. Its calibrations: W3 2024-10-15
// due 2025-10-15, G07 and G17 2024-10-16 without a day.
#include "build.h"

#include <standbook/work/tool_standing.h>

static Number *torque_of(const char *words)
{
    g_autoptr(Unit) unit = unit_parse("N·m", NULL);
    g_autoptr(Number) number = words ? number_from_text(words, NULL) : NULL;
    return number ? unit_to_base(unit, number) : NULL;
}

static gboolean doubtful_of(const Shop *shop, const char *label, ToolSort sort, const char *torque,
                            const char *today)
{
    g_autoptr(Number) value = torque_of(torque);
    return tool_is_doubtful(shop, shop_find(shop, "tool", label), sort, value, -1,
                            moment_of_day(today));
}

static char *said_of(const Shop *shop, const char *label, ToolSort sort, const char *torque,
                     const char *today)
{
    g_autoptr(Number) value = torque_of(torque);
    return tool_standing_words(shop, shop_find(shop, "tool", label), sort, value, -1,
                               moment_of_day(today));
}

static void expect_said(const char *label, ToolSort sort, const char *torque, const char *today,
                        const char *expected)
{
    g_autofree char *said = said_of(demo->shop, label, sort, torque, today);
    ck_assert_str_eq(said, expected);
    gboolean doubtful = strstr(expected, "OVERDUE") || strstr(expected, "is outside");
    ck_assert_int_eq(doubtful_of(demo->shop, label, sort, torque, today), doubtful);
}

START_TEST(it_runs_out)
{
    expect_said("W3", TOOL_TORQUE, "75", "2025-03-14", "due 15 Oct √");
    expect_said("W3", TOOL_TORQUE, "75", "2025-10-15", "due 15 Oct √");
    expect_said("W3", TOOL_TORQUE, "75", "2025-10-16", "OVERDUE since 15 Oct");
    expect_said("G07", TOOL_GAUGE, NULL, "2029-01-01", "");                      // no day is set
    expect_said("G17", TOOL_TORQUE, NULL, "2025-10-17", "OVERDUE since 16 Oct"); // a year later
}
END_TEST

START_TEST(its_range_does_not_hold_the_value)
{
    expect_said("W3", TOOL_TORQUE, "60", "2025-03-14", "due 15 Oct √");
    expect_said("W3", TOOL_TORQUE, "40", "2025-03-14", "due 15 Oct √, 60-300 N·m: 40 is outside");
    expect_said("W3", TOOL_TORQUE, "40", "2025-10-16",
                "OVERDUE since 15 Oct, 60-300 N·m: 40 is outside");
    expect_said("W3", TOOL_TORQUE, NULL, "2025-03-14", "due 15 Oct √");
}
END_TEST

START_TEST(its_uses_are_told)
{
    static const struct {
        gint64 uses;
        const char *today, *said;
    } rows[] = {
        {0, "2025-03-14", "due 15 Oct √, 0 uses since"},
        {1, "2025-03-14", "due 15 Oct √, 1 use since"},
        {4812, "2025-03-14", "due 15 Oct √, 4,812 uses since"},
        {4999, "2025-03-14", "due 15 Oct √, 4,999 uses since"},
        {5000, "2025-03-14", "OVERDUE after 5,000 uses"},
        {5012, "2025-10-16", "OVERDUE after 5,012 uses"},
        {12, "2025-10-16", "OVERDUE since 15 Oct"},
    };
    const Entry *tool = shop_find(demo->shop, "tool", "W3");
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *said = tool_standing_words(demo->shop, tool, TOOL_TORQUE, NULL,
                                                    rows[i].uses, moment_of_day(rows[i].today));
        ck_assert_str_eq(said, rows[i].said);
    }
}
END_TEST

static void add(Shop *shop, const char *kind, const char *const *fields)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->seq = shop_last(shop) + 1;
    for (; fields[0]; fields += 2)
        entry_set_text(entry, fields[0], fields[1]);
    ck_assert(shop_add(shop, entry, NULL));
}

static void calibration(Shop *shop, const char *id, const char *date, const char *found)
{
    add(shop, "calibration",
        (const char *const[]){"id", id, "tool", "w", "date", date, "found", found, NULL});
}

START_TEST(it_was_found_wrong_until_it_is_calibrated_again)
{
    Shop *shop = shop_new();
    add(shop, "tool",
        (const char *const[]){"label", "W7", "sort", "torque wrench", "id", "w", NULL});
    char *never = said_of(shop, "W7", TOOL_TORQUE, NULL, "2025-03-12");
    ck_assert_str_eq(never, "never calibrated");
    calibration(shop, "one", "2025-03-11", "wrong");
    char *wrong = said_of(shop, "W7", TOOL_TORQUE, NULL, "2025-03-12");
    ck_assert_str_eq(wrong, "FOUND WRONG 11 Mar");
    ck_assert(doubtful_of(shop, "W7", TOOL_TORQUE, NULL, "2025-03-12"));
    calibration(shop, "two", "2025-03-12", "adjusted");
    char *mended = said_of(shop, "W7", TOOL_TORQUE, NULL, "2025-03-13");
    ck_assert_str_eq(mended, "due 12 Mar 2026 √");
    ck_assert(!doubtful_of(shop, "W7", TOOL_TORQUE, NULL, "2025-03-13"));
    g_free(never);
    g_free(wrong);
    g_free(mended);
    shop_free(shop);
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {it_runs_out, its_uses_are_told, its_range_does_not_hold_the_value,
                                  it_was_found_wrong_until_it_is_calibrated_again};
    return run_on_build("tool standing", tests, G_N_ELEMENTS(tests), 0);
}
