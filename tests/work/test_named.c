// What people call a place, on the demo's plan. Which of several is meant: common practice of the
// trade, no published source.
#include "agenda.h"

#include <standbook/work/named.h>

static void expect_named(const char *words, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GPtrArray) named = requirements_named(agenda.assessment, words, 1);
    g_autofree char *name = named->len ? requirement_name(named->pdata[0]) : g_strdup("nothing");
    ck_assert_msg(strcmp(name, expected) == 0, "%s: %s", words, name);
}

static void expect_first_in(const char *words, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GPtrArray) named = requirements_named(agenda.assessment, words, 2);
    ck_assert_uint_eq(named->len, 2); // the others follow
    ck_assert_str_eq(((const Requirement *)named->pdata[0])->step->name, expected);
}

START_TEST(the_judged_value_of_just_that_place_is_meant)
{
    expect_named("3 main", "read main clearance[3]");
    expect_named("main 3", "read main clearance[3]");
    expect_named("MAIN 3 clear", "read main clearance[3]");
    expect_named("piston clearance 4", "read piston clearance[4]");
    expect_named("top ring gap 2", "read top ring gap[2]");
    expect_named("cyl 4 mid T bore", "read bore[4, T, mid]");
    expect_named("rod 2 big", "read big-end clearance[2]");
    expect_named("backlash 3", "read idler backlash[3]");
}
END_TEST

START_TEST(bolts_and_signatures_come_after)
{
    expect_named("head nuts 2", "bolt head nuts in Head on[2], stage 1");
    expect_named("main 9", "nothing");
    expect_named("noisy cold", "nothing");
    expect_named("", "nothing");
    expect_named(" , ", "nothing");
}
END_TEST

START_TEST(as_many_as_are_wanted_the_best_first)
{
    static const char *const expected[] = {"read main clearance[3]", "read main tunnel[3]",
                                           "read main journal[3, front, v]"};
    Agenda agenda = agenda_now();
    g_autoptr(Naming) naming = naming_new(agenda.assessment);
    for (guint most = 0; most <= G_N_ELEMENTS(expected); most++) {
        g_autoptr(GPtrArray) named = naming_asked(naming, "3 main", most);
        ck_assert_uint_eq(named->len, most);
        for (guint i = 0; i < most; i++) {
            g_autofree char *name = requirement_name(named->pdata[i]);
            ck_assert_str_eq(name, expected[i]);
        }
    }
}
END_TEST

START_TEST(words_are_taken_as_they_are_said)
{
    expect_named("clearance #3 main?", "read main clearance[3]");
    expect_named("main clearance[3]", "read main clearance[3]");
    expect_named("Top RING gap: 2", "read top ring gap[2]");
    expect_named("pistons 4", "fit pistons[4]"); // the name before the step
    expect_named("head nut bolt 2", "bolt head nuts in Head on[2], stage 1");
}
END_TEST

START_TEST(numbers_are_said_in_words_and_a_question_whole)
{
    expect_named("three main", "read main clearance[3]");
    expect_named("third main", "read main clearance[3]");
    expect_named("What was the clearance on number three main?", "read main clearance[3]");
    expect_named("how is piston clearance four", "read piston clearance[4]");
    expect_named("eleventh head nut", "nothing");
    expect_named("thirteen main", "nothing");
    expect_named("what was the", "nothing");
    expect_named("four position", "read idler backlash[4]");
}
END_TEST

START_TEST(a_value_or_a_lot_names_its_place)
{
    take("2025-03-04 10:00 MO pick up Main clearances");
    take("read main bore[3, front] 59.787 with G03");
    take("2025-03-17 10:00 MO pick up Crank");
    take("fit main shells[3, upper] lot MB-2417-C new");
    expect_named("59.787", "read main bore[3, front]");
    expect_named("59.78", "read main bore[3, front]");
    expect_named("mb-2417-c", "fit main shells[3, upper]");
    expect_named("MB-24", "nothing"); // one of two digits must be all of it
}
END_TEST

START_TEST(an_entry_leads_to_its_place)
{
    take("2025-02-25 10:00 MO pick up Check returned work");
    take("read bore[4, T, mid] 90.026");
    take("note on bore[4, T, mid] \"noisy cold\"");
    take("note \"rain\"");
    Agenda agenda = agenda_now();
    const Requirement *made =
        requirement_about(agenda.assessment, agenda.entries[agenda.count - 2]);
    ck_assert_ptr_nonnull(made);
    g_autofree char *name = requirement_name(made);
    ck_assert_str_eq(name, "read bore[4, T, mid]");
    ck_assert_ptr_null(requirement_about(agenda.assessment, agenda.entries[agenda.count - 1]));
}
END_TEST

START_TEST(a_label_is_no_beginning_of_a_word)
{
    expect_named("bore 3 T", "read bore[3, T, top]"); // and no taper
    expect_named("lash 1 in", "read lash as found[in, 1]");
    expect_named("ex 2 lash", "read lash as found[ex, 2]");
    expect_named("bore 3 ta", "read bore taper[3]");
    expect_named("inlet lash 1", "read inlet lash[1]");
}
END_TEST

START_TEST(a_check_that_is_called_just_so_comes_before_others)
{
    expect_named("idler backlash", "read idler backlash[1]"); // not what was found of it
    expect_named("backlash found", "read found idler backlash");
}
END_TEST

START_TEST(what_was_read_last_is_meant)
{
    take("2025-03-17 10:00 MO pick up Cold lash");
    take("read inlet lash[1] 0.30 with G08");
    expect_first_in("inlet lash 1", "Cold lash");
    take("2025-03-21 09:00 MO pick up Cold retorque");
    take("read inlet lash[1] 0.31 with G08");
    expect_first_in("inlet lash 1", "Cold retorque");
    take("strike last typo");
    expect_first_in("inlet lash 1", "Cold lash");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {the_judged_value_of_just_that_place_is_meant,
                            bolts_and_signatures_come_after,
                            as_many_as_are_wanted_the_best_first,
                            words_are_taken_as_they_are_said,
                            numbers_are_said_in_words_and_a_question_whole,
                            a_value_or_a_lot_names_its_place,
                            an_entry_leads_to_its_place,
                            a_label_is_no_beginning_of_a_word,
                            a_check_that_is_called_just_so_comes_before_others,
                            what_was_read_last_is_meant};
    return run_on_build("named", tests, G_N_ELEMENTS(tests), 0);
}
