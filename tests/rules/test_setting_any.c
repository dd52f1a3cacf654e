#include "backlash.h"
#include <check.h>
#include <math.h>
#include <stdlib.h>

// What holds for any setting and any readings: drawn from a seed, the loop's number.
enum { STORIES = 150, ENTRIES = 30, MOST_PLACES = 5 };

typedef struct {
    GRand *rand;
    SettingModel model;
    SettingAdviser *adviser;
    double at; // where the adjuster is
} Story;

static double uniform(Story *story, double from, double to)
{
    return g_rand_double_range(story->rand, from, to);
}

static gboolean one_in(Story *story, int n)
{
    return g_rand_int_range(story->rand, 0, n) == 0;
}

static void draw_adjuster(Story *story)
{
    SettingModel *model = &story->model;
    model->geometry = one_in(story, 4) ? NAN : uniform(story, 0.1, 5);
    model->direction = g_rand_int_range(story->rand, -1, 2);
    model->start = uniform(story, -1, 1);
    model->travel_least = one_in(story, 4) ? NAN : model->start - uniform(story, 0, 3);
    model->travel_most = one_in(story, 4) ? NAN : model->start + uniform(story, 0, 3);
    model->step = one_in(story, 3) ? 0 : uniform(story, 0.01, 0.3);
    model->absolute = one_in(story, 2);
    model->loose = !one_in(story, 4);
    model->lost = one_in(story, 3) ? 0.05 : 0;
}

static Story story_new(int seed)
{
    Story story = {.rand = g_rand_new_with_seed((guint32)seed)};
    SettingModel *model = &story.model;
    setting_model_init(model);
    model->least = uniform(&story, -1, 1);
    model->most = model->least + uniform(&story, 0.05, 2);
    model->aim = uniform(&story, model->least, model->most);
    if (one_in(&story, 5))
        *(one_in(&story, 2) ? &model->least : &model->most) = NAN;
    model->closes = one_in(&story, 2);
    model->graduation = uniform(&story, 0.01, 0.5);
    model->difference = one_in(&story, 3);
    model->places = (guint)g_rand_int_range(story.rand, 1, MOST_PLACES + 1);
    draw_adjuster(&story);
    story.adviser = setting_adviser_new(model);
    story.at = model->start;
    return story;
}

static void story_free(Story *story)
{
    setting_adviser_free(story->adviser);
    g_rand_free(story->rand);
}

// A reading that might come from an engine, and seldom one that cannot.
static double reading_of(Story *story, guint place, gboolean tight)
{
    double width = 1, value = story->model.aim + 1.3 * (story->at - 0.4) + 0.05 * place;
    value += tight ? 0.2 : 0;
    value += one_in(story, 12) ? uniform(story, -9, 9) * width : 0;
    return story->model.graduation * round(value / story->model.graduation);
}

static void enter_advice(Story *story, const SettingAdvice *advice)
{
    switch (advice->kind) {
    case SETTING_MOVE:
    case SETTING_MOVE_DIRECTION:
        setting_moved(story->adviser, advice->move, one_in(story, 2));
        story->at += advice->move;
        break;
    case SETTING_READ_LOOSE:
        setting_read(story->adviser, 0, reading_of(story, 0, FALSE), FALSE);
        break;
    default:
        setting_tightened(story->adviser);
        for (guint p = 0; p < story->model.places; p++)
            setting_read(story->adviser, p, reading_of(story, p, TRUE), TRUE);
    }
}

static void ck_number(double number)
{
    ck_assert(isfinite(number));
}

static void ck_chance(double chance)
{
    ck_assert(chance >= -1e-9 && chance <= 1 + 1e-9);
}

static void ck_travel(const Story *story, const SettingAdvice *advice)
{
    const SettingModel *model = &story->model;
    double to = story->at + advice->move;
    ck_assert_double_eq_tol(advice->to, to, 1e-9);
    ck_assert_msg(isnan(model->travel_least) || to >= model->travel_least - 1e-9, "below");
    ck_assert_msg(isnan(model->travel_most) || to <= model->travel_most + 1e-9, "above");
}

static void ck_step(const Story *story, const SettingAdvice *advice)
{
    double step = story->model.step, from = story->model.absolute ? advice->to : advice->move;
    if (step > 0 && advice->move != 0)
        ck_assert_double_eq_tol(from / step, round(from / step), 1e-6);
}

static void ck_advice(const Story *story, const SettingAdvice *advice)
{
    ck_travel(story, advice);
    ck_step(story, advice);
    ck_chance(advice->chance);
    ck_chance(advice->as_it_is);
    ck_chance(advice->could);
    ck_chance(advice->overrun);
    ck_number(advice->tightest.mean);
    ck_assert_double_le(advice->tightest.from, advice->tightest.to);
    ck_assert((advice->move != 0) ==
              (advice->kind == SETTING_MOVE || advice->kind == SETTING_MOVE_DIRECTION));
}

static void ck_band(const Story *story, const SettingAdvice *advice)
{
    SettingBand band;
    if (!setting_band(story->adviser, advice, &band))
        return;
    ck_assert_double_le(band.from, band.best);
    ck_assert_double_le(band.best, band.to);
    double whole = band.best / story->model.graduation;
    ck_assert_double_eq_tol(whole, round(whole), 1e-6);
    ck_number(band.first.mean);
}

START_TEST(test_any_story)
{
    Story story = story_new(_i);
    for (int i = 0; i < ENTRIES; i++) {
        SettingAdvice advice = setting_advice(story.adviser);
        if (i > 0)
            ck_advice(&story, &advice);
        if (i < 8)
            ck_band(&story, &advice);
        enter_advice(&story, &advice);
    }
    story_free(&story);
}
END_TEST

