// Formulas, limits, units and stages of a plan: what is found wrong with them, and what is not.
#include <check.h>
#include <standbook/plan/plan.h>
#include <stdlib.h>
#include <string.h>

// A plan with two steps of which the second is `lines`, indented by six from line 12 on.
static char *plan_around(const char *lines)
{
    return g_strdup_printf("plan: T\n"
                           "units: [mm, N·m, °, bar, g]\n"
                           "axes: {cylinder: 1..2, direction: T/A, height: top/mid/bottom}\n"
                           "given: {gasket: 1.5 ± 0.2, wall: {T: 0, A: 0.013}}\n"
                           "steps:\n"
                           "  Measure:\n"
                           "    checks:\n"
                           "      bore: {at: [cylinder, direction, height], decimals: 3}\n"
                           "      skirt: {at: cylinder, limits: 89.90..89.95}\n"
                           "      clean: yes\n"
                           "  Check:\n"
                           "%s"
                           "  Last:\n"
                           "    checks:\n"
                           "      uses bore = max(bore): any\n",
                           lines);
}

static char *faults_of(const char *text)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert((plan == NULL) == (faults_count(faults) > 0));
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < faults_count(faults); i++) {
        g_autofree char *line = fault_text(faults_at(faults, i), "t");
        g_string_append_printf(all, "%s\n", line);
    }
    return g_string_free(all, FALSE);
}

static void expect(const char *lines, const char *expected)
{
    g_autofree char *text = plan_around(lines);
    g_autofree char *found = faults_of(text);
    ck_assert_str_eq(found, expected);
}

// The lines stand under `checks:` from line 13 on.
static void expect_checks(const char *lines, const char *expected)
{
    g_autofree char *all = g_strdup_printf("    checks:\n%s", lines);
    expect(all, expected);
}

static Plan *read_plan(const char *lines)
{
    g_autofree char *all = g_strdup_printf("    checks:\n%s", lines);
    g_autofree char *text = plan_around(all);
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(plan);
    return plan;
}

#define CHECK_PREFIX "step \"Check\", check \"x\": "

START_TEST(names_kinds_and_order_of_steps)
{
    expect_checks("      x = bore[T, mid] - skrit: 0.05..0.08\n",
                  "t:13:26: " CHECK_PREFIX
                  "there is nothing called `skrit`; did you mean `skirt`?\n");
    expect_checks("      x = max(bore): 40..50 N·m\n",
                  "t:13:22: " CHECK_PREFIX
                  "the formula gives a length, but its limits are a torque\n");
    expect_checks("      x = max(bore) / 1 s: at most 1\n",
                  "t:13:28: " CHECK_PREFIX "the formula gives a speed, but its limits are a pure "
                  "number; write their unit behind them\n");
    expect("    after: nothing\n    checks:\n      x = bore[T, mid] - skirt: 0.05..0.08\n",
           "t:14:11: " CHECK_PREFIX
           "`bore` is read in step \"Measure\", which need not come before "
           "this one; add it to `after`\n"
           "t:14:26: " CHECK_PREFIX "`skirt` is read in step \"Measure\", which need not come "
           "before this one; add it to `after`\n"
           "t:17:23: step \"Last\", check \"uses bore\": `bore` is read in step \"Measure\", which "
           "need not come before this one; add it to `after`\n");
    expect_checks("      x = bore - 89: any\n",
                  "t:13:18: " CHECK_PREFIX "a length and a pure number cannot be subtracted; "
                  "give both the same kind of unit\n");
}
END_TEST

START_TEST(one_fault_is_told_once)
{
    expect_checks("      x = max(bore: 1..2\n      y = x * 2: 1..2\n      z = y + x: 1..2\n",
                  "t:13:19: " CHECK_PREFIX "a `)` or `]` is missing at the end\n");
    expect_checks("      x: up..2\n      y = x * 2: 1..2\n",
                  "t:13:10: " CHECK_PREFIX
                  "there is nothing called `up`; write the name of a check or a constant\n");
}
END_TEST

