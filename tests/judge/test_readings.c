#include "story.h"

#include <stdlib.h>

// The rules of readings in record.md §2 to §5: the project's design, no published source.
static const char plan[] =
    "plan: Readings\n"
    "units: [mm, N·m, °]\n"
    "axes: {valve: 1..2, place: 1..3}\n"
    "steps:\n"
    "  Found:\n"
    "    checks:\n"
    "      found travel: {at: back/forward, decimals: 2, rests on: caps}\n"
    "      found float = found travel[forward] - found travel[back]: {limits: 0.05..0.25, "
    "settled by: [float]}\n"
    "      found lash: {limits: 0.27..0.33, settled by: [lash]}\n"
    "      found cracks: {limits: no, settled by: decision}\n"
    "      skirt: {decimals: 3}\n"
    "      bore: {limits: 0.3 % * skirt .. 0.5 % * skirt}\n"
    "      skew = max(ends) - min(ends): {limits: at most 0.50}\n"
    "      ends: {at: place, decimals: 2, rests on: gear}\n"
    "      deep = skew + skew: {limits: at most 1.00, doubt: 0.01}\n"
    "      deeper = deep + 0 mm: {limits: 0..1.00}\n"
    "      held = ends[1] - 0 mm: {limits: 0..9, rests on: caps}\n"
    "      datum: {decimals: 2}\n"
    "    fasteners:\n"
    "      caps: {bolts: 1..2, stages: 40}\n"
    "    fit: {gear: {use: may be reused}}\n"
    "  Lash:\n"
    "    checks:\n"
    "      float: {limits: 0.05..0.25}\n"
    "      lash: {at: valve, limits: 0.27..0.33, rests on: [caps], set: {move: screw, unit: turn, "
    "step: 1/8 turn, loose: yes}}\n"
    "      play: {at: [valve, to/fro], decimals: 2}\n"
    "      slack = play[fro] - play[to] - datum: {limits: 0.02..0.06, rests on: [caps], set: "
    "{move: bracket, unit: mm}}\n"
    "  Retorque:\n"
    "    after: Lash\n"
    "    retighten: {caps: as before}\n"
    "    read again: [lash]\n"
    "    checks:\n"
    "      found hot: {at: valve, limits: 0.27..0.33, settled by: [lash in Retorque]}\n"
    "  Visit:\n"
    "    after: Retorque\n"
    "    read again: [lash]\n";

static void begin(Story *story)
{
    story_begin(story, plan);
    story_take_tool(story, "01", "feelers", "1/1000");
    story_take_tool(story, "02", "wrench", "1/1000");
}

static const char first[] = "'place':['1'],", second[] = "'place':['2'],";

static void read_in(Story *story, const char *check, const char *place, const char *step,
                    const char *typed)
{
    char *body =
        g_strdup_printf("{'check':'%s',%s'step':'%s','value':{'value':'%s/100','unit':'mm',"
                        "'typed':'0.%s'},'tool':'6f1c2d30-0000-4000-8000-000000000001'}",
                        check, place, step, typed, typed);
    story_enter(story, "read", body);
    g_free(body);
}

START_TEST(a_move_disturbs_its_own_place)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "30");
    read_in(&story, "lash", second, "Lash", "40");
    story_enter(&story, "move", "{'check':'lash','place':['2'],'step':'Lash'}");
    story_expect(&story, "read lash[1]", "pass");
    story_expect(&story, "read lash[2]", "in doubt basis");
    read_in(&story, "lash", second, "Lash", "31");
    story_expect(&story, "read lash[2]", "pass"); // the next trial: the first is no other opinion
    story_enter(&story, "move", "{'check':'lash','step':'Lash'}");
    story_expect(&story, "read lash[1]", "in doubt basis");
    story_end(&story);
}
END_TEST

