// Preload bands, against worked examples and tables. What is published as a single figure is asked
// with bands of no width.
#include <check.h>
#include <math.h>
#include <standbook/rules/preload.h>
#include <stdlib.h>

static const double mega_pound_per_inch = 175126835.25, mega_psi = 6894757293.168;

static Thread thread_of(const char *text)
{
    Thread thread;
    ck_assert(thread_parse(text, &thread, NULL));
    return thread;
}

static Band exactly(double value)
{
    return (Band){value, value};
}

static void expect_share(double got, double printed, double share)
{
    ck_assert_msg(fabs(got - printed) <= share * printed, "%.6g instead of %.6g", got, printed);
}

// VDI 2230-1: preloads at 90 % of the yield, kN, and their torques, N·m, by ISO 4014 heads. Within
// 0.35 % and 1.2 % (printed to whole N·m).
static const struct {
    const char *thread, *strength;
    double friction, preload, torque;
} tables[] = {
    {"M6", "8.8", 0.12, 10.2, 10.1},         {"M6", "12.9", 0.12, 17.5, 17.4},
    {"M8", "8.8", 0.12, 18.6, 24.6},         {"M8", "10.9", 0.12, 27.3, 36.1},
    {"M10", "8.8", 0.12, 29.6, 48},          {"M10", "10.9", 0.12, 43.4, 71},
    {"M12", "10.9", 0.12, 63.2, 123},        {"M16", "12.9", 0.12, 139.0, 354},
    {"M8 × 1", "8.8", 0.10, 20.7, 22.8},     {"M8 × 1", "12.9", 0.14, 33.9, 50.1},
    {"M10 × 1.25", "10.9", 0.12, 46.4, 75},  {"M10 × 1.25", "10.9", 0.14, 45.2, 83},
    {"M12 × 1.25", "10.9", 0.12, 70.5, 133}, {"M16 × 1.5", "8.8", 0.12, 87.6, 218},
};

START_TEST(vdi_2230)
{
    Thread thread = thread_of(tables[_i].thread);
    Strength strength;
    ck_assert(thread_strength(&thread, tables[_i].strength, &strength));
    double friction = tables[_i].friction, bearing = thread_bearing_diameter(&thread);
    expect_share(preload_at_yield(&thread, strength.yield, friction, 0.9) / 1e3, tables[_i].preload,
                 0.0045);
    expect_share(preload_torque(&thread, bearing, friction, tables[_i].preload * 1e3),
                 tables[_i].torque, 0.012);
    Band found = preload_by_torque(&thread, bearing, exactly(friction), exactly(tables[_i].torque));
    expect_share(found.low / 1e3, tables[_i].preload, 0.012);
    ck_assert_double_eq(found.low, found.high);
}
END_TEST

// Shigley, 9th ed., ex. 8-3c: 3/4-16, d_m 0.70941 in, 25 kip, µ 0.15, D 1.25 d: 3551 lbf·in.
START_TEST(a_published_torque)
{
    Thread thread = thread_of("3/4-16");
    double torque = preload_torque(&thread, 1.25 * thread.diameter, 0.15, 25e3 * 4.4482216);
    expect_share(torque / 0.112984829, 3551, 0.005);
}
END_TEST

// The low end is that of the greatest friction and the least torque, and the other way round.
START_TEST(a_band_is_as_wide_as_what_makes_it)
{
    Thread thread = thread_of("M10");
    double bearing = thread_bearing_diameter(&thread);
    Band oiled;
    ck_assert(friction_of("engine oil", &oiled));
    Band found = preload_by_torque(&thread, bearing, oiled, band_around(71, 0.04));
    ck_assert_double_eq_tol(preload_torque(&thread, bearing, 0.16, found.low), 71 * 0.96, 1e-9);
    ck_assert_double_eq_tol(preload_torque(&thread, bearing, 0.08, found.high), 71 * 1.04, 1e-9);
    ck_assert(found.low < 43.4e3 && found.high > 43.4e3);
}
END_TEST

typedef struct {
    const char *lubricant;
    Known known;
    double low, high;
} Friction;