START_TEST(constants_have_one_kind)
{
    const char *text = "plan: T\nunits: [mm]\naxes: {grade: A/B/C}\n"
                       "given: {wall: {A: nothing, B: 1 bar, C: 2}, ring: ring, other: {X: 1}}\n"
                       "steps: {One: {do: x}}\n";
    g_autofree char *found = faults_of(text);
    ck_assert_str_eq(
        found, "t:4:19: given \"wall\": there is nothing called `nothing`; write the name of a "
               "constant above\n"
               "t:4:41: given \"wall\": all labels of a constant have one kind of unit\n"
               "t:4:51: given \"ring\": a constant uses only constants written above it, which "
               "`ring` is not\n"
               "t:4:64: given \"other\": no axis has these labels; name one under `axes`\n");
}
END_TEST

START_TEST(circles_are_found)
{
    expect_checks("      x = y * 2: any\n      y = x * 2: any\n",
                  "t:14:11: step \"Check\", check \"y\": `x` is worked out from this formula "
                  "itself; use another value\n");
}
END_TEST

START_TEST(limits_fit_their_check)
{
    expect_checks("      x: {at: cylinder, limits: {1: 1..2, 3: 2..3}}\n",
                  "t:13:43: " CHECK_PREFIX "no axis of this check has this label\n");
    expect_checks("      x: {at: [cylinder, in/ex], limits: {\"2, ex\": 1..2, \"1, 2\": 2..3}}\n",
                  "t:13:59: " CHECK_PREFIX
                  "these are no labels of as many axes of this check, in their order\n");
    expect_checks("      x: {limits: 1..2, wear: 1.5}\n",
                  "t:13:31: " CHECK_PREFIX
                  "the service limit must lie outside the limits; check both figures\n");
    expect_checks("      x: {limits: 1..2, wear: 2.5 - 0.2}\n",
                  "t:13:31: " CHECK_PREFIX "`wear` is one number; write what `2.5 - 0.2` leaves "
                  "over, or both numbers as limits\n");
    expect_checks("      x: 0.001 * skirt .. 0.002 * skirt\n",
                  "t:13:10: " CHECK_PREFIX
                  "this limit varies over cylinder, which the check does not; fold it\n");
    expect_checks("      x: {unit: bar}\n",
                  "t:13:7: " CHECK_PREFIX
                  "it has no limits and nothing uses it; write limits, or `any`\n");
    expect_checks("      x = bore[T, mid] - skirt: yes\n",
                  "t:13:33: " CHECK_PREFIX
                  "a formula gives a number; write limits such as 0.05..0.08\n");
    expect_checks("      x = 2 * clean: any\n",
                  "t:13:15: " CHECK_PREFIX
                  "`clean` is answered in words, so a formula cannot use it\n");
    expect_checks("      x: {limits: 1..2, choose: height}\n",
                  "t:13:33: " CHECK_PREFIX "the check does not vary over this axis, so there is "
                  "nothing to choose\n");
}
END_TEST

START_TEST(a_formula_gives_places_unit_and_kind)
{
    g_autoptr(Plan) plan =
        read_plan("      taper = max(range(bore over height) over direction): at most 0.010\n"
                  "      walls = bore - 2 * wall: {limits: {T: 80..90, A: 80..91}, wear: 92}\n"
                  "      ratio = min(bore) / max(bore): at least 90 %\n"
                  "      square = bore[1, T, mid] ^ 2: 1..9000 mm²\n"
                  "      loose: {limits: any, doubt: 0.1, aim: smallest 0.10}\n");
    const PlanCheck *taper = plan_check(plan, "taper");
    ck_assert_uint_eq(taper->axes->len, 1);
    ck_assert_str_eq(axis_name(taper->axes->pdata[0]), "cylinder");
    ck_assert_str_eq(unit_text(taper->unit), "mm");
    ck_assert_uint_eq(taper->decimals, 3);
    const PlanCheck *walls = plan_check(plan, "walls");
    ck_assert_uint_eq(places_count(walls->axes), 12);
    ck_assert_uint_eq(walls->limits->len, 2);
    ck_assert(walls->wear_above);
    const PlanCheck *ratio = plan_check(plan, "ratio");
    ck_assert_str_eq(unit_text(ratio->unit), "%");
    ck_assert(kind_is_pure(ratio->kind));
    const PlanCheck *loose = plan_check(plan, "loose");
    ck_assert_int_eq(loose->aim, AIM_SMALLEST);
    g_autofree char *aim = unit_show(loose->unit, loose->aim_value, 2);
    ck_assert_str_eq(aim, "0.10 mm");
    g_autofree char *doubt = unit_show(loose->unit, loose->doubt, 1);
    ck_assert_str_eq(doubt, "0.1 mm");
}
END_TEST

