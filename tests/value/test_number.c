#include <check.h>
#include <standbook/value/number.h>
#include <stdlib.h>

static Number *read_number(const char *text)
{
    NumberTyped typed;
    GError *error = NULL;
    gboolean read = number_scan(text, &typed, NULL, &error);
    ck_assert_msg(read, "%s: %s", text, error ? error->message : "");
    Number *value = number_copy(typed.value);
    number_typed_clear(&typed);
    return value;
}

START_TEST(typed_numbers_are_exact)
{
    static const struct {
        const char *typed, *value, *place;
        guint decimals;
        gsize length;
    } rows[] = {
        {"59.790", "59.79", "0.001", 3, 6},
        {".25", "0.25", "0.01", 2, 3},
        {"12", "12", "1", 0, 2},
        {"17/32", "0.53125", "0.03125", 0, 5},
        {"2-5/8", "2.625", "0.125", 0, 5},
        {"2 5/8 in", "2.625", "0.125", 0, 5},
        {"1/3", "1/3", "1/3", 0, 3},
        {"1.5/8", "0.1875", "0.0125", 0, 5},
        {"7..11", "7", "1", 0, 1},
        {"7.0..11.0", "7", "0.1", 1, 3},
        {"5 - 3", "5", "1", 0, 1},
        {"5 3", "5", "1", 0, 1},
        {"8 / 3/8", "8", "1", 0, 1},
        {"3/x", "3", "1", 0, 1},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        NumberTyped typed;
        ck_assert(number_scan(rows[i].typed, &typed, NULL, NULL));
        g_autofree char *value = number_text(typed.value);
        g_autofree char *place = number_text(typed.place);
        ck_assert_str_eq(value, rows[i].value);
        ck_assert_str_eq(place, rows[i].place);
        ck_assert_uint_eq(typed.decimals, rows[i].decimals);
        ck_assert_uint_eq(typed.length, rows[i].length);
        number_typed_clear(&typed);
    }
}
END_TEST

START_TEST(what_is_no_number_is_refused_where_it_goes_wrong)
{
    static const struct {
        const char *typed;
        gsize offset;
        const char *says;
    } rows[] = {
        {"5-3", 1, "subtract"},
        {"2-40/32", 2, "`2 + 40/32` or `2 - 40/32`"},
        {"2-8/8", 2, "`2 + 8/8` or"},
        {"3/0", 2, "over 0"},
        {"", 0, "missing"},
        {"x", 0, "missing"},
        {"1/3/8", 3, "division"},
        {"8/2.5", 3, "division"},
        {"5.", 1, "point"},
        {"59,79", 2, "comma"},
        {"5-bore", 1, "minus"},
        {"1.2.3", 3, "point"},
        {"12345678901234567890123456789012345678901", 0, "40 digits"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        NumberTyped typed;
        gsize offset = 99;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(!number_scan(rows[i].typed, &typed, &offset, &error), "%s", rows[i].typed);
        ck_assert_msg(g_strrstr(error->message, rows[i].says) != NULL, "%s", error->message);
        ck_assert_uint_eq(offset, rows[i].offset);
    }
}
END_TEST

// Rounded away from zero as soon as anything is left over, and left alone where nothing is.
START_TEST(an_uncertainty_is_rounded_up)
{
    static const struct {
        const char *typed;
        guint decimals;
        const char *shown;
    } rows[] = {
        {"0.00447", 3, "0.005"}, {"0.005", 3, "0.005"}, {"0.0050000001", 3, "0.006"},
        {"1/3", 2, "0.34"},      {"0", 2, "0.00"},      {"0.4", 0, "1"},
        {"0.99901", 2, "1.00"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) value = number_from_text(rows[i].typed, NULL);
        g_autofree char *shown = number_decimal_up(value, rows[i].decimals);
        ck_assert_str_eq(shown, rows[i].shown);
        g_autoptr(Number) below = number_negate(value);
        g_autofree char *other = number_decimal_up(below, rows[i].decimals);
        ck_assert_str_eq(other + (number_sign(below) < 0), rows[i].shown);
    }
}
END_TEST

// The ties of inch fractions in millimetres, where a double product rounds wrongly.
// Source: exact arithmetic by hand, n/64 × 25.4.
START_TEST(ties_round_away_from_zero)
{
    static const struct {
        const char *inches;
        guint decimals;
        const char *shown;
    } rows[] = {
        {"3/8", 2, "9.53"},    {"1/8", 2, "3.18"},       {"3/16", 3, "4.763"}, {"1/16", 3, "1.588"},
        {"1/32", 4, "0.7938"}, {"15/64", 6, "5.953125"}, {"1/3", 0, "8"},      {"0", 2, "0.00"},
    };
    g_autoptr(Number) inch = number_from_ratio(254, 10);
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) value = read_number(rows[i].inches);
        g_autoptr(Number) length = number_multiply(value, inch);
        g_autofree char *shown = number_decimal(length, rows[i].decimals);
        ck_assert_str_eq(shown, rows[i].shown);
        g_autoptr(Number) below = number_negate(length);
        g_autofree char *mirrored = number_decimal(below, rows[i].decimals);
        ck_assert_str_eq(mirrored + (number_sign(below) < 0), rows[i].shown);
    }
    g_autoptr(Number) tiny = number_from_ratio(-1, 1000);
    g_autofree char *zero = number_decimal(tiny, 2);
    ck_assert_str_eq(zero, "0.00");
}
END_TEST

