// What is told of a place, on the demo's plan.
#include "agenda.h"

#include <standbook/work/told.h>

// The lines, each ended by a line feed.
static char *told_in(const char *name, Moment now)
{
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    g_autoptr(GPtrArray) lines =
        told_lines(&agenda, taken, requirement_at(&agenda, find_place(&agenda, name)), now);
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++)
        g_string_append_printf(text, "%s\n", (const char *)lines->pdata[i]);
    return g_string_free(text, FALSE);
}

static char *told_of(const char *name)
{
    return told_in(name, 0);
}

static void expect_told(const char *name, const char *words, gboolean said)
{
    g_autofree char *told = told_of(name);
    ck_assert_msg((strstr(told, words) != NULL) == said, "%s: %s", name, told);
}

START_TEST(parts_of_one_lot_stand_in_one_line)
{
    take("2025-03-04 10:00 MO pick up Crank");
    take("fit main shells[3, upper] lot MB-2417-C new");
    take("fit main shells[3, lower] lot MB-2417-C new");
    take("fit main shells[2, upper] lot MB-2417-C new");
    take("fit main shells[2, lower] lot MB-2398-F new");
    expect_told("read main clearance[3]",
                "main shells -0.25 grade A, lot MB-2417-C, Hollin Bearing Stores\n", TRUE);
    expect_told("read main clearance[2]", "main shells upper -0.25 grade A, lot MB-2417-C", TRUE);
    expect_told("read main clearance[2]", "main shells lower -0.25 grade A, lot MB-2398-F", TRUE);
    expect_told("read main clearance[1]", "shells", FALSE);
}
END_TEST

START_TEST(parts_of_something_else_are_not_told)
{
    take("2025-03-06 10:00 MO pick up Fit pistons");
    take("fit pistons[4] serial PS-6003/4 new");
    expect_told("read piston clearance[4]", "pistons: PS-6003/4\n", TRUE);
    expect_told("read top ring gap[4]", "pistons", FALSE); // rings are another part
}
END_TEST

START_TEST(a_sum_is_told_by_its_terms)
{
    take("2025-02-25 10:00 MO pick up Check returned work");
    take("read bore[4] 90.027 90.026 90.022 90.020 90.019 90.017 with G03");
    take("read skirt[4] 89.940 with G02");
    expect_told("read piston clearance[4]", "bore T, mid 90.026 - skirt 89.940, G03 and G02, by MO",
                TRUE);
    expect_told("read bore taper[4]", "bore 90.017 to 90.027; G03, by MO", TRUE);
    take("2025-03-04 10:00 MO pick up Main clearances");
    take("read main journal[3] 59.745 59.744 59.744 59.743 with G01");
    take("read main bore[3, front] 59.787 with G03");
    take("read main bore[3, rear] 59.786 with G03");
    expect_told("read main clearance[3]", "smallest main bore 59.786 - largest main journal 59.745",
                TRUE);
}
END_TEST

START_TEST(a_day_of_this_year_is_said_without_it)
{
    take("2025-03-05 08:00 MO pick up Rings");
    take("read top ring gap 0.95 0.96 0.36 0.36 with G08");
    take("concede top ring gap[1] \"all there is\" customer telephone");
    g_autofree char *this_year = told_in("read top ring gap[1]", moment_of_day("2025-12-31"));
    g_autofree char *next_year = told_in("read top ring gap[1]", moment_of_day("2026-01-01"));
    ck_assert_ptr_nonnull(strstr(this_year, "Conceded 5 Mar by MO"));
    ck_assert_ptr_nonnull(strstr(next_year, "Conceded 5 Mar 2025 by MO"));
}
END_TEST

START_TEST(a_concession_is_told_with_its_name_and_words)
{
    take("2025-03-05 08:00 MO pick up Rings");
    take("read top ring gap 0.95 0.96 0.36 0.36 with G08");
    take("concede top ring gap[1] \"all there is\" customer telephone");
    expect_told("read top ring gap[1]", "G08, by MO\n", TRUE);
    expect_told("read top ring gap[1]",
                "Conceded 5 Mar 2025 by MO, customer, telephone: all there is\n", TRUE);
    expect_told("read top ring gap[2]", "Conceded", FALSE);
    take("strike last typo");
    expect_told("read top ring gap[1]", "Conceded", FALSE);
}
END_TEST

START_TEST(who_accepts_by_himself_is_named_once_and_each_line_is_a_sentence)
{
    take("2025-03-05 08:00 MO pick up Rings");
    take("read top ring gap 0.95 0.36 0.35 0.36 with G08");
    take("concede top ring gap[1] \"all there is Instead: fitted Effect: none\"");
    expect_told("read top ring gap[1]",
                "Conceded 5 Mar 2025 by MO: all there is. Instead: fitted. Effect: none\n", TRUE);
}
END_TEST

START_TEST(an_uphold_of_a_reading_is_told_of_what_is_worked_out_from_it)
{
    take("2025-03-04 08:00 MO pick up Main clearances");
    take("tighten main caps stage 1 all with W2"); // overdue
    take("tighten main caps stage 2 all with W2");
    take("tighten main caps stage 3 all with W2");
    take("read main bore[3, front] 59.786 with G03");
    take("uphold main bore[3, front] \"the effect is small\" second JT");
    const char *words = "Upheld 4 Mar 2025 by MO and JT: the effect is small\n";
    expect_told("read main bore[3, front]", words, TRUE);
    expect_told("read main clearance[3]", words, TRUE);
    expect_told("read main clearance[2]", "Upheld", FALSE);
    take("strike last typo");
    expect_told("read main clearance[3]", "Upheld", FALSE);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {parts_of_one_lot_stand_in_one_line,
                            parts_of_something_else_are_not_told,
                            a_sum_is_told_by_its_terms,
                            a_day_of_this_year_is_said_without_it,
                            a_concession_is_told_with_its_name_and_words,
                            who_accepts_by_himself_is_named_once_and_each_line_is_a_sentence,
                            an_uphold_of_a_reading_is_told_of_what_is_worked_out_from_it};
    return run_on_build("told", tests, G_N_ELEMENTS(tests), 0);
}
