// What a build waits for and what falls due, on the demo's plan and its builds.
#include "agenda.h"

#include <standbook/work/gate.h>
#include <standbook/work/waits.h>
#include <string.h>

static Moment moment_of(const char *text)
{
    Moment moment = 0;
    ck_assert(moment_parse(text, &moment, NULL));
    return moment;
}

// `STANDS|WAITS|SINCE` at that moment.
static void expect_waits(const char *now, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    const Telling telling = {&agenda, taken, moment_of(now)};
    g_auto(Waits) waits = waits_of(&telling);
    g_autofree char *turn =
        waits.turns ? g_strdup_printf(", %u/%u", waits.turn, waits.turns) : g_strdup("");
    g_autofree char *words =
        g_strdup_printf("%s%s|%s|%s", waits.stands, turn, waits.waits, waits.since);
    ck_assert_str_eq(words, expected);
}

static char *dues_words(const GArray *dues)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < dues->len; i++) {
        const Due *due = &g_array_index(dues, Due, i);
        g_string_append_printf(words, "%s|%s|%s\n", due->what, due->why, due->when);
    }
    return g_string_free(words, FALSE);
}

static void expect_dues(const char *now, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    const Telling telling = {&agenda, taken, moment_of(now)};
    g_autoptr(GArray) dues = dues_of_build(&telling);
    g_autofree char *words = dues_words(dues);
    ck_assert_str_eq(words, expected);
}

START_TEST(who_has_it_in_hand_and_who_put_it_down)
{
    take("2025-01-22 08:00 MO pick up Measure block");
    expect_waits("2025-01-22 09:00", "S06 Measure block|MO, in hand 08:00|");
    expect_waits("2025-01-23 09:00", "S06 Measure block|MO, in hand|since 22 Jan");
    take("09:10 put down \"telephone\"");
    expect_waits("2025-01-22 09:15", "S06 Measure block|MO, put down 09:10|telephone");
    expect_waits("2025-01-24 09:15", "S06 Measure block|MO, put down|since 22 Jan");
}
END_TEST

static void expect_bolts_at_gate(const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GArray) sums = gate_sums(&agenda, 0);
    for (guint i = 0; i < sums->len; i++)
        if (strcmp(g_array_index(sums, GateSum, i).what, "bolts") == 0)
            ck_assert_pstr_eq(g_array_index(sums, GateSum, i).said, expected);
}

// Every bolt is ticked: then none is left, whatever is thought of it.
START_TEST(bolts_in_doubt_are_not_left)
{
    take("2025-03-04 08:00 MO pick up Main clearances");
    take("tighten main caps stage 1 all with W4");
    take("tighten main caps stage 2 all with W3");
    take("tighten main caps stage 3 from 3 to 4 with W3");
    take("08:30 pick up Rings");
    expect_dues("2025-03-04 08:31", "main caps|HALF tightened in S17|4 of 18 left\n");
    take("pick up Main clearances");
    take("tighten main caps stage 3 all 20 N·m with W3");
    take("pick up Rings");
    expect_dues("2025-03-04 08:31", "main caps|tightened in S17|6 FAIL of 18\n");
    expect_bolts_at_gate("252 of 270 ticks left, 6 FAIL");
}
END_TEST

START_TEST(bolts_are_counted_and_nobody_has_it)
{
    take("2025-03-04 08:00 MO pick up Main clearances");
    take("tighten main caps[3] stage 1 with W4");
    expect_waits("2025-03-04 08:05", "S17 main caps: bolt 4, 2/6|MO, in hand 08:00|");
    expect_dues("2025-03-04 08:06", "");
    take("08:30 pick up Rings");
    expect_dues("2025-03-04 08:31", "main caps|HALF tightened in S17|17 of 18 left\n");
    take("fit ring sets new");
    take("read top ring gap 0.36 0.36 0.36 0.36 with G08");
    take("read second ring gap 0.30 0.30 0.30 0.30 with G08");
    take("sign Rings"); // in hand no more, and never put down
    expect_waits("2025-03-05 08:00", "S01 Receive|serial number|nobody since 4 Mar");
}
END_TEST

START_TEST(a_tool_found_wrong_comes_before_what_was_put_down)
{
    take("2025-03-04 08:00 MO pick up Main clearances");
    take("tighten main caps stage 1 all with W4");
    take("tighten main caps stage 2 all with W2");
    take("08:20 put down");
    LineTaker *desk = demo->desk;
    char *refusal = demo_try(
        demo, desk, "2025-03-11 09:40 MO calibration W2 2025-03-11 wrong \"set 100 gives 91\"");
    ck_assert_msg(!refusal, "%s", refusal);
    expect_waits("2025-03-12 08:00",
                 "S17 main caps: bolt 3, 1/6|W2, found wrong|6 DOUBT since 11 Mar");
    expect_dues("2025-03-12 08:00", "main caps|tightened with W2|found wrong 11 Mar\n");
}
END_TEST

START_TEST(a_customer_is_asked_until_there_is_an_answer)
{
    take("2025-03-05 08:00 MO pick up Rings");
    take("read top ring gap[4] 0.95 with G08");
    take("08:20 put down");
    take("08:30 concede top ring gap[4] \"Rings are what there is. Watch: leak-down at 10 h. Told: "
         "by telephone.\"");
    expect_waits("2025-03-06 08:00", "S19 Rings|customer: top ring gap 4|told 5 Mar");
    expect_dues("2025-03-06 08:00", "top ring gap 4|leak-down at 10 h.|conceded\n");
    take("strike top ring gap[4] typo");
}
END_TEST