static void read_play(Story *story, guint valve, const char *to, const char *fro)
{
    g_autofree char *one = g_strdup_printf("'place':['%u','to'],", valve);
    g_autofree char *other = g_strdup_printf("'place':['%u','fro'],", valve);
    read_in(story, "play", one, "Lash", to);
    read_in(story, "play", other, "Lash", fro);
}

// `datum` was read in a step before, once for all trials.
START_TEST(a_move_disturbs_what_is_read_for_its_formula)
{
    Story story;
    begin(&story);
    read_in(&story, "datum", "", "Found", "10");
    read_play(&story, 1, "20", "34");
    read_play(&story, 2, "20", "30");
    story_expect(&story, "read slack[1]", "pass");
    story_expect(&story, "read slack[2]", "fail low");
    story_enter(&story, "move", "{'check':'slack','place':['2'],'step':'Lash'}");
    story_expect(&story, "read play[1, fro]", "noted");
    story_expect(&story, "read play[2, fro]", "in doubt basis");
    story_expect(&story, "read slack[1]", "pass");
    story_expect(&story, "read slack[2]", "in doubt basis");
    read_play(&story, 2, "20", "34");
    story_expect(&story, "read slack[2]", "pass"); // nothing stands on the first trial's readings
    story_enter(&story, "slacken", "{'tightening':'caps','step':'Found','bolts':['1','2']}");
    story_expect(&story, "read slack[2]", "in doubt basis");
    story_expect(&story, "read play[2, to]", "noted"); // only the setting rests on the caps
    read_play(&story, 2, "20", "34");
    story_expect(&story, "read slack[2]", "pass");
    story_expect(&story, "read slack[1]", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(a_struck_move_joins_what_was_read_for_its_formula)
{
    Story story;
    begin(&story);
    read_in(&story, "datum", "", "Found", "10"); // 5
    story_enter(&story, "move", "{'check':'slack','place':['1'],'step':'Lash'}");
    read_play(&story, 1, "20", "34");
    read_play(&story, 2, "20", "34");
    story_enter(&story, "strike", "{'entry':6,'cause':'not done'}");
    story_expect(&story, "read play[1, to]", "in doubt basis");
    story_expect(&story, "read slack[1]", "in doubt basis");
    story_expect(&story, "read slack[2]", "pass");
    read_play(&story, 1, "20", "34");
    story_expect(&story, "read slack[1]", "pass");
    story_end(&story);
}
END_TEST

START_TEST(loose_readings_only_advise)
{
    Story story;
    begin(&story);
    story_enter(&story, "read",
                "{'check':'lash','place':['1'],'step':'Lash','state':'loose','value':{'value':"
                "'3/10','unit':'mm','typed':'0.3'}}");
    story_expect(&story, "read lash[1]", "open");
    story_end(&story);
}
END_TEST

START_TEST(a_struck_move_joins_the_trial_before)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "30"); // 5
    story_enter(&story, "move", "{'check':'lash','place':['1'],'step':'Lash'}");
    read_in(&story, "lash", first, "Lash", "32");
    read_in(&story, "lash", second, "Lash", "30");
    story_expect(&story, "read lash[1]", "pass");
    story_enter(&story, "strike", "{'entry':6,'cause':'not done'}");
    story_expect(&story, "read lash[1]", "in doubt basis");
    story_expect(&story, "read lash[2]", "pass");
    read_in(&story, "lash", first, "Lash", "30"); // now it is known what it was read in
    story_expect(&story, "read lash[1]", "pass");
    story_end(&story);
}
END_TEST

