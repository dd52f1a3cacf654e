// What the customer reads.
#include "printed.h"

START_TEST(the_customer_reads_figures_and_plain_words)
{
    Story story;
    begin(&story);
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "Build sheet T-1");
    expect_said(text, "Small twin, no. ST-0042");
    expect_said(text, "bore 90.015 ±.001 90.000 ├──────▒█▒──────┤ 90.030 pass");
    expect_said(text, "limits ×5 the least and the greatest of so many places; each is on record");
    expect_silence(text, "×4");
    expect_said(text, "skirt ×5 0.049 to .052 0.040 ├──────████─────┤ 0.060 pass");
    expect_said(text, "┤ > 0.060 conceded 1");
    expect_said(text, "1 Conceded, 0.006 mm over: honed oversize outside. Accepted by customer, "
                      "telephone, 2001-09-09.");
    expect_said(text,
                "Limits amended here to 0.05..0.30 mm; the plan asks for 0.05..0.25 mm: other "
                "thrust plate.");
    expect_said(text, "depth 7.0 ±.001 7.0 ├█─────────────── in doubt 3");
    expect_said(text, "Undecided. The gauge used cannot decide this");
    expect_said(text, "crank end 51.750 mm ground, Brackwater");
    expect_said(text, "Without limits taper 51.75 ±.001 mm noted");
    expect_silence(text, "crank end 51.750 ±.001");
    expect_said(text, "each is on record skirt 6 0.066"); // apart from those that passed
    expect_said(text, "1 more reading is on the workshop's record.");
    expect_said(text, "STILL TO COME BEFORE HAND OVER Run no leaks, signature");
    expect_said(text, "stages, in N·m tight see caps "
                      "40 > 75 2 of 3, 1 in doubt 2001-09-09 4");
    expect_said(text, "shells reused");
    expect_said(text, "no wear seen");
    expect_said(text, "Undecided. It was not done in the order asked for.");
    expect_said(text, "Not complete for first start");
    expect_said(text, "the last with digest 7f3a90c1e25d0011.");
    expect_said(text, "Judged differently since then: read bore: pass then, fail today.");
    expect_said(text, "The maker's current service data, local codes and licensed practice come "
                      "first.");
    story_end(&story);
}
END_TEST

START_TEST(the_customer_reads_no_chatter)
{
    Story story;
    begin(&story);
    g_autofree char *text = print(&story, customer, 0);
    static const char *const kept[] = {"90.150",  "typo", "1140", "120.00", "late with the money",
                                       "put down"};
    for (guint i = 0; i < G_N_ELEMENTS(kept); i++)
        expect_silence(text, kept[i]);
    story_end(&story);
}
END_TEST

// How far it lies beyond where nothing limits it does not widen the strip.
START_TEST(a_reading_far_on_the_free_side_stands_at_the_end_of_its_strip)
{
    static const char sump[] = "plan: Sump\n"
                               "units: [mm]\n"
                               "steps:\n"
                               "  Sump:\n"
                               "    checks:\n"
                               "      depth: {limits: at least 7.0}\n"
                               "      gap: {limits: 0.10..0.20}\n";
    Story story;
    story_begin(&story, sump);
    story_take_tool(&story, "01", "micrometer", "1/1000");
    story_read(&story, "depth", "", "30.0", "30", "01");
    story_read(&story, "gap", "", "0.15", "15/100", "01");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "depth 30.0 ±.001 7.0 ├───────────────> pass");
    expect_said(text, "gap 0.15 ±.001 0.10 ├───────█───────┤ 0.20 pass");
    story_end(&story);
}
END_TEST

// Where nothing has limits the sign is told above the only table there is, and once.
START_TEST(places_without_limits_say_how_many_they_are)
{
    static const char lash[] = "plan: Lash\n"
                               "units: [mm]\n"
                               "axes: {valve: 1..2}\n"
                               "steps: {Look: {checks: {lash: {at: valve, limits: any}}}}\n";
    Story story;
    story_begin(&story, lash);
    story_take_tool(&story, "01", "feelers", "1/1000");
    story_read(&story, "lash", "'place':['1'],", "0.28", "28/100", "01");
    story_read(&story, "lash", "'place':['2'],", "0.31", "31/100", "01");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "Without limits ×2 the least and the greatest of so many places; each is on "
                      "record lash ×2 0.28 to .31");
    story_end(&story);
}
END_TEST

