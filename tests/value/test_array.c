#include <check.h>
#include <standbook/value/array.h>
#include <stdlib.h>
#include <string.h>

static Axis *make_axis(const char *name, const char *labels)
{
    g_auto(GStrv) parts = g_strsplit(labels, " ", -1);
    return axis_new(name, (const char *const *)parts);
}

// Fills the places with whole numbers, ids from `source` on; `.` leaves a place open, `x` not
// needed, `<3` and `>3` are bounds.
static void fill(Array *array, const char *values, gint source)
{
    g_auto(GStrv) parts = g_strsplit(values, " ", -1);
    for (gsize i = 0; parts[i]; i++) {
        const char *part = parts[i];
        Bound bound = part[0] == '<' ? BOUND_BELOW : part[0] == '>' ? BOUND_ABOVE : BOUND_NONE;
        if (part[0] == 'x') {
            array_set_not_needed(array, i);
        } else if (part[0] != '.') {
            g_autoptr(Number) value = number_from_text(part + (bound != BOUND_NONE), NULL);
            array_set_reading(array, i, value, bound, source + (gint)i, 0);
        }
    }
}

static Array *make(const char *name, const char *labels, const char *values, gint source)
{
    g_autoptr(Axis) axis = make_axis(name, labels);
    const Axis *axes[] = {axis};
    Array *array = array_new(axes, 1);
    fill(array, values, source);
    return array;
}

// All places in a line: `3 . x <4`.
static void expect(const Array *array, const char *expected)
{
    ck_assert_ptr_nonnull(array);
    g_autoptr(GString) text = g_string_new(NULL);
    for (gsize i = 0; i < array_size(array); i++) {
        const Place *place = array_place(array, i);
        const char *bounds[] = {"", "<", ">"};
        g_autofree char *value = place->value ? number_text(place->value) : NULL;
        g_string_append_printf(text, "%s%s%s", i ? " " : "", bounds[place->bound],
                               place->state == PLACE_OPEN         ? "."
                               : place->state == PLACE_NOT_NEEDED ? "x"
                                                                  : value);
    }
    ck_assert_str_eq(text->str, expected);
}

// The weights of one place: `3:1 7:-1`.
static void expect_weights(const Place *place, const char *expected)
{
    g_autoptr(GString) text = g_string_new(NULL);
    for (guint i = 0; place->weights && i < place->weights->len; i++) {
        const Weight *weight = &g_array_index(place->weights, Weight, i);
        g_autofree char *number = number_text(weight->weight);
        g_string_append_printf(text, "%s%d:%s", i ? " " : "", weight->source, number);
    }
    ck_assert_str_eq(text->str, expected);
}

START_TEST(lines_up_by_name_and_label)
{
    g_autoptr(Array) one = make("main", "1 2 3", "10 20 30", 0);
    g_autoptr(Array) other = make("main", "3 2 1", "3 2 1", 10);
    g_autoptr(Array) sum = array_combine(ARRAY_ADD, one, other, NULL);
    expect(sum, "11 22 33");
    expect_weights(array_place(sum, 0), "0:1 12:1");
    g_autoptr(Array) fewer = make("main", "2 3 4", "2 3 4", 20);
    g_autoptr(Array) kept = array_combine(ARRAY_SUBTRACT, one, fewer, NULL);
    expect(kept, "18 27");
    ck_assert_str_eq(array_dropped(kept), "main 1, main 4");
    ck_assert_ptr_null(array_dropped(sum));
    g_autoptr(Array) strange = make("main", "8 9", "1 2", 30);
    g_autoptr(GError) error = NULL;
    ck_assert_ptr_null(array_combine(ARRAY_ADD, one, strange, &error));
    ck_assert(strstr(error->message, "no place of `main` in common") != NULL);
}
END_TEST

