// Which gauges can settle a place, before anything is read and after. The demo's gauges; U of each
// is that of its calibration in the demo shop, and each expected doubt is worked out beside it.
#include "agenda.h"

#include <standbook/work/gauge_choice.h>

// `G06 ±.3 settles it; …` of a place with a gauge in hand, on a day; `used` was it read with.
static char *said_on(const char *day, const char *place, const char *in_hand, const char *used)
{
    Agenda agenda = agenda_now();
    g_auto(GaugeChoices) choices =
        gauge_choices(judgement, demo->shop, day, find_place(&agenda, place), in_hand, used);
    g_autoptr(GString) said = g_string_new(choices.settled ? choices.settled->name : "nothing");
    for (guint i = 0; i < choices.gauges->len; i++) {
        const GaugeChoice *choice = &g_array_index(choices.gauges, GaugeChoice, i);
        g_autofree char *doubt = gauge_doubt_words(&choices, choice);
        g_autofree char *outlook = gauge_outlook_said(&choices, choice);
        g_string_append_printf(said, "; %s %s %s%s%s", choice->label, doubt, outlook,
                               choice->fault ? ", " : "", choice->fault ? choice->fault : "");
    }
    return g_string_free(g_steal_pointer(&said), FALSE);
}

static void expect_said(const char *place, const char *in_hand, const char *expected)
{
    g_autofree char *said = said_on("2025-03-14", place, in_hand, NULL);
    ck_assert_str_eq(said, expected);
}

START_TEST(the_gauge_is_chosen_before_the_first_reading)
{
    // √(2 · 0.03² + 0.2²) = 0.204, √(2 · 0.5² + 0.2²) = 0.735, of which 1.65/2 is 0.606; T/8 = 0.5
    expect_said("read pan depth", "G07",
                "pick-up clearance; G06 ±.3 settles it; G07 ±.8 passes only .7 inside (in hand)");
    // T = 0.035; the journals are still to be read
    expect_said("read main bore[1, front]", "G07",
                "main clearance; G03 at least ±.004 settles it; "
                "G07 at least ±.500 cannot (in hand)");
    // its fixed error goes out of a difference: √2 · 0.007 = 0.0099
    expect_said("read crank travel[forward]", NULL, "crank float; G04 ±.01 settles it");
}
END_TEST

START_TEST(after_a_reading_in_doubt_the_finer_gauge_comes_first)
{
    take("2025-03-12 09:00 MO read pan depth 142 with G07");
    take("read pick-up depth 136 with G07");
    expect_said("read pan depth", "G07",
                "pick-up clearance; G06 ±.3 settles it; G07 ±.8 cannot (in hand)");
    Agenda agenda = agenda_now();
    g_auto(GaugeChoices) choices = gauge_choices(
        judgement, demo->shop, "2025-03-14", find_place(&agenda, "read pan depth"), NULL, "G07");
    ck_assert(choices.read);
    g_autofree char *sentence = gauge_choices_sentence(&choices); // 0.5 / 0.825 = 0.606
    ck_assert_str_eq(sentence, "Inside by 0.5; with G07 a pass needs .7. "
                               "A doubt of ±.6 settles it.");
}
END_TEST

START_TEST(a_gauge_out_of_calibration_comes_last_and_says_so)
{
    g_autofree char *due = said_on("2025-12-01", "read pan depth", "G06", "G07");
    ck_assert_str_eq(due, "pick-up clearance; G06 ±.3 settles it (in hand); "
                          "G07 ±.8 passes only .7 inside (used)");
    g_autofree char *late = said_on("2025-12-02", "read pan depth", "G06", "G07");
    ck_assert_str_eq(late, "pick-up clearance; G07 ±.8 passes only .7 inside (used); "
                           "G06 ±.3 in doubt (in hand), OVERDUE since 1 Dec");
}
END_TEST

// No caliper of the shop reaches 160; the rule does.
START_TEST(a_gauge_is_left_out_that_is_too_short)
{
    take("2025-03-12 09:00 MO read pan depth 160 with G07");
    expect_said("read pan depth", "G07",
                "pick-up clearance; G07 ±.8 passes only .7 inside (in hand)");
}
END_TEST

// Before anything is read the limits say what must be got at: 0.30 to 0.50 mm.
START_TEST(a_gauge_in_hand_that_does_not_reach_settles_nothing)
{
    expect_said("read top ring gap[1]", "G01",
                "top ring gap; G08 ±.01 settles it; G01  out of its range (in hand)");
    expect_said("read spring load[1]", "G07",
                "spring load; G11 ±2 settles it; G07  out of its range (in hand)");
}
END_TEST

START_TEST(nothing_is_settled_where_nothing_is_limited)
{
    expect_said("bolt main caps in Crank[1], stage 1", "G07", "nothing");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {the_gauge_is_chosen_before_the_first_reading,
                                  a_gauge_out_of_calibration_comes_last_and_says_so,
                                  a_gauge_is_left_out_that_is_too_short,
                                  a_gauge_in_hand_that_does_not_reach_settles_nothing,
                                  nothing_is_settled_where_nothing_is_limited,
                                  after_a_reading_in_doubt_the_finer_gauge_comes_first};
    return run_on_build("gauge choice", tests, G_N_ELEMENTS(tests), 0);
}
