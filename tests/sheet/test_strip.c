#include <standbook/sheet/strip.h>

#include <check.h>

// Numbers as decimals; U is the expanded uncertainty, k = 2.
typedef struct {
    const char *value, *doubt, *lower, *upper, *expected;
} Row;

static Number *number_or_null(const char *text)
{
    return text ? number_from_text(text, NULL) : NULL;
}

// u², for U = 2u.
static Number *variance_of(const char *text)
{
    g_autoptr(Number) doubt = number_or_null(text);
    g_autoptr(Number) square = number_multiply(doubt, doubt);
    g_autoptr(Number) four = number_from_integer(4);
    return number_divide(square, four);
}

static char *drawn(const Row *row)
{
    g_autoptr(Number) variance = variance_of(row->doubt);
    g_autoptr(Number) value = number_or_null(row->value), lower = number_or_null(row->lower);
    g_autoptr(Number) upper = number_or_null(row->upper);
    const Requirement made = {.value = value, .variance = variance, .lower = lower, .upper = upper};
    return strip_text(&made);
}

static void expect_drawn(const Row *rows, gsize count)
{
    for (gsize i = 0; i < count; i++) {
        g_autofree char *text = drawn(&rows[i]);
        ck_assert_str_eq(text, rows[i].expected);
    }
}

// The pictures that the design draws, their numbers beside them: piston, main and big-end
// clearances, end float, lashes, pick-up; roundness and taper with one limit.
START_TEST(limits_stand_on_cells_4_and_20)
{
    static const Row rows[] = {
        {"0.064", "0.005", "0.050", "0.080", "    ├────▒▒█▒▒▒─────┤    "},
        {"0.067", "0.005", "0.050", "0.080", "    ├─────▒▒▒█▒▒▒───┤    "},
        {"0.062", "0.005", "0.050", "0.080", "    ├───▒▒█▒▒▒──────┤    "},
        {"0.086", "0.005", "0.050", "0.080", "    ├───────────────┤▒▒█▒"},
        {"0.046", "0.005", "0.030", "0.065", "    ├────▒▒█▒▒▒─────┤    "},
        {"0.050", "0.005", "0.030", "0.065", "    ├──────▒▒█▒▒────┤    "},
        {"0.041", "0.005", "0.030", "0.065", "    ├──▒▒█▒▒────────┤    "},
        {"0.045", "0.005", "0.025", "0.060", "    ├──────▒▒█▒▒────┤    "},
        {"0.047", "0.005", "0.025", "0.060", "    ├───────▒▒█▒▒───┤    "},
        {"0.041", "0.005", "0.025", "0.060", "    ├────▒▒█▒▒▒─────┤    "},
        {"7.5", "0.7", "7.0", "11.0", "   ▒├▒█▒▒▒──────────┤    "},
        {"7.4", "0.2", "7.0", "11.0", "    ├▒█─────────────┤    "},
        {"0.12", "0.01", "0.05", "0.25", "    ├────▒█─────────┤    "},
        {"0.30", "0.01", "0.27", "0.33", "    ├────▒▒▒█▒▒▒────┤    "},
        {"0.003", "0.002", NULL, "0.010", "    ──▒▒▒█▒▒▒───────┤    "},
        {"0.004", "0.002", NULL, "0.010", "    ───▒▒▒█▒▒▒▒─────┤    "},
        {"0.005", "0.002", NULL, "0.010", "    ─────▒▒▒█▒▒▒────┤    "},
    };
    expect_drawn(rows, G_N_ELEMENTS(rows));
}
END_TEST

START_TEST(a_mark_is_never_rounded_across_a_post)
{
    static const Row rows[] = {
        {"0.050", "0", "0.050", "0.080", "    ├█──────────────┤    "},
        {"0.080", "0", "0.050", "0.080", "    ├──────────────█┤    "},
        {"0.0499999", "0", "0.050", "0.080", "   █├───────────────┤    "},
        {"0.0800001", "0", "0.050", "0.080", "    ├───────────────┤█   "},
        {"9", "0", "0.050", "0.080", "    ├───────────────┤   >"},
        {"-9", "0", "0.050", "0.080", "<   ├───────────────┤    "},
        {"95", "0", "90", NULL, "    ├█───────────────    "},
        {"0", "0", NULL, "0", "    ───────────────█┤    "},
        {"-3", "0", NULL, "-2", "    ────────█───────┤    "},
        {"5", "0", "5", "5", "    ├█──────────────┤    "},
        {"5.1", "0", "5", "5", "    ├───────────────┤█   "},
        {"0.0799", "0.0001", "0.050", "0.080", "    ├──────────────█┤    "},
        {"0.0799", "0.0002", "0.050", "0.080", "    ├──────────────█┤▒   "},
    };
    expect_drawn(rows, G_N_ELEMENTS(rows));
}
END_TEST