START_TEST(repeats_over_a_missing_axis)
{
    g_autoptr(Array) main_bore = make("main", "1 2", "10 20", 0);
    g_autoptr(Array) grade = make("grade", "A B C", "1 2 3", 10);
    g_autoptr(Array) table = array_combine(ARRAY_SUBTRACT, main_bore, grade, NULL);
    expect(table, "9 8 7 19 18 17");
    ck_assert_str_eq(axis_name(array_axis(table, 0)), "main");
    g_autofree char *place = array_place_text(table, 4);
    ck_assert_str_eq(place, "main 2, B");
    ck_assert_int_eq(array_find_place(table, "B, 2", NULL), 4);
    ck_assert_int_eq(array_find_place(table, "main 2, grade B", NULL), 4);
    const char *wrong[] = {"B", "2, main 1", "7, B", "", "B, 2, A", "main - 1, B"};
    for (gsize i = 0; i < G_N_ELEMENTS(wrong); i++) {
        g_autoptr(GError) error = NULL;
        ck_assert_int_eq(array_find_place(table, wrong[i], &error), -1);
        ck_assert_ptr_nonnull(error);
    }
    g_autoptr(Number) value = number_from_integer(2);
    g_autoptr(Array) two = array_constant(value);
    g_autoptr(Array) twice = array_combine(ARRAY_MULTIPLY, two, main_bore, NULL);
    expect(twice, "20 40");
    expect_weights(array_place(twice, 1), "1:2");
    ck_assert_int_eq(array_find_place(two, "", NULL), 0);
}
END_TEST

START_TEST(missing_places)
{
    g_autoptr(Array) one = make("n", "1 2 3 4", "6 . x 0", 0);
    g_autoptr(Array) other = make("n", "1 2 3 4", "2 1 . 0", 10);
    g_autoptr(Array) ratio = array_combine(ARRAY_DIVIDE, one, other, NULL);
    expect(ratio, "3 . x .");
    ck_assert_str_eq(array_place(ratio, 3)->note, "divided by 0");
    ck_assert_uint_eq(array_place(ratio, 1)->read, 1);
    ck_assert_uint_eq(array_place(ratio, 1)->asked, 2);
    expect_weights(array_place(ratio, 0), "0:0.5 10:-1.5");
    g_autoptr(Array) open = array_fold(FOLD_MAX, one, NULL, 0, NULL, NULL, NULL);
    expect(open, ".");
    ck_assert_uint_eq(array_place(open, 0)->read, 2);
    ck_assert_uint_eq(array_place(open, 0)->asked, 3);
    g_autoptr(Array) none = make("n", "1 2", "x x", 0);
    g_autoptr(Array) left = array_fold(FOLD_SUM, none, NULL, 0, NULL, NULL, NULL);
    expect(left, "x");
}
END_TEST

START_TEST(folds)
{
    static const struct {
        Fold fold;
        const char *values, *result, *weights;
    } rows[] = {
        {FOLD_MIN, "5 3 9", "3", "1:1"},
        {FOLD_MAX, "5 3 9", "9", "2:1"},
        {FOLD_RANGE, "5 3 9", "6", "1:-1 2:1"},
        {FOLD_SUM, "5 3 9", "17", "0:1 1:1 2:1"},
        {FOLD_MEAN, "5 3 x", "4", "0:0.5 1:0.5"},
        {FOLD_RANGE, "4 4 4", "0", "0:1 1:-1"}, // still two readings
        {FOLD_RANGE, "x 4 x", "0", "1:0"},
        {FOLD_MIN, "5 <3 9", "<3", "1:1"},
        {FOLD_MIN, "2 <3 9", "<2", "0:1"}, // the second may be anything below 3
        {FOLD_MIN, "5 >7 9", "5", "0:1"},
        {FOLD_MIN, "5 >3 9", ">3", "1:1"},
        {FOLD_MIN, "3 >3 9", "3", "0:1"},
        {FOLD_MIN, ">1 <3 9", "<3", "1:1"},
        {FOLD_MAX, "5 >3 2", ">5", "0:1"},
        {FOLD_MAX, "5 <9 2", "<9", "1:1"},
        {FOLD_MAX, "5 <3 2", "5", "0:1"},
        {FOLD_SUM, "5 <3 2", ".", ""},
        {FOLD_RANGE, "5 <3 2", ".", ""},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(Array) array = make("n", "1 2 3", rows[i].values, 0);
        g_autoptr(Array) fold = array_fold(rows[i].fold, array, NULL, 0, NULL, NULL, NULL);
        expect(fold, rows[i].result);
        expect_weights(array_place(fold, 0), rows[i].weights);
    }
}
END_TEST

// A variance that grows with the id of the first source.
static Number *by_source(const Place *place, gpointer user)
{
    (void)user;
    return number_from_integer(g_array_index(place->weights, Weight, 0).source);
}

START_TEST(a_tie_goes_to_the_larger_doubt)
{
    g_autoptr(Array) array = make("n", "1 2 3", "4 4 9", 0);
    g_autoptr(Array) least = array_fold(FOLD_MIN, array, NULL, 0, by_source, NULL, NULL);
    expect_weights(array_place(least, 0), "1:1");
}
END_TEST

