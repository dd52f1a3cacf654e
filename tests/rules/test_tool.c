#include "exact.h"

#include <standbook/rules/tool.h>
#include <stdlib.h>
#include <string.h>

static mpq_srcptr number_or_null(mpq_ptr number, const char *text)
{
    mpq_init(number);
    if (!text)
        return NULL;
    exact_set(number, text);
    return number;
}

static ToolState range_state(ToolSort sort, const char *least, const char *greatest,
                             const char *used_at, int hairs)
{
    mpq_t a, b, at;
    mpq_srcptr from = number_or_null(a, least), to = number_or_null(b, greatest);
    number_or_null(at, used_at);
    exact_nudge(at, hairs);
    ToolState state = tool_range_state(sort, from, to, at);
    mpq_clears(a, b, at, NULL);
    return state;
}

START_TEST(range_as_marked_or_from_a_fifth)
{
    // ISO 6789:2003: 20 % to 100 % of full scale where nothing is marked.
    ck_assert_int_eq(range_state(TOOL_TORQUE, NULL, "120", "24", 0), TOOL_GOOD);
    ck_assert_int_eq(range_state(TOOL_TORQUE, NULL, "120", "24", -1), TOOL_OUT_OF_RANGE);
    ck_assert_int_eq(range_state(TOOL_TORQUE, NULL, "120", "120", 0), TOOL_GOOD);
    ck_assert_int_eq(range_state(TOOL_TORQUE, NULL, "120", "120", 1), TOOL_OUT_OF_RANGE);
    ck_assert_int_eq(range_state(TOOL_TORQUE, NULL, NULL, "75", 0), TOOL_UNKNOWN);
    // ISO 6789-1:2017, 5.1.3: from the lowest marked value.
    ck_assert_int_eq(range_state(TOOL_TORQUE, "10", "60", "10", 0), TOOL_GOOD);
    ck_assert_int_eq(range_state(TOOL_TORQUE, "10", "60", "10", -1), TOOL_OUT_OF_RANGE);
    ck_assert_int_eq(range_state(TOOL_GAUGE, "50", "75", "59.75", 0), TOOL_GOOD);
    ck_assert_int_eq(range_state(TOOL_GAUGE, "50", "75", "49.99", 0), TOOL_OUT_OF_RANGE);
    ck_assert_int_eq(range_state(TOOL_GAUGE, NULL, "150", "0.01", 0), TOOL_GOOD);
    ck_assert_int_eq(range_state(TOOL_GAUGE, NULL, NULL, "7", 0), TOOL_GOOD);
}
END_TEST

static gint64 day_of(GDateYear year, guint month, guint day)
{
    GDate date, origin;
    g_date_clear(&date, 1);
    g_date_clear(&origin, 1);
    g_date_set_dmy(&date, (GDateDay)day, (GDateMonth)month, year);
    g_date_set_dmy(&origin, 1, G_DATE_JANUARY, 1970);
    return g_date_days_between(&origin, &date);
}

START_TEST(the_last_day_of_a_calibration)
{
    const gint64 day = day_of(2024, 10, 16), due = day_of(2024, 12, 1);
    const ToolCalibration paper = {.day = day, .due = due, .has_due = TRUE}, none = {.day = day},
                          wrong = {.day = day, .found = TOOL_FOUND_WRONG};
    gint64 last = 0;
    ck_assert(tool_last_day(TOOL_GAUGE, &paper, &last) && last == due);
    ck_assert(tool_last_day(TOOL_TORQUE, &paper, &last) && last == due);
    ck_assert(tool_last_day(TOOL_TORQUE, &none, &last) && last == day_of(2025, 10, 16));
    ck_assert(!tool_last_day(TOOL_GAUGE, &none, &last));
    ck_assert(!tool_last_day(TOOL_TORQUE, &wrong, &last));
}
END_TEST

START_TEST(twelve_months)
{
    ck_assert_int_eq(tool_default_due(0), 365);
    ck_assert_int_eq(tool_default_due(day_of(2024, 1, 30)), day_of(2025, 1, 30));
    ck_assert_int_eq(tool_default_due(day_of(2024, 2, 29)), day_of(2025, 2, 28));
    ck_assert_int_eq(tool_default_due(day_of(2023, 3, 1)), day_of(2024, 3, 1));
}
END_TEST