static void look(Story *story, const char *check, const char *place, const char *answer)
{
    g_autofree char *body =
        g_strdup_printf("{'check':'%s','step':'Look',%s'answer':'%s'}", check, place, answer);
    story_enter(story, "look", body);
}

// A name alone would say that leaks are as they should be; what was only noted is on record.
START_TEST(what_was_looked_at_is_named)
{
    static const char looks[] =
        "plan: Looks\n"
        "units: [mm]\n"
        "axes: {rod: 1..4}\n"
        "steps:\n"
        "  Look:\n"
        "    checks:\n"
        "      free of cracks: {at: rod, limits: yes}\n"
        "      leaks: none of none/some\n"
        "      plugged: {at: rod, limits: {1: yes, 2: no, 3: yes, 4: yes}}\n"
        "      came with: text\n";
    Story story;
    story_begin(&story, looks);
    look(&story, "free of cracks", "'place':['3'],", "yes");
    g_autofree char *one = print(&story, customer, 0);
    expect_said(one, "LOOKED AT One thing was looked at or tested, and is as it should be: free "
                     "of cracks 3. STILL");
    look(&story, "free of cracks", "'place':['1'],", "yes");
    look(&story, "free of cracks", "'place':['2'],", "yes");
    look(&story, "free of cracks", "'place':['4'],", "no");
    look(&story, "leaks", "", "none");
    look(&story, "came with", "", "a tin of bolts");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "ON RECORD came with a tin of bolts");
    story_enter(&story, "amend", "{'check':'leaks','limits':'some of none/some','why':'weeps'}");
    g_autofree char *later = print(&story, customer, 0);
    look(&story, "plugged", "'place':['2'],", "yes");
    g_autofree char *places = print(&story, customer, 0);
    expect_said(places, "plugged 2 yes no fail 1");
    expect_said(later, "leaks none some of none/some fail 2");
    expect_said(text, "LOOKED AT seen asked see free of cracks 4 no yes fail 1 4 other things were "
                      "looked at or tested, all "
                      "as they should be: free of cracks 1 to 3; leaks: none. 1 fact noted.");
    story_end(&story);
}
END_TEST

// A plan that names no unit of torque, one place of three worked on, and a second seal.
START_TEST(only_the_places_worked_on_have_a_new_size)
{
    static const char journals[] = "plan: Journals\n"
                                   "units: [mm]\n"
                                   "axes: {main: 1..3}\n"
                                   "steps:\n"
                                   "  Crank:\n"
                                   "    checks:\n"
                                   "      journal: {at: main, limits: 59.70..60.00}\n"
                                   "    fasteners:\n"
                                   "      caps: {bolts: 1..2, stages: 40}\n";
    Story story;
    story_begin(&story, journals);
    story_take_tool(&story, "01", "micrometer", "1/1000");
    story_enter(&story, "rework", "{'name':'journal','place':['2'],'work':'polished'}");
    story_read(&story, "journal", "'place':['1'],", "59.99", "5999/100", "01");
    story_read(&story, "journal", "'place':['2'],", "59.74", "5974/100", "01");
    story_read(&story, "journal", "'place':['3'],", "59.98", "5998/100", "01");
    story_enter(&story, "seal",
                "{'gate':'hand over','covers':6,'supplement':1,'counts':{'open':3,'pass':3,"
                "'fail':0,'in doubt':0,'conceded':0,'noted':0,'not needed':0},'edition':'1',"
                "'assessment':'7f3a90c1e25d00117f3a90c1e25d00117f3a90c1e25d00117f3a90c1e25d0011'}");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "journal 2 59.74 mm polished");
    expect_silence(text, "TIGHTENED");
    expect_said(text, "Sealed for hand over (supplement 1) on 9 September 2001");
    expect_said(text, "Judged then: 3 open, 3 pass. Sealed are entries 1 to 6; the seal is "
                      "entry 7, digest 7f3a90c1e25d0011.");
    story_end(&story);
}
END_TEST