START_TEST(the_demo_has_its_follow_up_before_it)
{
    build = demo_build(demo, "TL-0412");
    demo_feed(demo, build, "demo-data/tl-0412.log");
    expect_waits("2025-03-27 09:30", "hand over, sealed 26 Mar|Visit at 10 h|");
    expect_dues("2025-03-27 09:30", "mount nuts|retighten in S43|4 of 4 left\n");
    take("2025-03-28 08:00 MO pick up Ignition");
    take("read plug gap[1] 0.62 with G08");
    expect_waits("2025-03-28 08:10", "S36 Ignition|MO, in hand 08:00|");
    take("put down");
    expect_waits("2025-03-28 08:10", "S36 Ignition|new seal|1 since hand over");
}
END_TEST

START_TEST(calibrations_that_run_out_of_tools_in_use)
{
    const char *w2 = entry_text(shop_find(demo->shop, "tool", "W2"), "id");
    const char *g01 = entry_text(shop_find(demo->shop, "tool", "G01"), "id");
    g_autoptr(GHashTable) used = g_hash_table_new(g_str_hash, g_str_equal);
    g_hash_table_add(used, (gpointer)w2);
    g_hash_table_add(used, (gpointer)g01);
    static const struct {
        const char *now, *expected;
    } days[] = {
        {"2024-12-31 09:00", ""},
        {"2025-01-01 09:00", "W2 click wrench|calibration due 31 Jan|in 30 days\n"},
        {"2025-01-31 23:00", "W2 click wrench|calibration due 31 Jan|today\n"},
        {"2025-02-01 00:00", "W2 click wrench|calibration due 31 Jan|1 day past\n"},
    };
    for (guint i = 0; i < G_N_ELEMENTS(days); i++) {
        g_autoptr(GArray) dues = dues_of_tools(demo->shop, used, moment_of(days[i].now));
        g_autofree char *words = dues_words(dues);
        ck_assert_str_eq(words, days[i].expected);
    }
    char *refusal =
        demo_try(demo, demo->desk,
                 "2025-03-11 09:40 MO calibration W2 2025-03-11 wrong \"set 100 gives 91\"");
    ck_assert_ptr_null(refusal);
    g_autoptr(GArray) dues = dues_of_tools(demo->shop, used, moment_of("2025-03-12 09:00"));
    g_autofree char *words = dues_words(dues);
    ck_assert_str_eq(words, "W2 click wrench|found wrong 11 Mar|not put right\n");
}
END_TEST

START_TEST(what_was_found_wrong_stays_due_until_it_is_put_right)
{
    static const struct {
        const char *line, *expected;
    } said[] = {
        {"2025-03-11 09:40 MO calibration W2 2025-03-11 wrong \"set 100 gives 91\"",
         "W2 click wrench|found wrong 11 Mar|not put right\n"},
        {"2025-03-12 09:40 MO calibration W2 2025-03-12 due 2026-03-12 adjusted", ""},
    };
    g_autoptr(GHashTable) none = g_hash_table_new(g_str_hash, g_str_equal); // no build uses it
    for (guint i = 0; i < G_N_ELEMENTS(said); i++) {
        ck_assert_ptr_null(demo_try(demo, demo->desk, said[i].line));
        g_autoptr(GArray) dues = dues_of_tools(demo->shop, none, moment_of("2025-03-13 09:00"));
        g_autofree char *words = dues_words(dues);
        ck_assert_str_eq(words, said[i].expected);
    }
}
END_TEST

// What nobody has in hand yet is not found out about at its first use: a line each for a few, one
// line for many.
START_TEST(calibrations_that_ran_out_of_tools_that_no_build_uses)
{
    g_autoptr(GHashTable) none = g_hash_table_new(g_str_hash, g_str_equal);
    static const struct {
        const char *now, *expected;
    } days[] = {
        {"2025-01-31 23:00", ""},
        {"2025-02-01 00:00", "W2 click wrench|calibration due 31 Jan|1 day past\n"},
        {"2025-10-15 09:00", "4 tools overdue|G01 G02 G03 W2|no build uses them\n"},
        {"2025-12-15 09:00",
         "13 tools overdue|G01 G02 G03 G04 G05 …|no build uses them\n"},
    };
    for (guint i = 0; i < G_N_ELEMENTS(days); i++) {
        g_autoptr(GArray) dues = dues_of_tools(demo->shop, none, moment_of(days[i].now));
        g_autofree char *words = dues_words(dues);
        ck_assert_str_eq(words, days[i].expected);
    }
    ck_assert_ptr_null(demo_try(demo, demo->desk,
                                "2025-01-10 09:40 MO tool W9 \"click wrench\" kind \"click wrench\" "
                                "range 10..60 N·m"));
    g_autoptr(GArray) dues = dues_of_tools(demo->shop, none, moment_of("2025-01-11 09:00"));
    g_autofree char *words = dues_words(dues);
    ck_assert_str_eq(words, "W9 click wrench|never calibrated|before it is used\n");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {who_has_it_in_hand_and_who_put_it_down,
                            bolts_are_counted_and_nobody_has_it,
                            bolts_in_doubt_are_not_left,
                            a_tool_found_wrong_comes_before_what_was_put_down,
                            a_customer_is_asked_until_there_is_an_answer,
                            the_demo_has_its_follow_up_before_it,
                            what_was_found_wrong_stays_due_until_it_is_put_right,
                            calibrations_that_run_out_of_tools_in_use,
                            calibrations_that_ran_out_of_tools_that_no_build_uses};
    return run_on_build("waits", tests, G_N_ELEMENTS(tests), 0);
}