START_TEST(doubts_of_constants_keep_apart)
{
    g_autoptr(Plan) plan =
        read_plan("      x = 2 ± 0.1 mm + gasket: any\n      y = 1 ± 1 mm: any\n");
    const PlanGiven *gasket = plan->given->pdata[0];
    const Weight *weight = &g_array_index(array_place(gasket->value, 0)->weights, Weight, 0);
    ck_assert_int_eq(weight->source, -1);
    ck_assert_int_eq(plan_check(plan, "x")->first_doubt, -2);
    ck_assert_int_eq(plan_check(plan, "y")->first_doubt, -3);
}
END_TEST

static char *number_in(const Unit *unit, const Number *base)
{
    return base ? unit_show(unit, base, 3) : g_strdup("open");
}

START_TEST(settings_are_numbers)
{
    g_autoptr(Plan) plan = read_plan(
        "      x: {limits: 0.08..0.18, set: {move: screw, unit: turn, range: 0..3, step: 1/48 "
        "turn, "
        "gives: 0.546 mm, zero: mesh solid, loose: yes}}\n"
        "      y: {limits: 1..2, set: {move: lever, unit: notch, range: at least -2, step: 1}}\n");
    const PlanSetting *screw = plan_check(plan, "x")->setting;
    g_autofree char *most = number_in(screw->unit, screw->most);
    g_autofree char *gives = number_in(plan_check(plan, "x")->unit, screw->gives);
    ck_assert_str_eq(most, "3.000 turn");
    ck_assert_str_eq(gives, "0.546 mm");
    g_autoptr(Number) step = number_from_ratio(360, 48);
    ck_assert(number_equal(screw->step, step));
    ck_assert(screw->loose);
    const PlanSetting *lever = plan_check(plan, "y")->setting;
    ck_assert_ptr_null(lever->unit);
    ck_assert_ptr_null(lever->most);
    g_autofree char *least = number_in(NULL, lever->least);
    ck_assert_str_eq(least, "-2.000");
    expect_checks(
        "      x: {limits: 1..2, set: {move: screw, unit: turn, step: 1 mm, gives: 2 bar}}\n",
        "t:13:62: " CHECK_PREFIX "`step` is an angle here, not a length\n"
        "t:13:75: " CHECK_PREFIX "`gives` is a length here, not a pressure\n");
}
END_TEST

// `0.546 mm, direction 1`.
static void expect_geometry(const char *gives, const char *expected)
{
    g_autofree char *check = g_strdup_printf(
        "      x: {limits: 1..2, set: {move: screw, unit: turn, gives: %s}}\n", gives);
    g_autoptr(Plan) plan = read_plan(check);
    const PlanSetting *setting = plan_check(plan, "x")->setting;
    g_autofree char *size = number_in(plan_check(plan, "x")->unit, setting->gives);
    g_autofree char *words = g_strdup_printf("%s, direction %d", size, setting->direction);
    ck_assert_str_eq(words, expected);
}

