// Steps, phases and builds on one line, on the demo's plan.
#include "agenda.h"

#include <standbook/work/summary.h>

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

// `VERDICT COUNT|WHY` of a step.
static void expect_summary(const char *step, const char *expected)
{
    Agenda agenda = agenda_now();
    Summary summary = summary_step(&agenda, step_of(step));
    g_autofree char *count = summary_count(&summary), *why = summary_why(&agenda, &summary);
    g_autofree char *words =
        g_strdup_printf("%s %s|%s", verdict_words(summary.verdict), count, why);
    ck_assert_str_eq(words, expected);
}

static void expect_signed(const char *step, const char *now, const char *expected)
{
    Agenda agenda = agenda_now();
    Moment moment;
    ck_assert(moment_parse(now, &moment, NULL));
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Summary summary = summary_step(&agenda, step_of(step));
    g_autofree char *words = summary_signed(&summary, taken, moment);
    ck_assert_str_eq(words, expected);
}

static void expect_progress(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autofree char *words = summary_progress(&agenda, find_place(&agenda, place));
    ck_assert_str_eq(words, expected);
}

START_TEST(the_heaviest_verdict_is_that_of_the_step)
{
    take_all("2025-01-02 08:00 MO pick up Rings\nfit ring sets new");
    expect_summary("Rings", "open 9 of 13|after S14");
    take_all("read top ring gap 0.36 0.36 0.36 0.95 with G08\n"
             "read second ring gap 0.30 0.30 0.10 0.30 with G08");
    expect_summary("Rings", "fail 2 of 13|high: top ring gap 4"); // the first of two
    take_all("strike second ring gap[3] typo\nread second ring gap[3] 0.30 with G08");
    expect_summary("Rings", "fail 1 of 13|high: top ring gap 4");
    take_all("concede top ring gap[4] \"agreed\"");
    expect_summary("Rings", "open 1 of 13|after S14"); // its signature
    take_all("sign Rings");
    expect_summary("Rings", "conceded 1 of 13|conceded: top ring gap 4");
    take_all("read top ring gap[2] 0.60 with G08"); // disagrees with 0.36
    expect_summary("Rings", "in doubt 1 of 13|disagree: top ring gap 2");
    take_all("strike last typo\nstrike top ring gap[4] typo\nread top ring gap[4] 0.36 with G08");
    expect_summary("Rings", "pass |");
}
END_TEST

START_TEST(a_step_that_is_not_needed_and_an_optional_place_weigh_nothing)
{
    take_all("2025-01-02 08:00 MO not needed Rings \"sent out\"");
    expect_summary("Rings", "not needed |");
    take_all("pick up Receive\nlook serial number x\nlook complaint x\nlook missing parts x\n"
             "look photographs all round yes\nsign Receive");
    expect_summary("Receive", "open 1 of 6|");
    take_all("JT sign Receive");
    expect_summary("Receive", "pass |");
    take_all("MO pick up Main clearances\ntighten main caps stage 1 all with W4\n"
             "tighten main caps stage 2 all with W3\ntighten main caps stage 3 all with W3\n"
             "slacken main caps all \"mock-up\"\npick up Crank\n"
             "fit main shells lot MB-2417-C new\nfit thrust washers new count 2\n"
             "fit rear seal new\ntighten main caps stage 1 all with W4\n"
             "tighten main caps stage 2 all with W3\ntighten main caps stage 3 all with W3\n"
             "read crank travel 0.00 0.12 with G04\nread crank drag 2.0 with G17\nsign Crank");
    Agenda agenda = agenda_now();
    guint strip = find_place(&agenda, "read main strip[2]");
    ck_assert_int_eq(requirement_at(&agenda, strip)->verdict, VERDICT_OPEN);
    expect_summary("Crank", "pass |");
}
END_TEST

