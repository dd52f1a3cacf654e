// How the values, doubts and limits of a check are written: with how many decimals.
#include <check.h>
#include <standbook/plan/extend.h>
#include <standbook/value/reading.h>
#include <stdlib.h>
#include <string.h>

static Plan *plan_with(const PlanAddition *additions, gsize count)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("tests/plan/small-twin.yaml", &text, NULL, NULL));
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(plan);
    g_autoptr(GError) error = NULL;
    Plan *extended = plan_extend(plan, additions, count, NULL, &error);
    ck_assert_msg(extended != NULL, "%s", error ? error->message : "no plan and no error");
    return extended;
}

START_TEST(no_digit_typed_is_hidden_unless_the_plan_says_how_many)
{
    const PlanAddition additions[] = {
        {"check", "free", "Sump", "any"},
        {"check", "feel", "Sump", "3 to 6 thou"},
        {"check", "end gap", "Sump", "0.20..0.40 mm"},
        {"check", "said", "Sump", "{decimals: 0, limits: any}"},
        {"check", "twice = 2 * free", "Sump", "any"},
        {"check", "third = free / 3", "Sump", "at most 30.0"},
    };
    g_autoptr(Plan) plan = plan_with(additions, G_N_ELEMENTS(additions));
    static const struct {
        const char *check, *typed, *shown;
    } rows[] = {
        {"free", "80.01 mm", "80.01 mm"},    {"free", "80 mm", "80 mm"},
        {"free", "1/64 in", "0.396875 mm"},  {"feel", ".004 thou", "0.004 thou"},
        {"feel", ".004 in", "4 thou"},       {"feel", "0.1 mm", "3.937 thou"},
        {"end gap", "0.3 mm", "0.30 mm"},    {"end gap", "0.405 mm", "0.405 mm"},
        {"end gap", "1 in", "25.40 mm"},     {"said", "80.01 mm", "80 mm"},
        {"twice", "160.02 mm", "160.02 mm"}, {"third", "26.667 mm", "26.7 mm"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        const PlanCheck *check = plan_check(plan, rows[i].check);
        g_auto(Reading) reading = {0};
        ck_assert(reading_parse(rows[i].typed, check->unit, &reading, NULL, NULL));
        g_autofree char *shown = check_typed_shown(check, reading.value, 0);
        ck_assert_str_eq(shown, rows[i].shown);
        g_autofree char *words = check_value_words(check, reading.value);
        ck_assert_msg(g_str_has_prefix(shown, words), "%s", words);
    }
}
END_TEST

// Beside a value the doubt has its decimals: never less than it is, and not a whole last digit
// more.
START_TEST(a_doubt_has_the_decimals_of_the_value_beside_it)
{
    const PlanAddition additions[] = {
        {"check", "inches", "Sump", "0.1 to 3.0 in"},
        {"check", "said", "Sump", "{decimals: 1, limits: 0.1 to 3.0 in}"},
    };
    g_autoptr(Plan) plan = plan_with(additions, G_N_ELEMENTS(additions));
    static const struct {
        const char *check, *value, *doubt, *shown;
    } rows[] = {
        {"inches", "2-5/8 in", "1/8 in", ".125"},     {"inches", "2-17/32 in", "1/8 in", ".12500"},
        {"inches", "2-17/64 in", "1/3 in", ".33334"}, {"inches", "2.5 in", "1/8 in", ".2"},
        {"inches", "2-5/8 in", "1/8000 in", ".0002"}, {"said", "2-5/8 in", "1/8 in", ".2"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        const PlanCheck *check = plan_check(plan, rows[i].check);
        g_auto(Reading) reading = {0}, doubt = {0};
        ck_assert(reading_parse(rows[i].value, check->unit, &reading, NULL, NULL));
        ck_assert(reading_parse(rows[i].doubt, check->unit, &doubt, NULL, NULL));
        g_autofree char *shown = check_doubt_beside(check, reading.value, 0, doubt.value);
        ck_assert_msg(strcmp(shown, rows[i].shown) == 0, "%s ±%s", rows[i].value, shown);
    }
}
END_TEST

// 1.688 fails beside 1.6875, not beside 1.688.
START_TEST(a_limit_and_what_is_over_it_are_never_rounded)
{
    const PlanAddition additions[] = {
        {"check", "inches", "Sump", "1-5/8 to 1-11/16 in"},
        {"check", "said", "Sump", "{decimals: 3, limits: 0.100 to 3.000 in}"},
        {"check", "metric", "Sump", "1 to 90 mm"},
    };
    g_autoptr(Plan) plan = plan_with(additions, G_N_ELEMENTS(additions));
    static const struct {
        const char *check, *limit, *shown;
    } rows[] = {
        {"inches", "1-11/16 in", "1.6875"}, {"inches", "1-1/64 in", "1.015625"},
        {"inches", "2 in", "2"},            {"inches", "1/3 in", "0.333"},
        {"inches", "0.0005 in", "0.0005"},  {"said", "1-11/16 in", "1.6875"},
        {"said", "1-5/8 in", "1.625"},      {"said", "1/3 in", "0.333333"},
        {"metric", "1-11/16 in", "42.8625"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        const PlanCheck *check = plan_check(plan, rows[i].check);
        g_auto(Reading) reading = {0};
        ck_assert(reading_parse(rows[i].limit, check->unit, &reading, NULL, NULL));
        g_autofree char *limit = check_limit_words(check, reading.value);
        g_autofree char *excess = check_excess_words(check, reading.value);
        ck_assert_msg(strcmp(limit, rows[i].shown) == 0, "%s: %s", rows[i].limit, limit);
        ck_assert_str_eq(excess, limit);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("decimals");
    TCase *tcase = tcase_create("decimals");
    tcase_add_test(tcase, no_digit_typed_is_hidden_unless_the_plan_says_how_many);
    tcase_add_test(tcase, a_doubt_has_the_decimals_of_the_value_beside_it);
    tcase_add_test(tcase, a_limit_and_what_is_over_it_are_never_rounded);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