// The size is that of the engine as left: not what was found, not what a mock-up showed, not what
// was read before the work.
START_TEST(sizes_now_are_those_of_the_engine_as_left)
{
    static const char sizes[] =
        "plan: Bores\n"
        "units: [mm, N·m]\n"
        "steps:\n"
        "  Found:\n"
        "    checks:\n"
        "      found bore: {limits: 89.00..89.10, settled by: [bore]}\n"
        "      deck: at most 0.05\n"
        "  Trial:\n"
        "    checks:\n"
        "      trial length: {at: free/tight, decimals: 3}\n"
        "      trial stretch = trial length[tight] - trial length[free]: 0.100..0.200\n"
        "    fasteners:\n"
        "      bolts: {bolts: 1..2, stages: 30 > until trial stretch, ceiling: 90, then off: yes}\n"
        "  Left:\n"
        "    checks:\n"
        "      bore: {limits: 90.00..90.03}\n";
    Story story;
    story_begin(&story, sizes);
    story_take_tool(&story, "01", "micrometer", "1/1000");
    story_read(&story, "found bore", "", "89.05", "8905/100", "01");
    story_read(&story, "deck", "", "0.04", "4/100", "01");
    story_read(&story, "trial length", "'place':['free'],", "62.400", "62400/1000", "01");
    story_read(&story, "trial length", "'place':['tight'],", "62.550", "62550/1000", "01");
    story_enter(&story, "rework", "{'name':'found bore','work':'bored'}");
    story_enter(&story, "rework", "{'name':'deck','work':'skimmed'}");
    story_enter(&story, "rework", "{'name':'bore','work':'honed'}");
    story_read(&story, "bore", "", "90.02", "9002/100", "01");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text, "bore 90.02 mm honed");
    expect_said(text, "deck not read since skimmed");
    expect_said(text, "found bore not read since bored");
    expect_silence(text, "89.05");
    expect_silence(text, "trial stretch");
    story_end(&story);
}
END_TEST

// A build with so many steps that nothing was done of, a line each on its sheet.
static char *print_steps(guint steps)
{
    g_autoptr(GString) long_plan = g_string_new("plan: Long\nunits: [mm]\nsteps:\n");
    for (guint i = 0; i < steps; i++)
        g_string_append_printf(long_plan, "  Step %u: {checks: {look %u: yes}}\n", i + 1, i + 1);
    Story story;
    story_begin(&story, long_plan->str);
    char *text = print(&story, customer, 0);
    story_end(&story);
    return text;
}

// Wherever a page ends: who signs has before him what he signs.
START_TEST(signatures_stand_below_what_they_sign)
{
    for (guint steps = 1; steps <= PAGE_LINES; steps++) {
        g_autofree char *text = print_steps(steps);
        const char *page = strrchr(text, '\f') ? strrchr(text, '\f') : text;
        const char *head = strstr(page, "SEAL AND SIGNATURES");
        ck_assert_msg(head != NULL, "%u steps: signed apart from the seal:%s", steps, page);
        ck_assert_ptr_nonnull(strstr(head, "the last with digest"));
        ck_assert_ptr_nonnull(strstr(head, "For the workshop"));
        ck_assert_ptr_nonnull(strstr(head, "Received by"));
    }
}
END_TEST

static void enter_engine(Story *story, const char *kind, const char *owner, const char *note)
{
    g_autofree char *body = g_strdup_printf(
        "{'what':'engine','format':1,'seq':3,'body':{'id':'6f1c2d30-0000-4000-8000-000000000003',"
        "'family':'Small twin','serial':'ST-0042','owner':'6f1c2d30-0000-4000-8000-0000000000%s',"
        "'note':'%s'}}",
        owner, note);
    story_enter(story, kind, body);
}

static void enter_owner(Story *story, const char *kind, const char *owner, const char *label)
{
    g_autofree char *body = g_strdup_printf(
        "{'what':'owner','format':1,'seq':4,'body':{'id':'6f1c2d30-0000-4000-8000-0000000000%s',"
        "'label':'%s'}}",
        owner, label);
    story_enter(story, kind, body);
}

static void find_wrong(Story *story, const char *digits, const char *note)
{
    g_autofree char *body = g_strdup_printf(
        "{'what':'calibration','format':1,'seq':9,'body':{'id':'6f1c2d30-0000-4000-8000-"
        "0000000002%s','tool':'6f1c2d30-0000-4000-8000-0000000000%s','date':'2001-09-10',"
        "'found':'wrong','note':'%s'}}",
        digits, digits, note);
    story_enter(story, "news", body);
}

static void uphold(Story *story, const char *name, const char *doubt)
{
    g_autofree char *body = g_strdup_printf("{'asked':'read','name':'%s','step':'Block','doubt':"
                                            "'%s','why':'far inside'}",
                                            name, doubt);
    story_enter(story, "uphold", body);
}

