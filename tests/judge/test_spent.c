// Bolts that are used up or replaced, and waits between stages (record.md §5: the project's design,
// no published source).
#include "bolts.h"

#include <stdlib.h>

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

int main(void)
{
    Suite *suite = suite_create("spent");
    TCase *tcase = tcase_create("spent");
    tcase_add_test(tcase, a_spent_bolt);
    tcase_add_test(tcase, the_first_angle_uses_a_bolt_up);
    tcase_add_test(tcase, a_wait_uses_up_no_bolt);
    tcase_add_test(tcase, a_bolt_replaced_is_open_again);
    tcase_add_test(tcase, a_bolt_that_is_not_there);
    tcase_add_test(tcase, a_wait_ends_with_the_first_bolt_behind_it);
    tcase_add_test(tcase, a_bolt_done_again_waits_again);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
