// What the customer reads of what was fitted and laid.
#include "printed.h"

static void fit(Story *story, const char *part, const char *place, const char *rest)
{
    g_autofree char *body = g_strdup_printf("{'part':'%s',%s'use':'new',%s}", part, place, rest);
    story_enter(story, "fit", body);
}

// All bolts and then one of them again from the same lot; both halves of a shell; numbered pistons.
START_TEST(what_is_fitted_alike_is_named_once)
{
    static const char parts[] = "plan: Parts\n"
                                "units: [mm]\n"
                                "axes: {main: 1..2, half: upper/lower, cylinder: 1..2}\n"
                                "steps:\n"
                                "  Crank:\n"
                                "    fit:\n"
                                "      shells: {at: [main, half], track: lot}\n"
                                "      pistons: {at: cylinder, track: serial}\n"
                                "    fasteners:\n"
                                "      caps: {bolts: 1..2, stages: 40, use: once, track: lot}\n";
    Story story;
    story_begin(&story, parts);
    fit(&story, "caps", "", "'label':'B-1'");
    fit(&story, "shells", "'place':['2','upper'],", "'label':'S-1'");
    fit(&story, "shells", "'place':['1','upper'],", "'label':'S-2'");
    fit(&story, "shells", "'place':['2','lower'],", "'label':'S-1'");
    fit(&story, "pistons", "'place':['1'],", "'serial':'P/1'");
    fit(&story, "pistons", "'place':['2'],", "'serial':'P/2'");
    fit(&story, "caps", "'place':['2'],", "'label':'B-1'");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "FITTED caps new lot B-1 shells 2 new lot S-1 shells 1, upper new lot S-2 "
                      "pistons 1; 2 new no. P/1; P/2");
    fit(&story, "shells", "", "'label':'S-3'");
    g_autofree char *later = print(&story, customer, 0);
    expect_said(later, "shells new lot S-3");
    expect_silence(later, "S-1");
    story_end(&story);
}
END_TEST

// What is put in at one place afterwards takes the place of what was there, and of nothing else.
START_TEST(a_part_changed_at_one_place_is_told_apart)
{
    static const char shells[] = "plan: Rods\n"
                                 "units: [mm]\n"
                                 "axes: {rod: 1..4}\n"
                                 "steps: {Rods: {fit: {rod shells: {at: rod}}}}\n";
    Story story;
    story_begin(&story, shells);
    fit(&story, "rod shells", "", "'label':'A'");
    fit(&story, "rod shells", "'place':['1'],", "'label':'B'");
    g_autofree char *two = print(&story, customer, 0);
    expect_said(two, "FITTED rod shells 1 new lot B rod shells 2 to 4 new lot A");
    fit(&story, "rod shells", "'place':['1'],", "'label':'A'");
    g_autofree char *all = print(&story, customer, 0);
    expect_said(all, "FITTED rod shells new lot A STILL");
    fit(&story, "rod shells", "", "'evidence':'bright'");
    fit(&story, "rod shells", "'place':['1'],", "'evidence':'bright'");
    fit(&story, "rod shells", "'place':['3'],", "'label':'A','serial':'S-3'");
    g_autofree char *one = print(&story, customer, 0);
    expect_said(one, "FITTED rod shells 1, 2, 4 new bright rod shells 3 new lot A, no. S-3");
    story_end(&story);
}
END_TEST

// Used again where new is asked for: the row says that it is in doubt, or who argued for it.
START_TEST(a_part_in_doubt_says_so_where_it_is_fitted)
{
    static const char rods[] = "plan: Rods\n"
                               "units: [mm]\n"
                               "axes: {rod: 1..2}\n"
                               "steps: {Rods: {fit: {clips: {at: rod, use: new}}}}\n";
    Story story;
    story_begin(&story, rods);
    fit(&story, "clips", "'place':['1'],", "'note':'from the box'");
    story_enter(&story, "fit",
                "{'part':'clips','place':['2'],'use':'reused','evidence':'no new ones to be had'}");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "FITTED clips 2 reused no new ones to be had 1 Also fitted, new: clips 1.");
    expect_said(text, "1 Undecided. It was used again where a new one is asked for.");
    story_end(&story);
}
END_TEST

static void lay(Story *story, const char *what, const char *on, const char *lot)
{
    g_autofree char *body =
        g_strdup_printf("{'consumable':'%s','tightening':'%s','step':'Shut',%s%s%s}", what, on,
                        lot ? "'lot':'" : "'note':'", lot ? lot : "no label", "'");
    story_enter(story, "laid", body);
}