START_TEST(size_and_direction_are_known_apart)
{
    expect_geometry("0.546 mm", "0.546 mm, direction 1");
    expect_geometry("-0.546", "-0.546 mm, direction -1");
    expect_geometry("0.546 mm either way", "0.546 mm, direction 0");
    expect_geometry("more", "open, direction 1");
    expect_geometry("less", "open, direction -1");
    expect_geometry("0 mm", "open, direction 0");
    g_autoptr(Plan) silent = read_plan("      x: {limits: 1..2, set: {move: screw, unit: turn}}\n");
    ck_assert_int_eq(plan_check(silent, "x")->setting->direction, 0);
    expect_checks("      x: {limits: 1..2, set: {move: screw, gives: -1 mm either way}}\n"
                  "      y: {limits: 1..2, set: {move: screw, gives: more either way}}\n"
                  "      z: {limits: 1..2, set: {move: screw, gives: 1 bar either way}}\n",
                  "t:13:51: " CHECK_PREFIX "`either way` leaves the direction open; write the size "
                  "without a sign\n"
                  "t:14:51: step \"Check\", check \"y\": `either way` leaves the direction open; "
                  "write the size before it, such as `0.5 mm either way`\n"
                  "t:15:51: step \"Check\", check \"z\": `gives` is a length here, not a "
                  "pressure\n");
}
END_TEST

static char *stock_words(const char *stock)
{
    g_autofree char *check = g_strdup_printf(
        "      x: {limits: 1..2, set: {move: shim, unit: mm, range: 2..3, stock: %s}}\n", stock);
    g_autoptr(Plan) plan = read_plan(check);
    const PlanSetting *setting = plan_check(plan, "x")->setting;
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < setting->stock->len; i++) {
        g_autofree char *size = number_in(setting->unit, setting->stock->pdata[i]);
        g_string_append_printf(words, "%s%s", i ? " " : "", size);
        ck_assert(setting_has_stock(setting, setting->stock->pdata[i]));
    }
    g_autoptr(Number) none = number_from_integer(0);
    ck_assert(!setting_has_stock(setting, none));
    return g_string_free(words, FALSE);
}

// `play 1, T for 1; …`: what is read for a setting, in order.
static void expect_inputs(const Plan *plan, const char *setting, const char *expected)
{
    const PlanCheck *check = plan_check(plan, setting);
    const GArray *inputs = check->setting->inputs;
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < inputs->len; i++) {
        const PlanInput *input = &g_array_index(inputs, PlanInput, i);
        g_autofree char *place = places_label(input->check->axes, input->place);
        g_autofree char *of = places_label(check->places, input->of);
        g_string_append_printf(words, "%s%s %s for %s", i ? "; " : "", input->check->name, place,
                               of);
    }
    ck_assert_str_eq(words->str, expected);
}

static gboolean is_moved_by(const Plan *plan, const char *check, const char *setting)
{
    return g_ptr_array_find(plan_check(plan, check)->moved_by, plan_check(plan, setting), NULL);
}

// `skirt` is read in the step before, `was` a finding, `other` a setting of its own.
START_TEST(what_is_read_for_a_setting)
{
    g_autoptr(Plan) plan = read_plan(
        "      play: {at: [cylinder, direction], decimals: 2}\n"
        "      spare: {at: height, decimals: 2}\n"
        "      was: {limits: any, settled by: decision}\n"
        "      other: {limits: 0..1, set: {move: screw}}\n"
        "      between = play - 1 mm: any\n"
        "      x = between[T] - between[A] + gasket - was - other: {limits: 0..1, set: {move: a}}\n"
        "      y = max(spare) - min(skirt): {limits: 0..1, set: {move: b}}\n"
        "      z = spare - spare[height - 1]: {limits: 0..1, set: {move: c}}\n"
        "      none = max(skirt) - gasket: {limits: 0..1, set: {move: d}}\n");
    expect_inputs(plan, "x", "play 1, T for 1; play 1, A for 1; play 2, T for 2; play 2, A for 2");
    expect_inputs(plan, "y", "spare top for ; spare mid for ; spare bottom for ");
    expect_inputs(plan, "z",
                  "spare top for mid; spare mid for mid; spare mid for bottom; "
                  "spare bottom for bottom");
    expect_inputs(plan, "other", "other  for ");
    expect_inputs(plan, "none", "");
    ck_assert(is_moved_by(plan, "play", "x") && !is_moved_by(plan, "x", "x"));
    ck_assert(is_moved_by(plan, "spare", "y") && is_moved_by(plan, "spare", "z"));
    ck_assert(is_moved_by(plan, "other", "other") && !is_moved_by(plan, "other", "x"));
    ck_assert(is_moved_by(plan, "none", "none") && !is_moved_by(plan, "skirt", "none"));
    ck_assert(!is_moved_by(plan, "was", "x") && !is_moved_by(plan, "between", "x"));
}
END_TEST

