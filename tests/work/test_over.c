// One check over engines: what is shown, and what it comes to, on the demo's plan.
#include "agenda.h"

#include <standbook/work/over.h>

static GArray *rows_now(const char *check)
{
    Agenda agenda = agenda_now();
    GArray *rows = g_array_new(FALSE, FALSE, sizeof(Over));
    over_add(rows, "TL-1", agenda.assessment, check);
    return rows;
}

static void read_bores(void)
{
    take("2025-01-22 08:00 MO pick up Measure block");
    take("read found bore[1] 89.142 89.098 89.041 89.110 89.080 89.036 with G03");
    take("read found bore[2] 89.090 89.080 89.043 89.085 89.082 89.037 with G03");
    take("read found bore[3] 89.211 89.134 89.052 89.160 89.102 89.045 with G03");
}

START_TEST(what_was_read_is_shown_in_its_window)
{
    read_bores();
    g_autoptr(GArray) rows = rows_now("found bore wear");
    ck_assert_uint_eq(rows->len, 3); // cylinder 4 was not read
    g_autoptr(Number) least = NULL, greatest = NULL;
    ck_assert(over_window(rows, &least, &greatest));
    g_autofree char *from = number_text(least), *to = number_text(greatest);
    ck_assert_str_eq(from, "0");      // it wears away from new
    ck_assert_str_eq(to, "0.000211"); // the worst, in metres
    g_autoptr(GArray) none = rows_now("piston clearance");
    g_autoptr(Number) no_least = NULL, no_greatest = NULL;
    ck_assert(!over_window(none, &no_least, &no_greatest));
}
END_TEST

START_TEST(what_it_comes_to)
{
    read_bores();
    g_autoptr(GArray) rows = rows_now("found bore wear");
    g_autofree char *words = over_words(rows);
    ck_assert_str_eq(words, "TL-1: cylinder 3 is 0.061 past the wear limit.\nOf the other 2: 1 "
                            "within the limit, 1 over the limit."
                            "\nAs found. In the step: 2 open until answered.");
    g_array_set_size(rows, 1);
    g_autofree char *one = over_words(rows);
    ck_assert_str_eq(one, "Of 1: 1 over the limit.\nAs found. In the step: 1 open until answered.");
}
END_TEST

START_TEST(what_was_answered_counts_as_noted)
{
    read_bores();
    take("decide found bore wear[1] rework \"bored\" customer letter");
    g_autoptr(GArray) rows = rows_now("found bore wear");
    g_autofree char *words = over_words(rows);
    ck_assert_ptr_nonnull(
        strstr(words, "\nAs found. In the step: 1 open until answered, 1 noted as answered."));
}
END_TEST

START_TEST(what_has_no_limit_was_read_all_the_same)
{
    read_bores();
    Agenda agenda = agenda_now();
    g_autoptr(GArray) rows = rows_now("found bore");
    ck_assert_uint_eq(rows->len, 0);
    ck_assert(over_was_read(agenda.assessment, "found bore"));
    ck_assert(!over_was_read(agenda.assessment, "piston clearance"));
}
END_TEST

START_TEST(what_stands_on_the_wear_limit_is_not_past_it)
{
    take("2025-01-22 08:00 MO pick up Measure block");
    take("read found bore[2] 89.150 89.080 89.043 89.085 89.082 89.037 with G03");
    take("read found bore[3] 89.211 89.134 89.052 89.160 89.102 89.045 with G03");
    g_autoptr(GArray) rows = rows_now("found bore wear");
    g_autofree char *words = over_words(rows);
    ck_assert_str_eq(words,
                     "TL-1: cylinder 3 is 0.061 past the wear limit, cylinder 2 stands on it."
                     "\nAs found. In the step: 2 open until answered.");
}
END_TEST

START_TEST(the_place_that_needs_a_person_is_the_worst)
{
    read_bores();
    g_autoptr(GArray) rows = rows_now("found bore wear");
    const Over *worst = over_worst(rows, "TL-1");
    ck_assert_str_eq(worst->made->place, "3"); // past the wear limit
    ck_assert_int_eq(over_verdict(worst->made), VERDICT_FAIL);
    ck_assert_int_eq(over_reason(worst->made), REASON_HIGH);
    ck_assert_ptr_null(over_worst(rows, "TL-2"));
    g_array_set_size(rows, 2);
    ck_assert_str_eq(over_worst(rows, "TL-1")->made->place, "1"); // 2 passes
}
END_TEST

START_TEST(a_check_without_limits_leads_to_what_is_worked_out_from_it)
{
    read_bores();
    Agenda agenda = agenda_now();
    ck_assert_str_eq(over_about(agenda.assessment, "found bore wear"), "found bore wear");
    const char *about = over_about(agenda.assessment, "found bore");
    ck_assert_msg(about && strcmp(about, "found bore") != 0, "%s", about ? about : "none");
    ck_assert_ptr_null(over_about(agenda.assessment, "skirt"));
}
END_TEST

START_TEST(checks_with_a_value_and_a_limit_are_offered)
{
    read_bores();
    Agenda agenda = agenda_now();
    g_autoptr(GPtrArray) checks = over_checks(agenda.assessment);
    ck_assert_uint_eq(checks->len, 2); // the bores themselves have no limits
    ck_assert_str_eq(((const PlanCheck *)checks->pdata[0])->name, "found bore wear");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {what_was_read_is_shown_in_its_window,
                            what_it_comes_to,
                            what_was_answered_counts_as_noted,
                            what_has_no_limit_was_read_all_the_same,
                            what_stands_on_the_wear_limit_is_not_past_it,
                            the_place_that_needs_a_person_is_the_worst,
                            a_check_without_limits_leads_to_what_is_worked_out_from_it,
                            checks_with_a_value_and_a_limit_are_offered};
    return run_on_build("over", tests, G_N_ELEMENTS(tests), 0);
}
