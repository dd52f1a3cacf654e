#include "story.h"

#include <stdlib.h>

// Tools, lots, clocks and signatures in record.md §3 and §5: the project's design, no published
// source. Intervals and ranges of tools are held to their sources in tests/rules.
static const char plan[] =
    "plan: Evidence\n"
    "units: [mm, N·m, °, min]\n"
    "axes: {main: 1..2, grade: A/B}\n"
    "given: {wall: {A: 0, B: 0.020}}\n"
    "consumables:\n"
    "  sealant: {kind: silicone, fit within: 5 min, fluid after: 30 min, run after: 60 min}\n"
    "steps:\n"
    "  Build:\n"
    "    fit:\n"
    "      shells: {at: main, use: new, track: lot}\n"
    "      cover: {use: may be reused}\n"
    "    fasteners:\n"
    "      caps: {bolts: 1..2, stages: 40}\n"
    "      studs: {bolts: 1..2, stages: 40, use: new, track: lot}\n"
    "      sump: {bolts: 1..2, stages: 40 > 60, lubricant: sealant}\n"
    "    checks:\n"
    "      bore: {at: main, decimals: 3}\n"
    "      clearance = bore - wall: {limits: 50.000..50.050, choose: grade}\n"
    "      width: 10..11\n"
    "      widest = max(bore, width): at most 60\n"
    "      pair: {limits: 10..11, with: studs}\n"
    "      drag: {limits: 0..9, rests on: cover}\n"
    "      lift: {limits: 0..9, with: cover}\n"
    "    hold: {seen: two persons}\n"
    "  Fill:\n"
    "    begins: fluid\n"
    "  Run:\n"
    "    begins: run\n";

static void take(Story *story, const char *kind, const char *what, const char *body)
{
    char *text = g_strdup_printf("{'what':'%s','format':1,'seq':9,'body':{%s}}", what, body);
    story_enter(story, kind, text);
    g_free(text);
}

#define TOOL "6f1c2d30-0000-4000-8000-000000000009"
#define GAUGE "6f1c2d30-0000-4000-8000-000000000001"
#define LOT "6f1c2d30-0000-4000-8000-0000000000b1"
#define LOT_B "6f1c2d30-0000-4000-8000-0000000000b2"
#define TUBE "6f1c2d30-0000-4000-8000-0000000000c1"

static void calibrate(Story *story, const char *kind, const char *tool, const char *date,
                      const char *rest)
{
    char *body = g_strdup_printf("'id':'6f1c2d30-0000-4000-8000-0000000002%02u','tool':'%s','date':"
                                 "'%s',%s",
                                 story->entries->len, tool, date, rest);
    take(story, kind, "calibration", body);
    g_free(body);
}

// All happens on 2001-09-09 (second 1,000,000,000), from 01:46 on.
static void begin(Story *story)
{
    story_begin(story, plan);
    take(story, "take", "tool",
         "'id':'" TOOL "','label':'W1','sort':'click wrench','least':{'value':'20','unit':'N·m',"
         "'typed':'20'},'greatest':{'value':'100','unit':'N·m','typed':'100'}");
    take(story, "take", "tool", "'id':'" GAUGE "','label':'G1','sort':'micrometer'");
}

static const char good_gauge[] =
    "'found':'good','uncertainty':{'value':'1/1000','unit':'mm','typed':'0.001'}";

START_TEST(overdue_and_cleared)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", TOOL, "2000-08-01", "'due':'2001-08-01','found':'good'");
    story_tighten(&story, "caps", "Build", 1, "1");
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    story_enter(&story, "uphold",
                "{'asked':'bolt','name':'caps','step':'Build','place':['1'],'doubt':'tool','why':"
                "'feels right'}");
    story_expect(&story, "bolt caps in Build[1], stage 1", "pass");
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'wrong'"); // ends the uphold
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    story_end(&story);
}
END_TEST

