#include <check.h>
#include <standbook/plan/schema.h>
#include <stdlib.h>
#include <string.h>

// Checks the text against the table; expects these faults, one a line.
static void expect(const SchemaMapping *mapping, const char *text, const char *expected)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(TreeNode) top = tree_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(top);
    schema_check(mapping, top, "", faults);
    faults_sort(faults);
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *line = fault_text(faults_at(faults, i), "t");
        g_string_append_printf(all, "%s\n", line);
    }
    ck_assert_str_eq(all->str, expected);
    g_string_free(all, TRUE);
}

START_TEST(good_mappings_pass)
{
    expect(&schema_of_plan, "plan: Twin\nsteps: {Crank: {do: turn it}}\n", "");
    expect(&schema_of_check, "at: [main, end]\nlimits: {A: 1..2, B: 2..3}\noptional: yes\n", "");
    expect(&schema_of_group,
           "bolts: 1..4\nstages: 30\nuse: once\nlubricant: {1: oil, others: dry}\n", "");
    expect(&schema_of_step, "fit: [shells, crank]\nhold: grades chosen\n", "");
}
END_TEST

START_TEST(slips_are_named_and_not_told_twice)
{
    expect(&schema_of_plan, "paln: Twin\nsteps: {Crank: {}}\n",
           "t:1:1: a plan has no `paln`; did you mean `plan`?\n");
    expect(&schema_of_plan, "plan: Twin\n", "t:1:1: `steps` is missing: the work, in order\n");
    expect(&schema_of_set, "move: shim\nloose: perhaps\n",
           "t:2:8: `loose` cannot be `perhaps`; write yes or no\n");
    expect(&schema_of_part, "count: 2.5\nuse: old\nat: {a: b}\n",
           "t:1:8: `count` cannot be `2.5`; write a whole number\n"
           "t:2:6: `use` cannot be `old`; write new/may be reused\n"
           "t:3:5: `at` does not fit here; write an axis, or a list of axes such as [main, end]\n");
    expect(&schema_of_part, "use:\n",
           "t:1:1: nothing stands behind `use`; write new/may be reused\n");
    expect(&schema_of_consumable, "{fit within: 0,05, kind: x}\n",
           "t:1:16: a comma inside { } ends the value, so `05` stands alone; put quotes round the "
           "value or give it its own lines\n");
    expect(&schema_of_set, "{weight: 3, move: x}\n",
           "t:1:2: a setting has no `weight`; it has move, unit, range, step, stock, gives, zero, "
           "loose, each\n");
    expect(&schema_of_set, "just words\n",
           "t:1:1: a setting is written as a mapping; write its keys, such as `move: `\n");
}
END_TEST

START_TEST(faulty_values_are_not_looked_at_again)
{
    g_autoptr(Faults) faults = faults_new();
    const char *text = "count: many\nuse: new\n";
    g_autoptr(TreeNode) top = tree_read(text, strlen(text), faults);
    ck_assert_ptr_null(schema_get(&schema_of_part, top, "count"));
    ck_assert_str_eq(schema_get(&schema_of_part, top, "use")->text, "new");
    ck_assert_ptr_null(schema_get(&schema_of_part, top, "track"));
}
END_TEST

static void expect_sound(const SchemaMapping *mapping)
{
    for (gsize i = 0; i < mapping->count; i++) {
        const SchemaKey *key = &mapping->keys[i];
        ck_assert_ptr_eq(schema_find(mapping, key->key), key); // no key stands twice
        ck_assert((key->type == SCHEMA_CHOICE) == (key->choices != NULL));
        ck_assert(key->type != SCHEMA_MAPPING || key->inside);
        ck_assert(!g_str_has_suffix(key->help, ".") && strlen(key->help) > 3);
    }
}

START_TEST(tables_are_sound)
{
    const SchemaMapping *all[] = {&schema_of_plan, &schema_of_consumable, &schema_of_step,
                                  &schema_of_part, &schema_of_check,      &schema_of_set,
                                  &schema_of_group};
    for (gsize i = 0; i < G_N_ELEMENTS(all); i++)
        expect_sound(all[i]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("schema");
    TCase *tcase = tcase_create("schema");
    tcase_add_test(tcase, good_mappings_pass);
    tcase_add_test(tcase, slips_are_named_and_not_told_twice);
    tcase_add_test(tcase, faulty_values_are_not_looked_at_again);
    tcase_add_test(tcase, tables_are_sound);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
