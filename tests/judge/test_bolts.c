// The order of bolts and what rests on it (record.md §5: the project's design, no published
// source).
#include "bolts.h"

#include <stdlib.h>

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
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
