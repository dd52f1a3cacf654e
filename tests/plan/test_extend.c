#include <check.h>
#include <standbook/plan/extend.h>
#include <standbook/plan/requirement.h>
#include <standbook/plan/write.h>
#include <stdlib.h>
#include <string.h>

static Plan *read_text(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(plan);
    return plan;
}

static Plan *read_twin(void)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("tests/plan/small-twin.yaml", &text, NULL, NULL));
    return read_text(text);
}

static Plan *extend(const Plan *plan, const PlanAddition *additions, gsize count)
{
    g_autoptr(GError) error = NULL;
    Plan *extended = plan_extend(plan, additions, count, NULL, &error);
    ck_assert_msg(extended != NULL, "%s", error ? error->message : "no plan and no error");
    return extended;
}

START_TEST(a_check_is_asked_as_the_plans_own)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition additions[] = {
        {"check", "flange flat", "Sump", "at most 0.05 mm"},
        {"check", "strip", "Sump",
         "{at: [end], decimals: 3, limits: 0.020..0.060, gauge: plastic strip}"},
        {"check", "strip spread = range(strip)", "Sump", "at most 0.010"},
        {"check", "oil flow", "Sump", ">= 4 bar "},
    };
    g_autoptr(Plan) extended = extend(plan, additions, G_N_ELEMENTS(additions));
    ck_assert_str_eq(unit_text(plan_check(extended, "oil flow")->unit), "bar");
    const PlanCheck *flat = plan_check(extended, "flange flat");
    ck_assert_str_eq(flat->step->name, "Sump");
    ck_assert_uint_eq(flat->decimals, 2);
    const PlanCheck *spread = plan_check(extended, "strip spread");
    ck_assert_str_eq(spread->formula_text, "range(strip)");
    ck_assert_uint_eq(places_count(spread->axes), 1);
    ck_assert_uint_eq(places_count(plan_check(extended, "strip")->axes), 2);
    ck_assert_uint_eq(plan_requirement_count(extended), plan_requirement_count(plan) + 5);
    const GPtrArray *checks = plan_step(extended, "Sump")->checks;
    ck_assert_ptr_eq(g_ptr_array_index(checks, checks->len - 2), spread);
    ck_assert_ptr_null(plan_check(plan, "flange flat"));
}
END_TEST

START_TEST(a_check_of_an_earlier_step_is_read_again)
{
    g_autoptr(Plan) plan =
        read_text("plan: P\nunits: [mm, N·m]\nsteps:\n  A:\n    checks: {gap: "
                  "{at: 1..2, limits: 1..2}}\n  B:\n    checks: {rags out: yes}\n");
    const PlanAddition additions[] = {{"step", "C", "B", NULL},
                                      {"check", "gap", "C", "again"},
                                      {"check", "rags out", "C", "again"}};
    g_autoptr(Plan) extended = extend(plan, additions, G_N_ELEMENTS(additions));
    const GPtrArray *again = plan_step(extended, "C")->read_again;
    ck_assert_uint_eq(again->len, 2);
    ck_assert_ptr_eq(((const PlanName *)again->pdata[0])->check, plan_check(extended, "gap"));
    ck_assert_uint_eq(plan_requirement_count(extended), plan_requirement_count(plan) + 1 + 2 + 1);
    const struct {
        PlanAddition addition;
        const char *message;
    } wrong[] = {
        {{"check", "gap", "C", "again"}, "`gap` is read again in this step already"},
        {{"check", "gap", "A", "again"},
         "`gap` is a check of this step itself; only one of an earlier step is read again here"},
        {{"check", "rags out", "A", "again"},
         "no earlier step has a check called `rags out` to be read again"},
    };
    for (guint i = 0; i < G_N_ELEMENTS(wrong); i++) {
        g_autoptr(GError) error = NULL;
        ck_assert(!plan_extend_check(extended, &wrong[i].addition, NULL, &error));
        ck_assert_str_eq(error->message, wrong[i].message);
    }
}
END_TEST

