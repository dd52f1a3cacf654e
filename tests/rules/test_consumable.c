#include "exact.h"

#include <standbook/rules/consumable.h>
#include <stdlib.h>

typedef WindowAnswer Asked(mpq_srcptr elapsed, mpq_srcptr span);

static WindowAnswer answer(Asked *asked, const char *elapsed, const char *span, int hairs)
{
    mpq_t exact_elapsed, exact_span;
    mpq_inits(exact_elapsed, exact_span, NULL);
    exact_set(exact_elapsed, elapsed);
    exact_nudge(exact_elapsed, hairs);
    exact_set(exact_span, span);
    WindowAnswer window = asked(exact_elapsed, exact_span);
    mpq_clears(exact_elapsed, exact_span, NULL);
    return window;
}

START_TEST(the_last_instant_is_inside)
{
    ck_assert_int_eq(answer(window_within, "12", "12", -1), WINDOW_OK);
    ck_assert_int_eq(answer(window_within, "12", "12", 0), WINDOW_OK);
    ck_assert_int_eq(answer(window_within, "12", "12", 1), WINDOW_LATE);
    ck_assert_int_eq(answer(window_within, "0", "12", 0), WINDOW_OK);
    ck_assert_int_eq(answer(window_within, "0", "12", -1), WINDOW_WENT_BACK);
    ck_assert_int_eq(answer(window_after, "120", "120", -1), WINDOW_EARLY);
    ck_assert_int_eq(answer(window_after, "120", "120", 0), WINDOW_OK);
    ck_assert_int_eq(answer(window_after, "120", "120", 1), WINDOW_OK);
    ck_assert_int_eq(answer(window_after, "0", "120", -1), WINDOW_WENT_BACK);
    ck_assert_str_eq(window_words(WINDOW_EARLY), "early");
}
END_TEST

static void expect_elapsed(const Moment *moments, gsize count, const char *minutes)
{
    mpq_t found, expected;
    mpq_inits(found, expected, NULL);
    gboolean forward = window_elapsed(moments, count, found);
    ck_assert_int_eq(forward, minutes != NULL);
    if (minutes) {
        exact_set(expected, minutes);
        ck_assert(mpq_equal(found, expected));
    } else {
        ck_assert_int_lt(mpq_sgn(found), 0);
    }
    mpq_clears(found, expected, NULL);
}

START_TEST(minutes_between_entries)
{
    expect_elapsed((const Moment[]){600}, 1, "0");
    expect_elapsed((const Moment[]){600, 600}, 2, "0");
    expect_elapsed((const Moment[]){600, 650}, 2, "5/6");
    expect_elapsed((const Moment[]){600, 700, 1320}, 3, "12");
    expect_elapsed((const Moment[]){-60, 60}, 2, "2");
    expect_elapsed((const Moment[]){600, 599}, 2, NULL);
    expect_elapsed((const Moment[]){600, 540, 1320}, 3, NULL); // went back on the way
    expect_elapsed((const Moment[]){600, 1320, 1319}, 3, NULL);
}
END_TEST

static void expect_state(const char *elapsed, int hairs, gboolean fitted, ConsumableState state,
                         const char *clock)
{
    mpq_t numbers[3], now, running;
    const char *const texts[] = {"12", "120", "1440"};
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++) {
        mpq_init(numbers[i]);
        exact_set(numbers[i], texts[i]);
    }
    mpq_inits(now, running, NULL);
    exact_set(now, elapsed);
    exact_nudge(now, hairs);
    ConsumableClocks clocks = {numbers[0], numbers[1], numbers[2]};
    ConsumableState found = consumable_state(&clocks, now, fitted);
    ck_assert_msg(found == state, "after %s min: %s", elapsed, consumable_words(found));
    mpq_srcptr shown = consumable_clock(&clocks, found);
    ck_assert_int_eq(shown != NULL, clock != NULL);
    if (clock) {
        exact_set(running, clock);
        ck_assert(mpq_equal(shown, running));
    }
    mpq_clears(numbers[0], numbers[1], numbers[2], now, running, NULL);
}

// A sealant: fit within 12 min, fluid after 2 h, run after 24 h. Invented, of common size.
START_TEST(a_sealant_runs_through_its_clocks)
{
    expect_state("0", -1, FALSE, CONSUMABLE_WENT_BACK, NULL);
    expect_state("0", 0, FALSE, CONSUMABLE_FIT_BEFORE, "12");
    expect_state("12", 0, FALSE, CONSUMABLE_FIT_BEFORE, "12");
    expect_state("12", 1, FALSE, CONSUMABLE_LATE, "12");
    expect_state("5000", 0, FALSE, CONSUMABLE_LATE, "12");
    expect_state("8", 0, TRUE, CONSUMABLE_NO_FLUID_BEFORE, "120");
    expect_state("120", -1, TRUE, CONSUMABLE_NO_FLUID_BEFORE, "120");
    expect_state("120", 0, TRUE, CONSUMABLE_NO_RUN_BEFORE, "1440");
    expect_state("1440", -1, TRUE, CONSUMABLE_NO_RUN_BEFORE, "1440");
    expect_state("1440", 0, TRUE, CONSUMABLE_CURED, NULL);
}
END_TEST

START_TEST(clocks_that_are_not_there_do_not_run)
{
    mpq_t hour, now;
    mpq_inits(hour, now, NULL);
    exact_set(hour, "60");
    exact_set(now, "30");
    ConsumableClocks fluid_only = {.fluid_after = hour}, run_only = {.run_after = hour}, none = {0};
    ck_assert_int_eq(consumable_state(&fluid_only, now, FALSE), CONSUMABLE_NO_FLUID_BEFORE);
    ck_assert_int_eq(consumable_state(&run_only, now, TRUE), CONSUMABLE_NO_RUN_BEFORE);
    ck_assert_int_eq(consumable_state(&none, now, FALSE), CONSUMABLE_CURED);
    ck_assert_str_eq(consumable_words(CONSUMABLE_FIT_BEFORE), "FIT BEFORE");
    mpq_clears(hour, now, NULL);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("consumable");
    TCase *tcase = tcase_create("consumable");
    tcase_add_test(tcase, the_last_instant_is_inside);
    tcase_add_test(tcase, minutes_between_entries);
    tcase_add_test(tcase, a_sealant_runs_through_its_clocks);
    tcase_add_test(tcase, clocks_that_are_not_there_do_not_run);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
