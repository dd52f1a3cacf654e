// The clocks of a build, on the demo's plan.
#include "store.h"

#include <standbook/work/clocks.h>

static GArray *clocks_at(Session *session, const char *moment)
{
    const GPtrArray *entries = session_entries(session);
    Moment now;
    ck_assert(moment_parse(moment, &now, NULL));
    return clocks_running(session_plan(session), session_assessment(session),
                          (const Entry *const *)entries->pdata, entries->len, now);
}

// The clocks at a moment in words, in one line each.
static char *told(Session *session, const char *moment)
{
    g_autoptr(GArray) clocks = clocks_at(session, moment);
    GString *text = g_string_new(NULL);
    Moment now;
    ck_assert(moment_parse(moment, &now, NULL));
    for (guint i = 0; i < clocks->len; i++) {
        const Clock *clock = &g_array_index(clocks, Clock, i);
        g_autofree char *at = moment_text(clock->at);
        g_string_append_printf(text, "%s %s %s\n", clock->subject, clock_words(clock, now), at);
    }
    return g_string_free(text, FALSE);
}

static void expect_clocks(Session *session, const char *moment, const char *expected)
{
    g_autofree char *text = told(session, moment);
    ck_assert_str_eq(text, expected);
}

// What kept it from being filled or run last, over by then.
static void expect_over(Session *session, const char *moment, const char *expected)
{
    const GPtrArray *entries = session_entries(session);
    Moment now;
    Clock clock;
    ck_assert(moment_parse(moment, &now, NULL));
    gboolean over = clock_over(session_plan(session), (const Entry *const *)entries->pdata,
                               entries->len, now, &clock);
    g_autofree char *at = over ? moment_text(clock.at) : NULL;
    g_autofree char *words = over
                                 ? g_strdup_printf("%s %s %s", clock.subject,
                                                   clock.sort == CLOCK_NO_RUN ? "run" : "fluid", at)
                                 : NULL;
    ck_assert_pstr_eq(words, expected);
}

// Gasket sealant: fit within 12 min, no fluid for 2 h, no run for 24 h.
START_TEST(a_sealant_has_three_clocks_and_each_ends_by_itself)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 11:30 MO pick up Sump");
    take(session, "11:30 lay gasket sealant on sump");
    expect_clocks(session, "2024-12-05 11:36",
                  "sump FIT BEFORE 2024-12-05T11:42:00\n"
                  "sump no fluid before 2024-12-05T13:30:00\n"
                  "sump no run before 2024-12-06T11:30:00\n");
    expect_clocks(session, "2024-12-05 11:43",
                  "sump LATE 2024-12-05T11:42:00\n"
                  "sump no fluid before 2024-12-05T13:30:00\n"
                  "sump no run before 2024-12-06T11:30:00\n");
    take(session, "11:35 tighten sump stage 1 all with W1");
    expect_clocks(session, "2024-12-05 11:43",
                  "sump no fluid before 2024-12-05T13:30:00\n"
                  "sump no run before 2024-12-06T11:30:00\n");
    expect_clocks(session, "2024-12-05 14:00", "sump no run before 2024-12-06T11:30:00\n");
    expect_clocks(session, "2024-12-07 14:00", "");
    expect_over(session, "2024-12-05 11:43", NULL);
    expect_over(session, "2024-12-05 14:00", "sump fluid 2024-12-05T13:30:00");
    expect_over(session, "2024-12-07 14:00", "sump run 2024-12-06T11:30:00");
    session_close(session);
}
END_TEST

// What the judge looks at is what was laid last.
START_TEST(laid_again_the_clocks_begin_again)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 11:30 MO pick up Sump");
    take(session, "11:30 lay gasket sealant on sump");
    take(session, "11:50 lay gasket sealant on sump");
    expect_clocks(session, "2024-12-05 11:55",
                  "sump FIT BEFORE 2024-12-05T12:02:00\n"
                  "sump no fluid before 2024-12-05T13:50:00\n"
                  "sump no run before 2024-12-06T11:50:00\n");
    take(session, "strike last typo");
    expect_clocks(session, "2024-12-05 11:55",
                  "sump LATE 2024-12-05T11:42:00\n"
                  "sump no fluid before 2024-12-05T13:30:00\n"
                  "sump no run before 2024-12-06T11:30:00\n");
    session_close(session);
}
END_TEST

START_TEST(what_was_struck_has_no_clock)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 11:30 MO pick up Sump");
    take(session, "11:30 lay gasket sealant on sump");
    take(session, "strike last typo");
    expect_clocks(session, "2024-12-05 11:36", "");
    session_close(session);
}
END_TEST

