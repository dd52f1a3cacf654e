#include "story.h"

#include <standbook/base/error.h>
#include <standbook/judge/keep.h>
#include <stdlib.h>
#include <string.h>

static const char plan[] = "plan: One\nunits: [mm]\nsteps:\n  All:\n    checks:\n"
                           "      lash: 0.10..0.20\n      clean: yes\n";

static Assessment *assess_story(const Story *story)
{
    return assess(story->plan, (const Entry *const *)story->entries->pdata, story->entries->len, 0,
                  NULL);
}

// The same kept form as if it was made under another edition of the rules.
static GPtrArray *differences_under(const char *kept, const char *edition, const Assessment *today)
{
    const char *rest = strstr(kept, ",\"upto\"");
    g_autofree char *other = g_strconcat("{\"edition\":", edition, rest, NULL);
    return assessment_differences(other, today, NULL);
}

// Why it is judged differently is told once, and only where something is.
static void expect_edition(const char *kept, const Assessment *then, const Assessment *today)
{
    static const struct {
        const char *edition, *says;
    } rows[] = {
        {"\"4\"", "the rules are edition 7 now, the seal was made under edition 4"},
        {"\"8\"", "the rules are edition 7 here, the seal was made under edition 8"},
        {"\"7\"", NULL},
        {"null", NULL},
        {"\"x\"", NULL},
    };
    for (guint i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(GPtrArray) same = differences_under(kept, rows[i].edition, then);
        g_autoptr(GPtrArray) differences = differences_under(kept, rows[i].edition, today);
        ck_assert_uint_eq(same->len, 0);
        ck_assert_uint_eq(differences->len, rows[i].says ? 2 : 1);
        if (rows[i].says)
            ck_assert_str_eq(differences->pdata[1], rows[i].says);
    }
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
    ck_assert_str_eq(kept, "{\"edition\":\"7\",\"upto\":3,\"counts\":{\"open\":2,\"pass\":1,"
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
    expect_edition(kept, then, today);
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

START_TEST(what_changed_alike_is_told_in_runs)
{
    Story story;
    story_begin(&story, "plan: One\nunits: [mm, N·m]\naxes: {main: 1..5, end: front/rear}\n"
                        "steps:\n  All:\n    fasteners:\n"
                        "      caps: {bolts: 1..6, stages: 40 > 60, order: 3-4-2-5-1-6}\n"
                        "    checks:\n      bore: {at: [main, end], limits: 1..2}\n"
                        "      lash: 0.10..0.20\n");
    Assessment *today = assess_story(&story);
    static const char kept[] = "{\"edition\":null,\"requirements\":["
                               "{\"name\":\"sign All, 1\",\"verdict\":\"open\"},"
                               "{\"name\":\"read lash\",\"verdict\":\"pass\"},"
                               "{\"name\":\"bolt caps in All[4], stage 1\",\"verdict\":\"pass\"},"
                               "{\"name\":\"read bore[1, rear]\",\"verdict\":\"open\"}]}";
    GPtrArray *differences = assessment_differences(kept, today, NULL);
    ck_assert_uint_eq(differences->len, 5);
    ck_assert_str_eq(differences->pdata[0],
                     "bolt caps in All[1 to 3, 5, 6], stage 1: not asked then, open today");
    ck_assert_str_eq(differences->pdata[1], "bolt caps in All[4], stage 1: pass then, open today");
    ck_assert_str_eq(differences->pdata[2],
                     "bolt caps in All[1 to 6], stage 2: not asked then, open today");
    ck_assert_str_eq(differences->pdata[3],
                     "read bore[1, front; 2, front to 5, rear]: not asked then, open today");
    ck_assert_str_eq(differences->pdata[4], "read lash: pass then, open today");
    g_ptr_array_unref(differences);
    assessment_free(today);
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("keep");
    TCase *tcase = tcase_create("keep");
    tcase_add_test(tcase, kept_and_compared);
    tcase_add_test(tcase, what_changed_alike_is_told_in_runs);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
