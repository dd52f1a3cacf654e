// What a gauge cannot tell, on the demo's plan.
#include "agenda.h"

#include <standbook/work/coarse.h>

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

static void expect(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    const Requirement *made = requirement_at(&agenda, find_place(&agenda, place));
    ck_assert_int_eq(is_coarse(made), expected != NULL);
    if (!expected)
        return;
    g_autofree char *words = coarse_sentence(made);
    ck_assert_str_eq(words, expected);
}

START_TEST(a_rule_cannot_tell_the_pick_up)
{
    // Two readings of ±0.5 and a gasket of ±0.2: U = 0.73, the root of the sum of squares.
    take_all("2025-03-13 08:00 MO pick up Sump\nread pan depth 142 with G07\n"
             "read pick-up depth 136 with G07");
    expect("read pick-up clearance", "The true value may be 6.8 to 8.2; the limit is 7.0.");
}
END_TEST

START_TEST(what_is_outside_or_on_the_limit_is_told_too)
{
    take_all("2025-03-13 08:00 MO pick up Sump\nread pan depth 141 with G07\n"
             "read pick-up depth 136 with G07");
    expect("read pick-up clearance", "The true value may be 5.8 to 7.2; the limit is 7.0.");
    take_all("strike last \"misread\"\nread pick-up depth 135.5 with G07");
    expect("read pick-up clearance", "The true value may be 6.3 to 7.7; the limit is 7.0.");
}
END_TEST

START_TEST(of_what_is_less_than_nothing_below_is_told)
{
    take_all("2025-02-25 08:00 MO pick up Check returned work\nread deck flatness <0.05 with G09");
    expect("read deck flatness", "The true value may be anything up to 0.06; the limit is 0.05.");
}
END_TEST

START_TEST(ends_that_would_read_alike_have_more_decimals)
{
    static const char *const scale[] = {
        "2025-03-01 08:00 MO tool S9 \"scale\" kind scale range 0..1000 g step 0.01 g",
        "2025-03-01 08:00 MO calibration S9 2025-03-01 due 2026-03-01 good U 0.02 g"};
    for (guint i = 0; i < G_N_ELEMENTS(scale); i++)
        ck_assert_ptr_null(demo_try(demo, demo->desk, scale[i]));
    take_all("2025-03-13 08:00 MO pick up Check returned work\n"
             "amend rod mass[1] limits at least 600.0 g \"balanced\"\n"
             "read rod mass[1] 600.0 with S9");
    expect("read rod mass[1]", "The true value may be 599.98 to 600.02; the limit is 600.0.");
}
END_TEST

START_TEST(what_is_decided_or_in_doubt_otherwise_is_not_told)
{
    take_all("2025-03-13 08:00 MO pick up Sump\nread pan depth 141.72 with G06\n"
             "read pick-up depth 135.86 with G06");
    expect("read pick-up clearance", NULL);
    expect("look rod bolt paint seen", NULL);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {
        a_rule_cannot_tell_the_pick_up, what_is_outside_or_on_the_limit_is_told_too,
        of_what_is_less_than_nothing_below_is_told, ends_that_would_read_alike_have_more_decimals,
        what_is_decided_or_in_doubt_otherwise_is_not_told};
    return run_on_build("coarse", tests, G_N_ELEMENTS(tests), 0);
}
