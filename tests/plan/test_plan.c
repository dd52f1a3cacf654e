#include <check.h>
#include <standbook/plan/plan.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static char *all_faults(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert((plan == NULL) == (faults_count(faults) > 0));
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *line = fault_text(faults_at(faults, i), "t");
        g_string_append_printf(all, "%s\n", line);
    }
    return g_string_free(all, FALSE);
}

static void expect_faults(const char *text, const char *expected)
{
    g_autofree char *found = all_faults(text);
    ck_assert_str_eq(found, expected);
}

static char *twin(void)
{
    char *text = NULL;
    ck_assert(g_file_get_contents("tests/plan/small-twin.yaml", &text, NULL, NULL));
    return text;
}

static Plan *read_twin(void)
{
    g_autofree char *text = twin();
    expect_faults(text, "");
    g_autoptr(Faults) faults = faults_new();
    return plan_read(text, strlen(text), faults);
}

START_TEST(the_excerpt_reads_without_a_fault)
{
    g_autoptr(Plan) plan = read_twin();
    ck_assert_str_eq(plan->name, "Small twin");
    ck_assert_uint_eq(plan->steps->len, 4);
    ck_assert_uint_eq(plan->gates->len, 1);
    const PlanStep *clearance = plan_step(plan, "Main clearance");
    ck_assert_str_eq(clearance->phase, "Measure");
    ck_assert_uint_eq(clearance->checks->len, 3);
    const PlanCheck *bore = plan_check(plan, "main bore");
    ck_assert_uint_eq(places_count(bore->axes), 2);
    ck_assert_str_eq(bore->gauge, "bore gauge");  // of its step
    ck_assert_str_eq(bore->source, "shop habit"); // of the plan
    ck_assert_ptr_eq(((PlanName *)bore->with->pdata[0])->group, plan_group(plan, "main caps"));
    const PlanCheck *grade = plan_check(plan, "clearance by grade");
    ck_assert_str_eq(grade->formula_text, "main bore - journal - 2 * added wall");
    ck_assert_uint_eq(grade->formula_column, 28);
    ck_assert_str_eq(grade->choose, "grade");
    const PlanCheck *travel = plan_check(plan, "crank travel");
    g_autofree char *place = places_label(travel->axes, 1);
    ck_assert_str_eq(place, "forward");
    ck_assert_int_eq(plan_check(plan, "no leaks")->asks, LIMITS_ANSWER);
}
END_TEST

START_TEST(tightenings_know_their_order)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanTightening *caps = plan_step(plan, "Main clearance")->tightenings->pdata[0];
    ck_assert_uint_eq(caps->stages->len, 2);
    ck_assert_uint_eq(caps->order[0], 1);
    ck_assert_uint_eq(caps->order[3], 3);
    const PlanTightening *again = plan_step(plan, "Crank")->tightenings->pdata[0];
    ck_assert(again->again);
    ck_assert_uint_eq(again->stages->len, 2);
    const PlanTightening *sump = plan_step(plan, "Sump")->tightenings->pdata[0];
    g_autofree char *first = places_label(sump->group->axes, sump->order[0]);
    ck_assert_str_eq(first, "L2");
    ck_assert(sump->group->as_group);
    ck_assert(plan_step_follows(plan_step(plan, "Sump"), plan_step(plan, "Main clearance")));
    ck_assert(!plan_step_follows(plan_step(plan, "Crank"), plan_step(plan, "Sump")));
}
END_TEST

// A plan of one step, its lines indented by four.
static void expect_step_faults(const char *lines, const char *expected)
{
    g_autofree char *text = g_strdup_printf("plan: T\naxes: {rod: 1..2, end: a/b}\n"
                                            "steps:\n  One:\n%s",
                                            lines);
    expect_faults(text, expected);
}

