// What is left, the workshop's record, the proof of a gate, JSON.
#include "printed.h"

#include <standbook/sheet/assessment_json.h>

static Document *what_is_left(const SheetSource *source, guint gate)
{
    (void)gate;
    return sheet_assessment(source, FALSE);
}

static Document *everything(const SheetSource *source, guint gate)
{
    (void)gate;
    return sheet_assessment(source, TRUE);
}

// Places of a check and bolts of a stage stand in one row as long as they fare alike; steps not
// begun, where there are several, in one row each.
START_TEST(an_assessment_tells_alike_things_once)
{
    static const char steps[] = "plan: Journals\n"
                                "units: [mm]\n"
                                "axes: {main: 1..3}\n"
                                "steps:\n"
                                "  Crank:\n"
                                "    checks:\n"
                                "      journal: {at: main, limits: 59.70..60.00}\n"
                                "    fasteners:\n"
                                "      caps: {bolts: 1..2, stages: 40 > 75}\n"
                                "  Rods:\n"
                                "    checks:\n"
                                "      big end: {at: main, limits: 50.00..50.10}\n"
                                "  Sump:\n"
                                "    checks:\n"
                                "      clean: yes\n";
    Story story;
    story_begin(&story, steps);
    story_take_tool(&story, "01", "micrometer", "1/1000");
    story_read(&story, "journal", "'place':['1'],", "59.99", "5999/100", "01");
    g_autofree char *left = print(&story, what_is_left, 0);
    expect_said(left, "read journal: 2, 3 59.70 to 60.00 open");
    expect_said(left, "bolt caps in Crank, stage 1: all 2 open");
    expect_said(left, "step Rods, not begun: all 4 open");
    expect_said(left, "step Sump, not begun: all 2 open");
    story_read(&story, "journal", "'place':['2'],", "60.14", "6014/100", "01");
    story_read(&story, "journal", "'place':['3'],", "60.16", "6016/100", "01");
    story_read(&story, "big end", "'place':['1'],", "50.05", "5005/100", "01");
    g_autofree char *failed = print(&story, what_is_left, 0);
    g_autofree char *kept = print(&story, record, 0);
    expect_said(kept, "caps 1, 2, stages 1 to");
    story_enter(&story, "tick",
                "{'tightening':'caps','step':'Crank','stage':1,'bolts':['1','2'],'tool':"
                "'6f1c2d30-0000-4000-8000-000000000001'}");
    g_autofree char *ticked = print(&story, record, 0);
    expect_said(ticked, "caps 1, 2, stage 1");
    expect_said(ticked, "caps 1, 2, stage 2");
    expect_silence(ticked, "caps 1, 2, stages");
    expect_said(failed, "read journal: 2, 60.14 to 60.16 ±.001 59.70 to 60.00 mm fail: high 1 2 3");
    expect_said(failed, "1 Failed, 0.14 mm over.");
    expect_said(failed, "2 Failed, 0.16 mm over.");
    expect_said(failed, "read big end: 2, 50.00 to 50.10 open");
    expect_said(failed, "look clean yes open");
    g_autofree char *all = print(&story, everything, 0);
    expect_said(all, "read journal[2] 60.14");
    expect_said(all, "read journal[3] 60.16");
    expect_said(all, "bolt caps in Crank[2], stage");
    story_end(&story);
}
END_TEST

START_TEST(the_record_holds_everything)
{
    Story story;
    begin(&story);
    g_autofree char *text = print(&story, record, 0);
    expect_said(text, "struck by #7: typo");
    expect_said(text, "late with the money");
    expect_said(text, "In sum 1020.00 GBP.");
    expect_said(text, "micrometer 2001-01-01");
    expect_said(text, "put down");
    for (guint i = 0; i < story.entries->len; i++) {
        g_autofree char *number = g_strdup_printf("#%u", i + 1);
        expect_said(text, number);
    }
    story_end(&story);
}
END_TEST

static void enter_by(Story *story, const char *digits, const char *kind, const char *body)
{
    Entry *entry = story_enter(story, kind, body);
    g_free(entry->by);
    entry->by = g_strconcat("6f1c2d30-0000-4000-8000-0000000000", digits, NULL);
}

static void enter_person(Story *story, const char *digits, const char *initials)
{
    g_autofree char *body = g_strdup_printf(
        "{'what':'person','format':1,'seq':9,'body':{'id':'6f1c2d30-0000-4000-8000-0000000000%s',"
        "'initials':'%s'}}",
        digits, initials);
    story_enter(story, "take", body);
}

