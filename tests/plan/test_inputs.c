// What is read for a setting that is worked out: over long axes, through other formulas, and where
// it cannot be told.
#include <check.h>
#include <standbook/plan/plan.h>
#include <stdlib.h>
#include <string.h>

static char *plan_of(guint turns, const char *checks)
{
    return g_strdup_printf("plan: T\nunits: [mm]\naxes: {turn: 1..%u, way: forth/back}\n"
                           "steps:\n  Chain:\n    checks:\n"
                           "      play: {at: [turn, way], decimals: 1}\n"
                           "      width: {at: [turn, way], choose: way, decimals: 1}\n"
                           "      seen = max(width): any\n%s",
                           turns, checks);
}

static Plan *read_turns(guint turns, const char *checks)
{
    g_autofree char *text = plan_of(turns, checks);
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(text, strlen(text), faults);
    ck_assert_msg(plan != NULL, "%s", plan ? "" : faults_at(faults, 0)->message);
    return plan;
}

static const GArray *inputs_of(const Plan *plan, const char *setting)
{
    return plan_check(plan, setting)->setting->inputs;
}

static gboolean is_moved_by(const Plan *plan, const char *check, const char *setting)
{
    return g_ptr_array_find(plan_check(plan, check)->moved_by, plan_check(plan, setting), NULL);
}

// Every setting of a plan has all its inputs, however many places they have in all.
START_TEST(a_long_axis_has_all_its_inputs)
{
    static const char *const settings[] = {"a", "b", "c"};
    g_autoptr(Plan) plan =
        read_turns(500, "      a = play[forth] - play[back]: {limits: 4..6, set: {move: a}}\n"
                        "      b = play[back] - play[forth]: {limits: -6..-4, set: {move: b}}\n"
                        "      c = 2 * play[forth]: {limits: 4..6, set: {move: c}}\n"
                        "      later = play[forth] + play[back]: any\n");
    for (guint i = 0; i < G_N_ELEMENTS(settings); i++) {
        const GArray *inputs = inputs_of(plan, settings[i]);
        guint each = i < 2 ? 2 : 1;
        ck_assert_uint_eq(inputs->len, 500 * each);
        for (guint j = 0; j < inputs->len; j++)
            ck_assert_uint_eq(g_array_index(inputs, PlanInput, j).of, j / each);
        ck_assert(is_moved_by(plan, "play", settings[i]));
        ck_assert(!is_moved_by(plan, settings[i], settings[i]));
    }
}
END_TEST

static void expect_places(const char *checks, const char *expected)
{
    g_autoptr(Plan) plan = read_turns(3, checks);
    const GArray *inputs = inputs_of(plan, "x");
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < inputs->len; i++) {
        const PlanInput *input = &g_array_index(inputs, PlanInput, i);
        g_autofree char *place = places_label(input->check->axes, input->place);
        g_string_append_printf(words, "%s%s %s:%u", i ? "; " : "", input->check->name, place,
                               input->of);
    }
    ck_assert_str_eq(words->str, expected);
}

// A fold has all its members, not the extreme one; what comes to nothing is used all the same.
START_TEST(what_is_used_does_not_hang_on_its_value)
{
    expect_places("      x = range(play[1]) - min(play[2]): {limits: 4..6, set: {move: a}}\n",
                  "play 1, forth:0; play 1, back:0; play 2, forth:0; play 2, back:0");
    expect_places("      x = mean(play[back]) / max(play[1, back] - play[1, back]) * 1 mm: "
                  "{limits: 4..6, set: {move: a}}\n",
                  "play 1, back:0; play 2, back:0; play 3, back:0");
    expect_places("      x = max(play[back] - play[turn - 1, back], play[forth]): "
                  "{limits: 4..6, set: {move: a}}\n",
                  "play 1, back:0; play 2, forth:0; play 2, back:0; "
                  "play 2, back:1; play 3, forth:1; play 3, back:1");
}
END_TEST