// Idle backlash, ring gap and exhaust lash of the customer's sheet.
START_TEST(a_range_is_drawn_from_the_least_to_the_greatest)
{
    static const struct {
        const char *least, *greatest, *lower, *upper, *expected;
    } rows[] = {
        {"0.11", "0.17", "0.08", "0.18", "    ├────██████████─┤    "},
        {"0.36", "0.42", "0.30", "0.50", "    ├────██████─────┤    "},
        {"0.40", "0.41", "0.37", "0.43", "    ├───────████────┤    "},
        {"0.05", "0.19", "0.08", "0.18", "<███├███████████████┤██  "},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) lower = number_from_text(rows[i].lower, NULL);
        g_autoptr(Number) upper = number_from_text(rows[i].upper, NULL);
        g_autoptr(Number) least = number_from_text(rows[i].least, NULL);
        g_autoptr(Number) greatest = number_from_text(rows[i].greatest, NULL);
        const Number *const values[] = {least, greatest};
        g_autofree char *text = strip_draw(
            &(Strip){.lower = lower, .upper = upper, .values = values, .count = 2, .filled = TRUE});
        ck_assert_str_eq(text, rows[i].expected);
    }
}
END_TEST

// A strip in words for a test: numbers as text, values parted by blanks.
typedef struct {
    const char *lower, *upper, *wear, *aim, *least, *most, *as_new, *values, *doubt;
    Bound bound;
    const char *from, *to;
    guint cells;
} Words;

static void expect_strip(const Words *words, const char *expected)
{
    g_autoptr(Number) lower = number_or_null(words->lower), upper = number_or_null(words->upper);
    g_autoptr(Number) wear = number_or_null(words->wear), aim = number_or_null(words->aim);
    g_autoptr(Number) least = number_or_null(words->least), most = number_or_null(words->most);
    g_autoptr(Number) as_new = number_or_null(words->as_new);
    g_autoptr(Number) from = number_or_null(words->from), to = number_or_null(words->to);
    g_autoptr(Number) variance = words->doubt ? variance_of(words->doubt) : NULL;
    g_autoptr(GPtrArray) values = g_ptr_array_new_with_free_func((GDestroyNotify)number_free);
    g_auto(GStrv) texts = g_strsplit(words->values ? words->values : "", " ", -1);
    for (guint i = 0; texts[i]; i++)
        g_ptr_array_add(values, number_from_text(texts[i], NULL));
    const Strip strip = {.lower = lower,
                         .upper = upper,
                         .wear = wear,
                         .aim = aim,
                         .least = least,
                         .most = most,
                         .as_new = as_new,
                         .values = (const Number *const *)values->pdata,
                         .count = values->len,
                         .variance = variance,
                         .bound = words->bound,
                         .from = from,
                         .to = to,
                         .cells = words->cells};
    g_autofree char *text = strip_draw(&strip);
    ck_assert_str_eq(g_strchomp(text), expected);
}

// Idler backlash by trials: three tries and what the next is expected to give.
START_TEST(a_window_has_its_own_scale)
{
    Words words = {.lower = "0.08",
                   .upper = "0.18",
                   .aim = "0.10",
                   .doubt = "0.01",
                   .from = "0",
                   .to = "0.36",
                   .cells = 37};
    words.values = "0.35";
    expect_strip(&words, "        ├─┼───────┤               ▒█▒");
    words.values = "0.06";
    expect_strip(&words, "     ▒█▒├─┼───────┤");
    words.values = "0.11 0.13 0.07 0.10";
    expect_strip(&words, "      ▒█├▒██▒█▒───┤");
    words.values = NULL;
    words.least = "0.10";
    words.most = "0.16";
    expect_strip(&words, "        ├─░░░░░░░─┤");
}
END_TEST

