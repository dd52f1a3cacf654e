// What a planned set is pulled to. The bands are those of tests/rules/test_preload; here it is
// which stages count, and what is said.
#include <check.h>
#include <standbook/work/set_preload.h>
#include <stdlib.h>
#include <string.h>

static GPtrArray *told_of(const char *group, Plan **plan)
{
    g_autofree char *text = g_strdup_printf(
        "plan: stages\nsteps:\n  One:\n    fasteners:\n      set: {bolts: 1..4, %s}\n", group);
    Faults *faults = faults_new();
    *plan = plan_read(text, strlen(text), faults);
    faults_free(faults);
    ck_assert_msg(*plan, "%s", group);
    const PlanStep *step = (*plan)->steps->pdata[0];
    return set_preload_told(step->tightenings->pdata[0], 1);
}

static void expect(const char *group, guint line, const char *said)
{
    Plan *plan;
    g_autoptr(GPtrArray) told = told_of(group, &plan);
    ck_assert_uint_lt(line, told->len);
    ck_assert_msg(strcmp(told->pdata[line], said) == 0, "%s: %s", group, (char *)told->pdata[line]);
    plan_free(plan);
}

// M10 oiled, 71 ± 4 %: worked by hand 68.16 / 2.0977 mm and 73.84 / 1.1682 mm; 48.1 kN of proof.
START_TEST(the_last_torque_counts)
{
    expect("thread: M10, class: 10.9, lubricant: engine oil, stages: 40 > 71", 0,
           "pulled to 32.5 to 63.2 kN, 68 to 131 % of the proof load");
    expect("thread: M10, class: 10.9, lubricant: engine oil, stages: 71 > slacken > 30 > 71", 0,
           "pulled to 32.5 to 63.2 kN, 68 to 131 % of the proof load");
    expect("thread: M10, lubricant: engine oil, stages: 71 > wait 10 min", 0,
           "pulled to 32.5 to 63.2 kN");
    expect("thread: M10, lubricant: {2: engine oil, others: dry}, stages: 71", 1,
           "assumed: friction 0.08 to 0.16 in thread and under the head, engine oil");
}
END_TEST

// 68.16 N·m at 0.24 and 73.84 N·m at 0.04: both what is on the thread and what is under the head.
START_TEST(two_lubricants_are_taken_together)
{
    expect("thread: M10, stages: 71, lubricant: \"moly on threads, dry under head\"", 1,
           "assumed: friction 0.04 to 0.24 in thread and under the head, moly on threads, dry "
           "under head: from the least to the greatest of what is named");
}
END_TEST

START_TEST(above_the_proof_load_is_cautioned_unless_it_is_for_one_use)
{
    expect("thread: M10, class: 10.9, lubricant: engine oil, stages: 71", 1,
           "Up to 63.2 kN, above the proof load of 48.1 kN: it may be stretched for good.");
    expect("thread: M10, class: 10.9, lubricant: engine oil, use: once, stages: 71", 1,
           "assumed: friction 0.08 to 0.16 in thread and under the head, engine oil");
    expect("thread: M10, class: 10.9, lubricant: engine oil, stages: 40", 1,
           "assumed: friction 0.08 to 0.16 in thread and under the head, engine oil");
}
END_TEST

// Two angles differ by 4° together; one counted from snug by 2°. Worked apart from the program,
// from the formulas that preload.h names, between alloy and steel, all thread and none.
START_TEST(angles_stand_on_the_torque_before_them)
{
    expect("thread: M10, length: 40 mm, lubricant: engine oil, stages: 30 > +30° > +30°", 0,
           "pulled to 60.4 to 115 kN");
    expect("thread: M10, length: 40 mm, lubricant: engine oil, stages: 30 > 60° from snug", 0,
           "pulled to 62.1 to 112 kN");
    expect("thread: M10, lubricant: engine oil, stages: 30 > +60°", 0,
           "how far it is pulled cannot be worked out: say also how long the clamped length is");
}
END_TEST