START_TEST(who_signed_and_when)
{
    take_all("2025-01-02 08:00 MO note \"begun\"");
    expect_signed("Receive", "2025-01-02 09:00", "");
    take_all("2025-02-25 08:00 EV sign Receive");
    expect_signed("Receive", "2025-03-12 09:00", "EV 25 Feb");
    take_all("2025-03-01 08:00 MO sign Receive");
    expect_signed("Receive", "2025-03-12 09:00", "EV MO 1 Mar");
    expect_signed("Receive", "2026-03-12 09:00", "EV MO 1 Mar 2025");
    Agenda agenda = agenda_now();
    Summary summary = summary_step(&agenda, step_of("Receive"));
    ck_assert_uint_eq(summary.signatures, 2);
    ck_assert_uint_eq(summary.given, 2);
    take_all("reopen Receive \"crate found\"");
    expect_signed("Receive", "2025-03-12 09:00", "");
}
END_TEST

START_TEST(how_far_a_check_or_a_stage_has_come)
{
    take_all("2025-01-02 08:00 MO pick up Check returned work");
    expect_progress("read bore[1, T, top]", "bore: 0 of 24 read");
    take_all("read bore[1] 90.006 90.005 90.003 90.002 90.001 90.000 with G03\n"
             "read bore[2] 90.008 90.007 90.004 90.003 90.003 90.001 with G03\n"
             "read bore[3] 90.005 90.004 90.002 90.001 90.000 89.999 with G03\n"
             "read bore[4, T, top] 90.027 with G03");
    expect_progress("read bore[1, T, top]", "bore: 19 of 24 read");
    take_all("not needed bore[4, A, bottom] \"sleeve edge\"");
    expect_progress("read bore[1, T, top]", "bore: 19 of 23 read");
    take_all("pick up Strip bottom end\nread found idler backlash 0.44 with G04");
    expect_progress("read found idler backlash", "found idler backlash: 1 of 1 read");
    take_all("pick up Main clearances\ntighten main caps stage 1 all with W4\n"
             "tighten main caps stage 2 from 3 to 1 with W3");
    expect_progress("bolt main caps in Main clearances[5], stage 2",
                    "main caps, stage 2: 3 of 6 ticked");
    take_all("fit main shells in Crank[1] lot MB-2417-C new");
    expect_progress("fit main shells[2, upper]", "main shells: 2 of 6 fitted");
    take_all("pick up Rings\nfit ring sets new\nread top ring gap 0.36 0.95 0.36 0.95 with G08");
    expect_progress("read top ring gap[1]", "top ring gap: 2 FAIL of 4");
    take_all("strike top ring gap[3] typo");
    expect_progress("read top ring gap[1]", "top ring gap: 2 FAIL, 3 of 4 read");
    take_all("look rods free of cracks[2] yes\nsign Receive");
    expect_progress("look rods free of cracks[1]", "rods free of cracks: 1 of 4 answered");
    expect_progress("sign Receive, 2", "signed 1 of 2");
    expect_progress("wait head nuts in Head on, stage 4", "head nuts, stage 4: 0 of 1 waited");
}
END_TEST

START_TEST(held_is_what_stands_behind_a_fault)
{
    take_all("2025-01-02 08:00 MO pick up Final wash");
    expect_summary("Rings", "open 13 of 13|after S14");
    take_all("look galleries brushed 5");
    expect_summary("Rings", "open 13 of 13|HELD: S14");
}
END_TEST

START_TEST(what_held_means_is_said_of_what_is_held)
{
    take_all("2025-01-02 08:00 MO pick up Receive");
    Agenda agenda = agenda_now();
    g_autofree char *first = summary_held(&agenda, step_of("Receive"));
    g_autofree char *second = summary_held(&agenda, step_of("Test before strip"));
    Summary waiting = summary_step(&agenda, step_of("Test before strip"));
    g_autofree char *why = summary_why(&agenda, &waiting);
    ck_assert_str_eq(why, "after S01");
    ck_assert_ptr_null(first);
    ck_assert_str_eq(second,
                     "S02 comes after S01, which is not signed. Work can go on; the record shows "
                     "the order.");
}
END_TEST

// STANDPOINT ------------------------------------------------------------------------------------

// `STEP|PLACE|in hand or not|entry that says so|newest entry`.
static void expect_standpoint(const char *expected)
{
    Agenda agenda = agenda_now();
    Standpoint stands = summary_standpoint(&agenda);
    g_autofree char *place = stands.place == AGENDA_NOWHERE
                                 ? g_strdup("nowhere")
                                 : requirement_name(requirement_at(&agenda, stands.place));
    g_autofree char *words = g_strdup_printf(
        "%s|%s|%s|%.5s|%.5s", stands.step ? stands.step->name : "none", place,
        stands.in_hand ? "in hand" : "not", stands.since ? stands.since->at + 11 : "-",
        stands.last ? stands.last->at + 11 : "-");
    ck_assert_str_eq(words, expected);
}