// Put down, killed and picked up by the same person or by another: each is one. Two who work at the
// same step interrupt nobody.
START_TEST(interruptions_are_told_whoever_goes_on)
{
    static const char up[] = "{'step':'Block'}", seen[] = "{'check':'clean','step':'Block',"
                                                          "'answer':'yes'}";
    Story story;
    story_begin(&story, plan);
    enter_person(&story, "0a", "MO");
    enter_person(&story, "0b", "JT");
    enter_by(&story, "0a", "pick up", up);
    enter_by(&story, "0b", "pick up", up); // while MO is at it
    enter_by(&story, "0a", "look", seen);
    g_autofree char *both = print(&story, record, 0);
    expect_silence(both, "INTERRUPTIONS");
    enter_by(&story, "0b", "look", seen);
    enter_by(&story, "0a", "pick up", up); // after a kill
    g_autofree char *own = print(&story, record, 0);
    expect_said(own, "#7 2001-09-09 01:52 MO pick up Block broken off without a word: MO had it in "
                     "hand, up to #5 2001-09-09 01:50 look clean yes The maker");
    enter_by(&story, "0b", "put down", up);
    enter_by(&story, "0b", "pick up", up); // MO has not come back since
    enter_by(&story, "0b", "put down", up);
    g_autofree char *other = print(&story, record, 0);
    expect_said(other, "#8 2001-09-09 01:53 JT put down Block taken up again 2001-09-09 01:54, JT "
                       "#9 2001-09-09 01:54 JT pick up Block broken off without a word: MO had it");
    expect_said(other, "put down Block not taken up again");
    story_end(&story);
}
END_TEST

START_TEST(a_completion_report_prints_its_gaps)
{
    Story story;
    begin(&story);
    g_autofree char *before = print(&story, sheet_completion, 0);
    expect_said(before, "NOT COMPLETE for first start");
    expect_said(before, "read depth");
    expect_said(before, "7.0 ±.001, asked at least 7.0 mm.");
    expect_said(before, "sign Block, 1");
    expect_silence(before, "no leaks");
    expect_said(before, "Due beyond it, up to hand over: 2 left."); // no leaks, and signing it
    story_end(&story);
}
END_TEST

static void finish(Story *story)
{
    tick(story, "2", "'1','2','3'");
    story_read(story, "depth", "", "7.1", "71/10", "01");
    story_enter(story, "strike", "{'entry':18,'cause':'read better'}");
    story_enter(story, "look", "{'check':'clean','step':'Block','answer':'yes'}");
    story_enter(story, "sign", "{'step':'Block','signature':1}");
}

START_TEST(no_gaps_is_the_proof)
{
    Story story;
    begin(&story);
    finish(&story);
    g_autofree char *text = print(&story, sheet_completion, 0);
    expect_said(text, "Due beyond it, up to hand over: 2 left.");
    expect_said(text, "GAPS");
    expect_said(text, "Complete for first start.");
    expect_said(text, "None. Everything asked for up to this gate is done");
    expect_said(text, "CONCEDED");
    expect_said(text, "read skirt[6] 0.066 0.040 to 0.060 mm 1");
    story_end(&story);
}
END_TEST

START_TEST(what_is_left_of_a_gate_is_not_due_beyond_it)
{
    Story story;
    begin(&story);
    story_enter(&story, "look", "{'check':'no leaks','step':'Run','answer':'yes'}");
    story_enter(&story, "sign", "{'step':'Run','signature':1}");
    g_autofree char *text = print(&story, sheet_completion, 0);
    expect_said(text, "NOT COMPLETE for first start");
    expect_said(text, "Nothing is due beyond it, up to hand over.");
    story_end(&story);
}
END_TEST

START_TEST(json_says_the_same_exactly)
{
    Story story;
    begin(&story);
    const Entry *const *entries = (const Entry *const *)story.entries->pdata;
    g_autoptr(Assessment) assessment = assess(story.plan, entries, story.entries->len, 0, NULL);
    json_t *json = assessment_json(story.plan, assessment);
    int conceded, sum = 0;
    ck_assert_int_eq(json_unpack(json, "{s:{s:i}}", "counts", "conceded", &conceded), 0);
    ck_assert_int_eq(conceded, 2);
    const char *key;
    json_t *count, *each;
    json_object_foreach(json_object_get(json, "counts"), key, count) sum +=
        (int)json_integer_value(count);
    gsize i;
    ck_assert_int_eq(sum, (int)json_array_size(json_object_get(json, "requirements")));
    gboolean found = FALSE;
    json_array_foreach(json_object_get(json, "requirements"), i, each)
    {
        if (strcmp(json_string_value(json_object_get(each, "name")), "read skirt[6]") != 0)
            continue;
        found = TRUE;
        ck_assert_str_eq(json_string_value(json_object_get(each, "value")), "0.000066");
        ck_assert_str_eq(json_string_value(json_object_get(each, "shown")), "0.066");
        ck_assert_str_eq(json_string_value(json_object_get(each, "verdict")), "conceded");
        ck_assert_int_eq((int)json_integer_value(json_object_get(each, "conceded")), 15);
    }
    ck_assert(found);
    json_decref(json);
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sheet");
    TCase *tcase = tcase_create("sheet");
    tcase_add_test(tcase, an_assessment_tells_alike_things_once);
    tcase_add_test(tcase, the_record_holds_everything);
    tcase_add_test(tcase, interruptions_are_told_whoever_goes_on);
    tcase_add_test(tcase, a_completion_report_prints_its_gaps);
    tcase_add_test(tcase, no_gaps_is_the_proof);
    tcase_add_test(tcase, what_is_left_of_a_gate_is_not_due_beyond_it);
    tcase_add_test(tcase, json_says_the_same_exactly);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
