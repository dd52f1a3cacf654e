#include "story.h"

#include <standbook/base/error.h>
#include <standbook/judge/keep.h>
#include <stdlib.h>

static const char plan[] = "plan: One\nunits: [mm]\nsteps:\n  All:\n    checks:\n"
                           "      lash: 0.10..0.20\n      clean: yes\n";

static Assessment *assess_story(const Story *story)
{
    return assess(story->plan, (const Entry *const *)story->entries->pdata, story->entries->len, 0,
                  NULL);
}

START_TEST(kept_and_compared)
{
    Story story;
    story_begin(&story, plan);
    story_take_tool(&story, "01", "feelers", "1/1000");
    story_read(&story, "lash", "", "0.15", "15/100", "01");
    Assessment *then = assess_story(&story);
    char *kept = assessment_keep(then), *again = assessment_keep(then);
    ck_assert_str_eq(kept, again);
    ck_assert_str_eq(kept, "{\"edition\":\"2\",\"upto\":3,\"counts\":{\"open\":2,\"pass\":1,"
                           "\"fail\":0,\"in doubt\":0,\"conceded\":0,\"noted\":0,\"not needed\":0},"
                           "\"requirements\":[{\"name\":\"read lash\",\"verdict\":\"pass\","
                           "\"reason\":null,\"value\":\"0.00015\",\"entry\":3},"
                           "{\"name\":\"look clean\",\"verdict\":\"open\",\"reason\":null,"
                           "\"value\":null,\"entry\":null},{\"name\":\"sign All, 1\","
                           "\"verdict\":\"open\",\"reason\":null,\"value\":null,\"entry\":null}]}");
    story_read(&story, "lash", "", "0.25", "25/100", "01");
    Assessment *today = assess_story(&story);
    GPtrArray *differences = assessment_differences(kept, today, NULL);
    ck_assert_uint_eq(differences->len, 1);
    ck_assert_str_eq(differences->pdata[0], "read lash: pass then, in doubt · disagree today");
    g_ptr_array_unref(differences);
    Story other;
    story_begin(&other, "plan: One\nunits: [mm]\nsteps:\n  All:\n    checks:\n"
                        "      lash: 0.10..0.20\n      clear: yes\n");
    Assessment *changed = assess_story(&other);
    differences = assessment_differences(kept, changed, NULL);
    ck_assert_uint_eq(differences->len, 3);
    ck_assert_str_eq(differences->pdata[0], "read lash: pass then, open today");
    ck_assert_str_eq(differences->pdata[1], "look clear: not asked then, open today");
    ck_assert_str_eq(differences->pdata[2], "look clean: open then, not asked today");
    g_ptr_array_unref(differences);
    assessment_free(changed);
    story_end(&other);
    GError *error = NULL;
    ck_assert_ptr_null(assessment_differences("{}", today, &error));
    ck_assert_int_eq(error->code, STANDBOOK_ERROR_NO);
    g_clear_error(&error);
    assessment_free(then);
    assessment_free(today);
    g_free(kept);
    g_free(again);
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("keep");
    TCase *tcase = tcase_create("keep");
    tcase_add_test(tcase, kept_and_compared);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