static void expect_friction(const Friction *row)
{
    Band friction;
    ck_assert_int_eq(friction_of(row->lubricant, &friction), row->known);
    ck_assert_double_eq(friction.low, row->low);
    ck_assert_double_eq(friction.high, row->high);
}

// VDI 2230-1, table A5.
START_TEST(friction_by_what_is_put_on)
{
    static const Friction rows[] = {
        {"engine oil", KNOWN_ALONE, 0.08, 0.16},
        {"Moly paste", KNOWN_ALONE, 0.04, 0.16},
        {"graphite paste", KNOWN_ALONE, 0.04, 0.16},
        {"dry", KNOWN_ALONE, 0.14, 0.24},
        {"medium locker", KNOWN_ALONE, 0.14, 0.24},
        {"thread sealant", KNOWN_ALONE, 0.08, 0.16},
        {"as found", KNOWN_NOT, 0.04, 0.24},
        {NULL, KNOWN_NOT, 0.04, 0.24},
        {"No oil, dry", KNOWN_NOT, 0.04, 0.24},
        {"none", KNOWN_ALONE, 0.14, 0.24},
        {"lead-free moly", KNOWN_ALONE, 0.04, 0.16},
        {"copper-free anti-seize", KNOWN_ALONE, 0.04, 0.16},
        {"free of oil", KNOWN_NOT, 0.04, 0.24},
        {"threads free of grease", KNOWN_NOT, 0.04, 0.24},
        {"oil-free", KNOWN_NOT, 0.04, 0.24},
        {"degreased", KNOWN_ALONE, 0.14, 0.24},
        {"dry moly paste", KNOWN_ALONE, 0.04, 0.16},
        {"clean, engine oil", KNOWN_ALONE, 0.08, 0.16},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        expect_friction(&rows[i]);
}
END_TEST

// Of two named the band is from the least to the greatest, whichever stands first.
START_TEST(friction_of_several_things)
{
    static const Friction rows[] = {
        {"engine oil on threads, moly under head", KNOWN_UNITED, 0.04, 0.16},
        {"moly under head, engine oil on threads", KNOWN_UNITED, 0.04, 0.16},
        {"oil on threads dry under head", KNOWN_UNITED, 0.08, 0.24},
        {"dry thread/oiled washer", KNOWN_UNITED, 0.08, 0.24},
        {"moly on threads and locker", KNOWN_UNITED, 0.04, 0.24},
        {"oil on threads, grease under head", KNOWN_ALONE, 0.08, 0.16},
        {"locker on degreased threads", KNOWN_ALONE, 0.14, 0.24},
        {"oil on threads, no oil under head", KNOWN_NOT, 0.04, 0.24},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++)
        expect_friction(&rows[i]);
}
END_TEST

// Shigley, 9th ed., solutions of 8-24, 8-25 (30 Mpsi, 1/2 in) and 8-33 (207 GPa, 10 mm).
START_TEST(published_cones)
{
    double inch = 25.4e-3;
    expect_share(cone_stiffness(30 * mega_psi, 0.5 * inch, 0.75 * inch, 0.5 * inch),
                 33.30 * mega_pound_per_inch, 0.0005);
    expect_share(cone_stiffness(30 * mega_psi, 0.5 * inch, 0.75 * inch, 0.4225 * inch),
                 36.14 * mega_pound_per_inch, 0.0005);
    expect_share(cone_stiffness(207e9, 0.010, 0.015, 0.020), 3503e6, 0.0005);
    // The two cones of a joint are one half of either.
    Thread thread = thread_of("M10");
    ck_assert_double_eq_tol(joint_stiffness(&thread, 0.040, 207e9) / 1e6, 3503 / 2.0, 1);
}
END_TEST

// 10 mm shank 40 mm, threaded 20 mm (58.0 mm²), 207 GPa: 242.3 kN/mm; 0.15 mm are 36.35 kN. Worked
// by hand from Shigley, table 8-7.
START_TEST(a_stretched_bolt)
{
    Thread thread = thread_of("M10");
    double stiffness = bolt_stiffness(&thread, 0.060, 0.040);
    expect_share(stiffness, 242.337e6, 0.0005);
    Band found = preload_by_stretch(exactly(stiffness), (Band){0.00014, 0.00016});
    expect_share(found.low, 36350.5 * 14 / 15, 0.0005);
    expect_share(found.high, 36350.5 * 16 / 15, 0.0005);
}
END_TEST

// Shigley, 9th ed., 8-4: k_b 6.50, k_c 13.8 Mlbf/in, 1/16 in, 25 kip; its travel is then 32.59°
// (worked by hand). And 400 with 1600 kN/mm at 1.25 mm: 45° are 50 kN.
START_TEST(an_angle_is_shared_by_bolt_and_joint)
{
    Thread thread = thread_of("3/4-16");
    Band bolt = exactly(6.50 * mega_pound_per_inch), joint = exactly(13.8 * mega_pound_per_inch);
    Band found = preload_by_angle(&thread, exactly(0), exactly(32.5886 * G_PI / 180), bolt, joint);
    expect_share(found.low, 25e3 * 4.4482216, 1e-5);
    thread = thread_of("M10 × 1.25");
    found = preload_by_angle(&thread, (Band){1000, 2000}, exactly(G_PI / 4), exactly(400e6),
                             exactly(1600e6));
    ck_assert_double_eq_tol(found.low, 51000, 1e-6);
    ck_assert_double_eq_tol(found.high, 52000, 1e-6);
}
END_TEST

START_TEST(what_is_clamped)
{
    static const struct {
        const char *material;
        Known known;
        double low, high; // GPa, Shigley, 9th ed., table 8-8
    } rows[] = {{"steel", KNOWN_ALONE, 207, 207},
                {"cast iron", KNOWN_ALONE, 100, 100},
                {"alloy", KNOWN_ALONE, 71, 71},
                {"alloy on cast iron", KNOWN_UNITED, 71, 100},
                {"iron, steel gasket", KNOWN_ALONE, 100, 100},
                {"gasket", KNOWN_NOT, 71, 207},
                {"wood", KNOWN_NOT, 71, 207},
                {NULL, KNOWN_NOT, 71, 207}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        Band elasticity;
        ck_assert_int_eq(elasticity_of(rows[i].material, &elasticity), rows[i].known);
        ck_assert_double_eq_tol(elasticity.low / 1e9, rows[i].low, 1e-9);
        ck_assert_double_eq_tol(elasticity.high / 1e9, rows[i].high, 1e-9);
    }
}
END_TEST

// Whatever a gasket takes: between the snug alone and the whole angle on bare metal.
START_TEST(a_gasket_takes_some_of_the_angle)
{
    ck_assert(names_gasket("alloy, paper gasket"));
    ck_assert(names_gasket("Head gasket"));
    ck_assert(!names_gasket("alloy"));
    ck_assert(!names_gasket(NULL));
    Thread thread = thread_of("M10 × 1.25");
    Band snug = {1000, 2000}, angle = exactly(G_PI / 4), bolt = exactly(400e6);
    Band found = preload_by_angle_on_gasket(&thread, snug, angle, bolt, exactly(1600e6));
    ck_assert_double_eq_tol(found.low, 1000, 1e-6);
    ck_assert_double_eq_tol(found.high, 52000, 1e-6);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("preload");
    TCase *tcase = tcase_create("preload");
    tcase_add_loop_test(tcase, vdi_2230, 0, G_N_ELEMENTS(tables));
    tcase_add_test(tcase, a_published_torque);
    tcase_add_test(tcase, a_band_is_as_wide_as_what_makes_it);
    tcase_add_test(tcase, friction_by_what_is_put_on);
    tcase_add_test(tcase, friction_of_several_things);
    tcase_add_test(tcase, published_cones);
    tcase_add_test(tcase, a_stretched_bolt);
    tcase_add_test(tcase, an_angle_is_shared_by_bolt_and_joint);
    tcase_add_test(tcase, what_is_clamped);
    tcase_add_test(tcase, a_gasket_takes_some_of_the_angle);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