START_TEST(mixed_fractions_are_shown)
{
    static const struct {
        glong above, below;
        gulong unit;
        const char *shown;
    } rows[] = {
        {21, 8, 32, "2-5/8"}, {17, 32, 32, "17/32"}, {-1, 4, 64, "-1/4"},   {3, 1, 64, "3"},
        {1, 128, 64, "1/64"}, {0, 1, 64, "0"},       {-21, 8, 8, "-2-5/8"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) number = number_from_ratio(rows[i].above, rows[i].below);
        g_autofree char *shown = number_mixed(number, rows[i].unit);
        ck_assert_str_eq(shown, rows[i].shown);
    }
}
END_TEST

START_TEST(text_is_read_back)
{
    static const char *texts[] = {"0", "-12", "0.53125", "-1/3", "22/7", "1234567890.0987654321"};
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++) {
        g_autoptr(Number) number = number_from_text(texts[i], NULL);
        ck_assert_ptr_nonnull(number);
        g_autofree char *text = number_text(number);
        ck_assert_str_eq(text, texts[i]);
    }
    static const char *wrong[] = {"", "-", "1/0", "1e3", "0x1", " 1", "1 ", "1/-3", "--1", "1/"};
    for (gsize i = 0; i < G_N_ELEMENTS(wrong); i++) {
        g_autoptr(GError) error = NULL;
        ck_assert_ptr_null(number_from_text(wrong[i], &error));
        ck_assert_ptr_nonnull(error);
    }
}
END_TEST

START_TEST(fractions_stand_in_lowest_terms)
{
    static const char *const pairs[][2] = {
        {"59.790", "5979/100"}, {"-0.52", "-13/25"}, {"34/64", "17/32"}, {"-12", "-12"},
        {"0.000", "0"},         {"6/3", "2"},        {"1/3", "1/3"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(pairs); i++) {
        g_autoptr(Number) number = number_from_text(pairs[i][0], NULL);
        g_autofree char *text = number_fraction(number);
        ck_assert_str_eq(text, pairs[i][1]);
    }
}
END_TEST

START_TEST(roots_and_powers)
{
    g_autoptr(Number) quarter = number_from_ratio(9, 4);
    g_autoptr(Number) half = number_sqrt(quarter);
    g_autofree char *text = number_text(half);
    ck_assert_str_eq(text, "1.5");
    ck_assert(!number_is_approximate(half));
    g_autoptr(Number) two = number_from_integer(2);
    g_autoptr(Number) root = number_sqrt(two);
    g_autofree char *digits = number_text(root);
    // OEIS A002193, cut
    ck_assert_str_eq(digits, "1.4142135623730950488016887242096980785696");
    ck_assert(number_is_approximate(root));
    g_autoptr(Number) four_thirds = number_from_ratio(4, 3);
    g_autoptr(Number) cut = number_sqrt(four_thirds);
    g_autofree char *cut_digits = number_text(cut);
    // 2/√3 by the integer root of 4/3 · 10⁸⁰, cut
    ck_assert_str_eq(cut_digits, "1.1547005383792515290182975610039149112952");
    ck_assert(number_is_approximate(cut));
    g_autoptr(Number) sum = number_add(two, root);
    ck_assert(number_is_approximate(sum));
    g_autoptr(Number) inverse = number_power(quarter, -2);
    g_autofree char *power = number_text(inverse);
    ck_assert_str_eq(power, "16/81");
    g_autoptr(Number) zero = number_from_integer(0);
    ck_assert_ptr_null(number_power(zero, -1));
    ck_assert_ptr_null(number_divide(two, zero));
    g_autoptr(Number) minus = number_from_integer(-1);
    ck_assert_ptr_null(number_sqrt(minus));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("number");
    TCase *tcase = tcase_create("number");
    tcase_add_test(tcase, typed_numbers_are_exact);
    tcase_add_test(tcase, what_is_no_number_is_refused_where_it_goes_wrong);
    tcase_add_test(tcase, an_uncertainty_is_rounded_up);
    tcase_add_test(tcase, ties_round_away_from_zero);
    tcase_add_test(tcase, mixed_fractions_are_shown);
    tcase_add_test(tcase, text_is_read_back);
    tcase_add_test(tcase, fractions_stand_in_lowest_terms);
    tcase_add_test(tcase, roots_and_powers);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
