// What a line answers beside its verdicts, and requirements typed back as they are printed.
#include "build.h"

START_TEST(a_requirement_is_typed_back_as_it_is_printed)
{
    take("2025-03-13 11:36 MO pick up Crank");
    take("tighten bolt main caps in Main clearances[3], stage 1 with W2");
    expect_text(last(0), "step", "Main clearances");
    expect_list(last(0), "bolts", "3");
    take("tighten bolt main caps in Main clearances, stage 2 all with W2");
    ck_assert_int_eq(entry_number(last(0), "stage"), 2);
    take("not needed bolt main caps in Crank[6], stage 2 \"five studs\"");
    ck_assert_int_eq(entry_number(last(0), "stage"), 2);
    ck_assert_uint_eq(count_of("not needed"), 1);
    take("not needed wait head nuts in Head on, stage 4 \"no sealant\"");
    expect_text(last(0), "asked", "wait");
    take("not needed sign Main clearances, 2 \"nobody else aboard\"");
    expect_text(last(0), "asked", "sign");
    ck_assert_int_eq(entry_number(last(0), "stage"), 2);
    take("not needed fit main shells[2, upper] \"plain cap\"");
    expect_list(last(0), "place", "2 | upper");
    take("not needed fit flywheel bolts[6] \"five of them\"");
    ck_assert_uint_eq(count_of("not needed"), 5);
    expect_text(last(0), "asked", "fit"); // and not the stages of that bolt
    take("amend read spring load[3] limits 255..290 N \"supplier's sheet\"");
    expect_list(last(0), "place", "3");
    take("withdraw look oil sample taken \"no oil left\"");
    expect_text(last(0), "what", "check");
    take("note on read main bore[1 front] \"labels without a comma\"");
    expect_list(last(0), "place", "1 | front");
    take("sign Crank, 1");
    ck_assert_int_eq(entry_number(last(0), "signature"), 1);
}
END_TEST

START_TEST(every_name_that_is_printed_is_taken_back)
{
    take("2025-03-13 11:36 MO note one");
    const Assessment *assessment = demo_assess(demo);
    g_autoptr(GPtrArray) names = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; i < assessment->requirements->len; i++)
        g_ptr_array_add(names, requirement_name(assessment->requirements->pdata[i]));
    for (guint i = 0; i < names->len; i++) {
        g_autofree char *line = g_strdup_printf("not needed %s \"x\"", (char *)names->pdata[i]);
        LineTaken *taken = line_take(build, line, TYPED, NULL);
        ck_assert_msg(taken != NULL, "%s", line);
        ck_assert_uint_eq(taken->entries->len, 1);
        demo_keep(demo, build, taken);
        if (i % 100)
            continue;
        const Requirement *made = demo_assess(demo)->requirements->pdata[i];
        ck_assert_msg(made->verdict == VERDICT_NOT_NEEDED, "%s", line);
        ck_assert_int_eq(made->entry, last(0)->seq);
    }
    ck_assert_uint_gt(names->len, 500);
}
END_TEST

START_TEST(a_strike_finds_one_stage)
{
    take("2025-03-13 11:36 MO tighten drain plug all with W2");
    take("tighten main caps in Crank stage 1 all with W2");
    gint64 first = last(0)->seq;
    take("tighten main caps in Crank stage 2 all with W2");
    take("strike bolt main caps in Crank[4], stage 1 typo");
    ck_assert_int_eq(entry_number(last(0), "entry"), first);
    expect_refusal("strike fit main caps in Crank[4] typo",
                   "column 8: nothing is entered there that could be struck");
}
END_TEST

START_TEST(one_stage_or_place_is_conceded_or_upheld)
{
    take("2025-02-25 08:30 MO read bore[4, T, mid] 90.026 with G03");
    take("read skirt[4] 89.940 with G02");
    take("concede read piston clearance[4] \"honed oversize\" customer telephone");
    expect_list(last(0), "place", "4");
    take("2025-03-11 09:00 MO tighten main caps in Crank stage 1 all with W2"); // overdue
    take("tighten main caps in Crank stage 2 all with W2");
    take("uphold bolt main caps in Crank[4], stage 2 \"felt right\" second JT");
    ck_assert_uint_eq(count_of("uphold"), 1);
    expect_text(last(0), "doubt", "tool");
    ck_assert_int_eq(entry_number(last(0), "stage"), 2);
}
END_TEST

