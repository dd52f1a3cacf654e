// Labels and stages.
#include <check.h>
#include <standbook/plan/labels.h>
#include <standbook/plan/stage.h>
#include <stdlib.h>
#include <string.h>

static void expect_labels(const char *text, const char *expected)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_auto(GStrv) labels = labels_read(text, &offset, &error);
    ck_assert_msg(labels != NULL, "%s: %s", text, error ? error->message : "");
    g_autofree char *joined = g_strjoinv(" ", labels);
    ck_assert_str_eq(joined, expected);
}

static void expect_no_labels(const char *text, gsize place, const char *words)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_auto(GStrv) labels = labels_read(text, &offset, &error);
    ck_assert_ptr_null(labels);
    ck_assert_msg(strstr(error->message, words) != NULL, "%s: %s", text, error->message);
    ck_assert_uint_eq(offset, place);
}

START_TEST(labels_are_written_out)
{
    expect_labels("1..4", "1 2 3 4");
    expect_labels("L1..L3/R1..R3", "L1 L2 L3 R1 R2 R3");
    expect_labels("top/mid/bottom", "top mid bottom");
    expect_labels("4..1", "4 3 2 1");
    expect_labels("A..C", "A B C");
    expect_labels(" 1 .. 2 / 5", "1 2 5");
    expect_labels("vänster/höger", "vänster höger");
    expect_no_labels("", 0, "missing");
    expect_no_labels("1//2", 2, "missing");
    expect_no_labels("ä / 1..2 / 2", 11, "twice");
    expect_no_labels("L1..R3", 0, "no range");
    expect_no_labels("1..", 0, "no range");
    expect_no_labels("a/big end", 2, "letters and digits");
    expect_no_labels("1..999999", 0, "1,000");
    expect_no_labels("1..99999999999", 0, "no range");
}
END_TEST

// Stages as `kind amount@offset`, or the error.
static void expect_stages(const char *text, const char *expected)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) stages = stages_read(text, &offset, &error);
    GString *found = g_string_new(NULL);
    if (!stages)
        g_string_append_printf(found, "%zu: %s", offset, error->message);
    for (guint i = 0; stages && i < stages->len; i++) {
        const Stage *stage = g_ptr_array_index(stages, i);
        g_string_append_printf(found, "%s%d %s@%zu", i ? ", " : "", stage->kind,
                               stage->amount ? stage->amount : "-", stage->amount_offset);
    }
    ck_assert_str_eq(found->str, expected);
    g_string_free(found, TRUE);
}

START_TEST(stages_are_told_apart)
{
    expect_stages("30 > +60°", "0 30@0, 2 60°@6");
    expect_stages("60 + run-down torque", "0 60 + run-down torque@0");
    expect_stages("snug > 90° from snug > wait 10 min", "1 -@4, 3 90°@7, 7 10 min@28");
    expect_stages("75 > slacken > 30 > slacken 1/4 turn", "0 75@0, 4 -@12, 0 30@15, 4 1/4 turn@28");
    expect_stages("draw 1 turn > until end float", "5 1 turn@5, 6 end float@20");
    expect_stages("40 > to slot", "0 40@0, 9 -@12");
    expect_stages("40 > to slot within 30° > check 40", "0 40@0, 9 30°@20, 8 40@32");
    expect_stages("to slot 30",
                  "0: `snug` and `to slot` stand alone; write > before the next stage");
    expect_stages("check",
                  "0: a stage is not finished here; write its torque, angle, check or time");
    expect_stages("snugging torque", "0 snugging torque@0");
    expect_stages("30 > 60°", "5: an angle says from where: write +90° from where the bolt stands, "
                              "or 90° from snug");
    expect_stages("30 > check 60°", "5: an angle says from where: write +90° from where the bolt "
                                    "stands, or 90° from snug");
    expect_stages("20 > 30 Nm + 60°",
                  "5: stages are parted by >; write > before the angle: 30 N·m > +60°");
    expect_stages("30 >",
                  "4: a stage is not finished here; write its torque, angle, check or time");
    expect_stages("90° from snug", "0: nothing is snug yet; write a snug stage or a torque before "
                                   "this angle");
    static const char *const together[] = {"10; 25", "10 - 25 N·m", "10-25", "10 25"};
    static const char *const comma[] = {"10, 25 N·m", "12,5 N·m", "0,5", "30, 60°"};
    static const char *const stroke[] = {"10/25", "1/2 N·m", "check 10/25"};
    for (gsize i = 0; i < G_N_ELEMENTS(together); i++)
        expect_stages(together[i],
                      "0: one stage has one torque; write > between stages, as in 10 > 25 N·m");
    for (gsize i = 0; i < G_N_ELEMENTS(comma); i++)
        expect_stages(comma[i], "0: a comma can be a decimal or part two stages; write 12.5 with a "
                                "point, or 12 > 5 for two stages");
    for (gsize i = 0; i < G_N_ELEMENTS(stroke); i++)
        expect_stages(stroke[i],
                      "0: a stroke can be a fraction or part two stages; write 0.5 for a "
                      "half, or 1 > 2 for two stages");
    expect_stages("12 1/2 lbf·ft > 2 * 10 N·m", "0 12 1/2 lbf·ft@0, 0 2 * 10 N·m@16");
    expect_stages("snug 30", "0: `snug` and `to slot` stand alone; write > before the next stage");
}
END_TEST

// Common practice, no published source: what is turned from where it stands is turned once.
START_TEST(a_turn_leaves_what_is_before_behind)
{
    gsize offset = 0;
    g_autoptr(GPtrArray) stages = stages_read("30 > 60 > +60° > +60°", &offset, NULL);
    g_autoptr(GPtrArray) marked = stages_read("30 > 60° from snug > 90° from snug", &offset, NULL);
    static const struct {
        guint done, stage;
        gboolean turn, mark;
    } rows[] = {
        {0, 0, FALSE, FALSE}, {0, 1, FALSE, FALSE}, {1, 0, FALSE, TRUE},  {1, 1, FALSE, FALSE},
        {2, 1, TRUE, TRUE},   {2, 2, TRUE, FALSE},  {1, 2, FALSE, FALSE}, {2, 0, TRUE, TRUE},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        ck_assert_int_eq(stages_turn_past(stages, rows[i].done, rows[i].stage), rows[i].turn);
        ck_assert_int_eq(stages_turn_past(marked, rows[i].done, rows[i].stage), rows[i].mark);
    }
}
END_TEST

START_TEST(stages_are_bounded)
{
    GString *text = g_string_new("1");
    for (guint i = 1; i < STAGES_MOST; i++)
        g_string_append(text, ">1");
    gsize offset = 0;
    g_autoptr(GPtrArray) most = stages_read(text->str, &offset, NULL);
    ck_assert_uint_eq(most->len, STAGES_MOST);
    g_string_append(text, ">1");
    ck_assert_ptr_null(stages_read(text->str, &offset, NULL));
    g_string_free(text, TRUE);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("notation");
    TCase *tcase = tcase_create("notation");
    tcase_add_test(tcase, labels_are_written_out);
    tcase_add_test(tcase, stages_are_told_apart);
    tcase_add_test(tcase, a_turn_leaves_what_is_before_behind);
    tcase_add_test(tcase, stages_are_bounded);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