START_TEST(read_again_in_later_steps)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "40");
    story_expect(&story, "read lash[1]", "fail high");
    story_slacken(&story, "caps", "Retorque", "1 2");
    story_expect(&story, "read lash[1]", "fail high"); // as it stood before that step
    story_expect(&story, "read lash in Retorque[1]", "open");
    read_in(&story, "lash", first, "Retorque", "26");
    story_expect(&story, "read lash[1]", "fail high");
    read_in(&story, "lash", first, "Visit", "30");
    story_expect(&story, "read lash[1]", "noted");
    story_expect(&story, "read lash in Retorque[1]", "noted");
    story_expect(&story, "read lash in Visit[1]", "pass");
    Assessment *assessment = story_assess(&story);
    ck_assert_uint_eq(story_find(assessment, "read lash[1]")->own_verdict, VERDICT_FAIL);
    assessment_free(assessment);
    story_end(&story);
}
END_TEST

START_TEST(what_is_not_needed_is_not_noted)
{
    Story story;
    begin(&story);
    story_enter(&story, "not needed",
                "{'asked':'read','name':'lash','step':'Lash','place':['1'],'why':'one valve'}");
    read_in(&story, "lash", first, "Retorque", "30");
    story_expect(&story, "read lash[1]", "not needed");
    story_end(&story);
}
END_TEST