START_TEST(what_cannot_be_meant_of_one_stage_is_refused)
{
    take("2025-03-13 11:36 MO pick up Crank");
    expect_refusal("withdraw bolt main caps in Crank[4], stage 2 \"x\"",
                   "column 38: no single stage is meant here; leave this out");
    expect_refusal("withdraw Crank, 2 \"x\"",
                   "column 17: no single signature is meant here; leave this out");
    expect_refusal("not needed bolt main caps in Crank[4], stage 4 \"x\"",
                   "column 46: `main caps in Crank` has no stage 4; its stages are 40 > 75 > 100");
    expect_refusal("concede read mian clearance[4] \"x\"",
                   "column 14: this is not the name of a check; did you mean `main clearance`?");
    expect_refusal("sign Crank, 2", "column 13: the next signature of `Crank` is 1");
}
END_TEST

START_TEST(a_signature_says_what_is_missing_behind_it)
{
    expect_remark("2025-03-13 11:36 MO sign Sump", "");
    expect_remark("sign Main clearances", "One signature is missing (grades chosen): another "
                                          "person writes it, as in `EV sign Main clearances`.");
    expect_remark("JT sign Main clearances", "");
}
END_TEST

START_TEST(what_stands_behind_a_part_has_no_order)
{
    take("2025-03-13 11:36 MO fit main shells[2, upper] new lot MB-2417-C");
    expect_text(last(0), "label", "MB-2417-C");
    take("fit idler gear \"runs true\" reused serial 7");
    expect_text(last(0), "evidence", "runs true");
    expect_text(last(0), "serial", "7");
    take("lay gasket sealant lot SS-9921 on timing cover");
    expect_text(last(0), "lot", "SS-9921");
    expect_text(last(0), "tightening", "timing cover");
    expect_refusal("fit main shells new lot MB-2417-C lot MB-2417-C",
                   "column 35: its lot is said twice; leave one out");
    expect_refusal("fit main shells new new",
                   "column 21: its condition is said twice; leave one out");
    expect_refusal("fit idler gear serial 7 serial 8 new",
                   "column 25: its serial is said twice; leave one out");
    expect_refusal("fit idler gear count 1 count 1 new",
                   "column 24: the count is said twice; leave one out");
}
END_TEST

START_TEST(what_the_plan_tracks_is_asked_for)
{
    expect_remark("2025-03-13 11:36 MO fit main shells[2] new",
                  "The plan asks for its lot; once that is known, write `strike main shells[2] "
                  "\"lot known\"` and `fit main shells[2] lot … new after #7`.");
    ck_assert_int_eq(last(0)->seq, 7);
    take("strike main shells[2] \"lot known\"");
    take("fit main shells[2] lot MB-2417-C new after #7");
    ck_assert_int_eq(last(0)->after, 7);
    expect_remark("fit main shells lot MB-2417-C new", "");
    expect_remark("fit pistons[1] serial P-1 new", "");
    expect_remark("fit rear seal new", "");
}
END_TEST

START_TEST(a_sealant_not_laid_is_asked_for_once)
{
    expect_remark("2025-03-13 11:36 MO tighten sump stage 1 from L4 to R4 with W1",
                  "No gasket sealant is laid; write `lay gasket sealant on sump lot …`.");
    expect_remark("tighten sump stage 1 from L5 to B2 with W1", "");
    expect_remark("tighten drain plug all with W2", "");
    expect_remark("lay gasket sealant on timing cover", "");
    expect_remark("tighten timing cover stage 1 all with W1", "");
    expect_remark("tighten head studs[1] with W2", ""); // engine oil has no clock
    take("strike last typo");
    expect_remark("tighten head studs[2] with W2",
                  "No thread sealant is laid; write `lay thread sealant on head studs lot …`.");
    expect_remark("lay cam paste on sump", "The plan asks for no cam paste on `sump`.");
    expect_remark("lay medium locker on sump",
                  "The plan asks for no medium locker on `sump`; its clocks run all the same.");
}
END_TEST

