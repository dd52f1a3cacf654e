#include "story.h"

#include <stdlib.h>

// The rules of tightening in record.md §5: the project's design, no published source.
static const char plan[] =
    "plan: Bolts\n"
    "units: [mm, N·m, °, min]\n"
    "axes: {rod: 1..2, side: a/b}\n"
    "consumables:\n"
    "  paste: {kind: silicone, fit within: 5 min}\n"
    "steps:\n"
    "  Mock-up:\n"
    "    fasteners:\n"
    "      caps: {bolts: 1..4, stages: 40 > 75, order: 3-4-1-2, then off: yes, lubricant: oil}\n"
    "    checks:\n"
    "      bore: {limits: 50.00..50.10, decimals: 2, with: caps}\n"
    "  Final:\n"
    "    retighten: {caps: as before}\n"
    "    checks:\n"
    "      drag: {limits: 0..1, rests on: caps}\n"
    "      turns: {limits: \"yes\", rests on: caps}\n"
    "      seen tight: {limits: \"yes\", with: caps}\n"
    "  Wheel:\n"
    "    fasteners:\n"
    "      wheel: {bolts: 1..6, order: 1-4-3-6-5-2, stages: 30 > +50°, use: once}\n"
    "      rods: {bolts: [rod, side], stages: 30 > 60, each: rod}\n"
    "      head: {bolts: 1..3, stages: 30 > wait 10 min > 60}\n"
    "      nuts: {bolts: 1..2, stages: 60 + run-down torque}\n"
    "      once: {bolts: 1..1, stages: 40 > wait 1 min, use: once}\n"
    "      stretched: {bolts: 1..2, stages: until length, ceiling: 60}\n"
    "    checks:\n"
    "      length: {limits: 0.1..0.2}\n"
    "      run-down torque: {unit: N·m, decimals: 0, limits: any}\n"
    "    after: nothing\n";

static void begin_plan(Story *story, const char *of)
{
    story_begin(story, of);
    story_take_tool(story, "01", "micrometer", "1/1000");
    story_enter(story, "take",
                "{'what':'tool','format':1,'seq':3,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000009','label':'W1','sort':'click wrench','least':{'value':'20','unit':"
                "'N·m','typed':'20'},'greatest':{'value':'100','unit':'N·m','typed':'100'}}}");
    story_enter(story, "take",
                "{'what':'calibration','format':1,'seq':4,'body':{'id':'6f1c2d30-0000-4000-8000-"
                "000000000109','tool':'6f1c2d30-0000-4000-8000-000000000009','date':'2001-01-01',"
                "'found':'good'}}");
}

static void begin(Story *story)
{
    begin_plan(story, plan);
}

static void expect_bolts(const Story *story, const char *set, guint stage, const char *bolts,
                         const char *expected)
{
    char **all = g_strsplit(bolts, " ", -1);
    for (guint i = 0; all[i]; i++) {
        char *name = g_strdup_printf("bolt %s[%s], stage %u", set, all[i], stage);
        story_expect(story, name, expected);
        g_free(name);
    }
    g_strfreev(all);
}

static void mock_up(Story *story)
{
    story_tighten(story, "caps", "Mock-up", 1, "3 4 1 2");
    story_tighten(story, "caps", "Mock-up", 2, "3 4 1 2");
}

static void final(Story *story)
{
    story_tighten(story, "caps", "Final", 1, "3 4 1 2");
    story_tighten(story, "caps", "Final", 2, "3 4 1 2");
}

START_TEST(exactly_the_bolt_out_of_turn)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "4 1 2 3"); // 3 skipped, and late
    expect_bolts(&story, "caps in Mock-up", 1, "4 1 2", "pass");
    expect_bolts(&story, "caps in Mock-up", 1, "3", "in doubt order");
    story_tighten(&story, "caps", "Mock-up", 2, "3 1 4 2"); // 1 early, of two swapped
    expect_bolts(&story, "caps in Mock-up", 2, "3 4 2", "pass");
    expect_bolts(&story, "caps in Mock-up", 2, "1", "in doubt order");
    story_tighten(&story, "caps", "Mock-up", 2, "1"); // done again by itself
    expect_bolts(&story, "caps in Mock-up", 2, "1 2 3 4", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_stage_needs_the_one_before_on_every_bolt)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "3 4 1");
    story_tighten(&story, "caps", "Mock-up", 2, "3");
    story_tighten(&story, "caps", "Mock-up", 1, "2");
    story_tighten(&story, "caps", "Mock-up", 2, "4 1 2");
    expect_bolts(&story, "caps in Mock-up", 2, "3", "in doubt order");
    expect_bolts(&story, "caps in Mock-up", 2, "4 1 2", "pass");
    expect_bolts(&story, "caps in Mock-up", 1, "3 4 1 2", "pass");
    story_end(&story);
}
END_TEST

