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

int main(void)
{
    const TTest *const tests[] = {
        a_requirement_is_typed_back_as_it_is_printed, a_strike_finds_one_stage,
        one_stage_or_place_is_conceded_or_upheld,     what_cannot_be_meant_of_one_stage_is_refused,
        a_signature_says_what_is_missing_behind_it,
    };
    return run_on_build("said", tests, G_N_ELEMENTS(tests), 0);
}
