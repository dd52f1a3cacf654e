// What is proposed where the plan says `choose`. Main 1 is that of the demo's launch: grade A gives
// 59.816 - 59.744 = 0.072, grade B is 0.013 thicker in each half.
#include "agenda.h"

#include <standbook/work/choice.h>

static void expect_offer(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    g_auto(ChoiceOffer) offer = choice_offer(judgement, find_place(&agenda, place));
    g_autofree char *words = choice_offer_words(&offer);
    ck_assert_pstr_eq(words, expected);
}

START_TEST(the_grade_nearest_the_aim_comes_first)
{
    expect_offer("read clearance by grade[1]", NULL); // nothing is read yet
    take("2025-02-26 09:45 MO read main journal[1] 59.744 59.743 59.744 59.742 with G01");
    take("read main journal[2] 59.742 59.741 59.741 59.740 with G01");
    take("read main journal[3] 59.780 59.780 59.780 59.780 with G01");
    take(
        "2025-03-04 09:05 read trial main bore 59.816 59.817 59.792 59.792 59.786 59.787 with G03");
    expect_offer("read clearance by grade[1]",
                 "2 B 0.046 √ nearest the aim 0.046   1 A 0.072 ▲ 0.007 over");
    expect_offer("read clearance by grade[2]",
                 "1 A 0.050 √ nearest the aim 0.046   2 B 0.024 ▼ 0.006 under");
    expect_offer("read clearance by grade[3]", "none lands inside; 1 A 0.006 ▼ 0.024 under");
}
END_TEST

START_TEST(once_chosen_it_is_still_said)
{
    take("2025-02-26 09:45 MO read main journal[1] 59.744 59.743 59.744 59.742 with G01");
    take("2025-03-04 09:05 read trial main bore[1] 59.816 59.817 with G03");
    take("choose clearance by grade[1] A");
    expect_offer("read clearance by grade[1]",
                 "2 B 0.046 √ nearest the aim 0.046   1 A 0.072 ▲ 0.007 over");
    expect_offer("read skirt[1]", NULL); // nothing is chosen there
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {the_grade_nearest_the_aim_comes_first,
                                  once_chosen_it_is_still_said};
    return run_on_build("choice", tests, G_N_ELEMENTS(tests), 0);
}