static void expect_places(const PlanAddition *additions, gsize count, const char *expected)
{
    g_autoptr(Plan) plan = read_twin();
    g_autoptr(Plan) extended = extend(plan, additions, count);
    const PlanCheck *check = plan_check(extended, "rod");
    g_autoptr(GString) found = g_string_new(NULL);
    for (guint i = 0; i < places_count(check->axes); i++) {
        g_autofree char *place = places_label(check->axes, i);
        const char *limits = NULL;
        for (guint j = 0; !limits && j < check->limits->len; j++) {
            const PlanLimit *limit = check->limits->pdata[j];
            if (!limit->label || strcmp(limit->label, place) == 0)
                limits = limits_text(limit->limits);
        }
        g_string_append_printf(found, "%s%s: %s", i ? ", " : "", place, limits);
    }
    ck_assert_str_eq(found->str, expected);
}

START_TEST(more_places_follow_those_of_an_added_check)
{
    const PlanAddition additions[] = {
        {"check", "rod", "Sump", "{at: 1..2, limits: 0.03..0.06}"},
        {"check", "rod", "Sump", "{at: 3..3}"},
        {"check", "rod", "Sump", "{at: [5/4], limits: max 0.08}"},
        {"check", "rod", "Sump", "{at: 6..6, limits: max 0.09}"},
    };
    expect_places(additions, 2, "1: 0.03..0.06, 2: 0.03..0.06, 3: 0.03..0.06");
    expect_places(additions, 3,
                  "1: 0.03..0.06, 2: 0.03..0.06, 3: 0.03..0.06, 5: max 0.08, 4: max 0.08");
    expect_places(additions, 4,
                  "1: 0.03..0.06, 2: 0.03..0.06, 3: 0.03..0.06, 5: max 0.08, 4: max "
                  "0.08, 6: max 0.09");
}
END_TEST

typedef struct {
    const char *first, *more, *message;
} PlacesRefused;

static const PlacesRefused refused_places[] = {
    {"{at: 1..2, limits: 1..2}", "{at: 2..3}",
     "`rod` has a place `2` already; name one that it has not"},
    {"1..2", "{at: 2..3}",
     "`rod` has no numbered places of its own that more could follow; give this check another "
     "name"},
    {"{at: [end], limits: 1..2}", "{at: 2..3}",
     "`rod` has no numbered places of its own that more could follow; give this check another "
     "name"},
    {"{at: 1..2, limits: 1..2}", "{at: 3..x}",
     "`3..x` is no range; write one such as 1..4 or L1..L3"},
    {"{at: 1..2, limits: 1..2}", "{at: 3..4, gauge: caliper}",
     "step \"Sump\", check \"rod\": there is a check of this name already, in step \"Sump\"; give "
     "this one another name"},
    {"{at: 1..2, limits: 1..2}", "{at: 3..4, limits: {3: 1..2, 4: 1..3}}",
     "step \"Sump\", check \"rod\": there is a check of this name already, in step \"Sump\"; give "
     "this one another name"},
    {"{at: 1..2, limits: {1: 1..2, 2: 1..3}}", "{at: 3..3}",
     "`rod` has limits of their own for its places; say which these have, as in {at: 3..3, limits: "
     "1..3}"},
    {"{at: 1..2, limits: 1..2}", "{at: 3..4, limits: about 2}",
     "step \"Sump\", check \"rod\": these are no limits; write `0.05 to 0.08 mm`, `0.05 ± "
     "0.01`, `at least 90 %`, `max 0.1`, `exactly 4`, `any`, `yes`, `text` or `dry of dry/wet`"},
};

START_TEST(places_that_cannot_follow_say_why)
{
    g_autoptr(Plan) plan = read_twin();
    const PlacesRefused *row = &refused_places[_i];
    const PlanAddition additions[] = {{"check", "rod", "Sump", row->first},
                                      {"check", "rod", "Sump", row->more}};
    g_autoptr(GError) error = NULL;
    PlanRefusal refusal = {0};
    g_autoptr(Plan) extended = plan_extend(plan, additions, 2, &refusal, &error);
    ck_assert_ptr_null(extended);
    ck_assert_str_eq(error->message, row->message);
    ck_assert_uint_eq(refusal.index, 1);
}
END_TEST