static ToolState state_with(ToolSort sort, const ToolCalibration *calibrations, gsize count,
                            gint64 day, guint uses)
{
    ToolUse use = {.day = day, .seq = 50, .count = uses, .range = TOOL_GOOD};
    return tool_use_standing(sort, calibrations, count, &use).state;
}

// ISO 6789-1:2017: 12 months or 5,000 cycles. Its tie is ours: the last day and the 5,000th hold.
START_TEST(a_torque_tool_runs_out)
{
    ToolCalibration one = {.day = day_of(2024, 1, 30), .seq = 1, .found = TOOL_FOUND_GOOD};
    gint64 last = day_of(2025, 1, 30);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last - 1, 0), TOOL_GOOD);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last, 0), TOOL_GOOD);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last + 1, 0), TOOL_OVERDUE);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last, 4999), TOOL_GOOD);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last, 5000), TOOL_GOOD);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, last, 5001), TOOL_OVERDUE);
    ck_assert_int_eq(state_with(TOOL_GAUGE, &one, 1, last + 1, 5001), TOOL_GOOD);
    one.has_due = TRUE;
    one.due = day_of(2025, 1, 31);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, one.due, 0), TOOL_GOOD);
    ck_assert_int_eq(state_with(TOOL_TORQUE, &one, 1, one.due + 1, 0), TOOL_OVERDUE);
    ck_assert_int_eq(state_with(TOOL_GAUGE, &one, 1, one.due + 1, 0), TOOL_OVERDUE);
    ck_assert_int_eq(state_with(TOOL_TORQUE, NULL, 0, last, 0), TOOL_UNKNOWN);
    ck_assert_int_eq(state_with(TOOL_GAUGE, NULL, 0, last, 0), TOOL_GOOD);
}
END_TEST

// A wrench last found good on day 0, due day 100, and what comes on day 200 (and 300).
static ToolState settled(gint64 used, ToolFound next, gint64 later)
{
    const ToolCalibration calibrations[] = {
        {.day = 0, .seq = 1, .due = 100, .has_due = TRUE, .found = TOOL_FOUND_GOOD},
        {.day = 200, .seq = 90, .due = 300, .has_due = TRUE, .found = next},
        {.day = 300, .seq = 99, .due = 400, .has_due = TRUE, .found = TOOL_ADJUSTED},
    };
    return state_with(TOOL_TORQUE, calibrations, later ? 3 : 2, used, 0);
}

START_TEST(the_next_calibration_settles_the_span)
{
    // In date, overdue, and after the second calibration.
    ck_assert_int_eq(settled(50, TOOL_FOUND_GOOD, 0), TOOL_GOOD);
    ck_assert_int_eq(settled(150, TOOL_FOUND_GOOD, 0), TOOL_GOOD);
    ck_assert_int_eq(settled(250, TOOL_FOUND_GOOD, 0), TOOL_GOOD);
    ck_assert_int_eq(settled(50, TOOL_FOUND_WRONG, 0), TOOL_WRONG);
    ck_assert_int_eq(settled(150, TOOL_FOUND_WRONG, 0), TOOL_WRONG);
    ck_assert_int_eq(settled(250, TOOL_FOUND_WRONG, 0), TOOL_WRONG);
    ck_assert_int_eq(settled(250, TOOL_FOUND_WRONG, 1), TOOL_WRONG);
    ck_assert_int_eq(settled(350, TOOL_FOUND_WRONG, 1), TOOL_GOOD);
    ck_assert_int_eq(settled(50, TOOL_ADJUSTED, 0), TOOL_GOOD);
    ck_assert_int_eq(settled(150, TOOL_ADJUSTED, 0), TOOL_OVERDUE);
    ck_assert_int_eq(settled(250, TOOL_ADJUSTED, 0), TOOL_GOOD);
}
END_TEST

START_TEST(wrong_then_good_leaves_the_wrong_span)
{
    const ToolCalibration calibrations[] = {
        {.day = 0, .seq = 1, .found = TOOL_FOUND_GOOD},
        {.day = 100, .seq = 2, .found = TOOL_FOUND_WRONG},
        {.day = 200, .seq = 3, .found = TOOL_FOUND_GOOD},
    };
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, 50, 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, 150, 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, 250, 0), TOOL_GOOD);
}
END_TEST

