// A concession written line by line, and what was said before on each line.
#include "agenda.h"

#include <standbook/work/concession.h>

static const char *const lines[CONCESSION_LINES] = {
    "Honed oversize outside.", "A sleeve: 3 weeks more.", NULL, "", "By telephone.", "Agreed."};

START_TEST(a_reason_holds_the_lines_that_are_written)
{
    g_autofree char *reason = concession_reason(lines);
    ck_assert_str_eq(reason, "Honed oversize outside. Instead: A sleeve: 3 weeks more. "
                             "Told: By telephone. Answer: Agreed.");
    for (guint i = 0; i < CONCESSION_LINES; i++) {
        g_autofree char *said = concession_said(reason, i);
        ck_assert_str_eq(said ? said : "", lines[i] ? lines[i] : "");
    }
}
END_TEST

static void expect_sentences(const char *reason, const char *expected)
{
    g_autofree char *said = concession_sentences(reason);
    ck_assert_str_eq(said, expected);
}

START_TEST(its_lines_are_sentences)
{
    expect_sentences("machined before Instead: thicker gasket Effect: none.",
                     "machined before. Instead: thicker gasket. Effect: none");
    expect_sentences("Honed. Told: By letter.", "Honed. Told: By letter");
    expect_sentences("all there is", "all there is");
}
END_TEST

START_TEST(what_was_said_before_comes_once_and_the_newest_first)
{
    const char *const rows[] = {"2025-03-05 08:00 MO pick up Rings",
                                "read top ring gap 0.95 0.96 0.97 0.36 with G08",
                                "concede top ring gap[1] \"All there is. Told: By letter.\"",
                                "concede top ring gap[2] \"A new set is late. Told: By letter.\"",
                                "concede top ring gap[3] \"A mistake.\"",
                                "strike last typo"};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        take(rows[i]);
    Agenda agenda = agenda_now();
    g_autoptr(GPtrArray) why = concession_before(agenda.entries, agenda.count, 0);
    ck_assert_uint_eq(why->len, 2); // what was struck is not said
    ck_assert_str_eq(why->pdata[0], "A new set is late.");
    ck_assert_str_eq(why->pdata[1], "All there is.");
    g_autoptr(GPtrArray) told = concession_before(agenda.entries, agenda.count, 4);
    ck_assert_uint_eq(told->len, 1);
    ck_assert_str_eq(told->pdata[0], "By letter.");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {a_reason_holds_the_lines_that_are_written, its_lines_are_sentences,
                            what_was_said_before_comes_once_and_the_newest_first};
    return run_on_build("concession", tests, G_N_ELEMENTS(tests), 0);
}