START_TEST(found_good_clears_an_overdue_use)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", TOOL, "2000-08-01", "'due':'2001-08-01','found':'good'");
    story_tighten(&story, "caps", "Build", 1, "1");
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'adjusted'");
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    story_enter(&story, "strike", "{'entry':5,'cause':'typo'}");
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'good'");
    story_expect(&story, "bolt caps in Build[1], stage 1", "pass");
    story_end(&story);
}
END_TEST

START_TEST(unknown_tools_and_ranges)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Build", 1, "1"); // a wrench that nobody calibrated
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    story_tick(&story, "{'tightening':'caps','step':'Build','stage':1,'bolts':['2']}");
    story_expect(&story, "bolt caps in Build[2], stage 1", "in doubt tool");
    story_read(&story, "width", "", "10.5", "105/10", "01"); // a gauge known by its graduation
    story_expect(&story, "read width", "pass");
    story_end(&story);
}
END_TEST

// `found wrong, 7, 9`: the state of the tool that is the reason of a doubt, the use, the entry.
static void expect_cause(const Story *story, const char *name, const char *tool, const char *redone)
{
    g_autoptr(Assessment) assessment = story_assess(story);
    const Requirement *made = story_find(assessment, name);
    const ToolCause causes[] = {made->tool, made->redone};
    const char *expected[] = {tool, redone};
    for (guint i = 0; i < G_N_ELEMENTS(causes); i++) {
        g_autofree char *got =
            g_strdup_printf("%s, %" G_GINT64_FORMAT ", %" G_GINT64_FORMAT,
                            tool_state_words(causes[i].state), causes[i].use, causes[i].entry);
        ck_assert_str_eq(got, expected[i]);
    }
}

static const char no_cause[] = "good, 0, 0";

// It goes into what is worked out even where another reading gives the value, stays beside what was
// upheld, and goes no further from there.
START_TEST(a_doubt_for_a_tool_keeps_its_cause)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", GAUGE, "2001-01-01", good_gauge); // #3
    story_take_tool(&story, "03", "micrometer", "1/1000");
    story_read(&story, "bore", "'place':['1'],", "50.020", "50020/1000", "03"); // #6
    story_read(&story, "width", "", "10.5", "105/10", "01");                    // #7
    expect_cause(&story, "read width", no_cause, no_cause);
    calibrate(&story, "news", GAUGE, "2001-09-10", "'found':'wrong'"); // #8
    expect_cause(&story, "read width", "found wrong, 7, 8", no_cause);
    expect_cause(&story, "read widest[1]", "found wrong, 7, 8", no_cause);
    expect_cause(&story, "read bore[1]", no_cause, no_cause);
    story_enter(&story, "uphold",
                "{'asked':'read','name':'width','step':'Build','doubt':'tool','why':'no matter'}");
    story_expect(&story, "read width", "pass");
    expect_cause(&story, "read width", "found wrong, 7, 8", no_cause);
    expect_cause(&story, "read widest[1]", no_cause, no_cause);
    story_end(&story);
}
END_TEST

START_TEST(a_bolt_keeps_why_it_was_done_again)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", TOOL, "2000-08-01", "'due':'2001-08-01','found':'good'"); // #3
    story_tick(&story, "{'tightening':'caps','step':'Build','stage':1,'bolts':['2']}");
    story_tighten(&story, "caps", "Build", 1, "1"); // #5
    expect_cause(&story, "bolt caps in Build[1], stage 1", "overdue, 5, 3", no_cause);
    expect_cause(&story, "bolt caps in Build[2], stage 1", "unknown, 4, 4", no_cause);
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'wrong'"); // #6
    expect_cause(&story, "bolt caps in Build[1], stage 1", "found wrong, 5, 6", no_cause);
    story_tighten(&story, "caps", "Build", 1, "1"); // #7: with the same
    expect_cause(&story, "bolt caps in Build[1], stage 1", "found wrong, 7, 6", no_cause);
    story_slacken(&story, "caps", "Build", "1");
    story_tick(&story, "{'tightening':'caps','step':'Build','stage':1,'bolts':['1'],'tool':"
                       "'6f1c2d30-0000-4000-8000-000000000004'}");
    expect_cause(&story, "bolt caps in Build[1], stage 1", "unknown, 9, 9", "found wrong, 7, 6");
    story_end(&story);
}
END_TEST

