#include <check.h>
#include <standbook/plan/tree.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static TreeNode *read_good(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    TreeNode *top = tree_read(text, strlen(text), faults);
    if (faults_count(faults)) {
        g_autofree char *first = fault_text(faults_at(faults, 0), "t");
        ck_abort_msg("unexpected: %s", first);
    }
    ck_assert_ptr_nonnull(top);
    return top;
}

// The bytes are refused, with one fault, at this place, in a sentence that holds these words.
static void expect_refused(const char *bytes, gsize length, const char *place, const char *words)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(TreeNode) top = tree_read(bytes, length, faults);
    ck_assert_uint_eq(faults_count(faults), 1);
    g_autofree char *text = fault_text(faults_at(faults, 0), "t");
    g_autofree char *start = g_strdup_printf("t:%s: ", place);
    ck_assert_msg(g_str_has_prefix(text, start), "%s does not stand at %s", text, place);
    ck_assert_msg(strstr(text, words) != NULL, "%s does not say: %s", text, words);
}

static void expect_text_refused(const char *text, const char *place, const char *words)
{
    expect_refused(text, strlen(text), place, words);
}

START_TEST(nodes_keep_their_place)
{
    g_autoptr(TreeNode) top = read_good("plan: Twin\nsteps:\n  Crank:\n    do: \"bolt #3: in\"\n"
                                        "    fit: {½ shells: {at: [1, 2]}}\n");
    const TreeNode *crank = tree_get(tree_get(top, "steps"), "Crank");
    ck_assert_uint_eq(crank->key->line, 3);
    ck_assert_uint_eq(crank->key->column, 3);
    const TreeNode *words = tree_get(crank, "do");
    ck_assert_str_eq(words->text, "bolt #3: in");
    ck_assert(words->quoted);
    ck_assert_uint_eq(words->line, 4);
    ck_assert_uint_eq(words->column, 10);
    const TreeNode *at = tree_get(tree_get(tree_get(crank, "fit"), "½ shells"), "at");
    ck_assert_int_eq(at->kind, TREE_LIST);
    ck_assert_uint_eq(tree_count(at), 2);
    ck_assert_uint_eq(tree_at(at, 1)->column, 30); // in characters, not bytes
    ck_assert(at->flow);
    ck_assert_ptr_null(tree_get(top, "nothing"));
}
END_TEST

START_TEST(comments_and_blocks_are_taken)
{
    g_autoptr(TreeNode) top = read_good("\xEF\xBB\xBF#head\nplan: Twin # a note\n## x\n"
                                        "note: |\n  first #1\n  second\nend: '#4'\r\n");
    ck_assert_str_eq(tree_get(top, "note")->text, "first #1\nsecond");
    ck_assert_str_eq(tree_get(top, "plan")->text, "Twin");
    ck_assert_str_eq(tree_get(top, "end")->text, "#4");
}
END_TEST

START_TEST(what_a_plan_does_not_take)
{
    expect_text_refused("a: &x 1\n", "1:4", "&");
    expect_text_refused("a: *x\n", "1:4", "*");
    expect_text_refused("a: !!int 1\n", "1:4", "!");
    expect_text_refused("a: 1\n---\nb: 2\n", "2:1", "second document");
    expect_text_refused("", "1:1", "empty");
    expect_text_refused("? [a]\n: b\n", "1:3", "name");
    expect_text_refused("a: 1\nb: 2\na: 3\n", "3:1", "second time (first in line 1)");
    expect_text_refused("a:\t1\n", "1:3", "tab");
    expect_text_refused("a: \xff\n", "1:4", "UTF-8");
    expect_text_refused("a: \x1b[2J\n", "1:4", "U+001B");
    expect_text_refused("a: \xe2\x80\xae"
                        "9.51\n",
                        "1:4", "U+202E");
    expect_refused("a: b\0c\n", 7, "1:5", "U+0000");
    expect_text_refused("a: \"b\\0c\"\n", "1:4", "hidden");
    expect_text_refused("a: \"b\\e[2J\"\n", "1:4", "hidden");
    expect_text_refused("\"a\\nb\": c\n", "1:1", "one line");
}
END_TEST

