// What a bolt is tightened to: the target, the range of its tool, what the tool showed (record.md
// §5: the project's design, no published source).
#include "bolts.h"

#include <stdlib.h>

// 60 N·m and a run-down torque of 50 are beyond a wrench for 100.
START_TEST(a_target_by_formula_is_held_to_the_range)
{
    Story story;
    begin(&story);
    story_enter(&story, "read",
                "{'check':'run-down torque','value':{'value':'8','unit':'N·m','typed':'8'}}");
    story_tighten(&story, "nuts", "Wheel", 1, "1");
    story_enter(&story, "strike", "{'entry':5,'cause':'typo'}");
    story_enter(&story, "read",
                "{'check':'run-down torque','value':{'value':'50','unit':'N·m','typed':'50'}}");
    story_tighten(&story, "nuts", "Wheel", 1, "2");
    expect_bolts(&story, "nuts in Wheel", 1, "1", "pass");
    expect_bolts(&story, "nuts in Wheel", 1, "2", "in doubt tool");
    story_end(&story);
}
END_TEST

// With an adapter the wrench is set lower than the target; its range is held to the setting.
START_TEST(the_range_is_held_to_the_setting)
{
    Story story;
    begin(&story);
    story_tick(&story, "{'tightening':'caps','step':'Mock-up','stage':1,'bolts':['3'],'setting':"
                       "{'value':'15','unit':'N·m','typed':'15'},'adapter':'X1','tool':"
                       "'6f1c2d30-0000-4000-8000-000000000009'}");
    expect_bolts(&story, "caps in Mock-up", 1, "3", "in doubt tool");
    story_end(&story);
}
END_TEST

START_TEST(no_bolt_is_stretched_above_its_ceiling)
{
    Story story;
    begin(&story);
    for (guint i = 1; i <= 2; i++) {
        char *body = g_strdup_printf(
            "{'tightening':'stretched','step':'Wheel','stage':1,'bolts':['%u'],'value':{'value':"
            "'%u','unit':'N·m','typed':'x'},'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
            i, 59 + i);
        story_tick(&story, body);
        g_free(body);
    }
    expect_bolts(&story, "stretched in Wheel", 1, "1", "pass");
    expect_bolts(&story, "stretched in Wheel", 1, "2", "fail high");
    story_expect_notes(&story, "bolt stretched in Wheel[2], stage 1",
                       "taken above the ceiling of its bolt set");
    story_enter(&story, "concede",
                "{'asked':'bolt','name':'stretched','step':'Wheel','place':['2'],'reasons':['high']"
                ",'why':'x','who':'y'}");
    expect_bolts(&story, "stretched in Wheel", 1, "2", "conceded high");
    story_end(&story);
}
END_TEST

// What was shown, in the unit of that kind, with `more` fields.
static void show(Story *story, const char *set, guint stage, const char *bolt, const char *value,
                 const char *unit, const char *more)
{
    char *body = g_strdup_printf("{'tightening':'%s','step':'Wheel','stage':%u,'bolts':['%s'],"
                                 "'value':{'value':'%s','unit':'%s','typed':'x'},"
                                 "'tool':'6f1c2d30-0000-4000-8000-000000000009'%s}",
                                 set, stage, bolt, value, unit, more);
    story_tick(story, body);
    g_free(body);
}

static const char shown_plan[] =
    "plan: One\nunits: [mm, N·m, °]\nsteps:\n  Wheel:\n    fasteners:\n"
    "      bolts: {bolts: 1..1, stages: 40 N m > +90° > check 20 lbf ft > 90° from snug > 60 N m}\n"
    "      nuts: {bolts: 1..1, stages: 60 + run-down torque}\n"
    "    checks:\n      run-down torque: {unit: N·m, decimals: 0, limits: any}\n";

