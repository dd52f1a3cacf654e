// E_n by the formula of ISO/IEC 17043:2010, B.3, and ISO 13528:2015, 9.7; the figures are worked by
// hand, with both doubts a Pythagorean triple where the boundary is met exactly.
#include <check.h>
#include <standbook/rules/claim.h>
#include <stdlib.h>

static const struct {
    const char *difference, *own, *claimed; // own and claimed: U, k = 2
    ClaimAnswer answer;
    const char *score, *doubt; // to four places
} rows[] = {
    {"0.05", "0.03", "0.04", CLAIM_AGREES, "1.0000", "0.0500"},
    {"-0.05", "0.03", "0.04", CLAIM_AGREES, "-1.0000", "0.0500"},
    {"0.050000000001", "0.03", "0.04", CLAIM_DISAGREES, "1.0000", "0.0500"},
    {"-0.050000000001", "0.03", "0.04", CLAIM_DISAGREES, "-1.0000", "0.0500"},
    {"0.02", "0.03", "0.04", CLAIM_AGREES, "0.4000", "0.0500"},
    // the demo's bore: own 90.026 ±0.004, certified 90.005 ±0.005: 0.021 / 0.006403
    {"0.021", "0.004", "0.005", CLAIM_DISAGREES, "3.2796", "0.0064"},
    {"0", "0", "0", CLAIM_AGREES, NULL, "0.0000"},
    {"0.001", "0", "0", CLAIM_DISAGREES, NULL, "0.0000"},
    {"0.021", "0.004", NULL, CLAIM_UNKNOWN, NULL, NULL},
    {"0.021", NULL, "0.005", CLAIM_UNKNOWN, NULL, NULL},
};

static Number *number(const char *text)
{
    return text ? number_from_text(text, NULL) : NULL;
}

static Number *variance_of(const char *expanded)
{
    g_autoptr(Number) whole = number(expanded);
    g_autoptr(Number) square = whole ? number_power(whole, 2) : NULL;
    g_autoptr(Number) four = number_from_integer(4);
    return square ? number_divide(square, four) : NULL;
}

static void expect(const Number *got, const char *expected)
{
    g_autofree char *words = got ? number_decimal(got, 4) : NULL;
    ck_assert_pstr_eq(words, expected);
}

START_TEST(each_row)
{
    g_autoptr(Number) difference = number(rows[_i].difference), claimed = number(rows[_i].claimed);
    g_autoptr(Number) variance = variance_of(rows[_i].own), score = NULL;
    ClaimAnswer answer = claim_compare(difference, variance, claimed, &score);
    ck_assert_str_eq(claim_answer_words(answer), claim_answer_words(rows[_i].answer));
    ck_assert_int_eq(claim_compare(difference, variance, claimed, NULL), answer);
    expect(score, rows[_i].score);
    g_autoptr(Number) doubt = claim_doubt(variance, claimed);
    expect(doubt, rows[_i].doubt);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("claim");
    TCase *tcase = tcase_create("claim");
    tcase_add_loop_test(tcase, each_row, 0, (int)G_N_ELEMENTS(rows));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