START_TEST(shims_are_the_positions_there_are)
{
    static const struct {
        const char *stock, *sizes;
    } rows[] = {{"[2.50, 2.40]", "2.400 mm 2.500 mm"},
                {"2.45", "2.450 mm"},
                {"2.40..2.50 in 0.05", "2.400 mm 2.450 mm 2.500 mm"},
                {"[2.90, 2.40..2.50 mm in 0.1 mm]", "2.400 mm 2.500 mm 2.900 mm"},
                {"[0.1 in, 2.40]", "2.400 mm 2.540 mm"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *sizes = stock_words(rows[i].stock);
        ck_assert_str_eq(sizes, rows[i].sizes);
    }
}
END_TEST

START_TEST(a_stock_that_cannot_be_is_told)
{
    static const struct {
        const char *keys, *told;
    } rows[] = {
        {"stock: [2.40, 2.4]", "t:13:67: %sthis size stands in `stock` twice; leave one out\n"},
        {"stock: [2.40, 2 bar]", "t:13:67: %s`stock` is a length here, not a pressure\n"},
        {"stock: 2.40..2.52 in 0.05",
         "t:13:60: %sits steps do not come to its end; write an end that they come to\n"},
        {"stock: 2.40..2.50 in 0", "t:13:74: %sthe step from one size to the next is above 0\n"},
        {"stock: at least 2 in 0.05",
         "t:13:60: %ssizes in a row have a least and a greatest, such as 2.40..2.80 in 0.05\n"},
        {"stock: 1..9 in 0.005", "t:13:60: %sthese are more than 1,000 sizes; write fewer\n"},
        {"range: 2..3, stock: 3.1",
         "t:13:73: %sthis size lies beyond `range`; leave it out, or widen the range\n"},
        {"stock: 2.4, step: 0.1", "t:13:60: %s`stock` says where it can stand, `step` how finely "
                                  "it moves; write one of them\n"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *check = g_strdup_printf(
            "      x: {limits: 1..2, set: {move: shim, unit: mm, %s}}\n", rows[i].keys);
        g_auto(GStrv) told = g_strsplit(rows[i].told, "%s", 2);
        g_autofree char *expected = g_strjoinv(CHECK_PREFIX, told);
        expect_checks(check, expected);
    }
}
END_TEST

START_TEST(stages_are_torques_angles_and_times)
{
    expect("    fasteners:\n      nuts: {bolts: cylinder, stages: 30 > skirt > until bore}\n",
           "t:13:44: step \"Check\", group \"nuts\": this stage asks for a torque, not a length; "
           "write 40 N·m\n"
           "t:13:52: step \"Check\", group \"nuts\": `until` needs a `ceiling`, the torque that it "
           "must not pass\n");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 0 > 20 > wait 0 min}\n",
           "t:13:35: step \"Check\", group \"nuts\": what a bolt is tightened to, turned by or "
           "left to "
           "wait is above 0\n"
           "t:13:49: step \"Check\", group \"nuts\": what a bolt is tightened to, turned by or "
           "left to "
           "wait is above 0\n");
    static const char *const commas[] = {"30 N·m, +60°", "snug, +90°", "20 > +60°, +60°",
                                         "10 N·m; 25 N·m", "wait 5 min, 20"};
    for (gsize i = 0; i < G_N_ELEMENTS(commas); i++) {
        g_autofree char *stages = g_strdup_printf(
            "    fasteners:\n      nuts: {bolts: 1..2, stages: \"%s\"}\n", commas[i]);
        g_autofree char *plan = plan_around(stages), *said = faults_of(plan);
        ck_assert_msg(strstr(said, "stages are parted by >, not by a comma"), "%s: %s", commas[i],
                      said);
    }
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: '20 > +60,5°'}\n",
           "t:13:44: step \"Check\", group \"nuts\": a decimal is written with a point, not a "
           "comma\n");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 'max(20, 25)'}\n", "");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: +90° > 20}\n",
           "t:13:35: step \"Check\", group \"nuts\": nothing is snug yet; write a snug stage or a "
           "torque "
           "before this angle\n");
    static const char *const loose[] = {"stages: slacken > +90°", "stages: 20 > slacken > +90°",
                                        "stages: wait 5 min > +90°", "stages: to slot > 20",
                                        "stages: slacken > 90° from snug"};
    for (gsize i = 0; i < G_N_ELEMENTS(loose); i++) {
        g_autofree char *text =
            g_strdup_printf("    fasteners:\n      nuts: {bolts: 1..2, %s}\n", loose[i]);
        g_autofree char *plan = plan_around(text), *faults = faults_of(plan);
        ck_assert_msg(strstr(faults, "nothing is snug yet"), "%s: %s", loose[i], faults);
    }
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 20 > slacken 1/4 turn > +90°}\n", "");
    expect("    fasteners:\n      nuts: {bolts: 1..2, length: 0, ceiling: -1, stages: 20}\n",
           "t:13:35: step \"Check\", group \"nuts\": length: write an amount above 0\n"
           "t:13:47: step \"Check\", group \"nuts\": ceiling: write an amount above 0\n");
    expect("    fasteners:\n      nuts: {bolts: 1..2, length: 30 bar, stages: 20 > +90 > wait 10 "
           "min}\n",
           "t:13:35: step \"Check\", group \"nuts\": `length` is a length here, not a pressure\n"
           "t:13:57: step \"Check\", group \"nuts\": this stage asks for an angle, not a pure "
           "number; write +60°, or +60 deg\n");
    expect(
        "    checks:\n      drag: {at: cylinder, unit: N·m}\n    fasteners:\n      nuts: {bolts: "
        "cylinder, stages: 20 + drag > +1/4 turn > slacken}\n      bolts: {bolts: 1..2, stages: "
        "20 + drag}\n",
        "t:16:36: step \"Check\", group \"bolts\": this varies over an axis that the bolts do "
        "not have; fold it\n");
}
END_TEST