static void expect_goes_on(const char *step, const char *expected)
{
    Agenda agenda = agenda_now();
    guint place = summary_place(&agenda, step_of(step));
    ck_assert(place != AGENDA_NOWHERE);
    g_autofree char *name = requirement_name(requirement_at(&agenda, place));
    ck_assert_str_eq(name, expected);
}

START_TEST(a_build_stands_where_it_was_put_down_or_goes_on)
{
    expect_standpoint("Receive|look serial number|not|-|-");
    take_all("2025-01-02 08:00 MO pick up Rings\n08:05 fit ring sets new\n"
             "08:10 read top ring gap[2] 0.36 with G08");
    expect_standpoint("Rings|read top ring gap[3]|in hand|08:00|08:10");
    expect_goes_on("Rings", "read top ring gap[3]");
    take_all("08:20 put down \"telephone\"");
    expect_standpoint("Rings|read top ring gap[3]|not|08:20|08:20");
    take_all("08:25 EV pick up Flywheel\nstrike last typo");
    expect_standpoint("Rings|read top ring gap[3]|not|08:20|08:25");
    take_all("08:30 JT pick up Sump\n08:40 put down");
    expect_standpoint("Sump|read pan depth|not|08:40|08:40");
    take_all("08:50 strike last typo");
    expect_standpoint("Sump|read pan depth|in hand|08:30|08:50");
    take_all("09:00 sign Sump");
    expect_standpoint("Receive|look serial number|not|-|09:00");
}
END_TEST

// SUMS ------------------------------------------------------------------------------------------

static void add_counts(guint *sum, const Summary *summary)
{
    for (guint i = 0; i < VERDICTS; i++)
        sum[i] += summary->counts[i];
}

// Every line of the demo's log is judged by the assessment itself.
START_TEST(steps_and_phases_add_up_to_the_build_and_the_assessment)
{
    LineTaker *empty = build;
    build = demo_build(demo, "TL-0412");
    demo->judged = build;
    demo_feed(demo, build, "demo-data/tl-0412.log");
    Agenda agenda = agenda_now();
    Summary whole = summary_build(&agenda);
    guint steps[VERDICTS] = {0}, phases[VERDICTS] = {0}, done = 0;
    for (guint i = 0; i < demo->plan->steps->len; i++) {
        Summary each = summary_step(&agenda, demo->plan->steps->pdata[i]);
        add_counts(steps, &each);
        done += each.done;
    }
    g_autoptr(GPtrArray) names = summary_phases(demo->plan);
    for (guint i = 0; i < names->len; i++) {
        Summary each = summary_phase(&agenda, names->pdata[i]);
        add_counts(phases, &each);
    }
    const GPtrArray *gates = agenda.assessment->gates;
    ck_assert_mem_eq(whole.counts, agenda.assessment->counts, sizeof whole.counts);
    ck_assert_mem_eq(steps, whole.counts, sizeof steps);
    ck_assert_mem_eq(phases, whole.counts, sizeof phases);
    ck_assert_uint_eq(whole.left, ((GateCount *)gates->pdata[gates->len - 1])->left);
    ck_assert_uint_eq(whole.done, done);
    ck_assert_uint_eq(whole.steps, demo->plan->steps->len);
    ck_assert_uint_eq(names->len, 15);
    build = empty;
}
END_TEST

int main(void)
{
    const TTest *tests[] = {the_heaviest_verdict_is_that_of_the_step,
                            a_step_that_is_not_needed_and_an_optional_place_weigh_nothing,
                            who_signed_and_when,
                            how_far_a_check_or_a_stage_has_come,
                            held_is_what_stands_behind_a_fault,
                            what_held_means_is_said_of_what_is_held,
                            a_build_stands_where_it_was_put_down_or_goes_on,
                            steps_and_phases_add_up_to_the_build_and_the_assessment};
    return run_on_build("summary", tests, G_N_ELEMENTS(tests), 0);
}
