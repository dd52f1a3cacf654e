#include "backlash.h"
#include "setting_state.h"
#include <check.h>
#include <math.h>
#include <stdlib.h>

// The figures were worked out apart from this program, the direction taken as certain, and by
// constants where tight answers unlike loose by each move anew, and where
// overrunning weighs no more than missing.
static SettingAdviser *adviser_of_example(void)
{
    static SettingConstants constants;
    constants = setting_constants;
    constants.ratio = 0;
    constants.drift = 0.03;
    constants.passing = 0;
    constants.worth_turning = 0.15;
    SettingModel model = backlash();
    model.direction_doubt = 0;
    return setting_adviser_new_by(&model, &constants);
}

static void ck_near(double got, double expected, double allowed)
{
    ck_assert_msg(fabs(got - expected) <= allowed, "%.9g, not %.9g", got, expected);
}

static void ck_six(double got, double expected)
{
    ck_near(got, expected, 5.1e-7);
}

static double read_loose(SettingAdviser *adviser, double value)
{
    return setting_read(adviser, 0, value, FALSE).tail;
}

static const double first_tight[] = {0.35, 0.37, 0.31, 0.34};
static const double last_tight[] = {0.14, 0.16, 0.10, 0.13};

// E ln slope over the geometry, its sd, the shift and its sd.
static void ck_learned(const SettingAdviser *adviser, double slope, double slope_sd)
{
    SettingLearned learned = setting_learned(adviser);
    ck_six(learned.ln_slope - log(0.546), slope);
    ck_six(learned.ln_slope_sd, slope_sd);
}

static void ck_expected(SettingExpected expected, double mean, double from, double to)
{
    ck_six(expected.mean, mean);
    ck_six(expected.from, from);
    ck_six(expected.to, to);
}

START_TEST(test_example_first_loose)
{
    g_autoptr(SettingAdviser) adviser = adviser_of_example();
    ck_assert_int_eq(setting_advice(adviser).kind, SETTING_READ_LOOSE);
    ck_assert_double_eq(read_loose(adviser, 0.31), 1);
    ck_learned(adviser, 0, 0.476477);
    SettingLearned learned = setting_learned(adviser);
    ck_six(learned.shift, 0);
    ck_six(learned.shift_sd, 0.06);
    ck_expected(setting_advice(adviser).tightest, 0.294537, 0.173159, 0.415915);
}
END_TEST

START_TEST(test_example_first_trial)
{
    g_autoptr(SettingAdviser) adviser = adviser_of_example();
    read_loose(adviser, 0.31);
    static const double tails[] = {0.5065, 0.3522, 0.0076, 0.8518};
    setting_tightened(adviser);
    for (guint i = 0; i < 4; i++)
        ck_near(setting_read(adviser, i, first_tight[i], TRUE).tail, tails[i], 5.1e-5);
    SettingLearned learned = setting_learned(adviser);
    ck_six(learned.shift, 0.039450);
    ck_six(learned.shift_sd, 0.005051);
    SettingPart level = setting_node_value(adviser->state, adviser->state->nodes, 0, FALSE);
    ck_six(level.mean * 0.1, 0.310092);
    SettingAdvice advice = setting_advice(adviser);
    ck_six(advice.spread, 0.057874);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert_int_eq(advice.steps, -14);
    ck_six(advice.chance, 0.124660);
    ck_six(advice.overrun, 0.267637);
    ck_six(advice.could, 0.999996);
    ck_assert(advice.leads_loose);
    SettingBand band;
    ck_assert(setting_band(adviser, &advice, &band));
    ck_six(band.from, 0.09);
    ck_six(band.to, 0.11);
}
END_TEST

START_TEST(test_example_to_the_end)
{
    g_autoptr(SettingAdviser) adviser = adviser_of_example();
    read_loose(adviser, 0.31);
    read_tight(adviser, first_tight);
    setting_moved(adviser, -14.0 / 48, TRUE);
    ck_six(read_loose(adviser, 0.12), 0.777379);
    ck_learned(adviser, 0.179367, 0.080970);
    ck_six(setting_learned(adviser).shift_sd, 0.007657);
    SettingAdvice advice = setting_advice(adviser);
    ck_six(advice.as_it_is, 0.549889);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert_int_eq(advice.steps, -1);
    ck_six(advice.chance, 0.772551);
    setting_moved(adviser, -1.0 / 48, TRUE);
    ck_six(read_loose(adviser, 0.10), 0.649574);
    ck_learned(adviser, 0.178949, 0.079640);
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_TIGHTEN);
    ck_six(advice.as_it_is, 0.987545);
    ck_expected(advice.tightest, 0.101285, 0.084728, 0.117707);
    read_tight(adviser, last_tight);
    ck_learned(adviser, 0.176112, 0.078943);
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_LEAVE);
    ck_six(advice.tightest.mean, 0.100731);
    ck_six(advice.spread, 0.058740);
    ck_assert_uint_eq(advice.finding_count, 0);
}
END_TEST