START_TEST(bolts_and_parts_find_their_place)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition additions[] = {
        {"tightening", "cover", "First run",
         "{bolts: 1..4, order: criss-cross, layout: circle, stages: 5 > 9}"},
        {"part", "gasket", "Sump", NULL},
        {"part", "plugs", "Sump", "{at: cylinder, use: new}"},
        {"check", "seen", "First run", "yes"},
    };
    g_autoptr(Plan) extended = extend(plan, additions, G_N_ELEMENTS(additions));
    const PlanGroup *cover = plan_group(extended, "cover");
    ck_assert_str_eq(cover->step->name, "First run");
    const PlanTightening *tightening = cover->step->tightenings->pdata[0];
    ck_assert_uint_eq(tightening->stages->len, 2);
    ck_assert_uint_eq(places_count(plan_part(extended, "plugs")->axes), 2);
    ck_assert_ptr_nonnull(plan_part(extended, "gasket"));
    ck_assert_uint_eq(plan_requirement_count(extended), plan_requirement_count(plan) + 8 + 3 + 1);
}
END_TEST

START_TEST(parts_join_those_written_as_names)
{
    g_autoptr(Plan) plan =
        read_text("plan: T\nsteps: {One: {fit: crank}, Two: {fit: [a, b]}, Three: }\n");
    const PlanAddition additions[] = {{"part", "shim", "One", NULL},
                                      {"part", "c", "Two", "{count: 2}"},
                                      {"part", "d", "Three", NULL},
                                      {"check", "e", "Three", "yes"}};
    g_autoptr(Plan) extended = extend(plan, additions, G_N_ELEMENTS(additions));
    ck_assert_uint_eq(plan_step(extended, "One")->parts->len, 2);
    ck_assert_uint_eq(plan_step(extended, "Two")->parts->len, 3);
    ck_assert_uint_eq(plan_part(extended, "c")->count, 2);
    ck_assert_uint_eq(plan_step(extended, "Three")->parts->len, 1);
    g_autofree char *written = plan_write(extended);
    g_autoptr(Plan) again = read_text(written);
    ck_assert_uint_eq(plan_requirement_count(again), plan_requirement_count(extended));
}
END_TEST

START_TEST(a_step_stands_behind_the_one_named)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition additions[] = {
        {"step", "Weld the pan", "Crank", NULL},
        {"check", "weld tight", "Weld the pan", "yes"},
        {"step", "Dye test", NULL, "{do: dye and lamp, checks: {no cracks: yes}}"},
    };
    g_autoptr(Plan) extended = extend(plan, additions, G_N_ELEMENTS(additions));
    const PlanStep *weld = plan_step(extended, "Weld the pan");
    ck_assert_uint_eq(weld->index, 2);
    ck_assert_str_eq(weld->phase, "Measure");
    ck_assert(plan_step_follows(plan_step(extended, "Sump"), weld));
    ck_assert(plan_step_follows(weld, plan_step(extended, "Crank")));
    ck_assert_uint_eq(plan_step(extended, "Dye test")->index, 5);
    ck_assert_ptr_eq(plan_check(extended, "weld tight")->step, weld);
}
END_TEST

START_TEST(a_step_leaves_the_others_as_they_are)
{
    g_autoptr(Plan) plan = read_text("plan: T\nsteps:\n  One: {checks: {a: any}}\n"
                                     "  Two: {phase: P, checks: {b = 2 * a: any}}\n"
                                     "  Three: {checks: {c = 2 * b: any}}\n");
    const PlanAddition addition = {"step", "Aside", "Two",
                                   "{after: nothing, gate: hand over, phase: Q}"};
    g_autoptr(Plan) extended = extend(plan, &addition, 1);
    const PlanStep *three = plan_step(extended, "Three"), *aside = plan_step(extended, "Aside");
    ck_assert_uint_eq(extended->gates->len, 1);
    ck_assert_str_eq(three->phase, "P");
    ck_assert(!plan_step_follows(three, aside));
    ck_assert(plan_step_follows(three, plan_step(extended, "One")));
    g_autoptr(Plan) gated = read_text("plan: T\ngates: [run, sell]\nsteps:\n  One:\n  Two:\n");
    const PlanAddition later = {"step", "Later", "One", "{gate: sell}"};
    // Two stays before the gate run, and nothing of that gate stands behind one of the next.
    g_autoptr(GError) error = NULL;
    ck_assert(!plan_extend_check(gated, &later, NULL, &error));
    ck_assert_str_eq(error->message, "with the step \"Later\" the plan has a fault: step \"Two\": "
                                     "this gate lies before that of the step above");
}
END_TEST