// What must not come too soon is told a minute late rather than early, what must not come too late
// the other way.
START_TEST(a_clock_is_told_in_whole_minutes)
{
    static const struct {
        ClockSort sort;
        const char *at, *expected;
    } told_as[] = {{CLOCK_WAIT, "2024-12-05 09:09:20", "wait until 09:10"},
                   {CLOCK_WAIT, "2024-12-05 09:09:00", "wait until 09:09"},
                   {CLOCK_NO_RUN, "2024-12-05 09:59:01", "no run before 10:00"},
                   {CLOCK_FIT_BEFORE, "2024-12-05 09:09:59", "FIT BEFORE 09:09"}};
    Moment now;
    ck_assert(moment_parse("2024-12-05 09:00", &now, NULL));
    for (guint i = 0; i < G_N_ELEMENTS(told_as); i++) {
        Clock clock = {.sort = told_as[i].sort};
        ck_assert(moment_parse(told_as[i].at, &clock.at, NULL));
        g_autofree char *words = clock_until(&clock, now);
        ck_assert_str_eq(words, told_as[i].expected);
    }
}
END_TEST

// Head nuts: 30 > 55 > 75 > wait 10 min > 75.
START_TEST(a_wait_runs_from_the_last_bolt_in_front_of_it)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 14:00 MO pick up Head on");
    take(session, "14:01 tighten head nuts stage 1 all with W4");
    take(session, "14:02 tighten head nuts stage 2 all with W4");
    expect_clocks(session, "2024-12-05 14:03", "");
    take(session, "14:05 tighten head nuts stage 3 all with W3");
    expect_clocks(session, "2024-12-05 14:06", "head nuts wait until 2024-12-05T14:15:00\n");
    take(session, "14:16 waited head nuts stage 4");
    expect_clocks(session, "2024-12-05 14:17", "");
    session_close(session);
}
END_TEST

// When the wait of the head nuts is over, in words; `none` if it does not run.
static char *wait_told(Session *session)
{
    const GPtrArray *entries = session_entries(session);
    const Assessment *assessment = session_assessment(session);
    for (guint i = 0; i < assessment->requirements->len; i++) {
        const Requirement *made = assessment->requirements->pdata[i];
        if (made->asked != ASKED_WAIT || strcmp(made->name, "head nuts") != 0)
            continue;
        Moment over =
            clock_wait_over(assessment, (const Entry *const *)entries->pdata, entries->len, made);
        return over ? moment_text(over) : g_strdup("none");
    }
    return NULL;
}

START_TEST(a_wait_is_over_at_a_moment)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 14:00 MO pick up Head on");
    g_autofree char *before = wait_told(session);
    ck_assert_str_eq(before, "none");
    take(session, "14:01 tighten head nuts stage 1 all with W4");
    take(session, "14:02 tighten head nuts stage 2 all with W4");
    take(session, "14:05 tighten head nuts stage 3 all with W3");
    g_autofree char *runs = wait_told(session);
    ck_assert_str_eq(runs, "2024-12-05T14:15:00");
    take(session, "14:16 waited head nuts stage 4");
    g_autofree char *after = wait_told(session);
    ck_assert_str_eq(after, "none");
    session_close(session);
}
END_TEST

// Entries in turn, typed by a clock that went back between the second and the third.
START_TEST(the_latest_time_is_not_that_of_the_last_entry)
{
    static const char *const typed[] = {"2024-12-05T14:00:00", "2024-12-05T14:02:00",
                                        "2021-01-01T00:00:00"};
    Entry *entries[G_N_ELEMENTS(typed)];
    for (gsize i = 0; i < G_N_ELEMENTS(typed); i++) {
        entries[i] = entry_new(kind_find("note", 1));
        entries[i]->at = g_strdup(typed[i]);
    }
    Moment expected;
    ck_assert(moment_parse(typed[1], &expected, NULL));
    ck_assert(clock_latest((const Entry *const *)entries, G_N_ELEMENTS(typed)) == expected);
    ck_assert(clock_latest((const Entry *const *)entries, 0) == 0);
    for (gsize i = 0; i < G_N_ELEMENTS(typed); i++)
        entry_free(entries[i]);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {a_wait_is_over_at_a_moment,
                            a_clock_is_told_in_whole_minutes,
                            a_sealant_has_three_clocks_and_each_ends_by_itself,
                            the_latest_time_is_not_that_of_the_last_entry,
                            laid_again_the_clocks_begin_again,
                            what_was_struck_has_no_clock,
                            a_wait_runs_from_the_last_bolt_in_front_of_it};
    TCase *tcase = tcase_create("demo shop");
    tcase_add_checked_fixture(tcase, make_shop, clear);
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    Suite *suite = suite_create("clocks");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
