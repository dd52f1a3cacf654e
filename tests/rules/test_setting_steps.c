#include <check.h>
#include <math.h>
#include <standbook/rules/setting.h>
#include <stdlib.h>

// An adjuster that can be set only in coarse steps (an eighth of a turn of a 1 mm pitch, limits
// 0.10 mm apart): engines without hidden faults, and what becomes of following the advice.
enum { MOST_ENTRIES = 90 };

static SettingModel coarse(void)
{
    SettingModel model;
    setting_model_init(&model);
    model.least = 0.25;
    model.most = 0.35;
    model.aim = 0.30;
    model.graduation = 0.01;
    model.places = 1;
    model.geometry = 1;
    model.direction = 1;
    model.step = 0.125;
    return model;
}

typedef struct {
    double value, slope, shift; // loose value here; mm a turn; what tightening adds
    double read;                // last value read tight
} Engine;

static void obey(SettingAdviser *adviser, Engine *engine, const SettingAdvice *advice)
{
    double loose = round(engine->value * 100) / 100;
    if (advice->kind == SETTING_READ_LOOSE) {
        setting_read(adviser, 0, loose, FALSE);
    } else if (advice->kind == SETTING_TIGHTEN) {
        engine->read = round((engine->value + engine->shift) * 100) / 100;
        setting_tightened(adviser);
        setting_read(adviser, 0, engine->read, TRUE);
    } else {
        ck_assert_double_gt(fabs(advice->move), 0.1);
        ck_assert_double_eq_tol(advice->move, 0.125 * (double)advice->steps, 1e-9);
        engine->value += engine->slope * advice->move;
        setting_moved(adviser, advice->move, TRUE);
    }
}

static void follow(const SettingModel *model, Engine *engine)
{
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(model);
    for (int i = 0; i < MOST_ENTRIES; i++) {
        SettingAdvice advice = setting_advice(adviser);
        if (advice.kind == SETTING_LEAVE || advice.kind == SETTING_STOP)
            return;
        obey(adviser, engine, &advice);
    }
    ck_abort_msg("no end with %.3f a turn", engine->slope);
}

static gboolean can_pass(const Engine *engine)
{
    double step = fabs(0.125 * engine->slope), tight = engine->value + engine->shift;
    // Not at the very limit, where the graduation decides.
    return floor((0.345 - tight) / step) * step + tight > 0.255;
}

START_TEST(test_ends_inside_where_a_step_does)
{
    SettingModel model = coarse();
    guint could = 0, did = 0;
    for (double slope = 0.55; slope < 1.9; slope += 0.05)
        for (double start = 0.10; start < 1.2; start += 0.037) {
            Engine engine = {start, slope, 0.03, 0};
            gboolean can = can_pass(&engine);
            follow(&model, &engine);
            gboolean passes = engine.read > 0.249 && engine.read < 0.351;
            could += can;
            did += can && passes;
        }
    ck_assert_uint_gt(could, 400);
    ck_assert_uint_eq(did, could);
}
END_TEST

// One step passes, the next on either side does not.
static const struct {
    double tight;
    SettingKind kind;
    long steps;
} one_trial[] = {
    {0.40, SETTING_MOVE, -1}, {0.43, SETTING_MOVE, -1}, {0.18, SETTING_MOVE, 1},
    {0.30, SETTING_LEAVE, 0}, {0.34, SETTING_LEAVE, 0}, {0.26, SETTING_LEAVE, 0},
};

START_TEST(test_the_least_step)
{
    SettingModel model = coarse();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    setting_read(adviser, 0, one_trial[_i].tight, FALSE);
    setting_tightened(adviser);
    setting_read(adviser, 0, one_trial[_i].tight, TRUE);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, one_trial[_i].kind);
    ck_assert_int_eq(advice.steps, one_trial[_i].steps);
    // What moves can come to is no more than the steps allow.
    if (advice.kind == SETTING_LEAVE)
        ck_assert_double_lt(advice.could, advice.as_it_is + 0.1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("setting in coarse steps");
    TCase *tcase = tcase_create("steps");
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, test_ends_inside_where_a_step_does);
    tcase_add_loop_test(tcase, test_the_least_step, 0, G_N_ELEMENTS(one_trial));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