START_TEST(what_is_added_can_be_added_to)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition first = {"check", "gap", "Sump", "any"};
    const PlanAddition second = {"check", "gap doubled = 2 * gap", "Sump", "1..2"};
    ck_assert(!plan_extend_check(plan, &second, NULL, NULL));
    g_autoptr(Plan) one = extend(plan, &first, 1);
    ck_assert(plan_extend_check(one, &second, NULL, NULL));
    g_autoptr(Plan) two = extend(one, &second, 1);
    ck_assert_uint_eq(two->added, 2);
    ck_assert_ptr_nonnull(plan_check(two, "gap doubled"));
}
END_TEST

typedef struct {
    PlanAddition addition;
    PlanAdditionField field;
    gsize offset;
    const char *message;
} Refused;

static const Refused refused[] = {
    {{"check", "journal", "Sump", "1..2"},
     ADDITION_NAME,
     0,
     "step \"Sump\", check \"journal\": there is a check of this name already, in step \"Main "
     "clearance\"; give this one another name"},
    {{"check", "journal", "Main clearance", "1..2"},
     ADDITION_NAME,
     0,
     "step \"Main clearance\", check \"journal\": there is a check of this name already, in step "
     "\"Main clearance\"; give this one another name"},
    {{"tightening", "main caps", "Sump", "{bolts: 1..2, stages: 5}"},
     ADDITION_NAME,
     0,
     "step \"Sump\", group \"main caps\": there is a group of this name already, in step \"Main "
     "clearance\"; give this group another name"},
    {{"part", "main shells", "Sump", NULL},
     ADDITION_NAME,
     0,
     "step \"Sump\", part \"main shells\": there is a part of this name already, in step "
     "\"Crank\"; give this one another name"},
    {{"step", "Sump", "Crank", NULL},
     ADDITION_NAME,
     0,
     "there is a step called `Sump` already; give this one another name"},
    {{"check", "gap", "Sunp", "1..2"},
     ADDITION_STEP,
     0,
     "there is no step called `Sunp`; did you mean `Sump`?"},
    {{"step", "Weld", "Nowhere", NULL},
     ADDITION_STEP,
     0,
     "there is no step called `Nowhere`; write the name of one"},
    {{"check", "gap", NULL, "1..2"},
     ADDITION_STEP,
     0,
     "a check belongs to a step; write the name of one"},
    {{"check", "gap", "Sump", "0.2..0.1"}, ADDITION_DEFINITION, 0, NULL},
    {{"check", "gap", "Sump", "{limits: 1..2, aim: hihg}"},
     ADDITION_DEFINITION,
     20,
     "step \"Sump\", check \"gap\": there is nothing called `hihg`; write the name of a constant "
     "above"},
    {{"check", "gap", "Sump", "{limts: 1..2}"},
     ADDITION_DEFINITION,
     1,
     "step \"Sump\", check \"gap\": a check has no `limts`; did you mean `limits`?"},
    {{"check", "gap", "Sump", "limits: 1..2"},
     ADDITION_DEFINITION,
     0,
     "check \"gap\": put { } round its keys, or quotes round a text with `: ` in it"},
    {{"check", "gap", "Sump", "{limits: 1..2"}, ADDITION_DEFINITION, 0, NULL},
    {{"check", "gap", "Sump", "about 5"},
     ADDITION_DEFINITION,
     0,
     "step \"Sump\", check \"gap\": these are no limits; write `0.05 to 0.08 mm`, `0.05 ± 0.01`, "
     "`at least 90 %`, `max 0.1`, `exactly 4`, `any`, `yes`, `text` or `dry of dry/wet`"},
    {{"check", "gap", "Sump", "1..2\n  other: yes"},
     ADDITION_DEFINITION,
     4,
     "check \"gap\": write what follows the name on one line"},
    {{"check", "gap", "Sump", NULL},
     ADDITION_NAME,
     0,
     "step \"Sump\", check \"gap\": it has no limits and nothing uses it; write limits, or `any`"},
    {{"check", "gap = pan deth - 3 mm", "Sump", "1..2"},
     ADDITION_NAME,
     6,
     "step \"Sump\", check \"gap\": there is nothing called `pan deth`; did you mean `pan depth`?"},
    {{"check", "gap = pan depth - 3 mm", "Crank", "1..2"},
     ADDITION_NAME,
     6,
     "step \"Crank\", check \"gap\": `pan depth` is read in step \"Sump\", which need not come "
     "before this one; add it to `after`"},
    {{"check", "gap[1]", "Sump", "1..2"},
     ADDITION_NAME,
     3,
     "step \"Sump\", check \"gap[1]\": a name cannot hold `[`; write `gap 1`"},
    {{"check", "3 gap", "Sump", "1..2"},
     ADDITION_NAME,
     0,
     "step \"Sump\", check \"3 gap\": a name begins with a letter, not with `3`; write `gap 3`"},
    {{"check", "in/ex lash", "Sump", "1..2"},
     ADDITION_NAME,
     2,
     "step \"Sump\", check \"in/ex lash\": a name cannot hold `/`; write `in-ex lash`"},
    {{"check", "gap (2)  cold", "Sump", "1..2"},
     ADDITION_NAME,
     4,
     "step \"Sump\", check \"gap (2)  cold\": a name cannot hold `(`; write `gap 2 cold`"},
    {{"check", "gap=3", "Sump", "1..2"},
     ADDITION_NAME,
     3,
     "step \"Sump\", check \"gap=3\": a name cannot hold `=`; write `gap 3`; a formula stands "
     "behind ` = `"},
    {{"check", "angle ±", "Sump", "1..2"},
     ADDITION_NAME,
     6,
     "step \"Sump\", check \"angle ±\": a name cannot hold `±`; write `angle`"},
    {{"check", "7", "Sump", "1..2"},
     ADDITION_NAME,
     0,
     "step \"Sump\", check \"7\": a name begins with a letter, not with `7`; write words such as "
     "`main bore`"},
    {{"check", "gap  cold", "Sump", "1..2"},
     ADDITION_NAME,
     4,
     "step \"Sump\", check \"gap  cold\": a name has single blanks, none in front or behind; write "
     "`gap cold`"},
    {{"check", "gap over", "Sump", "1..2"},
     ADDITION_NAME,
     4,
     "step \"Sump\", check \"gap over\": `over` is no word of a name; write words such as `main "
     "bore`"},
    {{"part", "plug [4]", "Sump", NULL},
     ADDITION_NAME,
     5,
     "step \"Sump\", part \"plug [4]\": a name cannot hold `[`; write `plug 4`"},
    {{"check", "  ", "Sump", "1..2"}, ADDITION_NAME, 0, "this check has no name; write one"},
    {{"check", "a\nb", "Sump", "1..2"},
     ADDITION_NAME,
     0,
     "there is a line break or a hidden character in the name of this check; take it out"},
    {{"tightening", "cover", "Sump", "{bolts: 1..4}"},
     ADDITION_NAME,
     0,
     "step \"Sump\", group \"cover\": `stages` is missing: the stages, with > between: 30 > +60°"},
    {{"tightening", "cover", "Sump", "{bolts: 1..4, order: 1-2-3, stages: 5}"},
     ADDITION_DEFINITION,
     21,
     "step \"Sump\", group \"cover\": order: bolt 4 is left out; write every bolt once"},
    {{"bolt", "cover", "Sump", NULL},
     ADDITION_WHAT,
     0,
     "`bolt` cannot be added; write step, check, tightening or part"},
    {{"step", "Aside", "Crank", "{after: Sunp}"},
     ADDITION_DEFINITION,
     8,
     "step \"Aside\": there is no step called `Sunp`; did you mean `Sump`?"},
};