START_TEST(a_gauge_found_wrong_is_redone_with_another)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", GAUGE, "2001-01-01", good_gauge);
    story_take_tool(&story, "03", "micrometer", "1/100");
    story_read(&story, "width", "", "10.500", "10500/1000", "01");
    calibrate(&story, "news", GAUGE, "2001-09-10", "'found':'wrong'");
    story_expect(&story, "read width", "in doubt tool");
    story_read(&story, "width", "", "10.70", "1070/100", "03"); // coarser, but nothing to doubt
    story_expect(&story, "read width", "pass");
    story_read(&story, "width", "", "10.500", "10500/1000", "01"); // known to be wrong, and finer
    story_expect(&story, "read width", "in doubt tool");
    story_end(&story);
}
END_TEST

// An adjustment that states no uncertainty leaves the one before in force, not the graduation.
START_TEST(an_uncertainty_stands_until_another_is_stated)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", GAUGE, "2001-01-01",
              "'found':'good','uncertainty':{'value':'1','unit':'mm','typed':'1'}");
    calibrate(&story, "take", GAUGE, "2001-02-01", "'found':'adjusted'");
    story_read(&story, "width", "", "10.500", "10500/1000", "01");
    story_expect(&story, "read width", "in doubt gauge");
    story_end(&story);
}
END_TEST

static void begin_lots(Story *story)
{
    begin(story);
    calibrate(story, "take", TOOL, "2001-01-01", "'found':'good'");
    calibrate(story, "take", GAUGE, "2001-01-01", good_gauge);
    take(story, "take", "lot",
         "'id':'" LOT "','label':'L1','part':'shells','grade':'A','expires':'2001-12-31'");
    take(story, "take", "lot",
         "'id':'" LOT_B "','label':'L2','part':'shells','grade':'B','expires':'2001-09-08'");
}

static void fit(Story *story, const char *part, const char *place, const char *lot, const char *use)
{
    char *body = g_strdup_printf("{'part':'%s',%s'lot':'%s','use':'%s'}", part, place, lot, use);
    story_enter(story, "fit", body);
    g_free(body);
}

START_TEST(lots_expired_reused_and_untracked)
{
    Story story;
    begin_lots(&story);
    fit(&story, "shells", "'place':['1'],", LOT, "new");
    fit(&story, "shells", "'place':['2'],", LOT_B, "new");
    story_expect(&story, "fit shells[1]", "pass");
    story_expect(&story, "fit shells[2]", "in doubt part");
    fit(&story, "shells", "'place':['2'],", LOT, "reused");
    story_expect(&story, "fit shells[2]", "in doubt part");
    story_enter(&story, "fit", "{'part':'shells','place':['2'],'use':'new'}");
    story_expect(&story, "fit shells[2]", "open");
    story_expect_notes(&story, "fit shells[2]", "fitted, but its lot is not said");
    story_end(&story);
}
END_TEST

START_TEST(a_recall_ends_an_uphold)
{
    Story story;
    begin_lots(&story);
    fit(&story, "shells", "'place':['1'],", LOT, "reused");
    story_enter(&story, "uphold",
                "{'asked':'fit','name':'shells','place':['1'],'doubt':'part','why':'as new'}");
    story_expect(&story, "fit shells[1]", "pass");
    take(&story, "news", "recall", "'lot':'" LOT "','why':'letter'");
    story_expect(&story, "fit shells[1]", "in doubt part");
    story_enter(&story, "uphold",
                "{'asked':'fit','name':'shells','place':['1'],'doubt':'part','why':'seen'}");
    story_expect(&story, "fit shells[1]", "pass");
    story_end(&story);
}
END_TEST

