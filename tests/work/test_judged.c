// What a session judges line by line is what the whole judgement gives, all through the demo's
// logs.
#include "../judge/same.h"
#include "store.h"

#include <standbook/work/suppose.h>

static Assessment *assess_all(Session *session)
{
    const GPtrArray *entries = session_entries(session);
    return assess(session_plan(session), (const Entry *const *)entries->pdata, entries->len, 0,
                  NULL);
}

// What a line would make is what it makes; a plan that it lets grow is not asked that.
static void judge_line(Session *session, const char *line, const char *where)
{
    const Plan *plan = session_plan(session);
    guint before = session_entries(session)->len;
    Assessment *supposed = session_suppose(session, line, NULL);
    take(session, line);
    if (session_entries(session)->len == before)
        return;
    Assessment *whole = assess_all(session);
    expect_same_assessment(session_assessment(session), whole, where);
    if (supposed && plan == session_plan(session))
        expect_same_assessment(supposed, whole, where);
    assessment_free(supposed);
    assessment_free(whole);
}

static void judge_log(const char *number, const char *file)
{
    char *text = NULL;
    ck_assert(g_file_get_contents(file, &text, NULL, NULL));
    GStrv lines = g_strsplit(text, "\n", -1);
    Session *session = open_session(number);
    for (guint i = 0; lines[i]; i++) {
        char *where = g_strdup_printf("%s:%u", file, i + 1);
        judge_line(session, lines[i], where);
        g_free(where);
    }
    session_close(session);
    g_strfreev(lines);
    g_free(text);
}

START_TEST(every_line_of_the_demo_is_judged_as_the_whole_is)
{
    judge_log("TL-0397", "demo-data/tl-0397.log");
    judge_log("TL-0405", "demo-data/tl-0405.log");
    judge_log("TL-0412", "demo-data/tl-0412.log");
    judge_log("TL-0397", "demo-data/tl-0397-later.log");
    judge_log("TL-0418", "demo-data/tl-0418.log");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("judged");
    TCase *tcase = tcase_create("judged");
    tcase_set_timeout(tcase, 600);
    tcase_add_checked_fixture(tcase, make_shop, clear);
    tcase_add_test(tcase, every_line_of_the_demo_is_judged_as_the_whole_is);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