START_TEST(what_cannot_be_taken_is_told_of_the_addition)
{
    g_autoptr(Plan) plan = read_twin();
    const Refused *row = &refused[_i];
    g_autoptr(GError) error = NULL;
    PlanRefusal refusal = {.index = 7};
    ck_assert(!plan_extend_check(plan, &row->addition, &refusal, &error));
    ck_assert_ptr_nonnull(error);
    if (row->message)
        ck_assert_str_eq(error->message, row->message);
    ck_assert_uint_eq(refusal.index, 0);
    ck_assert_int_eq(refusal.field, row->field);
    if (row->message)
        ck_assert_uint_eq(refusal.offset, row->offset);
    ck_assert_msg(!strstr(error->message, "line 1"), "%s", error->message);
}
END_TEST

START_TEST(the_first_that_cannot_be_taken_is_named)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition additions[] = {
        {"check", "gap", "Sump", "1..2"},
        {"check", "play", "Crank", "{limits: 1..2, rests on: nowhere}"},
        {"check", "gap", "Crank", "1..2"},
    };
    PlanRefusal refusal;
    g_autoptr(GError) error = NULL;
    g_autoptr(Plan) extended = plan_extend(plan, additions, 3, &refusal, &error);
    ck_assert_ptr_null(extended);
    ck_assert_uint_eq(refusal.index, 1);
    ck_assert_int_eq(refusal.field, ADDITION_DEFINITION);
    ck_assert_uint_eq(refusal.offset, 25);
    const PlanAddition twice[] = {additions[0], additions[2]};
    g_clear_error(&error);
    g_autoptr(Plan) double_gap = plan_extend(plan, twice, 2, &refusal, &error);
    ck_assert_ptr_null(double_gap);
    ck_assert_uint_eq(refusal.index, 1);
    ck_assert_str_eq(error->message, "with the check \"gap\" the plan has a fault: step \"Sump\", "
                                     "check \"gap\": there is a check of this name already, in "
                                     "step \"Crank\"; give this one another name");
}
END_TEST