static void pull(Story *story, const char *set, const char *stage)
{
    g_autofree char *body =
        g_strdup_printf("{'tightening':'%s','step':'Shut','stage':%s,'bolts':['1','2'],"
                        "'tool':'6f1c2d30-0000-4000-8000-000000000009'}",
                        set, stage);
    story_tick(story, body);
}

// Each joint once, by what was laid on it last; where there is a time for it, how it was kept to:
// the first stage closes the joint, or the part that comes in.
START_TEST(what_was_laid_says_whether_it_was_closed_in_time)
{
    static const char joints[] = "plan: Joints\n"
                                 "units: [mm, N·m]\n"
                                 "consumables:\n"
                                 "  paste: {kind: silicone, fit within: 2 min}\n"
                                 "  glue: {kind: silicone, fit within: 90 s}\n"
                                 "  locker: {kind: locker, run after: 1 h}\n"
                                 "steps:\n"
                                 "  Shut:\n"
                                 "    fit: {seal: {use: new}}\n"
                                 "    fasteners:\n"
                                 "      sump: {bolts: 1..2, stages: 5 > 8, lubricant: paste}\n"
                                 "      cover: {bolts: 1..2, stages: 9, lubricant: paste}\n"
                                 "      front: {bolts: 1..2, stages: 9, lubricant: paste}\n"
                                 "      rear: {bolts: 1..2, stages: 9, lubricant: locker}\n";
    Story story;
    story_begin(&story, joints);
    story_take_tool(&story, "09", "click wrench", "1/10");
    lay(&story, "paste", "sump", "P-1"); // wiped off, and once more
    lay(&story, "paste", "sump", "P-2");
    pull(&story, "sump", "1");
    lay(&story, "paste", "cover", "P-2");
    lay(&story, "locker", "rear", NULL);
    pull(&story, "sump", "2");
    pull(&story, "cover", "1");
    lay(&story, "glue", "seal", "G-1");
    fit(&story, "seal", "", "'label':'S-1'");
    lay(&story, "paste", "front", "P-2");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "LAID lot when closed sump paste P-2 2001-09-09 01:49 in 1 of 2 min "
                      "cover paste P-2 2001-09-09 01:51 late: 3 of 2 min 1 "
                      "rear locker not known 2001-09-09 01:52 "
                      "seal glue G-1 2001-09-09 01:55 in 1 min of 1 min 30 s "
                      "front paste P-2 2001-09-09 01:57 not yet STILL TO COME");
    expect_silence(text, "P-1");
    expect_said(text, "1 Undecided. It was done too soon or too late for the time asked for.");
    story_end(&story);
}
END_TEST

// A sealant that nobody laid is told, once its step was signed.
START_TEST(what_was_passed_over_is_not_laid)
{
    static const char joint[] = "plan: Joint\n"
                                "units: [mm, N·m]\n"
                                "consumables: {paste: {kind: silicone, fluid after: 2 h}}\n"
                                "steps:\n"
                                "  Shut:\n"
                                "    fasteners:\n"
                                "      sump: {bolts: 1..2, stages: 5, lubricant: paste}\n";
    Story story;
    story_begin(&story, joint);
    story_take_tool(&story, "09", "click wrench", "1/10");
    pull(&story, "sump", "1");
    g_autofree char *before = print(&story, customer, 0);
    expect_silence(before, "LAID");
    story_enter(&story, "sign", "{'step':'Shut','signature':1}");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "LAID lot when closed sump paste not laid");
    story_end(&story);
}
END_TEST

// A part is in, and yet its number is to come; of new ones too.
START_TEST(what_lacks_its_number_says_so)
{
    static const char parts[] = "plan: Parts\n"
                                "units: [mm]\n"
                                "steps:\n"
                                "  Crank:\n"
                                "    fit:\n"
                                "      crank: {use: may be reused, track: serial}\n"
                                "      shells: {track: lot}\n";
    Story story;
    story_begin(&story, parts);
    story_enter(&story, "fit", "{'part':'crank','use':'reused','evidence':'ground'}");
    fit(&story, "shells", "", "'description':'as ordered'");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "FITTED crank reused serial not known, ground shells new lot not known");
    expect_said(text, "Crank serial of crank, lot of shells, signature");
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("fitted");
    TCase *tcase = tcase_create("fitted");
    tcase_add_test(tcase, what_is_fitted_alike_is_named_once);
    tcase_add_test(tcase, a_part_changed_at_one_place_is_told_apart);
    tcase_add_test(tcase, a_part_in_doubt_says_so_where_it_is_fitted);
    tcase_add_test(tcase, what_was_laid_says_whether_it_was_closed_in_time);
    tcase_add_test(tcase, what_was_passed_over_is_not_laid);
    tcase_add_test(tcase, what_lacks_its_number_says_so);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