START_TEST(dropped_labels_are_noticed)
{
    g_autoptr(Plan) plan = read_plan("      one: {at: cylinder 1}\n"
                                     "      x = skirt - one: any\n");
    ck_assert_uint_eq(faults_count(plan->notices), 1);
    ck_assert_str_eq(faults_at(plan->notices, 0)->message, CHECK_PREFIX
                     "the formula leaves out cylinder 2, which not all its values have");
}
END_TEST

// A check that ends a stage, and does not fall with the bolts, would keep the verdict of one that
// was replaced; where the plan takes them down again, it is over by then.
START_TEST(what_ends_a_stage_rests_on_its_bolts)
{
    static const struct {
        const char *with, *group;
        guint count;
    } rows[] = {{"", "", 1},
                {", rests on: [nuts]", "", 0},
                {", rests on: [others]", "", 1},
                {"", ", then off: yes", 0}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *lines = g_strdup_printf(
            "      span: {at: [cylinder, free/tight], unit: mm%s}\n"
            "      stretch = span[tight] - span[free]: 0.1..0.2\n"
            "    fasteners:\n      others: {bolts: 1..2, stages: 20}\n"
            "      nuts: {bolts: cylinder, ceiling: 60, stages: 20 > until stretch%s}\n",
            rows[i].with, rows[i].group);
        g_autoptr(Plan) plan = read_plan(lines);
        ck_assert_uint_eq(faults_count(plan->notices), rows[i].count);
        if (rows[i].count)
            ck_assert_str_eq(faults_at(plan->notices, 0)->message,
                             "step \"Check\", check \"span\": `until stretch` would stand when a "
                             "bolt is loosened or replaced; write `rests on: [nuts]` here");
    }
}
END_TEST