START_TEST(traps_have_a_hint)
{
    expect_text_refused("do: tighten bolt #3 first\n", "1:18", "quotes");
    expect_text_refused("do: #3\n", "1:5", "quotes");
    expect_text_refused("limits: > 0.25\n", "1:11", "at least");
    expect_text_refused("limits: >2\n", "1:9", "at least");
    expect_text_refused("a: {limits: > 0.25}\n", "1:13", "at least");
    expect_text_refused("limits: % of skirt\n", "1:9", "percent");
    expect_text_refused("do: first: the crank\n", "1:10", "quotes");
    expect_text_refused("do: \"never closed\n", "1:5", "opened here");
    expect_text_refused("a: {b: 1\nc: 2\n", "2:2", "}");
    expect_text_refused("a: {b: 1\nc: 2\n", "2:2", "(line 1, column 4)");
    expect_text_refused("a: {b: 1}}\n", "1:10", "closes no bracket");
    expect_text_refused("a\nb: 1\n", "2:2", "the one above: that one has no `: `");
    expect_text_refused("a: 1\n  b: 2\n", "2:4", "stands too deep");
}
END_TEST

static char *repeated(const char *text, guint times)
{
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < times; i++)
        g_string_append(all, text);
    return g_string_free(all, FALSE);
}

// What would eat memory or time is refused well within a second.
START_TEST(hostile_files_are_refused_quickly)
{
    clock_t start = clock(); // of this process: the machine may be busy
    g_autofree char *huge = repeated("- 0123456789abc\n", 50 * 1000 * 1000 / 16);
    expect_text_refused(huge, "1:1", "2 MB");
    g_autofree char *nested = repeated("[", 1000 * 1000);
    expect_text_refused(nested, "1:17", "16 levels");
    g_autofree char *maps = repeated("{a: ", 400 * 1000);
    expect_text_refused(maps, "1:65", "16 levels");
    g_autofree char *many = repeated("- 1\n", 400 * 1000);
    expect_text_refused(many, "100001:3", "100,000");
    expect_text_refused("a: &a [x, x]\nb: &b [*a, *a]\n", "1:4", "&");
    g_autofree char *key = repeated("k", 2000);
    g_autofree char *line = g_strdup_printf("%s: 1\n", key);
    expect_text_refused(line, "1:2001", "1,024");
    GRand *random = g_rand_new_with_seed(1);
    for (guint i = 0; i < 200; i++) {
        char bytes[64];
        for (guint j = 0; j < sizeof bytes; j++)
            bytes[j] = (char)g_rand_int_range(random, 0, 256);
        g_autoptr(Faults) faults = faults_new();
        g_autoptr(TreeNode) top = tree_read(bytes, sizeof bytes, faults);
        ck_assert(top || faults_count(faults));
    }
    g_rand_free(random);
    ck_assert_int_lt(clock() - start, 20 * CLOCKS_PER_SEC);
}
END_TEST

START_TEST(faults_are_sorted_by_place)
{
    g_autoptr(Faults) faults = faults_new();
    faults_add(faults, 2, 1, "c");
    faults_add(faults, 1, 9, "a");
    faults_add(faults, 1, 9, "b%s", "\x1b");
    faults_sort(faults);
    ck_assert_str_eq(faults_at(faults, 0)->message, "a");
    ck_assert_str_eq(faults_at(faults, 1)->message, "b\\x1B");
    ck_assert_str_eq(faults_at(faults, 2)->message, "c");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("tree");
    TCase *tcase = tcase_create("tree");
    tcase_set_timeout(tcase, 30);
    tcase_add_test(tcase, nodes_keep_their_place);
    tcase_add_test(tcase, comments_and_blocks_are_taken);
    tcase_add_test(tcase, what_a_plan_does_not_take);
    tcase_add_test(tcase, traps_have_a_hint);
    tcase_add_test(tcase, hostile_files_are_refused_quickly);
    tcase_add_test(tcase, faults_are_sorted_by_place);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
