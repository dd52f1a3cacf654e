// Which adapter the plan asks for at a bolt, and what the wrench is set to, on the demo.
#include "agenda.h"

#include <standbook/work/wrench.h>

static void expect_adapter(const char *words, const char *place, const char *expected)
{
    TreeNode node = {.text = (char *)words};
    PlanGroup group = {.adapter = words ? &node : NULL};
    g_autofree char *adapter = wrench_adapter(&group, place);
    ck_assert_pstr_eq(adapter, expected);
}

START_TEST(the_plan_names_it_for_some_bolts_or_for_all)
{
    expect_adapter("X1 on bolt 4", "4", "X1");
    expect_adapter("X1 on bolt 4", "1", NULL);
    expect_adapter("X1 on bolts 2, 4 and 10", "10", "X1");
    expect_adapter("X1 on bolts 2, 4 and 10", "1", NULL);
    expect_adapter("X1 at 45° on bolt 4", "4", "X1 at 45°");
    expect_adapter("X1 at 45° on bolt 4", "3", NULL);
    expect_adapter("holding tool on the rim", "1", "holding tool on the rim");
    expect_adapter(NULL, "1", NULL);
}
END_TEST

static void expect_setting(const char *wrench, const char *adapter, const char *expected)
{
    g_autoptr(Unit) unit = unit_parse("N·m", NULL);
    g_autoptr(Number) twenty = number_from_integer(20);
    g_autoptr(Number) torque = unit_to_base(unit, twenty);
    g_autoptr(Number) setting = wrench_setting(torque, demo->shop, wrench, adapter);
    g_autofree char *words = setting ? wrench_setting_words(setting, unit) : NULL;
    ck_assert_pstr_eq(words, expected);
}

START_TEST(it_is_set_to_less_through_an_adapter)
{
    expect_setting("W1", "X1", "18.5"); // of the water pump's fourth bolt: L 380, E 30
    expect_setting("W1", "X1 at 0°", "18.5");
    expect_setting("W1", "X1 at 60°", "19.2"); // 20 · 380 / 395
    expect_setting("W1", "X1 at 90°", "20");
    expect_setting("W1", "X1 at 180°", "21.7"); // 20 · 380 / 350
    expect_setting("W1", NULL, "20");
    expect_setting("W4", "X1", NULL); // nobody has said how long it is
    expect_setting("W1", "G03", NULL);
    expect_setting("W1", "X9 at 90°", NULL);
}
END_TEST

START_TEST(an_adapter_has_a_reach_and_no_range)
{
    ck_assert(wrench_is_adapter(shop_find(demo->shop, "tool", "X1")));
    ck_assert(!wrench_is_adapter(shop_find(demo->shop, "tool", "W1")));
    ck_assert(!wrench_is_adapter(shop_find(demo->shop, "tool", "W4")));
    ck_assert_ptr_eq(wrench_adapter_tool(demo->shop, "X1 at 90°"),
                     shop_find(demo->shop, "tool", "X1"));
    ck_assert_ptr_null(wrench_adapter_tool(demo->shop, "W1 at 90°"));
    ck_assert_ptr_null(wrench_adapter_tool(demo->shop, "holding tool"));
}
END_TEST

int main(void)
{
    const TTest *tests[] = {the_plan_names_it_for_some_bolts_or_for_all,
                            it_is_set_to_less_through_an_adapter,
                            an_adapter_has_a_reach_and_no_range};
    return run_on_build("wrench", tests, G_N_ELEMENTS(tests), 0);
}