START_TEST(a_first_calibration_looks_back_too)
{
    ToolCalibration first = {.day = 100, .seq = 90, .found = TOOL_FOUND_GOOD};
    ck_assert_int_eq(state_with(TOOL_TORQUE, &first, 1, 50, 0), TOOL_GOOD);
    first.found = TOOL_FOUND_WRONG;
    ck_assert_int_eq(state_with(TOOL_TORQUE, &first, 1, 50, 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_GAUGE, &first, 1, 50, 0), TOOL_WRONG);
    first.found = TOOL_ADJUSTED;
    ck_assert_int_eq(state_with(TOOL_TORQUE, &first, 1, 50, 0), TOOL_UNKNOWN);
}
END_TEST

START_TEST(of_one_day_the_ledger_decides)
{
    // The use stands at 50.
    ToolCalibration wrong = {.day = 100, .seq = 60, .found = TOOL_FOUND_WRONG};
    ToolUse use = {.day = 100, .seq = 50, .range = TOOL_GOOD};
    ToolStanding standing = tool_use_standing(TOOL_TORQUE, &wrong, 1, &use);
    ck_assert_int_eq(standing.before, -1);
    ck_assert_int_eq(standing.after, 0);
    wrong.seq = 40;
    wrong.found = TOOL_ADJUSTED;
    standing = tool_use_standing(TOOL_TORQUE, &wrong, 1, &use);
    ck_assert_int_eq(standing.before, 0);
    ck_assert_int_eq(standing.after, -1);
    ck_assert_int_eq(standing.state, TOOL_GOOD);
}
END_TEST

START_TEST(no_calibration_mends_a_use_out_of_range)
{
    const ToolCalibration calibrations[] = {
        {.day = 0, .seq = 1, .found = TOOL_FOUND_GOOD},
        {.day = 100, .seq = 2, .found = TOOL_FOUND_GOOD},
    };
    ToolUse use = {.day = 50, .seq = 50, .range = TOOL_OUT_OF_RANGE};
    ToolStanding standing = tool_use_standing(TOOL_TORQUE, calibrations, 2, &use);
    ck_assert_int_eq(standing.state, TOOL_OUT_OF_RANGE);
    ck_assert_int_eq(standing.before, 0);
    ck_assert_int_eq(standing.after, 1);
    ck_assert_str_eq(tool_state_words(standing.state), "out of range");
}
END_TEST

// An invented workshop's mistake: a wrench due 31 January, used on 4, 7 and 10 March, found 9 % low
// on 11 March, adjusted and back on 25 March; last good 30 January a year before.
START_TEST(the_wrench_mistake)
{
    const ToolCalibration calibrations[] = {
        {.day = day_of(2024, 1, 30),
         .seq = 1,
         .due = day_of(2025, 1, 31),
         .has_due = TRUE,
         .found = TOOL_FOUND_GOOD},
        {.day = day_of(2025, 3, 11), .seq = 60, .found = TOOL_FOUND_WRONG},
        {.day = day_of(2025, 3, 25),
         .seq = 70,
         .due = day_of(2026, 3, 25),
         .has_due = TRUE,
         .found = TOOL_ADJUSTED},
    };
    gint64 march = day_of(2025, 3, 4);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 1, march, 0), TOOL_OVERDUE);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, march, 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, day_of(2024, 10, 30), 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, day_of(2025, 3, 11), 0), TOOL_WRONG);
    ck_assert_int_eq(state_with(TOOL_TORQUE, calibrations, 3, day_of(2025, 3, 26), 0), TOOL_GOOD);
}
END_TEST

START_TEST(the_setting_with_an_adapter)
{
    // W = T·L / (L + E): the first row as printed (44.44 lbf·ft), the others by statics.
    static const char *const rows[][4] = {{"50", "16", "2", "44.4444"},
                                          {"80", "400", "50", "71.1111"},
                                          {"100", "450", "-75", "120.0000"},
                                          {"20", "380", "30", "18.5366"},
                                          {"20", "380", "0", "20.0000"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) torque = number_from_text(rows[i][0], NULL),
                          length = number_from_text(rows[i][1], NULL),
                          reach = number_from_text(rows[i][2], NULL);
        g_autoptr(Number) setting = tool_setting(torque, length, reach);
        g_autofree char *text = number_decimal(setting, 4);
        ck_assert_str_eq(text, rows[i][3]);
    }
}
END_TEST

