// What stands behind one value, on the demo's plan.
#include "agenda.h"

#include <standbook/work/working.h>

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

static void expect_terms(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    const Requirement *made = requirement_at(&agenda, find_place(&agenda, place));
    g_autoptr(GArray) terms = working_terms(&agenda, made);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < terms->len; i++) {
        const WorkingTerm *term = &g_array_index(terms, WorkingTerm, i);
        g_autofree char *value =
            term->value ? check_value_words(made->check, term->value) : g_strdup("?");
        g_autofree char *from = term->from ? requirement_name(term->from) : g_strdup("-");
        g_string_append_printf(words, "%c %s: %s from %s\n", term->subtracted ? '-' : '+',
                               term->words, value, from);
    }
    ck_assert_str_eq(words->str, expected);
}

static void expect_words(char *(*words)(const Agenda *, const Requirement *), const char *place,
                         const char *expected)
{
    Agenda agenda = agenda_now();
    g_autofree char *said = words(&agenda, requirement_at(&agenda, find_place(&agenda, place)));
    ck_assert_pstr_eq(said, expected);
}

static const char bores[] = "2025-02-25 08:30 MO pick up Check returned work\n"
                            "read bore[1] 90.006 90.005 90.003 90.002 90.001 90.000 with G03\n"
                            "read bore[2] 90.008 90.007 90.004 90.003 90.003 90.001 with G03\n"
                            "read bore[3] 90.005 90.004 90.002 90.001 90.000 89.999 with G03\n";

static void expect_formula(const char *text, const char *expected)
{
    g_autoptr(Formula) formula = formula_parse(text, NULL, NULL);
    g_autofree char *words = working_formula(formula);
    ck_assert_str_eq(words, expected);
}

START_TEST(a_formula_is_said_by_its_terms)
{
    expect_formula("min(main bore over end) - max(main journal over end, plane)",
                   "smallest main bore - largest main journal");
    expect_formula("bore[T, mid] - skirt", "bore T, mid - skirt");
    expect_formula("max(range(bore over height) over direction)",
                   "largest range(bore over height)");
    // The bracket that opens first closes before the end.
    expect_formula("min(compression dry) / max(compression dry)",
                   "min(compression dry) / max(compression dry)");
    take_all(bores);
    take_all("read skirt[1] 89.941 with G02");
    expect_words(working_named_words, "read piston clearance[1]",
                 "bore T, mid 90.005 - skirt 89.941");
    expect_words(working_named_words, "read piston clearance[2]", NULL);
}
END_TEST

START_TEST(a_sum_is_told_term_by_term)
{
    take_all(bores);
    take_all("read skirt[1] 89.941 with G02");
    expect_terms("read piston clearance[1]", "+ bore[T, mid]: 90.005 from read bore[1, T, mid]\n"
                                             "- skirt: 89.941 from read skirt[1]\n");
    expect_terms("read piston clearance[2]", "+ bore[T, mid]: 90.007 from read bore[2, T, mid]\n"
                                             "- skirt: ? from -\n");
    expect_terms("read skirt[1]", "");             // is read
    expect_terms("read bore out-of-round[1]", ""); // is no sum
    expect_words(working_words, "read piston clearance[1]", "90.005 - 89.941");
    expect_words(working_words, "read piston clearance[2]", NULL);
    take_all("pick up Sump\nread pan depth 142 with G07\nread pick-up depth 136 with G07");
    expect_terms("read pick-up clearance", "+ pan depth: 142.0 from read pan depth\n"
                                           "- pick-up depth: 136.0 from read pick-up depth\n"
                                           "+ pan gasket: 1.5 from -\n");
}
END_TEST

START_TEST(what_stands_apart_from_three_others_is_said)
{
    take_all(bores);
    take_all("read bore[4] 90.027 90.026 90.005 90.002 90.001 89.970 with G03");
    expect_words(working_apart, "read bore[4, T, mid]",
                 "bore 4, T, mid is 0.021 above the other 3; they agree within 0.003.");
    expect_words(working_apart, "read bore[4, A, bottom]",
                 "bore 4, A, bottom is 0.030 below the other 3; they agree within 0.002.");
    expect_words(working_apart, "read bore[4, T, bottom]", NULL); // 0.002 above, they within 0.002
    expect_words(working_apart, "read bore[1, T, mid]", NULL);    // the odd one is another
}
END_TEST

static void expect_struck(const char *step, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GArray) struck = working_struck(&agenda, step_of(step));
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < struck->len; i++) {
        const StruckReading *one = &g_array_index(struck, StruckReading, i);
        g_autofree char *name = requirement_name(requirement_at(&agenda, one->index));
        g_string_append_printf(words, "%s %s, %s\n", name, one->figure, one->reason);
    }
    ck_assert_str_eq(words->str, expected);
}

START_TEST(a_struck_reading_is_told_until_its_place_is_read_again)
{
    take_all("2025-03-05 08:00 MO pick up Rings\nread top ring gap[1] 0.36 with G08\n"
             "read top ring gap[3] 3.6 with G08\nstrike last \"typo\"");
    expect_struck("Rings", "read top ring gap[3] 3.6, typo\n");
    expect_struck("Crank", "");
    take_all("read top ring gap[3] 3.7 with G08\nstrike last \"misread\"");
    expect_struck("Rings", "read top ring gap[3] 3.7, misread\n"); // of each place the last
    take_all("read top ring gap[3] 0.36 with G08");
    expect_struck("Rings", "");
}
END_TEST
static void expect_window(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GPtrArray) beside =
        working_beside(&agenda, requirement_at(&agenda, find_place(&agenda, place)));
    const Requirement *first = beside->pdata[0];
    g_autoptr(Number) from = NULL, to = NULL;
    g_autofree char *words = g_strdup("none");
    if (working_window(beside, &from, &to)) {
        g_free(words);
        g_autofree char *least = check_value_words(first->check, from);
        g_autofree char *greatest = check_value_words(first->check, to);
        words = g_strdup_printf("%u: %s to %s", beside->len, least, greatest);
    }
    ck_assert_str_eq(words, expected);
}

START_TEST(a_window_holds_the_places_beside_it)
{
    expect_window("read bore[4, T, mid]", "none");
    take_all(bores);
    expect_window("read bore[4, T, mid]", "4: 90.004 to 90.008"); // 90.004, 90.005, 90.007
    take_all("read bore[4] 90.027 90.026 90.005 90.002 90.001 89.970 with G03");
    expect_window("read bore[4, T, mid]", "4: 90.000 to 90.030");
    expect_window("read bore[1, A, bottom]", "4: 89.970 to 90.010");
    expect_window("read deck flatness", "none");
    take_all("read deck flatness 0.02 with G09");
    expect_window("read deck flatness", "1: 0.02 to 0.03");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {a_window_holds_the_places_beside_it, a_formula_is_said_by_its_terms,
                            a_sum_is_told_term_by_term, what_stands_apart_from_three_others_is_said,
                            a_struck_reading_is_told_until_its_place_is_read_again};
    return run_on_build("working", tests, G_N_ELEMENTS(tests), 0);
}