// Formulas that rest on one another, written below those that use them and above.
START_TEST(a_formula_between_is_looked_through)
{
    expect_places("      x = half[back] + half[forth]: {limits: 4..6, set: {move: a}}\n"
                  "      half = whole / 2: any\n      whole = play[1] + play[1]: any\n",
                  "play 1, forth:0; play 1, back:0");
}
END_TEST

static void expect_refused(guint turns, const char *checks, const char *message)
{
    g_autofree char *text = plan_of(turns, checks);
    g_autoptr(Faults) faults = faults_new(), none = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert(!plan && faults_count(faults) == 1);
    ck_assert_str_eq(faults_at(faults, 0)->message, message);
    ck_assert_uint_eq(faults_at(faults, 0)->column, 11);
    g_autoptr(Plan) kept = plan_read_kept(text, strlen(text), none);
    ck_assert(kept && kept->excused == 1 && faults_count(none) == 0);
    ck_assert_str_eq(faults_at(kept->notices, 0)->message, message);
    ck_assert_uint_eq(inputs_of(kept, "x")->len, 0);
    ck_assert(is_moved_by(kept, "x", "x") && !is_moved_by(kept, "play", "x"));
}

START_TEST(what_cannot_be_told_is_refused)
{
    expect_refused(
        2, "      x = width - play: {limits: 4..6, set: {move: a}}\n",
        "step \"Chain\", check \"x\": one way is chosen of `width`, so no setting can be "
        "worked out of it; leave out its `choose`, or the `set` here");
    expect_refused(500,
                   "      y = play[back] - mean(play): {limits: 4..6, set: {move: b}}\n"
                   "      z = play[forth] - mean(play): {limits: 4..6, set: {move: c}}\n"
                   "      x = play[back] - mean(play): {limits: 4..6, set: {move: a}}\n",
                   "step \"Chain\", check \"x\": too many readings in all are used by the settings "
                   "of this plan; fold fewer places for each place of a setting");
}
END_TEST

static void expect_fault(const char *check, const char *message)
{
    g_autofree char *checks = g_strconcat("      used = max(play): any\n", check, NULL);
    g_autofree char *text = plan_of(2, checks);
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert_msg(!plan && faults_count(faults) == 1, "%u faults", faults_count(faults));
    ck_assert_str_eq(faults_at(faults, 0)->message, message);
}

// Places that are set one by one share no reading, are several, and have an aim of their own.
START_TEST(places_with_an_adjuster_each)
{
    g_autoptr(Plan) good = read_turns(
        3, "      x: {at: turn, limits: 4..6, aim: 5, set: {move: a, each: yes}}\n"
           "      y = play[back] - play[forth]: {limits: 4..6, set: {move: b, each: yes}}\n"
           "      z: {at: turn, limits: 4..6, set: {move: c, each: no}}\n");
    ck_assert(plan_check(good, "x")->setting->each && plan_check(good, "y")->setting->each);
    ck_assert(!plan_check(good, "z")->setting->each);
    ck_assert_uint_eq(inputs_of(good, "y")->len, 6);
    expect_fault("      x: {limits: 4..6, set: {move: a, each: yes}}\n",
                 "step \"Chain\", check \"x\": `each` is for a check of several places, and this "
                 "has one; leave it out");
    expect_fault(
        "      x = play[back] - mean(play): {limits: 4..6, set: {move: a, each: yes}}\n",
        "step \"Chain\", check \"x\": a reading of `play` goes into several places, so they "
        "cannot be set each by itself; leave `each` out");
    expect_fault("      x: {at: way, limits: {back: 4..6, forth: 7..9}, aim: 5, "
                 "set: {move: a, each: yes}}\n",
                 "step \"Chain\", check \"x\": the aim 5 lies outside the limits of `forth`; write "
                 "`low` or `high`, which each place takes by its own limits, or leave `aim` out");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("inputs");
    TCase *tcase = tcase_create("inputs");
    tcase_add_test(tcase, a_long_axis_has_all_its_inputs);
    tcase_add_test(tcase, what_is_used_does_not_hang_on_its_value);
    tcase_add_test(tcase, a_formula_between_is_looked_through);
    tcase_add_test(tcase, what_cannot_be_told_is_refused);
    tcase_add_test(tcase, places_with_an_adjuster_each);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