static void tick_rod(Story *story, guint stage, const char *bolt)
{
    g_autofree char *body =
        g_strdup_printf("{'tightening':'rods','step':'Wheel','stage':%u,'bolts':[%s],"
                        "'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
                        stage, bolt);
    story_tick(story, body);
}

static const char *const rods[] = {"'1, a'", "'1, b'", "'2, a'", "'2, b'"};

START_TEST(each_rod_by_itself)
{
    Story story;
    begin(&story);
    for (guint i = 0; i < 2; i++)
        for (guint stage = 1; stage <= 2; stage++)
            for (guint j = 0; j < 2; j++)
                tick_rod(&story, stage, rods[2 * i + j]);
    story_expect(&story, "bolt rods in Wheel[1, a], stage 2", "pass");
    story_expect(&story, "bolt rods in Wheel[2, b], stage 2", "pass");
    story_expect(&story, "bolt rods in Wheel[2, a], stage 1", "pass");
    story_end(&story);
}
END_TEST

// All rods stage by stage, which standbook-plan(5) says is no doubt; a rod's own bolt left behind is.
START_TEST(rods_stage_by_stage)
{
    Story story;
    begin(&story);
    for (guint i = 0; i < 4; i++)
        tick_rod(&story, 1, rods[i]);
    for (guint i = 0; i < 4; i++)
        tick_rod(&story, 2, rods[i]);
    story_expect(&story, "bolt rods in Wheel[1, a], stage 2", "pass");
    story_expect(&story, "bolt rods in Wheel[2, b], stage 2", "pass");
    story_end(&story);
    begin(&story);
    tick_rod(&story, 1, rods[0]);
    tick_rod(&story, 2, rods[0]);
    tick_rod(&story, 1, rods[1]);
    story_expect(&story, "bolt rods in Wheel[1, a], stage 2", "in doubt order");
    story_end(&story);
}
END_TEST

// One cap at a time: what is loose together runs its stages among itself, in any order of caps.
START_TEST(caps_done_again_one_at_a_time)
{
    Story story;
    begin(&story);
    mock_up(&story);
    story_slacken(&story, "caps", "Mock-up", "1 2 3 4");
    final(&story);
    static const char *const caps[] = {"1 2", "3 4"};
    for (guint i = 0; i < 2; i++) {
        story_slacken(&story, "caps", "Final", caps[i]);
        story_tighten(&story, "caps", "Final", 1, caps[i]);
        story_tighten(&story, "caps", "Final", 2, caps[i]);
    }
    expect_bolts(&story, "caps in Final", 1, "1 2 3 4", "pass");
    expect_bolts(&story, "caps in Final", 2, "1 2 3 4", "pass");
    story_slacken(&story, "caps", "Final", "3 4");
    story_tighten(&story, "caps", "Final", 1, "4 3"); // among themselves
    expect_bolts(&story, "caps in Final", 1, "4", "in doubt order");
    expect_bolts(&story, "caps in Final", 1, "3 1 2", "pass");
    story_end(&story);
}
END_TEST

// A single bolt done again does not hide the order of all done again later.
START_TEST(all_done_again_after_one)
{
    Story story;
    begin(&story);
    mock_up(&story);
    story_slacken(&story, "caps", "Final", "1 2 3 4");
    final(&story);
    story_slacken(&story, "caps", "Final", "3");
    story_tighten(&story, "caps", "Final", 1, "3");
    story_tighten(&story, "caps", "Final", 2, "3");
    expect_bolts(&story, "caps in Final", 2, "1 2 3 4", "pass");
    story_slacken(&story, "caps", "Final", "1 2 3 4");
    story_tighten(&story, "caps", "Final", 1, "4 1 2 3");
    expect_bolts(&story, "caps in Final", 1, "3", "in doubt order");
    expect_bolts(&story, "caps in Final", 1, "1 2 4", "pass");
    story_end(&story);
}
END_TEST