// E cos θ: in line the whole, at 60° half, square nothing, beyond that backwards.
START_TEST(an_adapter_at_an_angle_reaches_less)
{
    static const char *const rows[][2] = {{"0", "30.0000"},
                                          {"60", "15.0000"},
                                          {"90", "0.0000"},
                                          {"120", "-15.0000"},
                                          {"180", "-30.0000"}};
    g_autoptr(Number) reach = number_from_integer(30);
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Number) angle = number_from_text(rows[i][0], NULL);
        g_autoptr(Number) along = tool_reach_along(reach, angle);
        g_autofree char *text = number_decimal(along, 4);
        ck_assert_str_eq(text, rows[i][1]);
    }
    g_autoptr(Number) along = tool_reach_along(reach, NULL);
    ck_assert(number_equal(along, reach));
}
END_TEST

START_TEST(no_setting_without_a_length)
{
    g_autoptr(Number) torque = number_from_integer(20), none = number_from_integer(0),
                      length = number_from_integer(380), back = number_from_integer(-380);
    ck_assert_ptr_null(tool_setting(torque, none, length));
    ck_assert_ptr_null(tool_setting(torque, length, back));
}
END_TEST

// What a wrench gave that was found to give 91 at 100, 40.5 at 45 and 82 at 90, set to `set`; only
// the first `count` of these are known. Worked by hand: the ratios are 0.91, 0.9 and 82/90.
static char *gave_at(gsize count, const char *set)
{
    g_autoptr(Number) hundred = number_from_integer(100), ninety = number_from_integer(90),
                      low = number_from_integer(45), a = number_from_integer(91),
                      b = number_from_ratio(81, 2), c = number_from_integer(82);
    const ToolGave rows[] = {{hundred, a}, {low, b}, {ninety, c}};
    g_autoptr(Number) at = number_from_text(set, NULL);
    g_autoptr(Number) gave = tool_gave(rows, count, at);
    return gave ? number_text(gave) : g_strdup("-");
}

START_TEST(what_a_wrong_wrench_gave)
{
    // Common practice, no published source.
    static const struct {
        gsize count;
        const char *set, *gave;
    } rows[] = {
        {3, "100", "91"},       // as found
        {3, "45", "40.5"},      // likewise
        {3, "90", "82"},        // likewise
        {3, "40", "36"},        // below all: 40 times 0.9
        {3, "200", "182"},      // above all: 200 times 0.91
        {3, "67.5", "61.125"},  // half way from 0.9 to 82/90: 67.5 times 163/180
        {1, "40", "36.4"},      // one alone: 40 times 0.91
        {2, "72.5", "65.6125"}, // half way from 0.9 to 0.91: 72.5 times 0.905
        {0, "40", "-"},         // nothing was found
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *gave = gave_at(rows[i].count, rows[i].set);
        ck_assert_msg(strcmp(gave, rows[i].gave) == 0, "%s of %s, expected %s", gave, rows[i].set,
                      rows[i].gave);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("tool");
    TCase *tcase = tcase_create("tool");
    tcase_add_test(tcase, range_as_marked_or_from_a_fifth);
    tcase_add_test(tcase, the_setting_with_an_adapter);
    tcase_add_test(tcase, an_adapter_at_an_angle_reaches_less);
    tcase_add_test(tcase, no_setting_without_a_length);
    tcase_add_test(tcase, twelve_months);
    tcase_add_test(tcase, the_last_day_of_a_calibration);
    tcase_add_test(tcase, a_torque_tool_runs_out);
    tcase_add_test(tcase, the_next_calibration_settles_the_span);
    tcase_add_test(tcase, wrong_then_good_leaves_the_wrong_span);
    tcase_add_test(tcase, a_first_calibration_looks_back_too);
    tcase_add_test(tcase, of_one_day_the_ledger_decides);
    tcase_add_test(tcase, no_calibration_mends_a_use_out_of_range);
    tcase_add_test(tcase, the_wrench_mistake);
    tcase_add_test(tcase, what_a_wrong_wrench_gave);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