// N(0.10, 0.02²) in the window of a reading of 0.11 on 0.01: one reading, a difference of two.
static const struct {
    gboolean difference;
    double weight, mean, variance;
} windows[] = {{FALSE, 0.174666, 0.109794, 8.239e-6}, {TRUE, 0.173329, 0.109596, 1.6143e-5}};

START_TEST(test_window)
{
    SettingQuadrature quadrature = setting_quadrature_new();
    SettingWindow window =
        setting_window(&quadrature, 0.10, 0.0004, 0.11, 0.01, windows[_i].difference);
    ck_six(exp(window.ln_weight), windows[_i].weight);
    ck_six(window.mean, windows[_i].mean);
    ck_near(window.variance, windows[_i].variance, 6e-10);
    ck_assert(!window.missed);
    setting_quadrature_free(quadrature);
}
END_TEST

START_TEST(test_smallest)
{
    static const double mean[] = {1, 2, 1.5}, cov[] = {1, 0.5, 0.5, 0.5, 1, 0.5, 0.5, 0.5, 2};
    double with[3];
    SettingSmallest smallest = setting_smallest(mean, cov, 3, 3, 1, with);
    ck_six(smallest.mean, 0.608633);
    ck_six(smallest.variance, 1.002001);
}
END_TEST

static void tell_two_trials(SettingAdviser *adviser)
{
    read_loose(adviser, 0.31);
    read_tight(adviser, first_tight);
    setting_moved(adviser, -14.0 / 48, TRUE);
    read_loose(adviser, 0.12);
    setting_moved(adviser, -1.0 / 48, TRUE);
    read_loose(adviser, 0.10);
    read_tight(adviser, last_tight);
}

// What is expected of a move is what is expected after it.
START_TEST(test_moves_foreseen)
{
    SettingModel model = backlash();
    model.absolute = _i % 2;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell_two_trials(adviser);
    double move = (_i < 2 ? 20 : -20) / 48.0;
    SettingOutlook before = setting_outlook(adviser);
    SettingExpected foreseen = setting_expect_end(adviser, &before, SETTING_MOVED, move, _i > 3);
    setting_outlook_clear(&before);
    setting_moved(adviser, move, TRUE);
    SettingOutlook after = setting_outlook(adviser);
    SettingExpected seen = setting_expect_end(adviser, &after, SETTING_NEXT, 0, _i > 3);
    setting_outlook_clear(&after);
    ck_near(foreseen.mean, seen.mean, 1e-6);
    // The repeat error grows with the shift, which is not foreseen.
    ck_near(foreseen.to - foreseen.from, seen.to - seen.from, 0.0002 * (seen.to - seen.from));
}
END_TEST

// Slopes given up and taken up again know what was read since.
START_TEST(test_taken_up_again)
{
    SettingModel model = backlash();
    model.graduation = 0.001;
    model.hand = 0.001;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    read_loose(adviser, 0.31);
    read_tight(adviser, first_tight);
    double level = 0.31;
    for (int i = 0; i < 5; i++) {
        double move = i % 2 ? -0.5 : 0.5;
        setting_moved(adviser, move, TRUE);
        read_loose(adviser, level += 0.546 * move);
    }
    guint given_up = 0, count = adviser->state->count;
    for (guint k = 0; k < count; k++)
        given_up += setting_is_given_up(&adviser->state->nodes[k]) ? 1 : 0;
    setting_tightened(adviser);
    ck_assert_int_eq(setting_read(adviser, 0, level + 0.14, TRUE).kind, SETTING_SHIFT);
    guint followed = 0;
    for (guint k = 0; k < count; k++) {
        const SettingNode *node = &adviser->state->nodes[k];
        if (setting_is_given_up(node))
            continue;
        followed++;
        ck_near(node->mean[0] * 0.1, level, 0.02);
    }
    ck_assert_uint_gt(followed, count - given_up);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("setting");
    TCase *example = tcase_create("example");
    tcase_add_test(example, test_example_first_loose);
    tcase_add_test(example, test_example_first_trial);
    tcase_add_test(example, test_example_to_the_end);
    tcase_add_loop_test(example, test_window, 0, G_N_ELEMENTS(windows));
    tcase_add_test(example, test_smallest);
    tcase_add_loop_test(example, test_moves_foreseen, 0, 6);
    tcase_add_test(example, test_taken_up_again);
    suite_add_tcase(suite, example);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
