// Shims: what is put in is exact, and so is what a clearance makes of it.
#include "backlash.h"
#include <check.h>
#include <math.h>
#include <stdlib.h>

enum { SHIMS = 121 };

// A clearance read at one place, its shim of 1.00 mm known, and the stock from 0.60 to 1.80 in
// 0.01.
static SettingModel shims(double *stock)
{
    for (int i = 0; i < SHIMS; i++)
        stock[i] = 0.60 + i * 0.01;
    SettingModel model = backlash();
    model.geometry = 1;
    model.geometry_within = 1;
    model.direction = -1;
    model.places = 1;
    model.stock = stock;
    model.stock_count = SHIMS;
    model.start = 1.00;
    model.hand = 0;
    model.absolute = TRUE;
    model.loose = FALSE;
    model.step = 0;
    return model;
}

static void tell(SettingAdviser *adviser, double reading, gboolean loose)
{
    if (loose)
        setting_read(adviser, 0, reading, FALSE);
    setting_tightened(adviser);
    setting_read(adviser, 0, reading, TRUE);
}

// Only what there is, and what fits best of it.
START_TEST(test_stock)
{
    static const double few[] = {1.00, 1.05, 1.10, 1.18, 1.40};
    double stock[SHIMS];
    SettingModel model = shims(stock);
    model.stock = few;
    model.stock_count = G_N_ELEMENTS(few);
    model.hand = 0.005;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    ck_assert_int_eq(setting_advice(adviser).kind, SETTING_TIGHTEN);
    tell(adviser, 0.29, FALSE);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert(!advice.leads_loose);
    ck_assert_double_eq_tol(advice.to, 1.18, 1e-12);
    setting_moved_to(adviser, 1.18, TRUE);
    tell(adviser, 0.11, FALSE);
    advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_LEAVE);
    ck_assert_double_eq_tol(advice.tightest.mean, 0.11, 0.005);
}
END_TEST

// New shim = old shim + reading - aim, however far off (common practice, no published source). The
// aim lies where the doubt of a far move stays inside the limits.
static const struct {
    double reading, aim, shim;
    gboolean loose;
} practice[] = {
    {0.29, 0.10, 1.19, FALSE}, {0.29, 0.12, 1.17, TRUE}, {0.45, 0.13, 1.32, FALSE},
    {0.80, 0.13, 1.67, FALSE}, {0.80, 0.13, 1.67, TRUE}, {0.03, 0.13, 0.90, FALSE},
    {0.02, 0.13, 0.89, TRUE},
};

START_TEST(test_by_practice)
{
    double stock[SHIMS];
    SettingModel model = shims(stock);
    model.aim = practice[_i].aim;
    model.loose = practice[_i].loose;
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, practice[_i].reading, practice[_i].loose);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert_int_eq(advice.kind, SETTING_MOVE);
    ck_assert_double_eq_tol(advice.to, practice[_i].shim, 1e-9);
    ck_assert_double_eq_tol(advice.tightest.mean, practice[_i].aim, 0.005);
    ck_assert_double_lt(advice.tightest.to - advice.tightest.from, 0.06);
    ck_assert(!advice.safe_side);
}
END_TEST

static gboolean finds(const SettingAdvice *advice, SettingFindingKind kind)
{
    for (guint i = 0; i < advice->finding_count; i++)
        if (advice->findings[i].kind == kind)
            return TRUE;
    return FALSE;
}

// A direction told wrong is found at the next shim all the same.
START_TEST(test_wrong_way)
{
    double stock[SHIMS];
    SettingModel model = shims(stock);
    g_autoptr(SettingAdviser) adviser = setting_adviser_new(&model);
    tell(adviser, 0.29, FALSE);
    setting_moved_to(adviser, 1.19, TRUE);
    tell(adviser, 0.48, FALSE);
    SettingAdvice advice = setting_advice(adviser);
    ck_assert(finds(&advice, SETTING_WRONG_WAY));
    ck_assert_double_lt(advice.to, 1.00);
}
END_TEST

int main(void)
{
    TCase *of = tcase_create("shims");
    tcase_add_test(of, test_stock);
    tcase_add_loop_test(of, test_by_practice, 0, G_N_ELEMENTS(practice));
    tcase_add_test(of, test_wrong_way);
    Suite *suite = suite_create("setting shims");
    suite_add_tcase(suite, of);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
