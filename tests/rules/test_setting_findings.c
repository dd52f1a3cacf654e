#include "backlash.h"
#include <check.h>
#include <math.h>
#include <stdlib.h>

// What the adviser has to say: one test for each row of its table, and entries told one by one.
// Entries as words: `loose Y`, `tight Y…` (tightened, and read from place 0 on), `move N` (in
// 1/48), apart by `;`. Returns the findings of all readings, a bit each.
static guint tell(SettingAdviser *adviser, const char *story)
{
    guint found = 0;
    g_auto(GStrv) entries = g_strsplit(story, "; ", -1);
    for (guint i = 0; entries[i]; i++) {
        g_auto(GStrv) words = g_strsplit(entries[i], " ", -1);
        if (words[0][0] == 'm')
            setting_moved(adviser, g_ascii_strtod(words[1], NULL) / 48, TRUE);
        if (words[0][0] == 't')
            setting_tightened(adviser);
        for (guint w = 1; words[0][0] != 'm' && words[w]; w++)
            found |= 1u << setting_read(adviser, w - 1, g_ascii_strtod(words[w], NULL),
                                        words[0][0] == 't')
                               .kind;
    }
    return found & ~1u;
}

static const SettingFinding *find(const SettingAdvice *advice, SettingFindingKind kind)
{
    for (guint i = 0; i < advice->finding_count; i++)
        if (advice->findings[i].kind == kind)
            return &advice->findings[i];
    return NULL;
}

#define FIRST "loose 0.31; tight 0.35 0.37 0.31 0.34"
#define SECOND FIRST "; move -14; loose 0.12; move -1; loose 0.10; tight 0.14 0.16 0.10 0.13"

// What is told, what the advice is, its move in steps (99 for any), and the one finding.
static const struct {
    const char *story;
    SettingKind kind;
    long steps;
    SettingFindingKind finding;
} plain[] = {
    {"", SETTING_READ_LOOSE, 0, SETTING_NOTHING},
    {"loose 0.31; tight 0.35 0.37 0.31", SETTING_READ_TIGHT, 0, SETTING_NOTHING},
    {FIRST "; move -14", SETTING_READ_LOOSE, 0, SETTING_NOTHING},
    {FIRST "; move -14; loose 0.12; move -1; loose 0.10", SETTING_TIGHTEN, 0, SETTING_NOTHING},
    {SECOND, SETTING_LEAVE, 0, SETTING_NOTHING},
    // slipped: moved to come down by some 0.16, and it went up
    {FIRST "; move -14; loose 0.12; move -1; loose 0.33", SETTING_MOVE, 99, SETTING_SLIP},
    // tightening added 0.04, and now 0.14
    {SECOND "; move 1; loose 0.11; tight 0.25 0.27 0.21 0.24", SETTING_MOVE, 99, SETTING_SHIFT},
    // place 3 stood 0.04 below place 1
    {SECOND "; move -1; loose 0.08; tight 0.12 0.14 0.15 0.11", SETTING_LEAVE, 0, SETTING_PLACE},
};

START_TEST(test_plain)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    guint found = tell(adviser, plain[_i].story);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, plain[_i].kind);
    if (plain[_i].steps != 99)
        ck_assert_int_eq(advice.steps, plain[_i].steps);
    ck_assert_uint_eq(found, plain[_i].finding ? 1u << plain[_i].finding : 0);
    ck_assert(!plain[_i].finding || find(&advice, plain[_i].finding));
    ck_assert_uint_eq(advice.finding_count, plain[_i].finding ? 1 : 0);
}
END_TEST

START_TEST(test_first_move_on_the_safe_side)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert(advice.safe_side);
    // A turn as the geometry has it would be 18.6 steps.
    ck_assert_int_lt(advice.steps, 0);
    ck_assert_int_gt(advice.steps, -17);
    ck_assert_double_le(advice.overrun, 0.35);
    tell(adviser, "move -14; loose 0.12");
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert(!advice.safe_side);
}
END_TEST

