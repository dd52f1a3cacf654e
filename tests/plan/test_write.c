#include <check.h>
#include <standbook/plan/write.h>
#include <stdlib.h>
#include <string.h>

static Plan *read_plan(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(text, strlen(text), faults);
    if (!plan) {
        g_autofree char *first = fault_text(faults_at(faults, 0), "t");
        ck_abort_msg("%s in:\n%s", first, text);
    }
    return plan;
}

// The same texts under the same names.
static void expect_equal(const TreeNode *one, const TreeNode *other)
{
    ck_assert_int_eq(one->kind, other->kind);
    ck_assert_uint_eq(tree_count(one), tree_count(other));
    if (one->kind == TREE_SCALAR)
        ck_assert_str_eq(one->text, other->text);
    for (guint i = 0; i < tree_count(one); i++) {
        const TreeNode *a = tree_at(one, i);
        const TreeNode *b = a->key ? tree_get(other, a->key->text) : tree_at(other, i);
        ck_assert_msg(b != NULL, "%s is lost", a->key ? a->key->text : "?");
        expect_equal(a, b);
    }
}

static void expect_round(const char *text)
{
    g_autoptr(Plan) plan = read_plan(text);
    g_autofree char *written = plan_write(plan);
    g_autoptr(Plan) again = read_plan(written);
    expect_equal(plan->tree, again->tree);
    g_autofree char *rewritten = plan_write(again);
    ck_assert_str_eq(written, rewritten);
    ck_assert_uint_eq(plan->steps->len, again->steps->len);
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *a = plan->steps->pdata[i], *b = again->steps->pdata[i];
        ck_assert_str_eq(a->name, b->name);
        for (guint j = 0; j < a->checks->len; j++)
            ck_assert_str_eq(((const PlanCheck *)a->checks->pdata[j])->name,
                             ((const PlanCheck *)b->checks->pdata[j])->name);
    }
}

START_TEST(the_excerpt_comes_back)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("tests/plan/small-twin.yaml", &text, NULL, NULL));
    expect_round(text);
}
END_TEST

START_TEST(the_demo_plan_comes_back)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("demo-data/hathersey-h23.yaml", &text, NULL, NULL));
    expect_round(text);
}
END_TEST

START_TEST(awkward_texts_come_back)
{
    expect_round("plan: \"#3: it's a \\\"twin\\\"\"\nnote: |\n  first\n\n  second\nsteps:\n"
                 "  'a: b':\n    do: ['- x', \"> 2\", '%', 'x, y', \"it's \\\\ \\\"q\\\"\"]\n"
                 "  'two, three':\n  '#4': {note: ' led by a space'}\n"
                 "  'dots...': {note: '...'}\n  '-x': {note: \"a\\n  b\\n\", do: '---'}\n");
}
END_TEST

START_TEST(keys_stand_in_order)
{
    g_autoptr(Plan) plan = read_plan("steps: {One: {fit: crank, do: d}}\nplan: T\n");
    g_autofree char *written = plan_write(plan);
    ck_assert_str_eq(written, "plan: T\nsteps:\n  One:\n    fit: crank\n    do: d\n");
}
END_TEST

// Any text at all, as a name and as a value.
START_TEST(random_texts_come_back)
{
    static const char letters[] = "ab 1:#-,>|{}[]'\"\\%&*!?@`.=\n";
    GRand *random = g_rand_new_with_seed(7);
    for (guint i = 0; i < 2000; i++) {
        GString *value = g_string_new("\"");
        GString *name = g_string_new("\"");
        for (gint j = g_rand_int_range(random, 1, 8); j > 0; j--) {
            char letter = letters[g_rand_int_range(random, 0, sizeof letters - 1)];
            gboolean escape = letter == '"' || letter == '\\';
            g_string_append_printf(value, "%s", letter == '\n' ? "\\n" : escape ? "\\" : "");
            if (letter != '\n')
                g_string_append_c(value, letter);
            g_string_append_c(name, strchr("[]\"\\\n", letter) ? 'x' : letter);
        }
        g_autofree char *text =
            g_strdup_printf("plan: T\nsteps: {%s\": {do: %s\"}}\n", name->str, value->str);
        expect_round(text);
        g_string_free(value, TRUE);
        g_string_free(name, TRUE);
    }
    g_rand_free(random);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("write");
    TCase *tcase = tcase_create("write");
    tcase_add_test(tcase, the_excerpt_comes_back);
    tcase_add_test(tcase, the_demo_plan_comes_back);
    tcase_add_test(tcase, awkward_texts_come_back);
    tcase_add_test(tcase, keys_stand_in_order);
    tcase_add_test(tcase, random_texts_come_back);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
