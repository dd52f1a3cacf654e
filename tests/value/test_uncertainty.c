#include <check.h>
#include <standbook/value/uncertainty.h>
#include <stdlib.h>

enum { READINGS = 4 };

// A made-up set of readings, all 10, with gauges described in text.
typedef struct {
    const char *gauge, *expanded, *repeat, *graduation;
} Described;

typedef struct {
    ReadingDoubt doubts[READINGS];
    Number *owned[READINGS * 3];
} Gauges;

static Number *keep(Gauges *gauges, gsize slot, const char *text)
{
    gauges->owned[slot] = text ? number_from_text(text, NULL) : NULL;
    return gauges->owned[slot];
}

static void describe(Gauges *gauges, const Described *described)
{
    for (gsize i = 0; i < READINGS; i++) {
        gauges->doubts[i] =
            (ReadingDoubt){described[i].gauge, keep(gauges, i * 3, described[i].expanded),
                           keep(gauges, i * 3 + 1, described[i].repeat),
                           keep(gauges, i * 3 + 2, described[i].graduation)};
    }
}

static void forget(Gauges *gauges)
{
    for (gsize i = 0; i < G_N_ELEMENTS(gauges->owned); i++) {
        number_free(gauges->owned[i]);
    }
}

static const ReadingDoubt *doubt_of(gint source, gpointer user)
{
    return &((Gauges *)user)->doubts[source];
}

static Array *reading(gint source)
{
    g_autoptr(Number) ten = number_from_integer(10);
    Array *array = array_new(NULL, 0);
    array_set_reading(array, 0, ten, BOUND_NONE, source, 0);
    return array;
}

// The variance of a signed sum of readings 0 and up: `+-` is reading 0 less reading 1.
static void expect(const Described *described, const char *signs, const char *variance)
{
    Gauges gauges;
    describe(&gauges, described);
    g_autoptr(Number) zero = number_from_integer(0);
    g_autoptr(Array) total = array_constant(zero);
    for (gint i = 0; signs[i]; i++) {
        g_autoptr(Array) next = reading(i);
        g_autoptr(Array) before = total;
        total = array_combine(signs[i] == '+' ? ARRAY_ADD : ARRAY_SUBTRACT, before, next, NULL);
    }
    g_autoptr(Number) worked_out = uncertainty_variance(array_place(total, 0), doubt_of, &gauges);
    g_autofree char *text = number_text(worked_out);
    ck_assert_str_eq(text, variance);
    forget(&gauges);
}

// By hand from JCGM 100:2008, 5.1.2 and 5.2.2 (full correlation within a gauge).
START_TEST(one_gauge_keeps_its_error)
{
    static const Described same[READINGS] = {
        {"m", "0.004", NULL, "0.01"}, {"m", "0.004", NULL, "0.01"}, {"m", "0.004", NULL, "0.01"}};
    expect(same, "+", "0.000004");
    expect(same, "++", "0.000016");  // (1+1)² U²/4
    expect(same, "+-", "0.000008");  // Σc² is worse than (Σc)² = 0
    expect(same, "++-", "0.000012"); // (Σc)² = 1, Σc² = 3
}
END_TEST

START_TEST(different_gauges_are_independent)
{
    static const Described two[READINGS] = {{"m", "0.004", NULL, NULL}, {"n", "0.006", NULL, NULL}};
    expect(two, "++", "0.000013");
    expect(two, "+-", "0.000013");
}
END_TEST

START_TEST(a_fixed_error_cancels_in_a_difference)
{
    static const Described same[READINGS] = {{"m", "0.005", "0.003", NULL},
                                             {"m", "0.005", "0.003", NULL}};
    expect(same, "+", "0.00000625"); // U²/4
    expect(same, "+-", "0.0000045"); // 2 r²/4
    expect(same, "++", "0.0000205"); // (4 (25 - 9) + 2 · 9)/4 millionths
    static const Described odd[READINGS] = {{"m", "0.002", "0.003", NULL}};
    expect(odd, "+", "0.00000225"); // r beyond U: r²/4
}
END_TEST

// JCGM 100:2008, 4.3.7: a half-width of g/2 gives g²/12.
START_TEST(graduation_alone)
{
    static const Described bare[READINGS] = {{"m", NULL, NULL, "0.06"},
                                             {"m", NULL, NULL, "0.06"},
                                             {NULL, NULL, NULL, "0.6"},
                                             {NULL, NULL, NULL, "0.6"}};
    expect(bare, "+", "0.0003");
    expect(bare, "++", "0.0006");
    expect(bare, "+++-", "0.0606");
}
END_TEST

START_TEST(constants_and_added_doubt)
{
    g_autoptr(Number) value = number_from_ratio(3, 2);
    g_autoptr(Number) doubt = number_from_ratio(1, 5);
    g_autoptr(Array) gasket = array_new(NULL, 0);
    array_set_constant(gasket, 0, value, doubt, -1);
    g_autoptr(Array) twice = array_combine(ARRAY_ADD, gasket, gasket, NULL);
    g_autoptr(Number) variance = uncertainty_variance(array_place(twice, 0), doubt_of, NULL);
    g_autofree char *text = number_text(variance);
    ck_assert_str_eq(text, "0.04"); // one source, (1+1)² 0.2²/4
    g_autoptr(Number) more = uncertainty_add(variance, doubt);
    g_autofree char *sum = number_text(more);
    ck_assert_str_eq(sum, "0.05");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("uncertainty");
    TCase *tcase = tcase_create("uncertainty");
    tcase_add_test(tcase, one_gauge_keeps_its_error);
    tcase_add_test(tcase, different_gauges_are_independent);
    tcase_add_test(tcase, a_fixed_error_cancels_in_a_difference);
    tcase_add_test(tcase, graduation_alone);
    tcase_add_test(tcase, constants_and_added_doubt);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