START_TEST(test_numbers_of_findings)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, SECOND "; move 1; loose 0.11; tight 0.25");
    SettingAdvice advice = setting_advice(adviser);
    const SettingFinding *shift = find(&advice, SETTING_SHIFT);
    ck_assert(shift);
    ck_assert_uint_eq(shift->event, 19);
    ck_assert_double_eq_tol(shift->was, 0.04, 0.002);
    ck_assert_double_eq_tol(shift->is, 0.14, 0.005);
    ck_assert_double_lt(shift->tail, 0.0005);
    SettingFinding place = setting_read(adviser, 2, 0.35, TRUE);
    ck_assert_int_eq(place.kind, SETTING_PLACE);
    ck_assert_uint_eq(place.place, 2);
    ck_assert_double_eq_tol(place.was, 0.21, 0.01);
    ck_assert_double_eq(place.is, 0.35);
}
END_TEST

START_TEST(test_direction_not_known)
{
    SettingModel model = backlash();
    model.direction = 0;
    model.travel_least = -0.6;
    model.travel_most = 3;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE_DIRECTION);
    // T/2 at 0.546 mm a turn is 4.4 steps; there is more room outwards.
    ck_assert_int_eq(advice.steps, 4);
    tell(adviser, "move 4; loose 0.36");
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert_int_lt(advice.steps, 0);
    ck_assert_double_gt(setting_learned(adviser).rises, 0.95);
}
END_TEST

START_TEST(test_wrong_way)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST "; move -14; loose 0.47");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert(find(&advice, SETTING_WRONG_WAY));
    ck_assert_double_gt(find(&advice, SETTING_WRONG_WAY)->is, 0.9);
    ck_assert_int_gt(advice.steps, 0);
}
END_TEST

START_TEST(test_slope_off)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST "; move -6; loose 0.11; move 10; loose 0.44; move -8; loose 0.18");
    SettingAdvice advice = setting_advice(adviser);
    const SettingFinding *off = find(&advice, SETTING_SLOPE_OFF);
    ck_assert(off);
    ck_assert_double_eq_tol(off->is, 2.9, 0.3);
}
END_TEST

START_TEST(test_cannot)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.31; tight 0.35 0.37 0.27 0.34");
    SettingAdvice advice = setting_advice(adviser);
    const SettingFinding *cannot = find(&advice, SETTING_CANNOT);
    ck_assert(cannot);
    ck_assert_double_eq_tol(cannot->was, 0.10, 0.005);
    ck_assert_double_eq_tol(cannot->is, 0.01, 1e-12);
}
END_TEST

// The same spread where the gauge takes more of the room: the part is not to blame.
START_TEST(test_cannot_by_the_gauge)
{
    SettingModel model = backlash();
    model.graduation = 0.04;
    model.difference = TRUE;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.32; tight 0.36 0.36 0.28 0.32");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_double_gt(advice.spread + 0.08, 0.10);
    ck_assert(!find(&advice, SETTING_CANNOT));
}
END_TEST

START_TEST(test_gauge_too_coarse)
{
    SettingModel model = backlash();
    model.places = 1;
    model.graduation = 0.10;
    model.hand = 1.0 / 12;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.1; tight 0.1");
    SettingAdvice advice = setting_advice(adviser);
    for (int i = 0; i < 8 && advice.kind != SETTING_LEAVE; i++) {
        g_autofree char *move = g_strdup_printf("move %ld; loose 0.1", advice.steps);
        tell(adviser, advice.kind == SETTING_MOVE ? move : "tight 0.1");
        advice = setting_advice(adviser);
    }
    ck_assert_int_eq(advice.kind, SETTING_LEAVE);
    const SettingFinding *coarse = find(&advice, SETTING_COARSE);
    ck_assert(coarse);
    ck_assert_double_lt(coarse->was, 0.8);
    ck_assert_double_eq_tol(coarse->is, 0.01, 1e-12);
}
END_TEST

START_TEST(test_out_of_reach)
{
    SettingModel model = backlash();
    model.travel_least = -7.0 / 48;
    model.travel_most = 1;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST "; move -6; loose 0.25; tight 0.29 0.31 0.25 0.28");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_STOP);
    const SettingFinding *out = find(&advice, SETTING_OUT_OF_REACH);
    ck_assert(out);
    ck_assert_double_eq_tol(out->is, 0.24, 0.005);
}
END_TEST

START_TEST(test_too_many)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, FIRST);
    for (int i = 0; i < 6; i++) {
        ck_assert_int_eq(setting_advice(adviser).kind, SETTING_MOVE);
        tell(adviser, i % 2 ? "move 4; loose 0.31; tight 0.35 0.37 0.31 0.34"
                            : "move -4; loose 0.26; tight 0.30 0.32 0.26 0.29");
    }
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_STOP);
    ck_assert_double_eq(find(&advice, SETTING_TOO_MANY)->is, 6);
}
END_TEST