START_TEST(done_again_a_stage_ahead_of_the_other)
{
    Story story;
    begin(&story);
    mock_up(&story);
    story_slacken(&story, "caps", "Mock-up", "1 2"); // foreseen: other shells under this cap
    expect_bolts(&story, "caps in Mock-up", 2, "1 2", "pass");
    story_tighten(&story, "caps", "Mock-up", 1, "1");
    story_tighten(&story, "caps", "Mock-up", 2, "1"); // 2 is still loose
    story_tighten(&story, "caps", "Mock-up", 1, "2");
    story_tighten(&story, "caps", "Mock-up", 2, "2");
    expect_bolts(&story, "caps in Mock-up", 2, "1", "in doubt order");
    expect_bolts(&story, "caps in Mock-up", 2, "2 3 4", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_torque_stage_begun_again_at_its_first_bolt)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "3 4");
    story_tighten(&story, "caps", "Mock-up", 1, "3 4 1 2");
    expect_bolts(&story, "caps in Mock-up", 1, "1 2 3 4", "pass");
    story_end(&story);
}
END_TEST

// trade.md section 3: in an angle stage the bolt in hand cannot tell; loosen, a new bolt, from
// stage 1.
START_TEST(an_angle_stage_interrupted)
{
    Story story;
    begin(&story);
    story_enter(&story, "fit", "{'part':'wheel','use':'new'}");
    story_tighten(&story, "wheel", "Wheel", 1, "1 4 3 6 5 2");
    story_tighten(&story, "wheel", "Wheel", 2, "1 4 3");
    story_slacken(&story, "wheel", "Wheel", "6");
    expect_bolts(&story, "wheel in Wheel", 1, "6", "open");
    story_enter(&story, "fit", "{'part':'wheel','place':['6'],'use':'new'}");
    story_tighten(&story, "wheel", "Wheel", 1, "6");
    story_tighten(&story, "wheel", "Wheel", 2, "6 5 2");
    expect_bolts(&story, "wheel in Wheel", 1, "1 2 3 4 5 6", "pass");
    expect_bolts(&story, "wheel in Wheel", 2, "1 2 3 4 5 6", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_take_down_that_the_plan_foresees)
{
    Story story;
    begin(&story);
    mock_up(&story);
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_slacken(&story, "caps", "Mock-up", "1 2 3 4");
    expect_bolts(&story, "caps in Mock-up", 2, "1 2 3 4", "pass");
    story_expect(&story, "read bore", "pass"); // `with` survives the removal
    final(&story);
    story_read(&story, "drag", "", "0.5", "1/2", "01");
    story_enter(&story, "look", "{'check':'turns','answer':'yes'}");
    story_enter(&story, "look", "{'check':'seen tight','answer':'yes'}");
    story_slacken(&story, "caps", "Final", "2");
    expect_bolts(&story, "caps in Final", 1, "2", "open");
    expect_bolts(&story, "caps in Final", 1, "1", "pass");
    expect_bolts(&story, "caps in Mock-up", 1, "2", "pass");
    story_expect(&story, "read drag", "in doubt basis");
    story_expect(&story, "look turns", "in doubt basis");
    story_expect(&story, "look seen tight", "pass");
    story_enter(&story, "uphold",
                "{'asked':'look','name':'turns','doubt':'basis','why':'no matter'}");
    story_expect(&story, "look turns", "pass");
    story_slacken(&story, "caps", "Final", "1"); // a later disturbance ends it
    story_expect(&story, "look turns", "in doubt basis");
    story_enter(&story, "look", "{'check':'seen tight','answer':'yes'}");
    story_expect(&story, "look seen tight", "in doubt basis");
    story_end(&story);
}
END_TEST

START_TEST(a_mock_up_not_finished_is_opened_by_slackening)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "3 4 1 2");
    story_slacken(&story, "caps", "Mock-up", "3");
    expect_bolts(&story, "caps in Mock-up", 1, "3", "open");
    story_end(&story);
}
END_TEST

// Readings of one bore before and after the caps were off, with other shells, are not two opinions.
START_TEST(readings_in_two_tightenings_do_not_compete)
{
    Story story;
    begin(&story);
    mock_up(&story);
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_slacken(&story, "caps", "Mock-up", "1 2 3 4");
    story_expect(&story, "read bore", "pass");
    mock_up(&story);
    story_read(&story, "bore", "", "50.08", "5008/100", "01");
    story_expect(&story, "read bore", "pass");
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_expect(&story, "read bore", "in doubt disagree");
    story_end(&story);
}
END_TEST

