// One tightening in its order, on the demo's plan.
#include "../work/agenda.h"

#include "tightening.h"

static Tightening *tightening_of(const char *step, const char *set)
{
    Agenda agenda = agenda_now();
    Tightening *tightening = tightening_new(demo->plan, agenda.assessment, step_of(step), set);
    ck_assert_ptr_nonnull(tightening);
    return tightening;
}

static void expect_turn(const Turn *turn, const char *expected)
{
    g_autofree char *name = turn ? requirement_name(turn->made) : NULL;
    ck_assert_pstr_eq(name, expected);
}

static const char *const nuts[] = {"2025-03-17 09:00 MO pick up Head on",
                                   "tighten head nuts stage 1 all with W4",
                                   "tighten head nuts stage 2 from 3 to 4 with W4"};

static void take_nuts(void)
{
    for (gsize i = 0; i < G_N_ELEMENTS(nuts); i++)
        take(nuts[i]);
}

START_TEST(a_stage_begins_again_at_its_first_bolt)
{
    take_nuts();
    g_autoptr(Tightening) tightening = tightening_of("Head on", "head nuts");
    guint here = tightening_next(tightening, 0);
    expect_turn(tightening_turn(tightening, here), "bolt head nuts in Head on[7], stage 2");
    expect_turn(tightening_before(tightening, here), "bolt head nuts in Head on[4], stage 2");
    expect_turn(tightening_again(tightening, here), "bolt head nuts in Head on[3], stage 2");
    // Once the next stage was begun a second pull is another one.
    expect_turn(tightening_again(tightening, 0), NULL);
}
END_TEST

START_TEST(no_stage_begins_again_by_angle_or_before_it_was_begun)
{
    take("2025-03-13 13:30 MO pick up Flywheel");
    take("fit flywheel bolts lot FB-310 new");
    take("tighten flywheel bolts stage 1 all with W4");
    g_autoptr(Tightening) none = tightening_of("Flywheel", "flywheel bolts");
    guint here = tightening_next(none, 0);
    ck_assert_uint_eq(tightening_turn(none, here)->stage, 2);
    expect_turn(tightening_again(none, here), NULL);
    take("tighten flywheel bolts[1] stage 2 50 with A1");
    g_autoptr(Tightening) begun = tightening_of("Flywheel", "flywheel bolts");
    expect_turn(tightening_again(begun, tightening_next(begun, 0)), NULL);
}
END_TEST

START_TEST(begun_again_each_bolt_is_taken_once_more)
{
    take_nuts();
    gint64 since = last(0)->seq;
    take("tighten head nuts[3] in Head on stage 2 with W4");
    g_autoptr(Tightening) tightening = tightening_of("Head on", "head nuts");
    expect_turn(tightening_turn(tightening, tightening_older(tightening, 2, since)),
                "bolt head nuts in Head on[8], stage 2");
    take("tighten head nuts stage 2 all with W4");
    g_autoptr(Tightening) all = tightening_of("Head on", "head nuts");
    ck_assert_ptr_null(tightening_turn(all, tightening_older(all, 2, since)));
}
END_TEST

START_TEST(later_steps_take_the_set_up_again)
{
    g_autoptr(Tightening) head = tightening_of("Head on", "head nuts"),
                          sump = tightening_of("Sump", "sump");
    g_autofree char *later = tightening_later(head, demo->plan),
                    *none = tightening_later(sump, demo->plan);
    ck_assert_str_eq(later, "75 (S40)");
    ck_assert_str_eq(none, "");
}
END_TEST

START_TEST(a_stage_in_doubt_has_no_tick)
{
    take_nuts();
    g_autoptr(Tightening) before = tightening_of("Head on", "head nuts");
    ck_assert_str_eq(tightening_mark(before, 1), "√");
    ck_assert_str_eq(tightening_mark(before, 2), "");
    take("tighten head nuts[5] in Head on stage 2 with W1"); // 55 is beyond its range
    take("shop calibration W4 2025-03-17 wrong \"reads low\"");
    g_autoptr(Tightening) after = tightening_of("Head on", "head nuts");
    ck_assert_str_eq(tightening_mark(after, 1), "?");
    ck_assert_str_eq(tightening_mark(after, 2), "?");
    ck_assert_str_eq(tightening_mark(after, 3), "");
    ck_assert_uint_eq(tightening_done(after, 1), tightening_asked(after, 1));
}
END_TEST

START_TEST(a_stage_at_which_a_bolt_fails_has_its_mark)
{
    take_nuts();
    take("tighten head nuts[7] in Head on stage 2 5 N·m with W4"); // of 55
    g_autoptr(Tightening) low = tightening_of("Head on", "head nuts");
    ck_assert_str_eq(tightening_mark(low, 1), "√");
    ck_assert_str_eq(tightening_mark(low, 2), "▼"); // though bolts are left
    const Turn *failed = tightening_failed(low, 0);
    expect_turn(failed, "bolt head nuts in Head on[7], stage 2");
    ck_assert(tightening_may_pull_again(low, failed));
    take("tighten head nuts[7] in Head on stage 2 155 N·m with W4");
    g_autoptr(Tightening) high = tightening_of("Head on", "head nuts");
    ck_assert_str_eq(tightening_mark(high, 2), "▲");
    ck_assert(!tightening_may_pull_again(high, tightening_failed(high, 0)));
    take("tighten head nuts[7] in Head on stage 2 5 N·m with W4");
    take("tighten head nuts stage 2 from 2 to 10 with W4");
    take("tighten head nuts[3] in Head on stage 3 75 with W3");
    take("tighten head nuts[7] in Head on stage 3 75 with W3");
    g_autoptr(Tightening) behind = tightening_of("Head on", "head nuts");
    ck_assert(!tightening_may_pull_again(behind, tightening_failed(behind, 0)));
    take("tighten head nuts[7] in Head on stage 2 55 N·m with W4");
    g_autoptr(Tightening) again = tightening_of("Head on", "head nuts");
    ck_assert_ptr_null(tightening_failed(again, 0));
}
END_TEST

START_TEST(a_bolt_that_failed_by_angle_is_not_turned_again)
{
    take("2025-03-13 13:30 MO pick up Flywheel");
    take("fit flywheel bolts lot FB-310 new");
    take("tighten flywheel bolts stage 1 all with W4");
    take("tighten flywheel bolts[1] stage 2 5 with A1");
    g_autoptr(Tightening) tightening = tightening_of("Flywheel", "flywheel bolts");
    ck_assert(!tightening_may_pull_again(tightening, tightening_failed(tightening, 0)));
}
END_TEST

int main(void)
{
    const TTest *tests[] = {a_stage_begins_again_at_its_first_bolt,
                            no_stage_begins_again_by_angle_or_before_it_was_begun,
                            begun_again_each_bolt_is_taken_once_more,
                            later_steps_take_the_set_up_again,
                            a_stage_in_doubt_has_no_tick,
                            a_stage_at_which_a_bolt_fails_has_its_mark,
                            a_bolt_that_failed_by_angle_is_not_turned_again};
    return run_on_build("tightening", tests, G_N_ELEMENTS(tests), 0);
}