START_TEST(faults_say_step_check_and_what_to_write)
{
    expect_step_faults("    fasteners:\n      caps: {bolts: 1..6, order: 3-4-1-2-5, stages: 30}\n",
                       "t:6:34: step \"One\", group \"caps\": order: bolt 6 is left out; write "
                       "every bolt once\n");
    expect_step_faults("    checks:\n      bore: {at: rdo, with: cups, limits: 1..2}\n"
                       "    fasteners:\n      caps: {bolts: 1..6, stages: 30}\n",
                       "t:6:18: step \"One\", check \"bore\": there is no axis called `rdo`; did "
                       "you mean `rod`?\n"
                       "t:6:29: step \"One\", check \"bore\": there is no check, group or "
                       "part called `cups`; did you mean `caps`?\n");
    expect_step_faults(
        "    checks:\n      bore: 1..2\n      bore = 3 mm: 1..2\n",
        "t:7:7: step \"One\", check \"bore\": there is a check of this name already, "
        "in line 6; give this one another name\n");
    expect_step_faults("    fasteners:\n      caps: {bolts: 1..4, stages: 30}\n"
                       "  Two:\n    checks:\n      caps: yes\n",
                       "t:9:7: step \"Two\", check \"caps\": there is a group of this name "
                       "already, in line 6; give this check another name\n");
    expect_step_faults("    checks:\n      bore: any\n      skirt: any\n"
                       "      gap = bore-skirt: any\n      play = skrit - bore: any\n",
                       "t:8:13: step \"One\", check \"gap\": there is nothing called "
                       "`bore-skirt`; to subtract, put spaces round the minus: `bore - skirt`\n"
                       "t:9:14: step \"One\", check \"play\": there is nothing called `skrit`; "
                       "did you mean `skirt`?\n");
    expect_step_faults(
        "    after: [One]\n    gate: hand ovr\n    uses: paste\n",
        "t:5:12: step \"One\": by `after` this step would have to come before "
        "itself; take out one of them\n"
        "t:6:11: step \"One\": there is no gate called `hand ovr`; did you mean "
        "`hand over`?\n"
        "t:7:11: step \"One\": there is no consumable called `paste`; write the name "
        "of one\n");
    expect_step_faults(
        "    retighten: {caps: 75}\n    closes: caps\n",
        "t:5:17: step \"One\": there is no group above called `caps`; write the name "
        "of one\n"
        "t:6:13: step \"One\": there is no check or group called `caps`; write the "
        "name of one\n");
}
END_TEST

static gboolean are_family(const char *one, const char *other)
{
    static const char rest[] = "steps: {Look: {checks: {seen: yes}}}\n";
    g_autoptr(Faults) faults = faults_new();
    g_autofree char *first = g_strconcat(one, rest, NULL), *second = g_strconcat(other, rest, NULL);
    g_autoptr(Plan) here = plan_read(first, strlen(first), faults);
    g_autoptr(Plan) there = plan_read(second, strlen(second), faults);
    ck_assert(here && there);
    return plan_is_family(here, there);
}

START_TEST(plans_without_a_family_are_not_one)
{
    ck_assert(are_family("plan: A\nfamily: F\n", "plan: B\nfamily: F\n"));
    ck_assert(!are_family("plan: A\nfamily: F\n", "plan: A\nfamily: G\n"));
    ck_assert(!are_family("plan: A\n", "plan: A\nfamily: F\n"));
    ck_assert(!are_family("plan: A\n", "plan: B\n"));
    ck_assert(are_family("plan: A\n", "plan: A\n"));
}
END_TEST

START_TEST(names_may_say_their_step)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("demo-data/hathersey-h23.yaml", &text, NULL, NULL));
    expect_faults(text, "");
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    const PlanStep *sump = plan_step(plan, "Sump");
    const PlanName *caps = sump->closes->pdata[3];
    ck_assert_ptr_eq(caps->group, plan_group(plan, "main caps"));
    ck_assert_ptr_eq(caps->step, plan_step(plan, "Crank"));
    const PlanName *lash = plan_check(plan, "inlet lash after heat")->settled_by->pdata[0];
    ck_assert_ptr_eq(lash->check, plan_check(plan, "inlet lash"));
    ck_assert_str_eq(lash->step->name, "Cold retorque");
    expect_step_faults("    checks:\n      bore: {limits: 1..2, rests on: [shells, bore in Two]}\n"
                       "    fit: shells\n  Two:\n    read again: bore in One\n",
                       "t:6:47: step \"One\", check \"bore\": there is no check, group or part "
                       "called `bore in Two`; write the name of one\n");
}
END_TEST

