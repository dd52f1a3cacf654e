// A likely slip is said, asked about once, and kept as it was typed.
#include "store.h"

#include <standbook/work/slip_words.h>

static void expect_slip(Session *session, const char *line, const char *expected)
{
    g_autofree char *slip = session_slip(session, line);
    ck_assert_pstr_eq(slip, expected);
}

START_TEST(a_slip_is_asked_and_nothing_is_stored_by_asking)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Crank");
    expect_slip(session, "MO read top ring gap[1] 3.6 with G08",
                "10 times its limits? Enter again keeps 3.60 mm, not 0.36 mm");
    take(session, "read top ring gap[1] 0.36 with G08");
    take(session, "read top ring gap[2] 0.38 with G08");
    guint entries = session_entries(session)->len;
    expect_slip(session, "MO read top ring gap[3] 3.6 with G08",
                "10 times the other 2? Enter again keeps 3.60 mm, not 0.36 mm");
    expect_slip(session, "MO read top ring gap[3] .014 with G08",
                "1/25.4 of the other 2? Enter again keeps 0.014 mm, not 0.36 mm");
    expect_slip(session, "MO read top ring gap[3] -0.37 with G08",
                "Sign unlike the other 2? Enter again keeps -0.37 mm, not 0.37 mm");
    expect_slip(session, "MO read top ring gap[3] 0.36 with G08", NULL);
    expect_slip(session, "MO read top ring gap[3] 0.55 with G08", NULL); // fails, and is no slip
    expect_slip(session, "MO look white cloth clean", NULL);
    expect_slip(session, "MO read top ring gap[3] 3.6.1", NULL); // is refused
    ck_assert_uint_eq(session_entries(session)->len, entries);
    session_close(session);
}
END_TEST

START_TEST(a_slip_is_kept_as_typed_and_the_answer_says_so)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Crank");
    char *answer = NULL;
    ck_assert(session_line(session, "read top ring gap[1] 3.6 with G08", -1, &answer, NULL));
    ck_assert_msg(g_str_has_suffix(answer, ". 10 times its limits? 3.60 mm is kept, not 0.36 mm"),
                  "%s", answer);
    const GPtrArray *entries = session_entries(session);
    const Entry *entry = entries->pdata[entries->len - 1];
    ck_assert_str_eq(entry_value(entry, "value", "typed"), "3.6");
    ck_assert_str_eq(entry_value(entry, "value", "value"), "18/5");
    g_free(answer);
    session_close(session);
}
END_TEST

START_TEST(values_of_one_line_are_compared_with_each_other)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Check returned work");
    expect_slip(session, "MO read skirt 90.012 90.010 9.0011 90.011 with G02",
                "A tenth of the other 3? Enter again keeps 9.0011 mm, not 90.011 mm");
    expect_slip(session, "MO read skirt 90.012 90.010 90.011 90.011 with G02", NULL);
    char *answer = NULL;
    ck_assert(session_line(session, "read skirt 90.012 90.010 9.0011 90.011 with G02", -1, &answer,
                           NULL));
    const GPtrArray *slips = session_last_slips(session);
    ck_assert_ptr_nonnull(slips);
    ck_assert_uint_eq(slips->len, 1);
    ck_assert_str_eq(slips->pdata[0], "A tenth of the other 3? 9.0011 mm is kept, not 90.011 mm");
    g_free(answer);
    ck_assert(session_line(session, "note \"all well\"", -1, &answer, NULL));
    ck_assert(!session_last_slips(session) || session_last_slips(session)->len == 0);
    g_free(answer);
    session_close(session);
}
END_TEST

START_TEST(a_bare_fraction_where_millimetres_are_asked)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Sump");
    expect_slip(session, "MO read pan depth 17/32 with G06",
                "A fraction of millimetres? Enter again keeps 0.53 mm, not 13.49 mm");
    expect_slip(session, "MO read pan depth 17/32in with G06", NULL);
    session_close(session);
}
END_TEST