// At a tenth and either side of it, both ways, exact.
static const struct {
    guint stage;
    const char *value, *unit, *more, *expected, *note;
} shown_rows[] = {
    {1, "36", "N·m", "", "pass", NULL},
    {1, "35999999999999/1000000000000", "N·m", "", "fail low", "36.0 of 40 N·m shown"},
    {1, "44", "N·m", "", "pass", NULL},
    {1, "44000000000001/1000000000000", "N·m", "", "fail high", "44.0 of 40 N·m shown"},
    {1, "5", "N·m", "", "fail low", "5 of 40 N·m shown"},
    {1, "30", "lbf·ft", "", "pass", NULL}, // 40.67 N·m
    {1, "40", "lbf·ft", "", "fail high", "40 of 29.5 lbf·ft shown"},
    {1, "<40", "N·m", "", "pass", NULL},
    {1, "<30", "N·m", "", "fail low", "<30 of 40 N·m shown"},
    {1, ">30", "N·m", "", "pass", NULL},
    {1, ">50", "N·m", "", "fail high", ">50 of 40 N·m shown"},
    {1, "5", "°", "", "pass", NULL}, // says nothing of a torque
    {2, "81", "°", "", "pass", NULL},
    {2, "80", "°", "", "fail low", "80 of 90° shown"},
    {2, "99", "°", "", "pass", NULL},
    {2, "1/4", "turn", "", "pass", NULL},
    {2, "9", "°", "", "fail low", "9 of 90° shown"},
    {2, "60", "N·m", "", "pass", NULL},
    {3, "22", "lbf·ft", "", "pass", NULL},
    {3, "23", "lbf·ft", "", "fail high", "23 of 20 lbf·ft shown"},
    {4, "9", "°", "", "pass", NULL}, // counted from where the stage before left it
    // through an adapter it shows what it was set to, if that is known
    {1, "40", "N·m", ",'adapter':'X1','setting':{'value':'30','unit':'N·m','typed':'30'}",
     "fail high", "40 of 30 N·m shown"},
    {1, "33", "N·m", ",'adapter':'X1','setting':{'value':'30','unit':'N·m','typed':'30'}", "pass",
     NULL},
    {1, "20", "N·m", ",'adapter':'X1'", "pass", NULL},
};

START_TEST(what_is_shown_far_off_fails)
{
    Story story;
    begin_plan(&story, shown_plan);
    for (guint stage = 1; stage < shown_rows[_i].stage; stage++)
        story_tighten(&story, "bolts", "Wheel", stage, "1");
    show(&story, "bolts", shown_rows[_i].stage, "1", shown_rows[_i].value, shown_rows[_i].unit,
         shown_rows[_i].more);
    expect_bolts(&story, "bolts in Wheel", shown_rows[_i].stage, "1", shown_rows[_i].expected);
    g_autofree char *name =
        g_strdup_printf("bolt bolts in Wheel[1], stage %u", shown_rows[_i].stage);
    story_expect_notes(&story, name, shown_rows[_i].note ? shown_rows[_i].note : "");
    story_end(&story);
}
END_TEST

// By what is known now: a reading that the stage uses may come, or be corrected, behind the tick.
START_TEST(what_is_shown_is_held_to_a_formula_as_known_now)
{
    Story story;
    begin_plan(&story, shown_plan);
    show(&story, "nuts", 1, "1", "70", "N·m", "");
    expect_bolts(&story, "nuts in Wheel", 1, "1", "pass"); // nothing is known to hold it to
    Entry *read = story_enter(&story, "read",
                              "{'check':'run-down torque','value':{'value':'1','unit':'N·m',"
                              "'typed':'1'}}");
    char *strike = g_strdup_printf("{'entry':%" G_GINT64_FORMAT ",'cause':'typo'}", read->seq);
    expect_bolts(&story, "nuts in Wheel", 1, "1", "fail high");
    story_enter(&story, "strike", strike);
    story_enter(&story, "read",
                "{'check':'run-down torque','value':{'value':'10','unit':'N·m','typed':'10'}}");
    expect_bolts(&story, "nuts in Wheel", 1, "1", "pass");
    g_free(strike);
    story_end(&story);
}
END_TEST

START_TEST(what_is_shown_far_off_is_done_again_or_conceded)
{
    Story story;
    begin_plan(&story, shown_plan);
    show(&story, "bolts", 1, "1", "50", "N·m", "");
    story_enter(&story, "concede",
                "{'asked':'bolt','name':'bolts','step':'Wheel','place':['1'],'stage':1,'reasons':["
                "'high'],'why':'x','who':'y'}");
    expect_bolts(&story, "bolts in Wheel", 1, "1", "conceded high");
    show(&story, "bolts", 1, "1", "30", "N·m", "");
    expect_bolts(&story, "bolts in Wheel", 1, "1", "fail low"); // that was not conceded
    show(&story, "bolts", 1, "1", "40", "N·m", "");
    expect_bolts(&story, "bolts in Wheel", 1, "1", "pass");
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("shown");
    TCase *tcase = tcase_create("shown");
    tcase_add_test(tcase, a_target_by_formula_is_held_to_the_range);
    tcase_add_test(tcase, the_range_is_held_to_the_setting);
    tcase_add_test(tcase, no_bolt_is_stretched_above_its_ceiling);
    tcase_add_loop_test(tcase, what_is_shown_far_off_fails, 0, G_N_ELEMENTS(shown_rows));
    tcase_add_test(tcase, what_is_shown_is_held_to_a_formula_as_known_now);
    tcase_add_test(tcase, what_is_shown_far_off_is_done_again_or_conceded);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
