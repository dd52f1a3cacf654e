#include <check.h>
#include <standbook/work/words.h>
#include <stdlib.h>

static const char *const names[] = {"main bore", "main", "main bore taper", "white cloth",
                                    "customer's answer"};

static Words begin(const char *line)
{
    Words words;
    ck_assert(words_begin(&words, line, NULL));
    return words;
}

static GPtrArray *axes(void)
{
    GPtrArray *all = g_ptr_array_new_with_free_func((GDestroyNotify)axis_free);
    g_ptr_array_add(all, axis_new("main", (const char *const[]){"1", "2", "3", NULL}));
    g_ptr_array_add(all, axis_new("end", (const char *const[]){"front", "rear", NULL}));
    g_ptr_array_add(all, axis_new("rod", (const char *const[]){"1", "4", NULL}));
    return all;
}

static void expect_refused(GError *error, const char *message)
{
    ck_assert_ptr_nonnull(error);
    ck_assert_str_eq(error->message, message);
    g_error_free(error);
}

START_TEST(what_is_no_line_of_text_is_refused)
{
    char *longest = g_strnfill(WORDS_LENGTH + 1, 'a');
    const struct {
        const char *line, *message;
    } cases[] = {
        {"note caf\xe9", "column 9: this is not UTF-8 (byte 0xE9); save the file as UTF-8"},
        {"note a\x1b[2J", "column 7: a hidden character (U+001B); take it out"},
        {"½ \xe2\x80\xae", "column 3: a hidden character (U+202E); take it out"},
        {longest, "column 1: the line has more than 4096 bytes; say it in several lines"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        Words words;
        GError *error = NULL;
        ck_assert(!words_begin(&words, cases[i].line, &error));
        expect_refused(error, cases[i].message);
    }
    longest[WORDS_LENGTH] = '\0';
    begin(longest);
    begin("\ttabs\tare blanks");
    g_free(longest);
}
END_TEST

START_TEST(the_longest_name_that_fits_is_taken)
{
    Words words = begin("main  bore[1] main bore taper main borer");
    ck_assert_str_eq(words_name(&words, names, 5), "main bore");
    ck_assert_int_eq(*words.at, '[');
    words.at += 4;
    ck_assert_str_eq(words_name(&words, names, 5), "main bore taper");
    ck_assert_str_eq(words_name(&words, names, 5), "main"); // no edge behind `main bore`
    ck_assert_ptr_null(words_name(&words, names, 5));
    ck_assert_str_eq(words.at, "borer");
}
END_TEST

START_TEST(a_wrong_name_finds_what_was_meant)
{
    Words words = begin("mian bore 59.790 with G03");
    ck_assert_str_eq(words_meant(&words, names, 5), "main bore");
    words = begin("white clth clean");
    ck_assert_str_eq(words_meant(&words, names, 5), "white cloth");
    words = begin("piston clearance[4]");
    ck_assert_ptr_null(words_meant(&words, names, 5));
}
END_TEST

START_TEST(words_in_quotes)
{
    Words words = begin("\"say \"\"stop\"\" and wait\"  none \"open");
    GError *error = NULL;
    char *text = words_text(&words, "the reason", NULL);
    ck_assert_str_eq(text, "say \"stop\" and wait");
    g_free(text);
    text = words_text(&words, "the reason", NULL);
    ck_assert_str_eq(text, "none");
    g_free(text);
    ck_assert_ptr_null(words_text(&words, "the reason", &error));
    expect_refused(error, "column 31: this quote is not closed; end the words with \", and write a "
                          "quote within them twice");
    words = begin("\"  \"");
    error = NULL;
    ck_assert_ptr_null(words_text(&words, "the reason", &error));
    expect_refused(error, "column 1: the reason is empty; write it between the quotes");
    words = begin("");
    error = NULL;
    ck_assert_ptr_null(words_text(&words, "the reason", &error));
    expect_refused(error, "column 1: the reason is missing here; write it in quotes");
}
END_TEST

static char *places_of(const char *line)
{
    GPtrArray *all = axes();
    gssize picked[3];
    Words words = begin(line);
    GError *error = NULL;
    GString *text = g_string_new(NULL);
    if (words_place(&words, all, "bore", picked, &error)) {
        GArray *places = places_picked(all, picked);
        for (guint i = 0; i < places->len; i++) {
            GStrv labels = places_labels(all, g_array_index(places, guint, i));
            char *label = g_strjoinv(" ", labels);
            g_string_append_printf(text, "%s%s", i ? ", " : "", label);
            g_free(label);
            g_strfreev(labels);
        }
        g_array_unref(places);
    } else {
        g_string_assign(text, error->message);
        g_error_free(error);
    }
    g_ptr_array_unref(all);
    return g_string_free(text, FALSE);
}

START_TEST(places_in_any_order)
{
    static const char *const cases[][2] = {
        {"[rear, rod 4, main 2]", "2 rear 4"},
        {"[ 3 ,front,4 ]", "3 front 4"},
        {"[main 1, 1, rear]", "1 rear 1"}, // main is named, so that 1 is of the rod
        {"[2, 4]", "2 front 4, 2 rear 4"},
        {"[rear, 3]", "3 rear 1, 3 rear 4"},
        {"[1]", "column 2: `1` is a label of main and of rod; write `main 1` or `rod 1`"},
        {"[2, fornt]", "column 5: `bore` has no place `fornt`; did you mean `front`?"},
        {"[7]", "column 2: `bore` has no place `7`; its places are main 1 2 3, end front rear, "
                "rod 1 4"},
        {"[main 4]", "column 2: `bore` has no place `main 4`; its places are main 1 2 3, end "
                     "front rear, rod 1 4"},
        {"[2, main 3]",
         "column 5: `main 3` is a second main; name one in a line, or leave it out for all"},
        {"[2, front", "column 1: this bracket is not closed; end it with ]"},
        {"[2,,front]", "column 4: a label is missing here"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        char *text = places_of(cases[i][0]);
        ck_assert_str_eq(text, cases[i][1]);
        g_free(text);
    }
}
END_TEST

START_TEST(one_place_has_no_brackets)
{
    GPtrArray *none = g_ptr_array_new();
    Words words = begin("[1] 5");
    GError *error = NULL;
    ck_assert(!words_place(&words, none, "crank drag", NULL, &error));
    expect_refused(error, "column 1: `crank drag` has only one place; leave the brackets out");
    GArray *places = places_picked(none, NULL);
    ck_assert_uint_eq(places->len, 1);
    g_array_unref(places);
    g_ptr_array_unref(none);
}
END_TEST

// The values as fractions with their units, or the refusal.
static char *values_of(const char *line, const char *unit_name)
{
    Words words = begin(line);
    GError *error = NULL;
    Unit *unit = unit_name ? unit_parse(unit_name, NULL) : NULL;
    GPtrArray *values = words_values(&words, unit, &error);
    unit_free(unit);
    if (!values) {
        char *message = g_strdup(error->message);
        g_error_free(error);
        return message;
    }
    GString *text = g_string_new(NULL);
    for (guint i = 0; i < values->len; i++) {
        const Reading *reading = &((WordsValue *)values->pdata[i])->reading;
        char *number = number_fraction(reading->number);
        g_string_append_printf(text, "%s%s%s %s; ", reading->bound == BOUND_BELOW ? "<" : "",
                               reading->bound == BOUND_ABOVE ? ">" : "", number,
                               reading->unit ? unit_text(reading->unit) : "-");
        g_free(number);
    }
    g_string_append(text, words.at);
    g_ptr_array_unref(values);
    return g_string_free(text, FALSE);
}

START_TEST(values_with_and_without_units)
{
    static const struct {
        const char *line, *unit, *expected;
    } cases[] = {
        {"59.790 59.791 with G03", "mm", "5979/100 mm; 59791/1000 mm; with G03"},
        {"-0.52 <0.03 > 1/4", "mm", "-13/25 mm; <3/100 mm; >1/4 mm; "},
        {"17/32 9/16 in loose", "mm", "17/32 in; 9/16 in; loose"},
        {"1 mm 2 3 cm", "mm", "1 mm; 2 cm; 3 cm; "},
        {"2-5/8\" \"2⅝″ + 1/32 in\" with G03", "mm", "21/8 in; 2159/32 mm; with G03"},
        {"2⅝″ 63,5 1,5/32", "in", "21/8 in; 127/2 in; 3/64 in; "},
        {"90 % by \"x\"", "%", "90 %; by \"x\""},
        {"16%", "%", "16 %; "},
        {"90.005 ± 0.005", "mm", "18001/200 mm; ± 0.005"},
        {"-10..10 mm", "mm", "-10 mm; ..10 mm"},
        {"0.08 turn with feel", "turn", "2/25 turn; with feel"},
        {"24", NULL, "24 -; "},
        {"59,790 60,1,5", "mm",
         "column 12: `60,1,5` could be 601.5 or 60.15; write the one that is meant"},
        {"\"60,1 + x\"", "mm",
         "column 9: a reading is worked out of numbers only; a formula with names belongs into the "
         "plan"},
        {"with G03", "mm", "column 1: a value is missing here; write digits"},
        {"59.790 mn", "N·m", "column 8: there is no unit `mn`; write it in N·m"},
        {"59.790 wiht G03", "mm", "column 8: `wiht` is no unit; did you mean `with`?"},
        {"59.790 N·m", "mm",
         "column 8: `N·m` is a torque, but a length is read here; write it in mm"},
        {"0.038-0.051", "mm",
         "column 6: `0.038-0.051` says no one size; if it lies between the two write the middle "
         "and "
         "half the way, `0.0445 ± 0.0065`"},
        {"5-3", "mm",
         "column 2: a tight hyphen behind `5` could be a mixed number or a minus; write ` - ` with "
         "spaces to subtract, or `2-5/8`"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        char *text = values_of(cases[i].line, cases[i].unit);
        ck_assert_str_eq(text, cases[i].expected);
        g_free(text);
    }
}
END_TEST

START_TEST(dates_as_people_write_them)
{
    static const char *const cases[][2] = {
        {"1 Sept 2026 good", "2026-09-01"},
        {"13. march 2025", "2025-03-13"},
        {"1 Sep 2026", "2026-09-01"},
        {"29 Feb 2024 x", "2024-02-29"},
        {"31 June 2025", "refused"},
        {"1 Ma 2025", "none"},
        {"1 Mai 2025", "none"},
        {"1 Mar 25", "none"},
        {"13 bolts 2025", "none"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        Words words;
        g_autofree char *date = NULL;
        g_autoptr(GError) error = NULL;
        ck_assert(words_begin(&words, cases[i][0], NULL));
        gboolean read = words_date(&words, &date, &error);
        ck_assert_str_eq(!read ? "refused" : date ? date : "none", cases[i][1]);
        ck_assert(!date || strchr("gx", *words.at));
    }
}
END_TEST

START_TEST(dates_numbers_and_what_is_left)
{
    Words words = begin("2025-03-13 41 2025-02-30 0");
    guint number = 0;
    GError *error = NULL;
    char *date = NULL;
    ck_assert(words_date(&words, &date, NULL));
    ck_assert_str_eq(date, "2025-03-13");
    g_free(date);
    ck_assert(words_whole(&words, "the stage", 1, &number, NULL));
    ck_assert_uint_eq(number, 41);
    ck_assert(!words_date(&words, &date, &error));
    expect_refused(error, "column 15: there is no such day as 2025-02-30");
    error = NULL;
    ck_assert(!words_finish(&words, &error));
    expect_refused(error, "column 15: `2025-02-30` is too much here; the line should end before");
    words = begin("0");
    error = NULL;
    ck_assert(words_date(&words, &date, NULL) && !date);
    ck_assert(!words_whole(&words, "the stage", 1, &number, &error));
    expect_refused(error, "column 1: the stage is a whole number from 1");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("words");
    TCase *tcase = tcase_create("words");
    tcase_add_test(tcase, what_is_no_line_of_text_is_refused);
    tcase_add_test(tcase, the_longest_name_that_fits_is_taken);
    tcase_add_test(tcase, a_wrong_name_finds_what_was_meant);
    tcase_add_test(tcase, words_in_quotes);
    tcase_add_test(tcase, places_in_any_order);
    tcase_add_test(tcase, one_place_has_no_brackets);
    tcase_add_test(tcase, values_with_and_without_units);
    tcase_add_test(tcase, dates_as_people_write_them);
    tcase_add_test(tcase, dates_numbers_and_what_is_left);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
