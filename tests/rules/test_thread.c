// Threads and what their bolts carry, against published tables.
#include <check.h>
#include <math.h>
#include <standbook/rules/thread.h>
#include <stdlib.h>

static Thread thread_of(const char *text)
{
    Thread thread;
    g_autoptr(GError) error = NULL;
    ck_assert_msg(thread_parse(text, &thread, &error), "%s", error ? error->message : "");
    return thread;
}

static void expect_share(const char *what, double got, double printed, double share)
{
    ck_assert_msg(fabs(got - printed) <= share * printed, "%s: %.6g instead of %.6g", what, got,
                  printed);
}

static const struct {
    const char *text;
    double diameter, pitch; // mm
    gboolean left_hand;
} written[] = {
    {"M10", 10, 1.5, FALSE},
    {"M10 × 1.25", 10, 1.25, FALSE},
    {"M10x1", 10, 1, FALSE},
    {"m8 x 1.0", 8, 1, FALSE},
    {"M9", 9, 1.25, FALSE},
    {"M24 × 1.5 left-hand", 24, 1.5, TRUE},
    {"M12 left-hand", 12, 1.75, TRUE},
    {"M12 LH", 12, 1.75, TRUE},
    {"3/8-16", 9.525, 25.4 / 16, FALSE},
    {"3/8\"-24 UNF", 9.525, 25.4 / 24, FALSE},
    {"7/16 UNF", 11.1125, 25.4 / 20, FALSE},
    {"1/2 UNC left-hand", 12.7, 25.4 / 13, TRUE},
    {"1 UNC", 25.4, 25.4 / 8, FALSE},
    {"#10-32", 0.190 * 25.4, 25.4 / 32, FALSE},
    {"#8 UNC", 0.164 * 25.4, 25.4 / 32, FALSE},
};

START_TEST(as_it_is_written)
{
    Thread thread = thread_of(written[_i].text);
    ck_assert_double_eq_tol(thread.diameter * 1e3, written[_i].diameter, 1e-9);
    ck_assert_double_eq_tol(thread.pitch * 1e3, written[_i].pitch, 1e-9);
    ck_assert_int_eq(thread.left_hand, written[_i].left_hand);
}
END_TEST

START_TEST(a_hand_is_read_whatever_else_stands_there)
{
    ck_assert(thread_is_left_hand("M12 left-hand"));
    ck_assert(thread_is_left_hand("taper 3/8 left hand"));
    ck_assert(!thread_is_left_hand("M12"));
    ck_assert(!thread_is_left_hand("M12 right-hand"));
}
END_TEST

START_TEST(what_is_no_thread_is_refused)
{
    static const char *const texts[] = {
        "",        "M",         "M0",    "M10 ×",    "M10 × 0",  "M10 × 6", "M13",
        "3/8",     "taper 3/8", "3/8-",  "5/32 UNF", "M10 fine", "M1e999",  "1/0-16",
        "-3/8-16", "#-10",      "M0x10", "M1000x6",  "M1e2x1",   "#0x1-80", "M1.2.3x0.3"};
    for (gsize i = 0; i < G_N_ELEMENTS(texts); i++) {
        Thread thread;
        g_autoptr(GError) error = NULL;
        ck_assert_msg(!thread_parse(texts[i], &thread, &error), "`%s`", texts[i]);
        ck_assert_ptr_nonnull(error);
    }
}
END_TEST

// ISO 724 (d2, D1; d3 by ISO 898-1), as tables print them, mm, and nominal stress areas, mm²
// (ISO 898-1:2013, tables 4 to 7).
static const struct {
    const char *text;
    double pitch_diameter, minor, root, area;
} sizes[] = {
    {"M6", 5.350, 4.917, 4.773, 20.1},          {"M8", 7.188, 6.647, 6.466, 36.6},
    {"M10", 9.026, 8.376, 8.160, 58.0},         {"M12", 10.863, 10.106, 9.853, 84.3},
    {"M16", 14.701, 13.835, 13.546, 157},       {"M12 × 1.25", 11.188, 10.647, 10.466, 92.1},
    {"M14 × 1.5", 13.026, 12.376, 12.160, 125},
};

START_TEST(iso_724)
{
    Thread thread = thread_of(sizes[_i].text);
    ck_assert_double_eq_tol(thread_pitch_diameter(&thread) * 1e3, sizes[_i].pitch_diameter, 6e-4);
    ck_assert_double_eq_tol(thread_minor_diameter(&thread) * 1e3, sizes[_i].minor, 6e-4);
    ck_assert_double_eq_tol(thread_root_diameter(&thread) * 1e3, sizes[_i].root, 6e-4);
    expect_share(sizes[_i].text, thread_stress_area(&thread) * 1e6, sizes[_i].area, 0.004);
}
END_TEST

START_TEST(strength_follows_the_size)
{
    static const struct {
        const char *thread, *strength;
        double proof; // MPa; 0 for none
    } rows[] = {
        // ISO 898-1:2013, table 3
        {"M16", "8.8", 580},
        {"M18", "8.8", 600},
        {"M10", "10.9", 830},
        {"M6", "12.9", 970},
        {"M6", "9.8", 650},
        {"M6", "4.6", 225},
        // SAE J429, ksi
        {"3/4-10", "grade 2", 55 * 6.894757},
        {"7/8-9", "Gr 2", 33 * 6.894757},
        {"1-8", "SAE grade 5", 85 * 6.894757},
        {"1/2-13", "gr. 8", 120 * 6.894757},
        {"1/2-13", "8", 0},
        {"1/2-13", "grade 7", 0},
        {"M10", "10.8", 0},
        {"M10", "", 0},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Thread thread = thread_of(rows[i].thread);
        Strength found = {0};
        ck_assert_int_eq(thread_strength(&thread, rows[i].strength, &found), rows[i].proof > 0);
        ck_assert_double_eq_tol(found.proof / 1e6, rows[i].proof, 1e-3);
    }
}
END_TEST

// VDI 2230-1's D_Km of ISO 4014 heads over ISO 273 holes, mm.
START_TEST(heads_turn_on_a_ring)
{
    static const struct {
        const char *thread;
        double bearing;
    } rows[] = {{"M8", 10.315},
                {"M10 × 1.25", 12.815},
                {"M12", 15.065},
                {"M11", 13.75},
                {"3/4-10", 23.8125}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Thread thread = thread_of(rows[i].thread);
        ck_assert_double_eq_tol(thread_bearing_diameter(&thread) * 1e3, rows[i].bearing, 1e-9);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("thread");
    TCase *tcase = tcase_create("thread");
    tcase_add_loop_test(tcase, as_it_is_written, 0, G_N_ELEMENTS(written));
    tcase_add_test(tcase, a_hand_is_read_whatever_else_stands_there);
    tcase_add_test(tcase, what_is_no_thread_is_refused);
    tcase_add_loop_test(tcase, iso_724, 0, G_N_ELEMENTS(sizes));
    tcase_add_test(tcase, strength_follows_the_size);
    tcase_add_test(tcase, heads_turn_on_a_ring);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