START_TEST(what_is_done_again_comes_later)
{
    expect_step_faults(
        "    checks: {bore: {unit: mm, limits: 1..2}}\n    fasteners: {caps: {bolts: "
        "1..2, stages: 30}}\n    retighten: {caps: 30}\n    read again: bore\n",
        "t:7:17: step \"One\": only a group of a step that comes before this one is "
        "tightened again\n"
        "t:8:17: step \"One\": only a check of a step that comes before this one is "
        "read again\n");
    expect_step_faults("    checks: {bore: {unit: mm, limits: 1..2}}\n"
                       "  Two:\n    read again: [bore, bore]\n",
                       "t:6:3: step \"Two\": two things are called `read bore in Two` here; give "
                       "one another name\n");
    expect_step_faults(
        "    fit: {caps: {at: 1..1}}\n    fasteners: {caps: {bolts: 1..1, stages: 30, use: new}}\n",
        "t:4:3: step \"One\": two things are called `fit caps[1]` here; give one "
        "another name\n");
}
END_TEST

static char *many(const char *format, guint count)
{
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < count; i++)
        g_string_append_printf(all, format, i, i);
    return g_string_free(all, FALSE);
}

static void expect_quick_refusal(char *text)
{
    clock_t start = clock(); // of this process: the machine may be busy
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_null(plan);
    ck_assert_int_lt(clock() - start, 20 * CLOCKS_PER_SEC);
    g_free(text);
}

// Each is under 2 MB and would ask for very much.
START_TEST(hostile_plans_are_refused_quickly)
{
    const char *head = "plan: T\nunits: [mm]\naxes: {a: 1..1000, b: 1..1000, c: 1..1000}\nsteps:\n";
    g_autofree char *steps = many("  s%u: {after: s%u}\n", 24000);
    expect_quick_refusal(g_strconcat(head, steps, NULL));
    g_autofree char *names = many("      c%u = x%u: any\n", 45000);
    expect_quick_refusal(g_strconcat(head, "  s:\n    checks:\n", names, NULL));
    g_autofree char *wide = many("      c%u = max(x) + %u * min(y) - max(x): any\n", 30000);
    expect_quick_refusal(
        g_strconcat(head, "  s:\n    checks:\n      x: {at: a}\n      y: {at: b}\n", wide, NULL));
    expect_quick_refusal(g_strconcat(head,
                                     "  s:\n    checks:\n      x: {at: a}\n      y: {at: b}\n",
                                     "      z = x + y: any\n", NULL));
    g_autofree char *places = many("      c%u: {at: a, limits: %u..99999}\n", 16000);
    expect_quick_refusal(g_strconcat(head, "  s:\n    checks:\n", places, NULL));
    g_autofree char *bolts = many("      c%u: {bolts: 1..1000, stages: 1>2>%u}\n", 16000);
    expect_quick_refusal(g_strconcat(head, "  s:\n    fasteners:\n", bolts, NULL));
    g_autofree char *deep = many("      c%u = d%u: any\n", 1);
    GString *chain = g_string_new(deep);
    for (guint i = 0; i < 40000; i++)
        g_string_append_printf(chain, "      d%u = d%u * 2: any\n", i, i + 1);
    expect_quick_refusal(g_strconcat(head, "  s:\n    checks:\n", chain->str, NULL));
    g_string_free(chain, TRUE);
}
END_TEST

// The demo plan with a few bytes changed, taken out or doubled: read or refused, never worse.
START_TEST(damaged_plans_do_no_harm)
{
    static const char letters[] = " :-{}[],#>=.%/&*!|\"'\n0a±";
    g_autofree char *text = NULL;
    gsize length = 0;
    ck_assert(g_file_get_contents("demo-data/hathersey-h23.yaml", &text, &length, NULL));
    GRand *random = g_rand_new_with_seed(3);
    guint read = 0;
    for (guint i = 0; i < 300; i++) {
        GString *damaged = g_string_new_len(text, (gssize)length);
        for (gint j = g_rand_int_range(random, 1, 4); j > 0; j--) {
            gsize at = (gsize)g_rand_int_range(random, 0, (gint)damaged->len - 20);
            char letter = letters[g_rand_int_range(random, 0, sizeof letters - 1)];
            switch (g_rand_int_range(random, 0, 3)) {
            case 0:
                damaged->str[at] = letter;
                break;
            case 1:
                g_string_erase(damaged, (gssize)at, g_rand_int_range(random, 1, 20));
                break;
            default:
                g_string_insert_c(damaged, (gssize)at, letter);
            }
        }
        g_autoptr(Faults) faults = faults_new();
        g_autoptr(Plan) plan = plan_read(damaged->str, damaged->len, faults);
        ck_assert((plan != NULL) == (faults_count(faults) == 0));
        read += plan != NULL;
        g_string_free(damaged, TRUE);
    }
    g_rand_free(random);
    ck_assert_uint_gt(read, 20); // many changes only touch words
    ck_assert_uint_lt(read, 270);
}
END_TEST