START_TEST(what_a_strike_left_without_ground_is_left_out)
{
    g_autoptr(Plan) plan = read_twin();
    const PlanAddition additions[] = {
        {"check", "gap doubled = 2 * gap", "Sump", "1..2"}, // its `gap` was struck
        {"step", "Weld", "Crank", NULL},
        {"check", "weld tight", "Weld", "yes"},
        {"check", "lost", "Nowhere", "yes"},
    };
    gboolean taken[4];
    g_autoptr(Plan) extended = plan_extend_as_far(plan, additions, 4, taken);
    ck_assert(!taken[0] && taken[1] && taken[2] && !taken[3]);
    ck_assert_ptr_nonnull(plan_check(extended, "weld tight"));
    ck_assert_ptr_null(plan_check(extended, "gap doubled"));
    g_autoptr(Plan) whole = plan_extend_as_far(plan, additions + 1, 2, taken);
    ck_assert(taken[0] && taken[1]);
    ck_assert_uint_eq(whole->added, 2);
    g_autoptr(Plan) none = plan_extend_as_far(plan, additions, 1, taken);
    ck_assert(!none && !taken[0]);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("extend");
    TCase *tcase = tcase_create("extend");
    tcase_add_test(tcase, a_check_is_asked_as_the_plans_own);
    tcase_add_test(tcase, a_check_of_an_earlier_step_is_read_again);
    tcase_add_test(tcase, more_places_follow_those_of_an_added_check);
    tcase_add_loop_test(tcase, places_that_cannot_follow_say_why, 0, G_N_ELEMENTS(refused_places));
    tcase_add_test(tcase, bolts_and_parts_find_their_place);
    tcase_add_test(tcase, parts_join_those_written_as_names);
    tcase_add_test(tcase, a_step_stands_behind_the_one_named);
    tcase_add_test(tcase, a_step_leaves_the_others_as_they_are);
    tcase_add_test(tcase, what_is_added_can_be_added_to);
    tcase_add_loop_test(tcase, what_cannot_be_taken_is_told_of_the_addition, 0,
                        G_N_ELEMENTS(refused));
    tcase_add_test(tcase, the_first_that_cannot_be_taken_is_named);
    tcase_add_test(tcase, what_a_strike_left_without_ground_is_left_out);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
