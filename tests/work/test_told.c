// What is told of a place, on the demo's plan.
#include "agenda.h"

#include <standbook/work/told.h>

// The lines, each ended by a line feed.
static char *told_of(const char *name)
{
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    g_autoptr(GPtrArray) lines =
        told_lines(&agenda, taken, requirement_at(&agenda, find_place(&agenda, name)));
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++)
        g_string_append_printf(text, "%s\n", (const char *)lines->pdata[i]);
    return g_string_free(text, FALSE);
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
                "main shells 3, upper/lower: lot MB-2417-C, main shells -0.25 grade A, "
                "Hollin Bearing Stores\n",
                TRUE);
    expect_told("read main clearance[2]", "main shells 2, upper: lot MB-2417-C", TRUE);
    expect_told("read main clearance[2]", "main shells 2, lower: lot MB-2398-F", TRUE);
    expect_told("read main clearance[1]", "shells", FALSE);
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
                            a_concession_is_told_with_its_name_and_words,
                            an_uphold_of_a_reading_is_told_of_what_is_worked_out_from_it};
    return run_on_build("told", tests, G_N_ELEMENTS(tests), 0);
}