// The same setting told otherwise: values times `value` (below 0: mirrored), moves times `move`.
typedef struct {
    double value, move;
} Telling;

static const Telling tellings[] = {{25.4, 1}, {1, 360}, {1 / 25.4, 1.0 / 360}, {-1, 1}, {-3, 7}};

static double least_of(double one, double other)
{
    return fmin(one, other);
}

static SettingModel told(const SettingModel *model, const Telling *telling)
{
    SettingModel other = *model;
    double size = fabs(telling->value), move = telling->move;
    double least = model->least * telling->value, most = model->most * telling->value;
    other.least = telling->value < 0 ? most : least;
    other.most = telling->value < 0 ? least : most;
    other.aim *= telling->value;
    other.closes = telling->value < 0 ? !model->closes : model->closes;
    other.direction = telling->value < 0 ? -model->direction : model->direction;
    other.graduation *= size;
    other.geometry *= size / move;
    other.start *= move;
    other.travel_least *= move;
    other.travel_most *= move;
    other.step *= move;
    other.hand *= move;
    other.lost *= move;
    return other;
}

static void ck_close(double got, double expected)
{
    ck_assert_double_eq_tol(got, expected, 1e-6 * (1 + fabs(expected)));
}

static void ck_same(const SettingAdvice *one, const SettingAdvice *other, const Telling *telling)
{
    double from = one->tightest.from * telling->value, to = one->tightest.to * telling->value;
    ck_assert_int_eq(other->kind, one->kind);
    ck_close(other->move, one->move * telling->move);
    ck_close(other->chance, one->chance);
    ck_close(other->overrun, one->overrun);
    ck_close(other->tightest.mean, one->tightest.mean * telling->value);
    ck_close(other->tightest.from, least_of(from, to));
    ck_close(other->spread, one->spread * fabs(telling->value));
    ck_assert_uint_eq(other->finding_count, one->finding_count);
}

static void tell_both(SettingAdviser *one, SettingAdviser *other, const Telling *telling,
                      double move, double loose)
{
    setting_moved(one, move, TRUE);
    setting_moved(other, move * telling->move, TRUE);
    setting_read(one, 0, loose, FALSE);
    setting_read(other, 0, loose * telling->value, FALSE);
}

static void tighten_both(SettingAdviser *one, SettingAdviser *other, const Telling *telling,
                         const double *values, guint places)
{
    setting_tightened(one);
    setting_tightened(other);
    for (guint p = 0; p < places; p++) {
        setting_read(one, p, values[p], TRUE);
        setting_read(other, p, values[p] * telling->value, TRUE);
    }
}

static SettingModel backlash_within(gboolean absolute)
{
    SettingModel model = backlash();
    model.travel_least = -1;
    model.travel_most = 1;
    model.absolute = absolute;
    return model;
}

static void ck_same_now(SettingAdviser *one, SettingAdviser *other, const Telling *telling)
{
    SettingAdvice first = setting_advice(one), second = setting_advice(other);
    ck_same(&first, &second, telling);
}

START_TEST(test_told_otherwise)
{
    static const double tight[] = {0.35, 0.37, 0.31, 0.34}, later[] = {0.14, 0.16, 0.10, 0.13};
    const Telling *telling = &tellings[_i / 2];
    SettingModel model = backlash_within(_i % 2), otherwise = told(&model, telling);
    g_autoptr(SettingAdviser) one = setting_adviser_new(&model);
    g_autoptr(SettingAdviser) other = setting_adviser_new(&otherwise);
    setting_read(one, 0, 0.31, FALSE);
    setting_read(other, 0, 0.31 * telling->value, FALSE);
    ck_same_now(one, other, telling);
    tighten_both(one, other, telling, tight, 4);
    ck_same_now(one, other, telling);
    tell_both(one, other, telling, -14.0 / 48, 0.12);
    ck_same_now(one, other, telling);
    tell_both(one, other, telling, -1.0 / 48, 0.10);
    ck_same_now(one, other, telling);
    tighten_both(one, other, telling, later, 4);
    ck_same_now(one, other, telling);
}
END_TEST

// The band is where the rule says tighten: at both ends, and not one graduation beyond.
START_TEST(test_band_is_the_rule)
{
    static const double tight[] = {0.35, 0.37, 0.31, 0.34};
    SettingModel model = backlash_within(FALSE);
    for (int beyond = 0; beyond < 2; beyond++)
        for (int end = 0; end < 2; end++) {
            g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
            setting_read(adviser, 0, 0.31, FALSE);
            read_tight(adviser, tight);
            SettingAdvice advice = setting_advice(adviser);
            SettingBand band;
            ck_assert(setting_band(adviser, &advice, &band));
            setting_moved(adviser, advice.move, TRUE);
            double at = end ? band.to + 0.01 * beyond : band.from - 0.01 * beyond;
            setting_read(adviser, 0, at, FALSE);
            advice = setting_advice(adviser);
            ck_assert_int_eq(advice.kind == SETTING_TIGHTEN && advice.as_it_is >= 0.5, !beyond);
        }
}
END_TEST

int main(void)
{
    TCase *of = tcase_create("any");
    tcase_add_loop_test(of, test_any_story, 0, STORIES);
    tcase_add_loop_test(of, test_told_otherwise, 0, 2 * G_N_ELEMENTS(tellings));
    tcase_add_test(of, test_band_is_the_rule);
    Suite *suite = suite_create("any setting");
    suite_add_tcase(suite, of);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