START_TEST(what_a_wrench_showed_is_compared_with_what_is_asked)
{
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Main clearances");
    expect_slip(session, "MO tighten main caps[3] stage 1 400 with W2",
                "Torque 10 times what is asked? Enter again keeps 400 N·m, not 40 N·m");
    expect_slip(session, "MO tighten main caps[3] stage 1 41 with W2", NULL);
    expect_slip(session, "MO tighten main caps[3] stage 1 44 with W2", NULL); // a tenth is none
    expect_slip(session, "MO tighten main caps[3] stage 1 44.1 with W2",
                "Torque far from what is asked? Enter again keeps 44.1 N·m, not 40.0 N·m");
    expect_slip(session, "MO tighten main caps[3] stage 1 1 with W2",
                "Torque far from what is asked? Enter again keeps 1 N·m, not 40 N·m");
    expect_slip(session, "MO tighten main caps[3] stage 1 1.6 with W2", // 40 / 25.4, of no inch
                "Torque far from what is asked? Enter again keeps 1.6 N·m, not 40.0 N·m");
    session_close(session);
}
END_TEST

// A bolt that is pulled longer is far from those that lie free; it is like the tight ones.
START_TEST(a_tight_length_is_compared_with_tight_ones)
{
    Session *session = open_session("TL-0412");
    take(session, "2025-03-06 08:00 MO pick up Big-end clearances");
    take(session, "read mock-up bolt length[1, a, free] 62.412 with G13");
    take(session, "read mock-up bolt length[1, b, free] 62.412 with G13");
    take(session, "read mock-up bolt length[2, a, free] 62.412 with G13");
    take(session, "read mock-up bolt length[2, b, free] 62.412 with G13");
    expect_slip(session, "MO read mock-up bolt length[1, a, tight] 62.561 with G13", NULL);
    expect_slip(session, "MO read mock-up bolt length[1, a, tight] 6.2561 with G13",
                "A tenth of the other 4? Enter again keeps 6.2561 mm, not 62.561 mm");
    expect_slip(session, "MO read mock-up bolt length[3, a, free] 62.561 with G13",
                "Far from the other 4? Enter again keeps 62.561 mm");
    take(session, "read mock-up bolt length[1, a, tight] 62.561 with G13");
    take(session, "read mock-up bolt length[1, b, tight] 62.561 with G13");
    take(session, "read mock-up bolt length[2, a, tight] 62.561 with G13");
    expect_slip(session, "MO read mock-up bolt length[2, b, tight] 62.563 with G13", NULL);
    session_close(session);
}
END_TEST

// Through an adapter a wrench shows what it was set to, 18.5, not what the bolt gets, 20.
START_TEST(through_an_adapter_the_setting_is_asked)
{
    Session *session = open_session("TL-0412");
    take(session, "2025-03-18 09:20 MO pick up Manifolds and pumps");
    expect_slip(session, "MO tighten water pump[4] 21 with W1", NULL);
    expect_slip(session, "MO tighten water pump[4] 21.0 with W1 adapter X1",
                "Torque far from what is asked? Enter again keeps 21.0 N·m, not 18.5 N·m");
    session_close(session);
}
END_TEST

START_TEST(other_engines_of_the_family_and_the_aim_serve_where_nothing_else_does)
{
    Session *other = open_session("TL-0412");
    take(other, "2024-12-04 08:30 MO pick up Check returned work");
    take(other, "read skirt 90.012 90.010 90.011 90.011 with G02");
    session_close(other);
    Session *session = open_session("TL-0405");
    take(session, "2024-12-05 08:30 MO pick up Check returned work");
    expect_slip(session, "MO read skirt[1] 900.11 with G02",
                "10 times 4 earlier readings? Enter again keeps 900.110 mm, not 90.011 mm");
    expect_slip(session, "MO read skirt[1] 90.011 with G02", NULL);
    session_close(session);
}
END_TEST

int main(void)
{
    TCase *slips = tcase_create("slips");
    tcase_add_checked_fixture(slips, make_shop, clear);
    tcase_add_test(slips, a_slip_is_asked_and_nothing_is_stored_by_asking);
    tcase_add_test(slips, a_slip_is_kept_as_typed_and_the_answer_says_so);
    tcase_add_test(slips, values_of_one_line_are_compared_with_each_other);
    tcase_add_test(slips, a_bare_fraction_where_millimetres_are_asked);
    tcase_add_test(slips, what_a_wrench_showed_is_compared_with_what_is_asked);
    tcase_add_test(slips, through_an_adapter_the_setting_is_asked);
    tcase_add_test(slips, a_tight_length_is_compared_with_tight_ones);
    tcase_add_test(slips, other_engines_of_the_family_and_the_aim_serve_where_nothing_else_does);
    Suite *suite = suite_create("slip words");
    suite_add_tcase(suite, slips);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