// Positions that are found again: coming back to one, it reads as it did.
START_TEST(test_marks)
{
    SettingModel model = backlash();
    double expected[2];
    for (int absolute = 0; absolute < 2; absolute++) {
        model.absolute = absolute;
        g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
        tell(adviser, FIRST);
        for (int i = 0; i < 6; i++)
            setting_moved_to(adviser, i % 2 ? 0 : -0.01, TRUE);
        SettingExpected at = setting_expected(adviser, 0);
        expected[absolute] = at.to - at.from;
    }
    ck_assert_double_lt(expected[1], 0.75 * expected[0]);
}
END_TEST

// A difference of two readings by a coarse rule: before it is left it is read twice, once. By one
// reading, which rounds as it did, it is not.
START_TEST(test_read_twice)
{
    SettingModel model = backlash();
    model.graduation = 0.04;
    model.difference = _i == 0;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.08; tight 0.12 0.16 0.12 0.12; move 0; loose 0.08; tight 0.12 0.16 0.12 "
                  "0.12");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, _i == 0 ? SETTING_READ_AGAIN : SETTING_LEAVE);
    double before = advice.as_it_is;
    static const double again[] = {0.12, 0.12, 0.08, 0.12};
    for (guint p = 0; p < 4; p++)
        setting_read(adviser, p, again[p], TRUE);
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_LEAVE);
    ck_assert_double_gt(advice.as_it_is, before);
}
END_TEST

// Where it stands before anything is read says nothing: the advice is that from where it began.
START_TEST(test_where_it_began)
{
    SettingModel model = backlash();
    SettingAdvice advice[2];
    for (int moved = 0; moved < 2; moved++) {
        g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
        tell(adviser, moved ? "move 96; " FIRST : FIRST);
        advice[moved] = setting_advice(adviser);
    }
    ck_assert_int_eq(advice[1].kind, SETTING_MOVE);
    ck_assert_int_eq(advice[1].steps, advice[0].steps);
    ck_assert_double_eq(advice[1].chance, advice[0].chance);
    ck_assert_double_eq(advice[1].tightest.from, advice[0].tightest.from);
    ck_assert_double_eq_tol(advice[1].to, advice[0].to + 2, 1e-12);
}
END_TEST

// A side of approach that was not kept costs the lost motion; kept, it does not.
START_TEST(test_lost_motion)
{
    SettingModel model = backlash();
    model.lost = 1.0 / 16;
    double width[2];
    for (int same_side = 0; same_side < 2; same_side++) {
        g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
        tell(adviser, FIRST);
        setting_moved(adviser, 1.0 / 48, same_side);
        SettingExpected at = setting_expected(adviser, 0);
        width[same_side] = at.to - at.from;
    }
    // 1/16 turn, anywhere in it, at 0.546 mm a turn or so.
    ck_assert_double_gt(width[0], 1.3 * width[1]);
}
END_TEST

// The slope, known to 1 %, becomes another by a third: after a few contradictions it is known anew.
START_TEST(test_slope_that_changes)
{
    SettingModel model = backlash();
    model.graduation = 0.001;
    model.hand = 0.001;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    double level = 0.3;
    setting_read(adviser, 0, level, FALSE);
    guint contradictions = 0;
    for (int i = 0; i < 24; i++) {
        double move = i % 2 ? 0.5 : -0.4;
        level += move * 0.546 * (i < 12 ? 1 : 1.35);
        setting_moved(adviser, move, TRUE);
        SettingFinding finding = setting_read(adviser, 0, round(level * 1000) / 1000, FALSE);
        contradictions += finding.kind == SETTING_SLIP ? 1 : 0;
        if (i == 11)
            ck_assert_double_eq_tol(setting_learned(adviser).ln_slope, log(0.546), 0.03);
    }
    ck_assert_uint_ge(contradictions, 1);
    ck_assert_double_eq_tol(setting_learned(adviser).ln_slope, log(0.546 * 1.35), 0.05);
}
END_TEST