static const char mixed_said[] = "of what? write 40 lbf·ft or 40 N·m";

// A bare torque has the plan's unit, but not beside another one in the same stages.
START_TEST(a_bare_torque_beside_another_unit_is_asked_about)
{
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 20 lbf ft > 40 > check 40}\n",
           "t:13:47: step \"Check\", group \"nuts\": 40 of what? write 40 lbf·ft or 40 N·m\n"
           "t:13:58: step \"Check\", group \"nuts\": 40 of what? write 40 lbf·ft or 40 N·m\n");
    expect(
        "    fasteners:\n      nuts: {bolts: 1..2, stages: 30 lbf ft + 10 > 5 + 20 lbf ft + 10}\n",
        "t:13:47: step \"Check\", group \"nuts\": 10 of what? write 10 lbf·ft or 10 N·m\n"
        "t:13:52: step \"Check\", group \"nuts\": 5 of what? write 5 lbf·ft or 5 N·m\n");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 10 > 25 N·m > 40 Nm}\n", "");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 10 + 25 N·m > 40}\n", "");
    expect("    fasteners:\n      nuts: {bolts: 1..2, stages: 20 lbf ft > 40 lbf·ft > +90°}\n", "");
}
END_TEST

// What rules made since find wrong with a plan that was taken before is a notice, so that its
// builds stay open; other faults stay faults, and a new plan has them all.
START_TEST(a_plan_that_is_kept_stays_readable)
{
    static const struct {
        const char *group, *says;
    } rows[] = {{"stages: 20 > slacken > +90°", "nothing is snug yet"},
                {"stages: 20, length: 0", "length: write an amount above 0"},
                {"stages: 0", "is above 0"},
                {"stages: 20 lbf ft > 40", mixed_said},
                {"stages: 20, adapter: X1 at 200°", "is no angle of an adapter"}};
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_autofree char *lines =
            g_strdup_printf("    fasteners:\n      nuts: {bolts: 1..2, %s}\n", rows[i].group);
        g_autofree char *text = plan_around(lines), *strict = faults_of(text);
        g_autoptr(Faults) faults = faults_new();
        g_autoptr(Plan) kept = plan_read_kept(text, strlen(text), faults);
        ck_assert_msg(strstr(strict, rows[i].says) != NULL, "%s", strict);
        ck_assert_msg(kept && kept->excused == 1 && faults_count(faults) == 0, "%s", rows[i].group);
        ck_assert_str_eq(strstr(faults_at(kept->notices, 0)->message, rows[i].says) ? "" : "no",
                         "");
    }
    g_autofree char *other = plan_around("    fasteners:\n      nuts: {bolts: 1..2, stages: +}\n");
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) none = plan_read_kept(other, strlen(other), faults);
    ck_assert_ptr_null(none);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("bind");
    TCase *tcase = tcase_create("bind");
    tcase_add_test(tcase, names_kinds_and_order_of_steps);
    tcase_add_test(tcase, a_plan_that_is_kept_stays_readable);
    tcase_add_test(tcase, one_fault_is_told_once);
    tcase_add_test(tcase, constants_have_one_kind);
    tcase_add_test(tcase, circles_are_found);
    tcase_add_test(tcase, limits_fit_their_check);
    tcase_add_test(tcase, a_formula_gives_places_unit_and_kind);
    tcase_add_test(tcase, doubts_of_constants_keep_apart);
    tcase_add_test(tcase, settings_are_numbers);
    tcase_add_test(tcase, size_and_direction_are_known_apart);
    tcase_add_test(tcase, what_is_read_for_a_setting);
    tcase_add_test(tcase, shims_are_the_positions_there_are);
    tcase_add_test(tcase, a_stock_that_cannot_be_is_told);
    tcase_add_test(tcase, a_bare_torque_beside_another_unit_is_asked_about);
    tcase_add_test(tcase, stages_are_torques_angles_and_times);
    tcase_add_test(tcase, dropped_labels_are_noticed);
    tcase_add_test(tcase, what_ends_a_stage_rests_on_its_bolts);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