START_TEST(recalled_bolts_and_what_was_read_with_them)
{
    Story story;
    begin_lots(&story);
    fit(&story, "studs", "", LOT, "new");
    story_tighten(&story, "studs", "Build", 1, "1 2");
    story_read(&story, "pair", "", "10.5", "105/10", "01");
    story_expect(&story, "read pair", "pass");
    take(&story, "news", "recall", "'lot':'" LOT "','why':'letter'");
    story_expect(&story, "bolt studs in Build[1], stage 1", "in doubt part");
    story_expect(&story, "read pair", "in doubt basis");
    story_enter(&story, "uphold",
                "{'asked':'bolt','name':'studs','step':'Build','doubt':'part','why':'tested'}");
    story_expect(&story, "bolt studs in Build[1], stage 1", "pass");
    story_expect(&story, "read pair", "pass");
    story_end(&story);
}
END_TEST

START_TEST(the_grade_chosen)
{
    Story story;
    begin_lots(&story);
    story_read(&story, "bore", "'place':['1'],", "50.060", "50060/1000", "01");
    story_read(&story, "bore", "'place':['2'],", "50.030", "50030/1000", "01");
    story_expect(&story, "read clearance[1]", "open"); // nothing chosen yet
    story_enter(&story, "choose", "{'check':'clearance','place':['1'],'label':'B'}");
    story_enter(&story, "choose", "{'check':'clearance','place':['2'],'label':'A'}");
    story_expect(&story, "read clearance[1]", "pass");
    fit(&story, "shells", "'place':['1'],", LOT, "new");
    fit(&story, "shells", "'place':['2'],", LOT, "new");
    story_expect(&story, "fit shells[1]", "in doubt part");
    story_expect(&story, "fit shells[2]", "pass");
    story_enter(&story, "uphold",
                "{'asked':'fit','name':'shells','place':['1'],'doubt':'part','why':'measured'}");
    story_expect(&story, "fit shells[1]", "pass");
    story_enter(&story, "choose", "{'check':'clearance','place':['1'],'label':'B'}");
    story_expect(&story, "fit shells[1]", "in doubt part"); // chosen anew
    story_end(&story);
}
END_TEST