// Where nobody asks it again, the work of that step disturbs it like any other.
START_TEST(a_reading_again_that_is_not_needed)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "30");
    story_slacken(&story, "caps", "Retorque", "1 2");
    story_expect(&story, "read lash[1]", "pass");
    story_enter(&story, "not needed",
                "{'asked':'read','name':'lash','step':'Retorque','place':['1'],'why':'no'}");
    story_enter(&story, "not needed",
                "{'asked':'read','name':'lash','step':'Visit','place':['1'],'why':'no'}");
    story_expect(&story, "read lash[1]", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(a_finding_settled_by_what_was_read_again)
{
    Story story;
    begin(&story);
    read_in(&story, "found hot", first, "Retorque", "26");
    story_expect(&story, "read found hot[1]", "open");
    read_in(&story, "lash", first, "Retorque", "30");
    story_expect(&story, "read found hot[1]", "noted");
    read_in(&story, "lash", first, "Visit", "31"); // the one in Retorque is noted now
    story_expect(&story, "read lash in Retorque[1]", "noted");
    story_expect(&story, "read found hot[1]", "noted");
    story_end(&story);
}
END_TEST

START_TEST(later_work_never_unsettles_a_finding)
{
    Story story;
    begin(&story);
    read_in(&story, "found travel", "'place':['back'],", "Found", "0");
    read_in(&story, "found travel", "'place':['forward'],", "Found", "31");
    story_expect(&story, "read found float", "open");
    story_slacken(&story, "caps", "Found", "1 2");
    read_in(&story, "found travel", "'place':['forward'],", "Found", "12");
    Assessment *assessment = story_assess(&story);
    const Requirement *made = story_find(assessment, "read found float");
    ck_assert_uint_eq(made->own_verdict, VERDICT_FAIL);
    ck_assert_uint_eq(made->own_reason, REASON_HIGH);
    char *value = number_text(made->value);
    ck_assert_str_eq(value, "0.00031");
    g_free(value);
    assessment_free(assessment);
    read_in(&story, "float", "", "Lash", "12");
    story_expect(&story, "read found float", "noted");
    story_end(&story);
}
END_TEST

START_TEST(a_finding_still_open_keeps_its_gate)
{
    Story story;
    begin(&story);
    story_enter(&story, "look", "{'check':'found cracks','answer':'yes'}");
    story_expect(&story, "look found cracks", "open");
    Assessment *assessment = story_assess(&story);
    ck_assert(requirement_is_left(story_find(assessment, "look found cracks")));
    assessment_free(assessment);
    story_enter(&story, "concede",
                "{'asked':'look','name':'found cracks','reasons':['look'],'why':'x','who':'y'}");
    story_expect(&story, "look found cracks", "open"); // it is answered, not conceded
    assessment = story_assess(&story);
    ck_assert_int_eq(story_find(assessment, "look found cracks")->conceded, 0);
    assessment_free(assessment);
    story_enter(&story, "decide",
                "{'check':'found cracks','decision':'replace','why':'cracked','consent':'letter'}");
    story_expect(&story, "look found cracks", "noted");
    story_enter(&story, "decide",
                "{'check':'found cracks','decision':'look closer','why':'perhaps'}");
    story_expect(&story, "look found cracks", "open");
    story_end(&story);
}
END_TEST

START_TEST(a_limit_not_worked_out_yet_leaves_it_open)
{
    Story story;
    begin(&story);
    story_read(&story, "bore", "", "0.35", "35/100", "01");
    story_expect(&story, "read bore", "open");
    story_expect_notes(&story, "read bore", "its limit uses something that is not read yet");
    story_read(&story, "skirt", "", "89.940", "89940/1000", "01");
    story_expect(&story, "read bore", "pass"); // 0.27 to 0.45
    story_enter(&story, "rework", "{'name':'skirt','work':'ground'}");
    story_expect(&story, "read skirt", "in doubt basis");
    story_expect(&story, "read bore", "in doubt basis"); // so does what its limit uses
    story_end(&story);
}
END_TEST

static void read_ends(Story *story)
{
    story_read(story, "ends", "'place':['1'],", "0.10", "10/100", "01");
    story_read(story, "ends", "'place':['2'],", "0.20", "20/100", "01");
    story_read(story, "ends", "'place':['3'],", "0.30", "30/100", "01");
}

START_TEST(an_uphold_ends_with_a_later_disturbance)
{
    Story story;
    begin(&story);
    read_ends(&story);
    story_expect(&story, "read deep", "pass");
    story_enter(&story, "rework", "{'name':'ends','place':['1'],'work':'filed'}");
    story_expect(&story, "read deep", "in doubt basis");
    story_enter(&story, "uphold",
                "{'asked':'read','name':'skew','doubt':'basis','why':'other end'}");
    story_expect(&story, "read skew", "pass");
    story_expect(&story, "read deep", "pass");
    // The middle one is neither the least nor the greatest, but the value uses it all the same.
    story_enter(&story, "rework", "{'name':'ends','place':['2'],'work':'filed'}");
    story_expect(&story, "read skew", "in doubt basis");
    story_expect(&story, "read deep", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(an_uphold_of_a_reading_ends_likewise)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "30");
    story_slacken(&story, "caps", "Lash", "1");
    story_enter(&story, "uphold",
                "{'asked':'read','name':'lash','step':'Lash','place':['1'],'doubt':'basis','why':"
                "'other side'}");
    story_expect(&story, "read lash[1]", "pass");
    story_slacken(&story, "caps", "Lash", "2");
    story_expect(&story, "read lash[1]", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(an_uphold_outlives_what_came_before_it)
{
    Story story;
    begin(&story);
    read_ends(&story);
    story_enter(&story, "rework", "{'name':'ends','place':['1'],'work':'filed'}");
    story_enter(&story, "uphold", "{'asked':'read','name':'deep','doubt':'basis','why':'x'}");
    story_expect(&story, "read skew", "in doubt basis");
    story_expect(&story, "read deep", "pass");
    story_read(&story, "lash", "'place':['1'],", "0.30", "30/100", "01");
    story_expect(&story, "read deep", "pass");
    story_enter(&story, "fit", "{'part':'gear','use':'new'}");
    story_expect(&story, "read deep", "pass"); // the first known to be there
    story_enter(&story, "fit", "{'part':'gear','use':'new'}");
    story_expect(&story, "read deep", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(a_formula_that_rests_on_bolts_itself)
{
    Story story;
    begin(&story);
    read_ends(&story);
    story_expect(&story, "read held", "pass");
    story_slacken(&story, "caps", "Found", "1");
    story_expect(&story, "read held", "in doubt basis");
    story_expect(&story, "read skew", "pass");
    read_ends(&story);
    story_expect(&story, "read held", "pass");
    story_end(&story);
}
END_TEST

// u² of `deep`, base units: 4 (U² / 4 twice, of one gauge: the worse of (Σc)² = 0 and Σc² = 2 ·
// 2²) plus its method's 0.01² / 4. What is worked out from it keeps the method's part.
START_TEST(the_method_of_a_formula_travels)
{
    Story story;
    begin(&story);
    read_ends(&story);
    Assessment *assessment = story_assess(&story);
    const Requirement *deep = story_find(assessment, "read deep");
    const Requirement *deeper = story_find(assessment, "read deeper");
    Number *expected = number_from_text("27/1000000000000", NULL); // (8·0.001² + 0.01²) / 4 mm²
    ck_assert(number_equal(deep->variance, expected));
    ck_assert(number_equal(deeper->variance, deep->variance));
    number_free(expected);
    assessment_free(assessment);
    story_end(&story);
}
END_TEST

START_TEST(rework_of_a_formula_disturbs_what_it_uses)
{
    Story story;
    begin(&story);
    read_ends(&story);
    story_enter(&story, "rework", "{'name':'skew','work':'ground'}");
    story_expect(&story, "read ends[2]", "in doubt basis");
    story_expect(&story, "read skew", "in doubt basis");
    read_ends(&story);
    story_expect(&story, "read skew", "pass");
    story_end(&story);
}
END_TEST

START_TEST(bounds_that_contradict_a_value)
{
    Story story;
    begin(&story);
    story_read(&story, "float", "", "<0.03", "<3/100", "01");
    story_expect(&story, "read float", "fail low");
    story_read(&story, "float", "", "0.02", "2/100", "01");
    story_expect(&story, "read float", "fail low");
    story_read(&story, "float", "", "0.10", "10/100", "01");
    story_expect(&story, "read float", "in doubt disagree");
    story_end(&story);
}
END_TEST

START_TEST(footnotes_on_gauges)
{
    Story story;
    begin(&story);
    story_take_tool(&story, "03", "rule", "1/20");
    story_take_tool(&story, "04", "rule", "1/100");
    story_take_tool(&story, "05", "rule", "3/100");
    story_take_tool(&story, "06", "rule", "1/8");
    story_enter(&story, "read",
                "{'check':'float','value':{'value':'15/100','unit':'mm','typed':'0.15'}}");
    story_expect(&story, "read float", "pass");
    story_expect_notes(&story, "read float",
                       "no gauge named: its doubt is taken from the last place typed");
    story_enter(&story, "strike", "{'entry':13,'cause':'with the rule'}");
    story_read(&story, "float", "", "0.15", "15/100", "03"); // 0.20 / (2 · 0.05)
    story_expect_notes(&story, "read float",
                       "limits only 2.0 times the gauge's doubt (2U) apart, under 4: cannot tell "
                       "close to a limit");
    story_read(&story, "found lash", "", "0.30", "30/100", "04"); // 0.06 / 0.02
    story_expect_notes(&story, "read found lash",
                       "limits only 3.0 times the gauge's doubt (2U) apart, under 4: cannot tell "
                       "close to a limit");
    story_read(&story, "lash", "'place':['1'],", "0.30", "30/100", "05"); // 0.06 / 0.06
    story_expect_notes(
        &story, "read lash[1]",
        "limits only 1.0 times the gauge's doubt (2U) apart, under 2: the wrong gauge by the rule");
    story_read(&story, "lash", "'place':['2'],", "0.30", "30/100", "06"); // T < 3.3 u
    story_expect_notes(&story, "read lash[2]",
                       "limits only 0.2 times the gauge's doubt (2U) apart, under 2: this gauge "
                       "can never pass this");
    story_end(&story);
}
END_TEST

// A struck reading, and one placed behind an earlier entry, count where they stand.
START_TEST(a_correction_stands_where_the_struck_entry_stood)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "90"); // 5
    story_slacken(&story, "caps", "Lash", "1");
    story_enter(&story, "strike", "{'entry':5,'cause':'typo'}");
    read_in(&story, "lash", first, "Lash", "30");
    story_expect(&story, "read lash[1]", "pass"); // as if read after the slackening
    ((Entry *)story.entries->pdata[7])->after = 5;
    story_expect(&story, "read lash[1]", "in doubt basis");
    story_end(&story);
}
END_TEST

// What was done later does not count; what was struck or learnt since does.
START_TEST(a_trial_is_judged_as_it_stood_by_what_is_known_now)
{
    Story story;
    begin(&story);
    read_in(&story, "lash", first, "Lash", "30");
    const Entry *typed = story_enter(&story, "read",
                                     "{'check':'lash','place':['2'],'step':'Lash','value':{"
                                     "'value':'9','unit':'mm','typed':'9'}}");
    read_in(&story, "lash", second, "Lash", "31");
    const Entry *moved = story_enter(&story, "move", "{'check':'lash','step':'Lash'}");
    read_in(&story, "lash", first, "Lash", "90");
    char *strike = g_strdup_printf("{'entry':%" G_GINT64_FORMAT ",'cause':'misread'}", typed->seq);
    story_enter(&story, "strike", strike);
    g_free(strike);
    const Entry *const *entries = (const Entry *const *)story.entries->pdata;
    Assessment *then = assess_before(story.plan, entries, story.entries->len, moved->seq);
    ck_assert_int_eq(story_find(then, "read lash[1]")->verdict, VERDICT_PASS);
    ck_assert_int_eq(story_find(then, "read lash[2]")->verdict, VERDICT_PASS);
    assessment_free(then);
    story_enter(&story, "news",
                "{'what':'calibration','format':1,'seq':9,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "0000000001ff','tool':'6f1c2d30-0000-4000-8000-000000000001','date':'2001-09-30',"
                "'found':'wrong'}}");
    entries = (const Entry *const *)story.entries->pdata;
    then = assess_before(story.plan, entries, story.entries->len, moved->seq);
    ck_assert_int_eq(story_find(then, "read lash[1]")->reason, REASON_TOOL);
    assessment_free(then);
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("readings");
    TCase *tcase = tcase_create("readings");
    tcase_add_test(tcase, a_move_disturbs_its_own_place);
    tcase_add_test(tcase, a_move_disturbs_what_is_read_for_its_formula);
    tcase_add_test(tcase, a_struck_move_joins_what_was_read_for_its_formula);
    tcase_add_test(tcase, loose_readings_only_advise);
    tcase_add_test(tcase, a_struck_move_joins_the_trial_before);
    tcase_add_test(tcase, read_again_in_later_steps);
    tcase_add_test(tcase, what_is_not_needed_is_not_noted);
    tcase_add_test(tcase, a_reading_again_that_is_not_needed);
    tcase_add_test(tcase, a_finding_settled_by_what_was_read_again);
    tcase_add_test(tcase, later_work_never_unsettles_a_finding);
    tcase_add_test(tcase, a_finding_still_open_keeps_its_gate);
    tcase_add_test(tcase, a_limit_not_worked_out_yet_leaves_it_open);
    tcase_add_test(tcase, an_uphold_ends_with_a_later_disturbance);
    tcase_add_test(tcase, an_uphold_of_a_reading_ends_likewise);
    tcase_add_test(tcase, an_uphold_outlives_what_came_before_it);
    tcase_add_test(tcase, a_formula_that_rests_on_bolts_itself);
    tcase_add_test(tcase, the_method_of_a_formula_travels);
    tcase_add_test(tcase, rework_of_a_formula_disturbs_what_it_uses);
    tcase_add_test(tcase, bounds_that_contradict_a_value);
    tcase_add_test(tcase, footnotes_on_gauges);
    tcase_add_test(tcase, a_correction_stands_where_the_struck_entry_stood);
    tcase_add_test(tcase, a_trial_is_judged_as_it_stood_by_what_is_known_now);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