START_TEST(bolts_along_axes_run_each)
{
    const char *text =
        "plan: T\naxes: {rod: 1..2}\nsteps:\n  One:\n    fasteners:\n      rod bolts: "
        "{bolts: [rod, a/b], each: rod, order: b-a, stages: 30, "
        "lubricant: {b: paste, others: dry}}\n      nuts: {bolts: 1..10, stages: 5, lubricant: "
        "{2-4-7-9: sealant, others: oil}}\n";
    expect_faults(text, "");
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    const PlanTightening *rods = plan_step(plan, "One")->tightenings->pdata[0];
    const guint order[] = {1, 0, 3, 2}, each[] = {0, 0, 1, 1};
    ck_assert_mem_eq(rods->order, order, sizeof order);
    ck_assert_mem_eq(rods->each, each, sizeof each);
    const PlanLubricant *paste = plan_group(plan, "rod bolts")->lubricants->pdata[0];
    const gboolean second[] = {FALSE, TRUE, FALSE, TRUE};
    ck_assert_mem_eq(paste->positions, second, sizeof second);
    const PlanLubricant *oil = plan_group(plan, "nuts")->lubricants->pdata[1];
    ck_assert(oil->positions[0] && !oil->positions[1] && !oil->positions[8]);
}
END_TEST

// A torque stage in N·m.
static void expect_torque(const char *units, const char *torque, const char *newton_metres)
{
    g_autofree char *text = g_strdup_printf(
        "plan: T\n%ssteps: {One: {fasteners: {a: {bolts: 1..1, stages: %s, ceiling: %s}}}}\n",
        units, torque, torque);
    expect_faults(text, "");
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    const PlanTightening *tightening = plan_step(plan, "One")->tightenings->pdata[0];
    const Stage *stage = tightening->stages->pdata[0];
    g_autoptr(Number) value = formula_constant(stage->formula);
    g_autoptr(Number) wanted = number_from_text(newton_metres, NULL);
    ck_assert(number_equal(value, wanted));
    ck_assert(number_equal(tightening->group->ceiling, wanted));
}

// 1 lbf·ft = 1.3558179483314004 N·m (NIST SP 811:2008, appendix B.8, the exact product of its
// parts)
START_TEST(bare_torques_are_in_the_plans_unit)
{
    expect_torque("", "75", "75");
    expect_torque("units: [mm]\n", "75", "75");
    expect_torque("units: [in, lbf·ft]\n", "10", "13.558179483314004");
    expect_torque("units: [in, lbf·ft]\n", "75 N·m", "75");
    expect_torque("units: [mm, kgf·m]\n", "2", "19.6133");
}
END_TEST

static void expect_plan_file(const char *name)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents(name, &text, NULL, NULL));
    expect_faults(text, "");
}

START_TEST(other_layouts_read_without_a_fault)
{
    g_autoptr(GDir) folder = g_dir_open("tests/plans", 0, NULL);
    ck_assert_ptr_nonnull(folder);
    guint count = 0;
    for (const char *name; (name = g_dir_read_name(folder)); count++) {
        g_autofree char *path = g_build_filename("tests/plans", name, NULL);
        expect_plan_file(path);
    }
    ck_assert_uint_ge(count, 1);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("plan");
    TCase *tcase = tcase_create("plan");
    tcase_add_test(tcase, the_excerpt_reads_without_a_fault);
    tcase_add_test(tcase, tightenings_know_their_order);
    tcase_add_test(tcase, faults_say_step_check_and_what_to_write);
    tcase_add_test(tcase, plans_without_a_family_are_not_one);
    tcase_add_test(tcase, names_may_say_their_step);
    tcase_set_timeout(tcase, 120);
    tcase_add_test(tcase, what_is_done_again_comes_later);
    tcase_add_test(tcase, hostile_plans_are_refused_quickly);
    tcase_add_test(tcase, damaged_plans_do_no_harm);
    tcase_add_test(tcase, bolts_along_axes_run_each);
    tcase_add_test(tcase, bare_torques_are_in_the_plans_unit);
    tcase_add_test(tcase, other_layouts_read_without_a_fault);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