// A gasket may take all of the angle, so that the low end is that of the snug torque alone and the
// high end that of bare metal. What the set is said to clamp goes before what the step fits.
START_TEST(a_gasket_takes_part_of_the_angle)
{
    static const char bolt[] = "thread: M10, length: 40 mm, lubricant: engine oil, stages: 30 > "
                               "60° from snug";
    static const char low[] = "thread: M10, length: 40 mm, lubricant: engine oil, stages: 30";
    static const struct {
        const char *more, *pulled, *between;
    } rows[] = {
        {", with new: [pan gasket]", "pulled to 13.7 to 112 kN",
         "assumed: pan gasket lies between: how far it gives way is not published, it may take all "
         "of the angle or none"},
        {"}\n    fit: {head gasket: {use: new}", "pulled to 13.7 to 112 kN",
         "assumed: head gasket lies between: how far it gives way is not published, it may take "
         "all of the angle or none"},
        {", clamps: alloy with paper gasket", "pulled to 13.7 to 89.3 kN",
         "assumed: a gasket lies between: how far it gives way is not published, it may take all "
         "of the angle or none"},
        {", clamps: steel, with new: [pan gasket]", "pulled to 75.6 to 112 kN", NULL},
    };
    expect(low, 0, "pulled to 13.7 to 26.7 kN");
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *group = g_strconcat(bolt, rows[i].more, NULL);
        expect(group, 0, rows[i].pulled);
        if (rows[i].between)
            expect(group, 5, rows[i].between);
    }
}
END_TEST

// A castle nut goes on by up to a sixth of a turn, or as far as is said; a check pulls nothing.
START_TEST(a_slot_adds_what_it_may)
{
    expect("thread: M10, length: 40 mm, lubricant: engine oil, stages: 30 > to slot within 30°", 0,
           "pulled to 13.7 to 67.9 kN");
    expect("thread: M10, length: 40 mm, lubricant: engine oil, stages: 30 > to slot", 0,
           "pulled to 13.7 to 109 kN");
    expect("thread: M10, lubricant: engine oil, stages: 71 > check 60", 0,
           "pulled to 32.5 to 63.2 kN");
}
END_TEST

START_TEST(a_check_says_what_it_hides)
{
    Plan *plan;
    g_autoptr(GPtrArray) told = told_of("stages: 71 > check 71", &plan);
    const PlanStep *step = plan->steps->pdata[0];
    g_autofree char *first = set_caution(step->tightenings->pdata[0], 1, 0);
    g_autofree char *second = set_caution(step->tightenings->pdata[0], 2, 0);
    ck_assert_ptr_null(first);
    ck_assert_str_eq(second,
                     "A bolt that does not move may still have lost 10 to 15 % of its pull.");
    plan_free(plan);
}
END_TEST

START_TEST(what_it_lacks_is_said)
{
    expect("stages: 71", 0, "how far it is pulled cannot be worked out: say also the thread");
    expect("thread: taper 3/8, stages: 20", 0,
           "how far it is pulled cannot be worked out: `taper 3/8` is no thread that can be worked "
           "out; write M10, M10 × 1.25, 3/8-16 or 1/2 UNF");
    expect(
        "thread: M8, stages: 20 > draw 1 turn", 0,
        "how far it is pulled cannot be worked out: its last stage is no torque or angle that is "
        "known beforehand");
}
END_TEST

// An angle worked out from a reading is not known before it is read; 30 N·m and nothing more would
// be far too little.
START_TEST(an_angle_from_a_reading_is_not_known_beforehand)
{
    expect(
        "thread: M8, length: 40 mm, stages: 30 > +gap * 60 °/mm}\n    checks:\n      gap: {limits: "
        "0.5..1 mm",
        0,
        "how far it is pulled cannot be worked out: its last stage is no torque or angle that is "
        "known beforehand");
}
END_TEST

START_TEST(a_substitute_is_told_beside_its_torque)
{
    expect("thread: M8, length: 25 mm, instead of: 18, lubricant: graphite paste, "
           "stages: snug > +60°",
           1,
           "snug, +60° comes to 39.7 to 79.8 kN, 18 N·m would come to 10.2 to 32.8 kN: it clamps "
           "more, whatever the friction.");
    expect("thread: M8, instead of: 18, stages: snug > +60°", 0,
           "how far it is pulled cannot be worked out: say also how long the clamped length is");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("set_preload");
    TCase *tcase = tcase_create("set_preload");
    tcase_add_test(tcase, the_last_torque_counts);
    tcase_add_test(tcase, two_lubricants_are_taken_together);
    tcase_add_test(tcase, above_the_proof_load_is_cautioned_unless_it_is_for_one_use);
    tcase_add_test(tcase, angles_stand_on_the_torque_before_them);
    tcase_add_test(tcase, a_gasket_takes_part_of_the_angle);
    tcase_add_test(tcase, a_slot_adds_what_it_may);
    tcase_add_test(tcase, a_check_says_what_it_hides);
    tcase_add_test(tcase, what_it_lacks_is_said);
    tcase_add_test(tcase, an_angle_from_a_reading_is_not_known_beforehand);
    tcase_add_test(tcase, a_substitute_is_told_beside_its_torque);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