// An earlier build of the family: the first move is no longer short, and a changed shift is known.
START_TEST(test_family)
{
    SettingModel model = backlash();
    g_autoptr(SettingAdviser) before = setting_adviser_new(&model);
    tell(before, SECOND);
    SettingLearned learned = setting_learned(before);
    ck_assert_double_eq_tol(learned.shift, 0.04, 0.002);
    model.earlier = &learned;
    model.earlier_count = 1;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.31");
    SettingLearned prior = setting_learned(adviser);
    ck_assert_double_eq_tol(prior.shift, learned.shift, 1e-9);
    ck_assert_double_eq_tol(prior.shift_sd, sqrt(pow(learned.shift_sd, 2) + 2e-4), 1e-9);
    tell(adviser, "tight 0.35 0.37 0.31 0.34");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert(!advice.safe_side);
    ck_assert_double_gt(advice.chance, 0.4);
}
END_TEST

// What is expected as the gauge shows it: by one reading, by a difference, and no backlash below 0.
static const struct {
    gboolean difference;
    SettingExpected expected, shown;
} shown[] = {{FALSE, {0.101285, 0.084728, 0.117707}, {0.10, 0.08, 0.12}},
             {TRUE, {0.101285, 0.084728, 0.117707}, {0.10, 0.08, 0.12}},
             {TRUE, {0.101285, 0.079, 0.121}, {0.10, 0.07, 0.13}},
             {FALSE, {0.012, -0.03, 0.04}, {0.01, 0, 0.04}}};

START_TEST(test_as_read)
{
    SettingModel model = backlash();
    model.difference = shown[_i].difference;
    model.floor = 0;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    SettingExpected as_read = setting_as_read(adviser, shown[_i].expected);
    ck_assert_double_eq_tol(as_read.mean, shown[_i].shown.mean, 1e-12);
    ck_assert_double_eq_tol(as_read.from, shown[_i].shown.from, 1e-12);
    ck_assert_double_eq_tol(as_read.to, shown[_i].shown.to, 1e-12);
}
END_TEST

static void spoil_limits(SettingModel *model)
{
    model->least = model->most = NAN;
}

static void spoil_aim(SettingModel *model)
{
    model->aim = NAN;
}

static void spoil_width(SettingModel *model)
{
    model->most = model->least;
}

static void spoil_graduation(SettingModel *model)
{
    model->graduation = 0;
}

static void spoil_places(SettingModel *model)
{
    model->places = 0;
}

static void spoil_geometry(SettingModel *model)
{
    model->geometry = 0;
}

static void (*const spoilers[])(SettingModel *) = {spoil_limits,     spoil_aim,    spoil_width,
                                                   spoil_graduation, spoil_places, spoil_geometry};

START_TEST(test_models_that_cannot_serve)
{
    SettingModel model = backlash();
    spoilers[_i](&model);
    ck_assert_ptr_null(setting_adviser_new(&model));
}
END_TEST

// One limit only: T is twice from it to the aim, and there is no far side above.
START_TEST(test_one_limit)
{
    SettingModel model = backlash();
    model.most = NAN;
    model.aim = 0.13;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, "loose 0.02; tight 0.06 0.08 0.02 0.05");
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert_int_gt(advice.steps, 0);
    ck_assert_double_eq(advice.overrun, 0);
}
END_TEST

int main(void)
{
    TCase *of = tcase_create("findings");
    tcase_add_loop_test(of, test_plain, 0, G_N_ELEMENTS(plain));
    tcase_add_test(of, test_first_move_on_the_safe_side);
    tcase_add_test(of, test_numbers_of_findings);
    tcase_add_test(of, test_direction_not_known);
    tcase_add_test(of, test_wrong_way);
    tcase_add_test(of, test_slope_off);
    tcase_add_test(of, test_cannot);
    tcase_add_test(of, test_cannot_by_the_gauge);
    tcase_add_test(of, test_gauge_too_coarse);
    tcase_add_test(of, test_out_of_reach);
    tcase_add_test(of, test_too_many);
    tcase_add_test(of, test_marks);
    tcase_add_loop_test(of, test_read_twice, 0, 2);
    tcase_add_test(of, test_where_it_began);
    tcase_add_test(of, test_lost_motion);
    tcase_add_test(of, test_slope_that_changes);
    tcase_add_test(of, test_family);
    tcase_add_loop_test(of, test_models_that_cannot_serve, 0, G_N_ELEMENTS(spoilers));
    tcase_add_loop_test(of, test_as_read, 0, G_N_ELEMENTS(shown));
    tcase_add_test(of, test_one_limit);
    Suite *suite = suite_create("setting findings");
    suite_add_tcase(suite, of);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
