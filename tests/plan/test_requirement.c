#include <check.h>
#include <standbook/plan/requirement.h>
#include <stdlib.h>
#include <string.h>

static Plan *read_text(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(text, strlen(text), faults);
    if (!plan) {
        g_autofree char *first = fault_text(faults_at(faults, 0), "t");
        ck_abort_msg("%s", first);
    }
    return plan;
}

static void expect(const char *text, const char *expected)
{
    g_autoptr(Plan) plan = read_text(text);
    g_autoptr(GArray) all = plan_requirements(plan);
    GString *found = g_string_new(NULL);
    for (guint i = 0; i < all->len; i++) {
        g_autofree char *name = plan_requirement_name(&g_array_index(all, PlanRequirement, i));
        g_string_append_printf(found, "%s\n", name);
    }
    ck_assert_str_eq(found->str, expected);
    ck_assert_uint_eq(plan_requirement_count(plan), all->len);
    g_string_free(found, TRUE);
}

START_TEST(each_sort_has_its_name)
{
    expect("plan: T\nunits: [mm, N·m]\naxes: {main: 1..2, end: front/rear}\nsteps:\n"
           "  Crank:\n"
           "    fit: {shells: {at: [main, upper/lower]}, crank: {count: 2}}\n"
           "    fasteners: {caps: {bolts: 1..2, order: 2-1, stages: 30 > wait 10 min > 40}}\n"
           "    checks:\n"
           "      bore: {at: [main, end], limits: 1..2}\n"
           "      clean: yes\n"
           "      colour: {at: main, limits: text}\n"
           "      rags: exactly 4\n"
           "    hold: {bores: second person, caps: two persons}\n",
           "fit shells[1, upper]\nfit shells[1, lower]\nfit shells[2, upper]\n"
           "fit shells[2, lower]\nfit crank\n"
           "bolt caps in Crank[2], stage 1\nbolt caps in Crank[1], stage 1\n"
           "wait caps in Crank, stage 2\n"
           "bolt caps in Crank[2], stage 3\nbolt caps in Crank[1], stage 3\n"
           "read bore[1, front]\nread bore[1, rear]\nread bore[2, front]\nread bore[2, rear]\n"
           "look clean\nlook colour[1]\nlook colour[2]\nlook rags\n"
           "sign Crank, 1\nsign Crank, 2\nsign Crank, 3\nsign Crank, 4\n");
}
END_TEST

START_TEST(later_steps_ask_again)
{
    expect("plan: T\nunits: [mm]\nsteps:\n"
           "  One:\n    checks: {lash: {at: 1..2, limits: 1..2}}\n"
           "    fasteners: {nuts: {bolts: 1..2, each: bolt, stages: 5 > 6, use: new}}\n"
           "  Two:\n    read again: lash\n    retighten: {nuts: as before}\n",
           "read lash[1]\nread lash[2]\nfit nuts[1]\nfit nuts[2]\n"
           "bolt nuts in One[1], stage 1\nbolt nuts in One[1], stage 2\n"
           "bolt nuts in One[2], stage 1\nbolt nuts in One[2], stage 2\nsign One, 1\n"
           "read lash in Two[1]\nread lash in Two[2]\n"
           "bolt nuts in Two[1], stage 1\nbolt nuts in Two[1], stage 2\n"
           "bolt nuts in Two[2], stage 1\nbolt nuts in Two[2], stage 2\nsign Two, 1\n");
}
END_TEST

START_TEST(a_chosen_axis_is_not_asked_for)
{
    expect("plan: T\nunits: [mm]\naxes: {main: 1..2, grade: A/B}\n"
           "given: {wall: {A: 0, B: 0.013}}\nsteps:\n  One:\n    checks:\n"
           "      bore: {at: main}\n"
           "      clearance = bore - wall: {limits: 0.03..0.06, choose: grade}\n",
           "read bore[1]\nread bore[2]\nread clearance[1]\nread clearance[2]\nsign One, 1\n");
}
END_TEST

START_TEST(names_are_unique_in_the_demo)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("demo-data/hathersey-h23.yaml", &text, NULL, NULL));
    g_autoptr(Plan) plan = read_text(text);
    g_autoptr(GArray) all = plan_requirements(plan);
    g_autoptr(GHashTable) names = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    for (guint i = 0; i < all->len; i++)
        g_hash_table_add(names, plan_requirement_name(&g_array_index(all, PlanRequirement, i)));
    ck_assert_uint_eq(g_hash_table_size(names), all->len);
    ck_assert(g_hash_table_contains(names, "bolt main caps in Crank[3], stage 2"));
    ck_assert(g_hash_table_contains(names, "read inlet lash in Cold retorque[2]"));
    ck_assert(g_hash_table_contains(names, "wait head nuts in Head on, stage 4"));
    ck_assert(g_hash_table_contains(names, "fit flywheel bolts[6]"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("requirement");
    TCase *tcase = tcase_create("requirement");
    tcase_add_test(tcase, each_sort_has_its_name);
    tcase_add_test(tcase, later_steps_ask_again);
    tcase_add_test(tcase, a_chosen_axis_is_not_asked_for);
    tcase_add_test(tcase, names_are_unique_in_the_demo);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