// In doubt if that tightening was, however well it is done again afterwards.
START_TEST(a_reading_keeps_the_order_it_was_taken_in)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "4 3 1 2");
    story_tighten(&story, "caps", "Mock-up", 2, "3 4 1 2");
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_expect(&story, "read bore", "in doubt basis");
    story_slacken(&story, "caps", "Mock-up", "1 2 3 4");
    mock_up(&story);
    expect_bolts(&story, "caps in Mock-up", 1, "1 2 3 4", "pass");
    story_expect(&story, "read bore", "in doubt basis");
    story_enter(&story, "uphold", "{'asked':'read','name':'bore','doubt':'basis','why':'x'}");
    story_expect(&story, "read bore", "pass");
    story_end(&story);
}
END_TEST

START_TEST(an_order_upheld_is_no_doubt_of_a_reading)
{
    Story story;
    begin(&story);
    story_tighten(&story, "caps", "Mock-up", 1, "4 3 1 2");
    story_tighten(&story, "caps", "Mock-up", 2, "3 4 1 2");
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_enter(&story, "uphold",
                "{'asked':'bolt','name':'caps','step':'Mock-up','doubt':'order','why':'x'}");
    story_expect(&story, "read bore", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_spent_bolt)
{
    Story story;
    begin(&story);
    story_enter(&story, "fit", "{'part':'wheel','use':'new'}");
    story_tighten(&story, "wheel", "Wheel", 1, "1 4 3 6 5 2");
    story_slacken(&story, "wheel", "Wheel", "1"); // not yet turned: not spent
    story_tighten(&story, "wheel", "Wheel", 1, "1");
    story_tighten(&story, "wheel", "Wheel", 2, "1 4 3 6 5 2");
    expect_bolts(&story, "wheel in Wheel", 2, "1 2 3 4 5 6", "pass");
    story_slacken(&story, "wheel", "Wheel", "1");
    story_enter(&story, "fit", "{'part':'wheel','place':['1'],'use':'reused','evidence':'x'}");
    story_tighten(&story, "wheel", "Wheel", 1, "1");
    expect_bolts(&story, "wheel in Wheel", 1, "1", "in doubt spent");
    story_slacken(&story, "wheel", "Wheel", "1");
    story_enter(&story, "fit", "{'part':'wheel','place':['1'],'use':'new'}");
    story_tighten(&story, "wheel", "Wheel", 1, "1");
    story_tighten(&story, "wheel", "Wheel", 2, "1");
    expect_bolts(&story, "wheel in Wheel", 2, "1", "pass");
    story_expect(&story, "fit wheel[1]", "pass");
    story_end(&story);
}
END_TEST

START_TEST(the_first_angle_uses_a_bolt_up)
{
    static const char angled[] =
        "plan: Angled\nunits: [mm, N·m, °]\nsteps:\n  Rods:\n    fasteners:\n"
        "      rods: {bolts: 1..2, stages: snug > 90° from snug > 50, use: "
        "once}\n";
    Story story;
    story_begin(&story, angled);
    story_take_tool(&story, "09", "click wrench", "1/1000");
    story_enter(&story, "fit", "{'part':'rods','use':'new'}");
    story_tighten(&story, "rods", "Rods", 1, "1 2");
    story_slacken(&story, "rods", "Rods", "1"); // only snug: not spent
    story_tighten(&story, "rods", "Rods", 1, "1");
    expect_bolts(&story, "rods in Rods", 1, "1 2", "pass");
    story_tighten(&story, "rods", "Rods", 2, "1 2");
    story_slacken(&story, "rods", "Rods", "1"); // turned, though 50 N·m was still to come
    story_tighten(&story, "rods", "Rods", 1, "1");
    expect_bolts(&story, "rods in Rods", 1, "1", "in doubt spent");
    story_end(&story);
}
END_TEST

START_TEST(a_wait_uses_up_no_bolt)
{
    Story story;
    begin(&story);
    story_enter(&story, "fit", "{'part':'once','use':'new'}");
    story_tighten(&story, "once", "Wheel", 1, "1");
    expect_bolts(&story, "once in Wheel", 1, "1", "pass");
    story_slacken(&story, "once", "Wheel", "1");
    story_tighten(&story, "once", "Wheel", 1, "1");
    expect_bolts(&story, "once in Wheel", 1, "1", "in doubt spent");
    story_end(&story);
}
END_TEST

// Another bolt cannot come in without the first coming out.
START_TEST(a_bolt_replaced_is_open_again)
{
    Story story;
    begin(&story);
    story_tighten(&story, "wheel", "Wheel", 1, "1 4 3 6 5 2");
    story_enter(&story, "fit", "{'part':'wheel','use':'new'}"); // the paper comes after
    expect_bolts(&story, "wheel in Wheel", 1, "1 2 3", "pass");
    story_enter(&story, "fit", "{'part':'wheel','place':['2'],'use':'new'}");
    expect_bolts(&story, "wheel in Wheel", 1, "2", "open");
    expect_bolts(&story, "wheel in Wheel", 1, "1 3", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_bolt_that_is_not_there)
{
    Story story;
    begin(&story);
    story_enter(&story, "not needed",
                "{'asked':'bolt','name':'caps','step':'Mock-up','place':['2'],'why':'no hole'}");
    story_tighten(&story, "caps", "Mock-up", 1, "3 4 1");
    story_tighten(&story, "caps", "Mock-up", 2, "3 4 1");
    expect_bolts(&story, "caps in Mock-up", 2, "3 4 1", "pass");
    expect_bolts(&story, "caps in Mock-up", 2, "2", "not needed");
    story_read(&story, "bore", "", "50.05", "5005/100", "01");
    story_expect(&story, "read bore", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_wait_ends_with_the_first_bolt_behind_it)
{
    Story story;
    begin(&story);
    story_tighten(&story, "head", "Wheel", 1, "1 2 3");
    story.minute += 5;
    story_expect(&story, "wait head in Wheel, stage 2", "open");
    story_tighten(&story, "head", "Wheel", 3, "1"); // 6 minutes
    story_expect(&story, "wait head in Wheel, stage 2", "in doubt window");
    story.minute += 10;
    story_enter(&story, "waited", "{'tightening':'head','step':'Wheel','stage':2}");
    story_expect(&story, "wait head in Wheel, stage 2", "in doubt window");
    story_enter(&story, "uphold",
                "{'asked':'wait','name':'head','step':'Wheel','stage':2,'doubt':'window','why':"
                "'dry joint'}");
    story_expect(&story, "wait head in Wheel, stage 2", "pass");
    story_end(&story);
}
END_TEST

START_TEST(a_bolt_done_again_waits_again)
{
    Story story;
    begin(&story);
    story_tighten(&story, "head", "Wheel", 1, "1 2 3");
    story.minute += 10;
    story_enter(&story, "waited", "{'tightening':'head','step':'Wheel','stage':2}");
    story_tighten(&story, "head", "Wheel", 3, "1 2 3");
    story_expect(&story, "wait head in Wheel, stage 2", "pass");
    story_slacken(&story, "head", "Wheel", "2");
    story_tighten(&story, "head", "Wheel", 1, "2");
    story_expect(&story, "wait head in Wheel, stage 2", "open");
    story.minute += 10;
    story_tighten(&story, "head", "Wheel", 3, "2");
    story_expect(&story, "wait head in Wheel, stage 2", "pass");
    story_end(&story);
}
END_TEST

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
    Suite *suite = suite_create("bolts");
    TCase *tcase = tcase_create("bolts");
    tcase_add_test(tcase, exactly_the_bolt_out_of_turn);
    tcase_add_test(tcase, a_stage_needs_the_one_before_on_every_bolt);
    tcase_add_test(tcase, each_rod_by_itself);
    tcase_add_test(tcase, rods_stage_by_stage);
    tcase_add_test(tcase, caps_done_again_one_at_a_time);
    tcase_add_test(tcase, all_done_again_after_one);
    tcase_add_test(tcase, done_again_a_stage_ahead_of_the_other);
    tcase_add_test(tcase, a_torque_stage_begun_again_at_its_first_bolt);
    tcase_add_test(tcase, an_angle_stage_interrupted);
    tcase_add_test(tcase, a_take_down_that_the_plan_foresees);
    tcase_add_test(tcase, a_mock_up_not_finished_is_opened_by_slackening);
    tcase_add_test(tcase, readings_in_two_tightenings_do_not_compete);
    tcase_add_test(tcase, a_reading_keeps_the_order_it_was_taken_in);
    tcase_add_test(tcase, an_order_upheld_is_no_doubt_of_a_reading);
    tcase_add_test(tcase, a_spent_bolt);
    tcase_add_test(tcase, the_first_angle_uses_a_bolt_up);
    tcase_add_test(tcase, a_wait_uses_up_no_bolt);
    tcase_add_test(tcase, a_bolt_replaced_is_open_again);
    tcase_add_test(tcase, a_bolt_that_is_not_there);
    tcase_add_test(tcase, a_wait_ends_with_the_first_bolt_behind_it);
    tcase_add_test(tcase, a_bolt_done_again_waits_again);
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