START_TEST(a_part_replaced_disturbs)
{
    Story story;
    begin_lots(&story);
    story_enter(&story, "fit", "{'part':'cover','use':'reused','evidence':'flat'}");
    story_read(&story, "drag", "", "1", "1", "01");
    story_expect(&story, "read drag", "pass");
    story_enter(&story, "fit", "{'part':'cover','use':'new'}");
    story_expect(&story, "read drag", "in doubt basis");
    story_enter(&story, "strike", "{'entry':9,'cause':'wrong place'}");
    story_expect(&story, "read drag", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_reading_with_a_part_that_is_not_there)
{
    Story story;
    begin_lots(&story);
    story_read(&story, "lift", "", "1", "1", "01");
    story_expect(&story, "read lift", "in doubt basis");
    story_enter(&story, "fit", "{'part':'cover','use':'new'}");
    story_read(&story, "lift", "", "1", "1", "01");
    story_expect(&story, "read lift", "pass");
    story_end(&story);
}
END_TEST

static void lay(Story *story, const char *on)
{
    char *body = g_strdup_printf("{'consumable':'sealant','step':'Build','tightening':'%s'}", on);
    story_enter(story, "laid", body);
    g_free(body);
}

START_TEST(sealant_and_its_clocks)
{
    Story story;
    begin_lots(&story);
    lay(&story, "sump"); // 7th entry, minute 6
    story_tighten(&story, "sump", "Build", 1, "1 2");
    story.minute += 20;
    story_tighten(&story, "sump", "Build", 2, "1 2"); // the joint is closed: no window
    story_expect(&story, "bolt sump in Build[1], stage 1", "pass");
    story_expect(&story, "bolt sump in Build[1], stage 2", "pass");
    story_tighten(&story, "sump", "Build", 1, "1 2"); // gone round once more: still closed
    story_expect(&story, "bolt sump in Build[1], stage 1", "pass");
    story_enter(&story, "sign", "{'step':'Fill','signature':1}");
    story_expect(&story, "sign Fill, 1", "in doubt window");
    story.minute = 6 + 30;
    story_enter(&story, "sign", "{'step':'Fill','signature':1}"); // after 30 minutes
    story_expect(&story, "sign Fill, 1", "pass");
    story_enter(&story, "sign", "{'step':'Run','signature':1}");
    story_expect(&story, "sign Run, 1", "in doubt window");
    story_enter(&story, "uphold",
                "{'asked':'sign','name':'Run','stage':1,'doubt':'window','why':'warm'}");
    story_expect(&story, "sign Run, 1", "pass");
    story_slacken(&story, "sump", "Build", "1"); // closed again with old sealant
    story_tighten(&story, "sump", "Build", 1, "1");
    story_expect(&story, "bolt sump in Build[1], stage 1", "in doubt part");
    story_end(&story);
}
END_TEST

START_TEST(sealant_laid_on_a_part)
{
    Story story;
    begin_lots(&story);
    lay(&story, "cover");
    story.minute += 5; // six minutes
    story_enter(&story, "fit", "{'part':'cover','use':'new'}");
    story_expect(&story, "fit cover", "in doubt window");
    lay(&story, "cover");
    story_enter(&story, "fit", "{'part':'cover','use':'new'}");
    story_expect(&story, "fit cover", "pass");
    story_end(&story);
}
END_TEST

START_TEST(an_expired_tube)
{
    Story story;
    begin_lots(&story);
    take(&story, "take", "consumable",
         "'id':'" TUBE "','label':'SS-1','sort':'sealant','expires':'2001-09-08'");
    story_enter(&story, "laid",
                "{'consumable':'sealant','step':'Build','tightening':'sump','item':'" TUBE "'}");
    story_tighten(&story, "sump", "Build", 1, "1");
    story_expect(&story, "bolt sump in Build[1], stage 1", "in doubt part");
    story_end(&story);
}
END_TEST

START_TEST(a_clock_set_back)
{
    Story story;
    begin_lots(&story);
    lay(&story, "sump");
    story.minute -= 3;
    story_tighten(&story, "sump", "Build", 1, "1");
    story_expect(&story, "bolt sump in Build[1], stage 1", "in doubt clock");
    story_tighten(&story, "caps", "Build", 1, "1 2"); // no wait, no window
    story_expect(&story, "bolt caps in Build[1], stage 1", "pass");
    story_end(&story);
}
END_TEST

// A card typed in later stands by its own times, where its person puts it.
START_TEST(a_card_typed_in_later)
{
    Story story;
    begin_lots(&story);
    lay(&story, "sump"); // 7, minute 6
    story.minute += 60;
    Entry *tick = story_enter(&story, "tick",
                              "{'tightening':'sump','step':'Build','stage':1,'bolts':['1','2'],"
                              "'tool':'" TOOL "'}");
    story_expect(&story, "bolt sump in Build[1], stage 1", "in doubt window");
    tick->done = moment_text(1000000000 + 60 * 8);
    story_expect(&story, "bolt sump in Build[1], stage 1", "pass");
    story_slacken(&story, "sump", "Build", "2");
    tick = story_enter(&story, "tick",
                       "{'tightening':'sump','step':'Build','stage':2,'bolts':['1','2'],'tool':"
                       "'" TOOL "'}");
    story_expect(&story, "bolt sump in Build[1], stage 2", "in doubt order");
    story_expect(&story, "bolt sump in Build[2], stage 2", "in doubt order");
    tick->after = 8; // before the slackening
    story_expect(&story, "bolt sump in Build[1], stage 2", "pass");
    story_expect(&story, "bolt sump in Build[2], stage 2", "open");
    story_end(&story);
}
END_TEST

START_TEST(two_persons_beside_the_builder)
{
    Story story;
    begin(&story);
    static const char *const persons[] = {"aa", "bb", "bb", "cc"};
    static const guint signatures[] = {1, 2, 3, 3};
    for (guint i = 0; i < 4; i++) {
        char *body = g_strdup_printf("{'step':'Build','signature':%u}", signatures[i]);
        Entry *entry = story_enter(&story, "sign", body);
        g_free(entry->by);
        entry->by = g_strdup_printf("6f1c2d30-0000-4000-8000-0000000000%s", persons[i]);
        g_free(body);
        if (i == 2)
            story_expect(&story, "sign Build, 3", "open");
    }
    story_expect(&story, "sign Build, 1", "pass");
    story_expect(&story, "sign Build, 3", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_wrench_found_wrong_after_the_seal)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", TOOL, "2001-01-01", "'found':'good'");
    story_tighten(&story, "caps", "Build", 1, "1");
    story_enter(&story, "seal",
                "{'gate':'hand over','covers':4,'counts':{'open':0,'pass':0,'fail':0,'in doubt':0,"
                "'conceded':0,'noted':0,'not needed':0},'edition':'1','assessment':"
                "'0000000000000000000000000000000000000000000000000000000000000000'}");
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'wrong'");
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    Assessment *assessment = story_assess(&story);
    ck_assert_int_eq(((const GateCount *)assessment->gates->pdata[0])->sealed, 5);
    assessment_free(assessment);
    story_slacken(&story, "caps", "Build", "1");
    story_expect(&story, "bolt caps in Build[1], stage 1", "open");
    story_end(&story);
}
END_TEST

// What was not known on a day does not count on it: trade.md 10.5, an uphold before the news.
START_TEST(as_it_was_known_on_that_day)
{
    Story story;
    begin(&story);
    calibrate(&story, "take", TOOL, "2001-01-01", "'found':'good'");
    story_tighten(&story, "caps", "Build", 1, "1");
    calibrate(&story, "news", TOOL, "2001-09-10", "'found':'wrong'");
    Assessment *then =
        assess(story.plan, (const Entry *const *)story.entries->pdata, story.entries->len, 4, NULL);
    ck_assert_uint_eq(story_find(then, "bolt caps in Build[1], stage 1")->verdict, VERDICT_PASS);
    ck_assert_int_eq(then->upto, 4);
    assessment_free(then);
    story_expect(&story, "bolt caps in Build[1], stage 1", "in doubt tool");
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("evidence");
    TCase *tcase = tcase_create("evidence");
    tcase_add_test(tcase, overdue_and_cleared);
    tcase_add_test(tcase, found_good_clears_an_overdue_use);
    tcase_add_test(tcase, unknown_tools_and_ranges);
    tcase_add_test(tcase, a_doubt_for_a_tool_keeps_its_cause);
    tcase_add_test(tcase, a_bolt_keeps_why_it_was_done_again);
    tcase_add_test(tcase, a_gauge_found_wrong_is_redone_with_another);
    tcase_add_test(tcase, an_uncertainty_stands_until_another_is_stated);
    tcase_add_test(tcase, lots_expired_reused_and_untracked);
    tcase_add_test(tcase, a_recall_ends_an_uphold);
    tcase_add_test(tcase, recalled_bolts_and_what_was_read_with_them);
    tcase_add_test(tcase, the_grade_chosen);
    tcase_add_test(tcase, a_part_replaced_disturbs);
    tcase_add_test(tcase, a_reading_with_a_part_that_is_not_there);
    tcase_add_test(tcase, sealant_and_its_clocks);
    tcase_add_test(tcase, sealant_laid_on_a_part);
    tcase_add_test(tcase, an_expired_tube);
    tcase_add_test(tcase, a_clock_set_back);
    tcase_add_test(tcase, a_card_typed_in_later);
    tcase_add_test(tcase, two_persons_beside_the_builder);
    tcase_add_test(tcase, a_wrench_found_wrong_after_the_seal);
    tcase_add_test(tcase, as_it_was_known_on_that_day);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
