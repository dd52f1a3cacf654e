// The manual names the keys that the program has. After a change of the list of actions,
// STANDBOOK_UPDATE=1 writes the page anew.
#include "actions.h"

#include <check.h>
#include <string.h>

static const char page_name[] = "man/standbook.1";
static const char begin_mark[] = "tests/screen/test_manual.c)\n";
static const char end_mark[] = ".\\\" end keys\n";

static char *troff(const char *text)
{
    GString *safe = g_string_new(text);
    g_string_replace(safe, "\\", "\\e", 0);
    g_string_replace(safe, "-", "\\-", 0);
    g_string_replace(safe, ".", "\\&.", 1);
    return g_string_free(safe, FALSE);
}

static char *whole_list(void)
{
    GString *list = g_string_new(NULL);
    for (guint i = 1; i < ACTIONS; i++) {
        const ActionInfo *info = action_info((Action)i);
        g_autofree char *keys = troff(info->keys);
        g_string_append_printf(list, ".It Ic %s", keys);
        if (info->letter && info->keys[0] != info->letter)
            g_string_append_printf(list, " , %c", info->letter);
        if (info->more >= 0)
            g_string_append_printf(list, " , \\&.Enter %d", info->more);
        g_string_append_printf(list, "\n%s\n", info->about);
    }
    return g_string_free(list, FALSE);
}

START_TEST(the_keys_are_the_programs)
{
    g_autofree char *page = NULL;
    ck_assert(g_file_get_contents(page_name, &page, NULL, NULL));
    char *begin = strstr(page, begin_mark), *end = strstr(page, end_mark);
    ck_assert(begin && end);
    begin += strlen(begin_mark);
    g_autofree char *list = whole_list();
    g_autofree char *head = g_strndup(page, (gsize)(begin - page));
    g_autofree char *wanted = g_strconcat(head, list, end, NULL);
    if (g_getenv("STANDBOOK_UPDATE"))
        ck_assert(g_file_set_contents(page_name, wanted, -1, NULL));
    else
        ck_assert_msg(strcmp(page, wanted) == 0, "%s: the keys are not the program's", page_name);
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("manual");
    tcase_add_test(tcase, the_keys_are_the_programs);
    Suite *suite = suite_create("manual");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