// A gauge found wrong, a wrench of the bolts that a reading was taken with, and what was disturbed
// since: not each other's causes.
START_TEST(what_is_upheld_says_why_it_was_in_doubt)
{
    static const char bores[] = "plan: Bores\n"
                                "units: [mm, N·m]\n"
                                "steps:\n"
                                "  Block:\n"
                                "    fasteners:\n"
                                "      caps: {bolts: 1..2, stages: 40}\n"
                                "    checks:\n"
                                "      deck: at most 0.05\n"
                                "      bore: {limits: 59.70..60.00, with: caps}\n"
                                "      play: {limits: 0.10..0.30, rests on: caps}\n";
    Story story;
    story_begin(&story, bores);
    story_take_tool(&story, "01", "feeler gauge", "1/1000");
    story_take_tool(&story, "02", "micrometer", "1/1000");
    story_take_tool(&story, "09", "click wrench", "1/10");
    tick(&story, "1", "'1','2'");
    story_read(&story, "deck", "", "0.02", "2/100", "01");
    story_read(&story, "bore", "", "59.85", "5985/100", "02");
    story_read(&story, "play", "", "0.20", "20/100", "02");
    find_wrong(&story, "01", "0.005 thick");
    find_wrong(&story, "09", "9 % low");
    story_slacken(&story, "caps", "Block", "1 2");
    uphold(&story, "deck", "tool");
    uphold(&story, "bore", "basis");
    uphold(&story, "play", "basis");
    g_autofree char *text = print(&story, customer, 0);
    expect_said(text,
                "Feeler gauge of deck found wrong 2001-09-10 (0.005 thick). Upheld: far inside.");
    expect_said(text, "Click wrench of caps found wrong 2001-09-10. Upheld: far inside.");
    expect_said(text, "What it was measured on was disturbed afterwards. Upheld: far inside.");
    story_end(&story);
}
END_TEST

// What was sealed names the owner it was sealed for; a later one is named beside, never instead.
START_TEST(a_sealed_sheet_names_the_owner_of_then)
{
    Story story;
    story_begin(&story, plan);
    enter_owner(&story, "take", "21", "Harrow");
    enter_owner(&story, "take", "22", "Sallow");
    enter_engine(&story, "take", "21", "launch");
    g_autofree char *before = print(&story, customer, 0);
    expect_said(before, "for Harrow");
    enter_engine(&story, "news", "22", "ferry");
    g_autofree char *unsealed = print(&story, customer, 0);
    expect_said(unsealed, "for Sallow");
    expect_silence(unsealed, "Harrow");
    story_end(&story);

    story_begin(&story, plan);
    enter_owner(&story, "take", "21", "Harrow");
    enter_engine(&story, "take", "21", "launch");
    story_enter(&story, "seal",
                "{'gate':'hand over','covers':2,'counts':{'open':3,'pass':0,'fail':0,'in doubt':0,"
                "'conceded':0,'noted':0,'not needed':0},'edition':'1','assessment':"
                "'7f3a90c1e25d00117f3a90c1e25d00117f3a90c1e25d00117f3a90c1e25d0011'}");
    enter_owner(&story, "news", "22", "Sallow");
    enter_engine(&story, "news", "22", "ferry");
    g_autofree char *sealed = print(&story, customer, 0);
    expect_said(sealed, "for Harrow launch taken in");
    expect_said(sealed, "Since 9 September 2001 for Sallow.");
    expect_said(sealed, "seal 7f3a 90c1 e25d 1 of ");
    expect_said(sealed,
                "Sealed are entries 1 to 2; the seal is entry 3. Entries 1 to 5, the last with");
    story_end(&story);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("customer");
    TCase *tcase = tcase_create("customer");
    tcase_add_test(tcase, the_customer_reads_figures_and_plain_words);
    tcase_add_test(tcase, the_customer_reads_no_chatter);
    tcase_add_test(tcase, only_the_places_worked_on_have_a_new_size);
    tcase_add_test(tcase, a_reading_far_on_the_free_side_stands_at_the_end_of_its_strip);
    tcase_add_test(tcase, places_without_limits_say_how_many_they_are);
    tcase_add_test(tcase, signatures_stand_below_what_they_sign);
    tcase_add_test(tcase, what_was_looked_at_is_named);
    tcase_add_test(tcase, sizes_now_are_those_of_the_engine_as_left);
    tcase_add_test(tcase, what_is_upheld_says_why_it_was_in_doubt);
    tcase_add_test(tcase, a_sealed_sheet_names_the_owner_of_then);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