START_TEST(a_strike_says_what_it_struck)
{
    take("2025-03-13 11:36 MO read top ring gap 0.38 0.40 3.6 0.42 with G08");
    expect_remark("strike top ring gap[3] typo",
                  "Struck: #10 `read top ring gap[3] 3.6 mm with G08`.");
    expect_remark("strike last typo", "Struck: #11 `read top ring gap[4] 0.42 mm with G08`.");
    take("read top ring gap 0.38 0.40 0.41 0.42");
    take("read cam lift 1 2 3 4 5 6 7 8");
    expect_remark("strike cam lift typo",
                  "Struck: #18 `read cam lift[in, 1] 1 mm`, #19 `read cam lift[in, 2] 2 mm`, #20 "
                  "`read cam lift[in, 3] 3 mm`, #21 `read cam lift[in, 4] 4 mm` and 4 more.");
    take("tighten drain plug all with W2");
    take("seal abandoned");
    expect_refusal("strike last typo",
                   "column 8: the last entry of this person is the seal `abandoned`; a seal is "
                   "struck by its number: `strike #37 …`");
    expect_remark("strike #37 typo", "Struck: #37 `seal abandoned, covers entries 1 to 36`.");
}
END_TEST

START_TEST(the_last_of_a_line_says_what_stands_beside_it)
{
    take("2025-03-13 11:36 MO read top ring gap 0.38 0.40 0.41 0.42 with G08");
    expect_remark("strike last typo",
                  "Struck: #11 `read top ring gap[4] 0.42 mm with G08`. 3 of the same time stand; "
                  "these too: `strike #8 to #10 …`.");
    expect_refusal("strike #8 to 10 typo", "column 14: to which entry? write `#8 to #9`");
    expect_refusal("strike #10 to #8 typo", "column 15: write the first of them in front");
    expect_refusal("strike #8 to #11 typo", "column 14: entry #11 is struck already");
    expect_remark("strike #8 to #10 typo",
                  "Struck: #8 `read top ring gap[1] 0.38 mm with G08`, #9 `read top ring gap[2] "
                  "0.40 mm with G08`, #10 `read top ring gap[3] 0.41 mm with G08`.");
    take("11:40 read top ring gap[1] 0.38 with G08");
    take("11:41 read top ring gap[2] 0.40 with G08");
    expect_remark("strike last typo", "Struck: #17 `read top ring gap[2] 0.40 mm with G08`.");
}
END_TEST

START_TEST(a_range_brings_nothing_back_and_takes_no_seal)
{
    take("2025-03-13 11:36 MO read top ring gap 0.38 0.40 0.41 0.42 with G08"); // #8 to #11
    take("strike #9 typo");
    expect_remark("strike #8 to #12 typo",
                  "Struck: #8 `read top ring gap[1] 0.38 mm with G08`, #10 `read top ring gap[3] "
                  "0.41 mm with G08`, #11 `read top ring gap[4] 0.42 mm with G08`.");
    take("read top ring gap[1] 0.38 with G08"); // #16
    take("seal abandoned");
    take("read top ring gap[2] 0.40 with G08");
    expect_refusal("strike #16 to #18 typo",
                   "column 19: entry #17 is the seal `abandoned`; a seal is struck by its own "
                   "number: `strike #17 …`");
}
END_TEST

START_TEST(a_move_is_measured_against_range_and_step)
{
    expect_remark("2025-03-13 11:36 MO move idler backlash to 0.13 turn", ""); // 6 of 1/48
    expect_remark("move idler backlash by 1/24 turn", "");
    expect_remark("move idler backlash by 1/25 turn",
                  "1/25 turn is no multiple of its step, 1/48 turn.");
    expect_remark("move idler backlash by 3 turn",
                  "3.212 turn lies beyond the range of the jackscrew, 0 turn to 3 turn.");
    expect_remark("strike last typo", "Struck: #9 `move idler backlash by 3 turn`.");
    expect_remark("move idler backlash by 2.5 turn", "");
    // One that stands where a struck one stood starts from there.
    g_autofree char *behind =
        g_strdup_printf("move idler backlash by 2.5 turn after #%" G_GINT64_FORMAT, last(3)->seq);
    expect_remark("move idler backlash to 1 turn", "");
    expect_remark(behind, "");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        a_requirement_is_typed_back_as_it_is_printed,
        every_name_that_is_printed_is_taken_back,
        a_strike_finds_one_stage,
        one_stage_or_place_is_conceded_or_upheld,
        what_cannot_be_meant_of_one_stage_is_refused,
        a_signature_says_what_is_missing_behind_it,
        what_stands_behind_a_part_has_no_order,
        what_the_plan_tracks_is_asked_for,
        a_sealant_not_laid_is_asked_for_once,
        a_strike_says_what_it_struck,
        the_last_of_a_line_says_what_stands_beside_it,
        a_range_brings_nothing_back_and_takes_no_seal,
        a_move_is_measured_against_range_and_step,
    };
    return run_on_build("said", tests, G_N_ELEMENTS(tests), 0);
}