// Bore wear over engines.
START_TEST(wear_is_drawn_from_new_and_its_limit_is_a_post)
{
    static const struct {
        const char *value, *expected;
    } rows[] = {
        {"0.142", "════════════════════┤═══════█ ║"},
        {"0.150", "════════════════════┤════════█║"},
        {"0.211", "════════════════════┤═════════║═══════════█"},
        {"0.094", "═══════════════════█┤         ║"},
        {"0.088", "══════════════════█─┤         ║"},
        {"0.101", "════════════════════┤█        ║"},
        {"0.131", "════════════════════┤═════█   ║"},
        {"0.1500001", "════════════════════┤═════════║█"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        expect_strip(&(Words){.upper = "0.100",
                              .wear = "0.150",
                              .as_new = "0",
                              .values = rows[i].value,
                              .from = "0",
                              .to = "0.235",
                              .cells = 48},
                     rows[i].expected);
}
END_TEST

START_TEST(aim_wear_and_forecast_stand_on_the_strip)
{
    expect_strip(&(Words){.lower = "0", .upper = "16", .aim = "4", .wear = "18", .values = "9"},
                 "    ├───┼────█──────┤ ║");
    expect_strip(&(Words){.lower = "0", .upper = "16", .least = "5", .most = "8", .values = "9"},
                 "    ├────░░░░█──────┤");
    // A service limit beyond the strip is not drawn, one on a limit is that limit.
    expect_strip(&(Words){.lower = "0", .upper = "16", .wear = "40", .values = "30"},
                 "    ├───────────────┤   >");
    expect_strip(&(Words){.lower = "0", .upper = "16", .wear = "16"}, "    ├───────────────┤");
    // Between limit and service limit there is a cell, however close they are.
    expect_strip(&(Words){.lower = "0", .upper = "16", .wear = "16.1", .values = "16.05"},
                 "    ├───────────────┤█║");
    expect_strip(&(Words){.lower = "0", .wear = "-0.1", .values = "-0.05"},
                 "  ║█├────────────────");
    expect_strip(&(Words){.lower = "16", .wear = "14", .values = "13"}, " █║ ├────────────────");
}
END_TEST

START_TEST(a_bound_reaches_to_the_end)
{
    expect_strip(&(Words){.lower = "0", .upper = "16", .values = "3", .bound = BOUND_BELOW},
                 "▒▒▒▒├▒▒█────────────┤");
    expect_strip(&(Words){.upper = "16", .values = "3", .bound = BOUND_BELOW},
                 "    ▒▒▒█────────────┤");
    expect_strip(&(Words){.lower = "0", .upper = "16", .values = "14", .bound = BOUND_ABOVE},
                 "    ├─────────────█▒┤▒▒▒▒");
}
END_TEST

START_TEST(a_requirement_brings_its_aim_wear_and_bound)
{
    g_autoptr(Number) upper = number_from_integer(16), wear = number_from_integer(18);
    g_autoptr(Number) aim = number_from_integer(8), value = number_from_integer(2);
    const PlanCheck check = {.aim = AIM_VALUE, .aim_value = aim};
    const Requirement made = {
        .check = &check, .upper = upper, .wear = wear, .value = value, .bound = BOUND_BELOW};
    g_autofree char *text = strip_text(&made);
    ck_assert_str_eq(text, "    ▒▒█─────┼───────┤ ║  ");
}
END_TEST

START_TEST(without_limits_there_is_no_strip)
{
    g_autofree char *text = drawn(&(Row){"5", "1", NULL, NULL, ""});
    ck_assert_str_eq(text, "");
}
END_TEST

int main(void)
{
    TCase *tcase = tcase_create("strip");
    tcase_add_test(tcase, limits_stand_on_cells_4_and_20);
    tcase_add_test(tcase, a_mark_is_never_rounded_across_a_post);
    tcase_add_test(tcase, a_range_is_drawn_from_the_least_to_the_greatest);
    tcase_add_test(tcase, a_window_has_its_own_scale);
    tcase_add_test(tcase, wear_is_drawn_from_new_and_its_limit_is_a_post);
    tcase_add_test(tcase, aim_wear_and_forecast_stand_on_the_strip);
    tcase_add_test(tcase, a_bound_reaches_to_the_end);
    tcase_add_test(tcase, a_requirement_brings_its_aim_wear_and_bound);
    tcase_add_test(tcase, without_limits_there_is_no_strip);
    Suite *suite = suite_create("strip");
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? 1 : 0;
}
