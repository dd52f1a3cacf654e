// When a step says by itself what it closes, on the demo's plan.
#include "agenda.h"

#include <standbook/work/closing.h>
#include <standbook/work/subject.h>

static void expect_first(const char *step, const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    expect_place(&agenda, closing_first(&agenda, step_of(step), find_place(&agenda, place)),
                 expected);
}

static void take_both(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

static const char flange[] = "bolt pick-up flange in Sump[1], stage 1";
static const char caps[] = "bolt main caps in Crank[1], stage 1";

START_TEST(in_front_of_a_bolt_all_that_stands_before_it_counts)
{
    take("2025-03-13 08:30 JT pick up Sump");
    expect_first("Sump", "read pan depth", NULL); // not yet in front of the bolts
    expect_first("Sump", flange, "bolt main caps in Crank[3], stage 1");
    // What is measured behind the bolts is not asked for in front of them.
    expect_first("Crank", caps, "read main clearance[1]");
    take_both("MO pick up Main clearances\nread main bore 59.790 59.791 59.792 59.792 59.786 "
              "59.787 with G03\nnot needed main clearance[2] \"x\"");
    expect_first("Crank", caps, "read main clearance[1]");
}
END_TEST

START_TEST(a_step_without_bolts_is_asked_at_its_first_place)
{
    // What it closes itself is its own work.
    take("2025-01-14 08:00 MO pick up Strip top end");
    expect_first("Strip top end", "look pushrods tappets rockers numbered", NULL);
    // What closes nothing asks nothing.
    expect_first("Sump", "read pan depth", NULL);
}
END_TEST

START_TEST(a_reason_covers_what_was_at_stake_and_no_more)
{
    take("2025-03-13 08:30 JT pick up Sump");
    take("close Sump \"for the mock-up\"");
    expect_first("Sump", flange, NULL);
    // What was settled then and no longer is has no reason.
    take("look rod bolt paint seen 8");
    g_autofree char *strike = g_strdup_printf("strike #%" G_GINT64_FORMAT " typo", last(0)->seq);
    expect_first("Sump", flange, NULL);
    take("close Sump \"again\"");
    take("strike last typo");
    expect_first("Sump", flange, NULL); // the reason before it counts again
    take("close Sump \"with the paint seen\"");
    expect_first("Sump", flange, NULL);
    take(strike);
    expect_first("Sump", flange, "bolt main caps in Crank[3], stage 1"); // of all that are at stake
}
END_TEST

START_TEST(a_reason_struck_is_none)
{
    take("2025-03-13 08:30 JT pick up Sump");
    take("close Sump \"for the mock-up\"");
    take("strike last typo");
    expect_first("Sump", flange, "bolt main caps in Crank[3], stage 1");
}
END_TEST

START_TEST(at_the_end_the_reason_stands_for_the_same)
{
    take_both("2025-03-05 08:30 JT pick up Rings\nread top ring gap 0.36 0.36 0.36 0.95 with G08\n"
              "read second ring gap 0.30 0.30 0.30 0.30 with G08\nfit ring sets new");
    Agenda agenda = agenda_now();
    ck_assert_ptr_null(closing_excuse(&agenda, step_of("Rings")));
    take("close Rings \"agreed with the owner\"");
    agenda = agenda_now();
    const Entry *reason = closing_excuse(&agenda, step_of("Rings"));
    ck_assert_ptr_eq(reason, last(0));
    take("read second ring gap[1] 0.95 with G08"); // more is left than was known then
    agenda = agenda_now();
    ck_assert_ptr_null(closing_excuse(&agenda, step_of("Rings")));
}
END_TEST

START_TEST(a_finding_that_was_read_cannot_be_lost)
{
    take("2025-01-14 08:00 MO pick up Strip bottom end");
    take("read found idler backlash 0.33 with G04");
    Agenda agenda = agenda_now();
    const PlanStep *step = step_of("Strip bottom end");
    guint index = find_place(&agenda, "read found idler backlash");
    ck_assert(requirement_is_left(requirement_at(&agenda, index)));
    ck_assert(!closing_at_stake(step, requirement_at(&agenda, index)));
    ck_assert(closing_at_stake(
        step, requirement_at(&agenda, find_place(&agenda, "read found crank float"))));
}
END_TEST

START_TEST(the_list_has_what_is_closed_alone)
{
    take_both("2025-03-13 08:30 JT pick up Sump\nread pan depth 142 with G07\n"
              "read pick-up depth 136 with G07");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = {&agenda, taken, 0};
    g_autoptr(GArray) subjects =
        subjects_at_stake(&telling, step_of("Sump"), find_place(&agenda, flange));
    static const char *const names[] = {"pick-up clearance", "rod bolt paint seen", "rod bolts",
                                        "main caps"};
    ck_assert_uint_eq(subjects->len, G_N_ELEMENTS(names));
    for (guint i = 0; i < subjects->len; i++) {
        ck_assert_str_eq(g_array_index(subjects, Subject, i).name, names[i]);
        ck_assert(g_array_index(subjects, Subject, i).left);
    }
}
END_TEST

int main(void)
{
    const TTest *tests[] = {in_front_of_a_bolt_all_that_stands_before_it_counts,
                            a_step_without_bolts_is_asked_at_its_first_place,
                            a_reason_covers_what_was_at_stake_and_no_more,
                            a_reason_struck_is_none,
                            at_the_end_the_reason_stands_for_the_same,
                            a_finding_that_was_read_cannot_be_lost,
                            the_list_has_what_is_closed_alone};
    return run_on_build("closing", tests, G_N_ELEMENTS(tests), 0);
}