START_TEST(folds_of_named_axes)
{
    g_autoptr(Axis) cylinder = make_axis("cylinder", "1 2");
    g_autoptr(Axis) height = make_axis("height", "top mid bottom");
    const Axis *axes[] = {cylinder, height};
    g_autoptr(Array) bore = array_new(axes, 2);
    fill(bore, "1 2 4 10 20 40", 0);
    const char *over[] = {"height"};
    g_autoptr(Array) taper = array_fold(FOLD_RANGE, bore, over, 1, NULL, NULL, NULL);
    expect(taper, "3 30");
    const char *first[] = {"cylinder"};
    g_autoptr(Array) most = array_fold(FOLD_MAX, bore, first, 1, NULL, NULL, NULL);
    expect(most, "10 20 40");
    g_autoptr(GError) error = NULL;
    const char *absent[] = {"plane"};
    ck_assert_ptr_null(array_fold(FOLD_MAX, bore, absent, 1, NULL, NULL, &error));
    ck_assert(strstr(error->message, "no axis `plane`") != NULL);
    const Array *both[] = {taper, bore};
    g_autoptr(Array) several = array_fold_several(FOLD_MAX, both, 2, NULL, NULL, NULL);
    expect(several, "3 3 4 30 30 40");
}
END_TEST

START_TEST(picks)
{
    g_autoptr(Axis) cylinder = make_axis("cylinder", "1 2");
    g_autoptr(Axis) plane = make_axis("plane", "1 2");
    g_autoptr(Axis) height = make_axis("height", "top mid");
    const Axis *axes[] = {cylinder, plane, height};
    g_autoptr(Array) bore = array_new(axes, 3);
    fill(bore, "1 2 3 4 5 6 7 8", 0);
    static const struct {
        const char *words, *result, *says;
    } rows[] = {
        {"mid", "2 4 6 8", NULL},          {"cylinder 2", "5 6 7 8", NULL},
        {"plane 1", "1 2 5 6", NULL},      {"height top", "1 3 5 7", NULL},
        {"cylinder - 1", "1 2 3 4", NULL}, {"plane + 1", "3 4 7 8", NULL},
        {"2", NULL, "more than one axis"}, {"bottom", NULL, "no place"},
        {"rod 1", NULL, "no place"},       {"cylinder - 2", NULL, "neighbour"},
        {"rod - 1", NULL, "no place"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autoptr(GError) error = NULL;
        g_autoptr(Array) pick = array_pick(bore, rows[i].words, &error);
        if (rows[i].result) {
            expect(pick, rows[i].result);
        } else {
            ck_assert_ptr_null(pick);
            ck_assert_msg(strstr(error->message, rows[i].says) != NULL, "%s", error->message);
        }
    }
}
END_TEST

// turning torque - turning torque[pistons - 1]: the first place has none, and that is meant.
START_TEST(the_place_before)
{
    g_autoptr(Array) drag = make("pistons", "0 1 2", "10 14 19", 0);
    g_autoptr(Array) before = array_pick(drag, "pistons - 1", NULL);
    g_autoptr(Array) added = array_combine(ARRAY_SUBTRACT, drag, before, NULL);
    expect(added, "4 5");
    ck_assert_ptr_null(array_dropped(added));
    g_autofree char *place = array_place_text(added, 0);
    ck_assert_str_eq(place, "pistons 1");
}
END_TEST

START_TEST(functions_of_one_value)
{
    g_autoptr(Array) array = make("n", "1 2 3 4", "-9 4 0 .", 0);
    g_autoptr(Array) negated = array_negate(array);
    expect(negated, "9 -4 0 .");
    g_autoptr(Array) magnitude = array_abs(array);
    expect(magnitude, "9 4 0 .");
    expect_weights(array_place(magnitude, 0), "0:-1");
    g_autoptr(Array) root = array_sqrt(array);
    expect(root, ". 2 . .");
    expect_weights(array_place(root, 1), "1:0.25");
    g_autoptr(Array) cube = array_power(array, 3);
    expect(cube, "-729 64 0 .");
    expect_weights(array_place(cube, 0), "0:243");
    expect_weights(array_place(cube, 2), "2:0");
    g_autoptr(Array) once = array_power(array, 1);
    expect(once, "-9 4 0 .");
    expect_weights(array_place(once, 2), "2:1");
    g_autoptr(Array) inverse = array_power(array, -1);
    expect(inverse, "-1/9 0.25 . .");
    g_autoptr(Array) bound = make("n", "1", "<3", 0);
    g_autoptr(Array) refused = array_negate(bound);
    expect(refused, ".");
    ck_assert(strstr(array_place(refused, 0)->note, "min and max") != NULL);
}
END_TEST

START_TEST(doubts_and_constants_travel)
{
    g_autoptr(Number) value = number_from_integer(3);
    g_autoptr(Number) doubt = number_from_ratio(1, 10);
    g_autoptr(Array) gasket = array_new(NULL, 0);
    array_set_constant(gasket, 0, value, doubt, -5);
    g_autoptr(Array) depth = array_new(NULL, 0);
    array_set_reading(depth, 0, value, BOUND_NONE, 2, 4);
    g_autoptr(Array) sum = array_combine(ARRAY_ADD, depth, gasket, NULL);
    expect_weights(array_place(sum, 0), "-5:1 2:1");
    ck_assert_uint_eq(array_place(sum, 0)->doubts, 4);
    const Weight *weight = &g_array_index(array_place(sum, 0)->weights, Weight, 0);
    ck_assert(number_equal(weight->doubt, doubt));
    g_autoptr(Array) same = array_combine(ARRAY_SUBTRACT, sum, gasket, NULL);
    expect_weights(array_place(same, 0), "-5:0 2:1");
}
END_TEST

// The ± goes to this value alone, though it shares its weights with the one it came from.
START_TEST(a_doubt_is_added_to_one_value_only)
{
    const char *over[] = {"side"};
    g_autoptr(Array) sides = make("side", "left right", "1 >3", 3);
    g_autoptr(Array) shared = array_fold(FOLD_MAX, sides, over, 1, NULL, NULL, NULL);
    g_autoptr(Array) greatest = array_own(shared);
    g_autoptr(Number) doubt = number_from_ratio(1, 100);
    array_add_doubt(greatest, 0, doubt, -9);
    expect(greatest, ">3");
    expect_weights(array_place(greatest, 0), "-9:1 4:1");
    expect_weights(array_place(sides, 1), "4:1");
}
END_TEST

// What an open place waits for, in the order of use; NULL where `work` does not suffice.
static char *awaited_words(const Array *array, guint64 work)
{
    g_autoptr(GArray) sources = g_array_new(FALSE, FALSE, sizeof(gint));
    GString *words = g_string_new(NULL);
    gboolean all = place_awaited(array_place(array, 0), sources, &work);
    for (guint i = 0; i < sources->len; i++)
        g_string_append_printf(words, "%s%d", i ? " " : "", g_array_index(sources, gint, i));
    return g_string_free(words, !all);
}

// Each reading once, of open places alone, whatever it comes to.
START_TEST(what_an_open_place_waits_for)
{
    g_autoptr(Array) play = make("way", "back forth", ". .", 0);
    g_autoptr(Array) there = make("way", "back forth", "3 .", 0);
    array_set_awaited(play, 0, 7);
    array_set_awaited(play, 1, 4);
    g_autoptr(Array) back = array_pick(play, "back", NULL);
    g_autoptr(Array) least = array_fold(FOLD_MIN, play, NULL, 0, NULL, NULL, NULL);
    g_autoptr(Array) none = array_combine(ARRAY_SUBTRACT, least, least, NULL);
    g_autoptr(Array) all = array_combine(ARRAY_DIVIDE, back, none, NULL);
    g_autoptr(Array) known = array_combine(ARRAY_ADD, there, there, NULL);
    g_autofree char *one = awaited_words(back, 1), *two = awaited_words(all, 9);
    g_autofree char *nothing = awaited_words(known, 9), *short_of = awaited_words(all, 2);
    ck_assert_str_eq(one, "7");
    ck_assert_str_eq(two, "7 4");
    ck_assert_str_eq(nothing, "");
    ck_assert_ptr_null(short_of);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("array");
    TCase *tcase = tcase_create("array");
    tcase_add_test(tcase, lines_up_by_name_and_label);
    tcase_add_test(tcase, repeats_over_a_missing_axis);
    tcase_add_test(tcase, missing_places);
    tcase_add_test(tcase, folds);
    tcase_add_test(tcase, a_tie_goes_to_the_larger_doubt);
    tcase_add_test(tcase, folds_of_named_axes);
    tcase_add_test(tcase, picks);
    tcase_add_test(tcase, the_place_before);
    tcase_add_test(tcase, functions_of_one_value);
    tcase_add_test(tcase, doubts_and_constants_travel);
    tcase_add_test(tcase, a_doubt_is_added_to_one_value_only);
    tcase_add_test(tcase, what_an_open_place_waits_for);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
