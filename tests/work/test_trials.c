// The trials of a setting: the idler of the demo as it was worked at (trade.md section 10.4), and
// what was struck or put down on the way.
#include "idler.h"

#include <standbook/work/advice.h>

static Trials *trials_now(void)
{
    Agenda agenda = agenda_now();
    gboolean chained = plan_check(demo->plan, "chain slack") != NULL;
    const PlanCheck *check = plan_check(demo->plan, chained ? "chain slack" : "idler backlash");
    return trials_new(demo->plan, check->step, check, 0, agenda.assessment, agenda.entries,
                      agenda.count);
}

// `1 0.50 loose 0.31 tight 0.35 - - -|…`: one trial's figures as they stand.
static char *trial_words(const Trials *trials, const Trial *trial)
{
    g_autofree char *position = trial_position_words(trials->check, trial->position);
    g_autofree char *loose =
        trial->loose ? check_value_words(trials->check, trial->loose_value) : g_strdup("-");
    GString *words = g_string_new(NULL);
    g_string_append_printf(words, "%u %s loose %s tight", trial->number, position, loose);
    for (guint i = 0; i < trials->places; i++) {
        const TrialPlace *place = &trial->places[i];
        g_autofree char *value =
            place->made ? check_value_words(trials->check, place->made->value) : g_strdup("-");
        g_string_append_printf(words, " %s", value);
    }
    g_autofree char *outcome = trial_outcome(trials, trial);
    g_string_append_printf(words, " %s", outcome);
    return g_string_free(words, FALSE);
}

static void expect_trial(guint number, const char *expected)
{
    g_autoptr(Trials) trials = trials_now();
    trials_judge(trials);
    ck_assert_uint_le(number, trials->all->len);
    g_autofree char *words = trial_words(trials, trials->all->pdata[number - 1]);
    ck_assert_str_eq(words, expected);
}

static void expect_asked(const char *expected)
{
    static const char *const asks[] = {"done", "move", "loose", "tighten", "tight"};
    g_autoptr(Trials) trials = trials_now();
    TrialNext next = trials_next(trials, FALSE);
    g_autofree char *words =
        next.ask == TRIAL_LOOSE || next.ask == TRIAL_TIGHT
            ? g_strdup_printf("%s %s", asks[next.ask], trials->inputs[next.input]->place)
        : next.tightening ? g_strdup_printf("%s %s", asks[next.ask], next.tightening->group->name)
                          : g_strdup(asks[next.ask]);
    ck_assert_str_eq(words, expected);
}

static void begin(void)
{
    take("2025-03-10 09:00 MO pick up Idler backlash");
}

static void first_try(void)
{
    take_all("09:02 move idler backlash to 0.50 turn\n"
             "09:04 read idler backlash[1] 0.31 loose with G04");
    take_all(hold);
    take("09:10 read idler backlash[1] 0.35 with G04");
}

static void third_try(void)
{
    take_all(loosen);
    take_all("09:34 move idler backlash to 0.08 turn\n"
             "09:36 read idler backlash[1] 0.07 loose with G04");
    take_all(hold);
}

// `0.50 0.31 at 1`, `tight 0.11 at 3`, `--1.3 turn--`, `=`: a line of a try.
static char *line_words(const Trials *trials, const TrialLine *line)
{
    if (line->kind != TRIAL_BEFORE) {
        g_autofree char *typed = line->struck ? trial_struck_typed(line->struck) : NULL;
        return typed ? g_strdup_printf("--%s--", typed) : g_strdup("=");
    }
    GString *words = g_string_new(line->tight ? "tight" : NULL);
    for (guint i = 0; line->tight && i < trials->places; i++) {
        g_autofree char *value = trial_value_words(trials, line->tight[i]);
        if (line->tight[i])
            g_string_append_printf(words, " %s at %s", value, trials->made[i]->place);
    }
    if (line->tight)
        return g_string_free(words, FALSE);
    g_autofree char *position = trial_position_words(trials->check, line->position);
    g_autofree char *loose = trial_value_words(trials, line->loose);
    g_string_append_printf(words, "%s %s%s%s", position, line->loose ? loose : "-",
                           line->loose ? " at " : "",
                           line->loose ? trials->made[line->loose->place]->place : "");
    return g_string_free(words, FALSE);
}

// `0.50 0.31 at 1|=`: the lines of a try, `=` being how it stands.
static void expect_lines(guint number, const char *expected)
{
    g_autoptr(Trials) trials = trials_now();
    trials_judge(trials);
    g_autoptr(GArray) lines = trial_lines(trials, trials->all->pdata[number - 1]);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++) {
        g_autofree char *line = line_words(trials, &g_array_index(lines, TrialLine, i));
        g_string_append_printf(words, "%s%s", i ? "|" : "", line);
    }
    ck_assert_str_eq(words->str, expected);
}

START_TEST(what_is_asked_from_the_first_move_to_the_last_place)
{
    begin();
    expect_asked("move");
    take("09:02 move idler backlash to 0.50 turn");
    expect_asked("loose 1");
    take("09:04 read idler backlash[1] 0.31 loose with G04");
    expect_asked("tighten idler carrier");
    take_all(
        "tighten idler carrier stage 1 all with W4\ntighten idler carrier stage 2 all with W4");
    expect_asked("tighten jackscrew locknut");
    take("tighten jackscrew locknut all with W1");
    expect_asked("tight 1");
    take("09:10 read idler backlash[1] 0.35 with G04");
    expect_asked("move"); // outside at the first place: the others tell nothing
    third_try();
    expect_asked("tight 1");
    take("09:40 read idler backlash[1] 0.11 with G04");
    expect_asked("tight 2");
}
END_TEST

START_TEST(a_try_that_fails_late_is_read_to_its_end)
{
    begin();
    third_try();
    take_all("09:40 read idler backlash[1] 0.11 with G04\nread idler backlash[2] 0.13 with G04\n"
             "read idler backlash[3] 0.07 with G04");
    expect_asked("tight 4");
    take("read idler backlash[4] 0.10 with G04");
    expect_asked("move");
    expect_trial(1, "1 0.08 loose 0.07 tight 0.11 0.13 0.07 0.10 ▼ FAIL at 3: 0.07, 0.01 under");
}
END_TEST

// Four tries whose clamps were tightened with a wrench that was overdue, then found wrong.
START_TEST(the_idler_of_the_demo)
{
    LineTaker *built = demo_build(demo, "TL-0412");
    demo_feed(demo, built, "demo-data/tl-0412.log");
    build = built;
    expect_trial(
        1, "1 0.50 loose 0.31 tight 0.35 - - - ▲ FAIL at 1: 0.35, 0.17 over; ? in doubt, basis");
    expect_trial(
        2, "2 0.00 loose 0.02 tight 0.06 - - - ▼ FAIL at 1: 0.06, 0.02 under; ? in doubt, basis");
    expect_trial(3, "3 0.08 loose 0.07 tight 0.11 0.13 0.07 0.10 ▼ FAIL at 3: 0.07, 0.01 under; ? "
                    "in doubt, basis");
    expect_trial(4, "4 0.13 loose 0.09 tight 0.14 0.16 0.10 0.12 ? in doubt, basis: 0.10 to 0.16");
    expect_trial(5, "5 0.13 loose 0.09 tight 0.15 0.17 0.11 0.13 √ pass: 0.11 to 0.17");
    expect_asked("done");
    g_autoptr(Trials) trials = trials_now();
    ck_assert_uint_eq(trials->all->len, 5);
    const Trial *second = trials->all->pdata[1];
    ck_assert_uint_eq(second->notes->len, 1);
    ck_assert_str_eq(second->notes->pdata[0], "by feel, prediction 0.06 ignored");
    ck_assert_uint_eq(trials_minutes(trials),
                      81); // 09:02 to 10:05, and 15:02 to 15:20 the day after
}
END_TEST

START_TEST(a_tool_found_wrong_later_voids_the_trial_it_held)
{
    begin();
    third_try();
    take("09:41 read idler backlash 0.14 0.16 0.10 0.12 with G04");
    expect_trial(1, "1 0.08 loose 0.07 tight 0.14 0.16 0.10 0.12 √ pass: 0.10 to 0.16");
    expect_asked("done");
    take_all(loosen);
    expect_asked("move");
    take("10:00 move idler backlash to 0.09 turn");
    expect_trial(1, "1 0.08 loose 0.07 tight 0.14 0.16 0.10 0.12 √ pass: 0.10 to 0.16");
    char *refusal = demo_try(demo, demo->desk,
                             "2025-03-11 09:40 EV calibration G04 2025-03-11 wrong \"reads low\"");
    ck_assert_msg(!refusal, "%s", refusal);
    expect_trial(1, "1 0.08 loose 0.07 tight 0.14 0.16 0.10 0.12 ? in doubt, tool: 0.10 to 0.16");
}
END_TEST

START_TEST(a_struck_move_joins_its_readings_to_the_trial_before)
{
    begin();
    first_try();
    third_try();
    gint64 moved = last(4)->seq;
    take("09:41 read idler backlash 0.11 0.13 0.09 0.10 with G04");
    expect_trial(2, "2 0.08 loose 0.07 tight 0.11 0.13 0.09 0.10 √ pass: 0.09 to 0.13");
    g_autofree char *strike = g_strdup_printf("strike #%" G_GINT64_FORMAT " \"typo\"", moved);
    take(strike);
    expect_trial(1, "1 0.50 loose 0.07 tight 0.11 0.13 0.09 0.10 ? in doubt, basis: 0.09 to 0.13");
    expect_asked("move");
    g_autoptr(Trials) trials = trials_now();
    ck_assert_uint_eq(trials->all->len, 1);
    expect_lines(1, "0.50 0.31 at 1|tight 0.35 at 1|--0.08 turn--|=");
    ck_assert_int_eq(trials_mistyped(trials), moved);
    g_autofree char *again =
        g_strdup_printf("move idler backlash to 0.18 turn after #%" G_GINT64_FORMAT, moved);
    take(again); // where the struck one stood: the readings are its own
    expect_trial(2, "2 0.18 loose 0.07 tight 0.11 0.13 0.09 0.10 √ pass: 0.09 to 0.13");
    expect_asked("done");
}
END_TEST

START_TEST(a_struck_reading_is_asked_again)
{
    begin();
    third_try();
    take("09:41 read idler backlash[1] 0.11 with G04");
    take("read idler backlash[2] 1.3 with G04");
    take("strike last \"misread\"");
    expect_asked("tight 2");
    g_autoptr(Trials) trials = trials_now();
    const Trial *trial = trials_last(trials);
    ck_assert_uint_eq(trial->read, 1);
    expect_lines(1, "=|--1.3 mm--");
}
END_TEST

START_TEST(where_a_try_stood_before_is_kept)
{
    begin();
    take("09:01 read idler backlash[2] 0.60 loose with G04"); // as it was found
    take_all("09:02 move idler backlash to 0.50 turn\n"
             "09:04 read idler backlash[1] 0.31 loose with G04\n"
             "read idler backlash[3] 0.29 loose with G04\n"
             "09:06 move idler backlash to 0.20 turn\n"
             "09:07 move idler backlash to 0.90 turn");
    take("strike last typo");
    take_all("move idler backlash to 0.09 turn\n"
             "09:08 read idler backlash[1] 0.07 loose with G04");
    expect_lines(1, " 0.60 at 2|0.50 0.31 at 1|0.50 0.29 at 3|0.20 -|--0.90 turn--|=");
    expect_trial(1, "1 0.09 loose 0.07 tight - - - - 0 of 4 read");
    take_all(hold);
    take("09:10 read idler backlash[1] 0.11 with G04");
    expect_lines(1, " 0.60 at 2|0.50 0.31 at 1|0.50 0.29 at 3|0.20 -|--0.90 turn--|=");
    third_try();
    expect_lines(2, "="); // that is a try of its own
}
END_TEST

START_TEST(which_place_of_a_step_leads_to_its_setting)
{
    static const struct {
        const char *place;
        gboolean leads;
    } rows[] = {{"read idler backlash[3]", TRUE},
                {"bolt idler carrier in Idler backlash[2], stage 1", TRUE},
                {"bolt cam gear bolt in Timing gears[1], stage 1", FALSE},
                {"sign Idler backlash, 1", TRUE}};
    begin();
    Agenda agenda = agenda_now();
    const PlanStep *step = step_of("Idler backlash");
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        const Requirement *made = requirement_at(&agenda, find_place(&agenda, rows[i].place));
        SettingDue due =
            trials_setting(demo->plan, step, made, agenda.assessment, agenda.entries, agenda.count);
        ck_assert_msg((due.check != NULL) == rows[i].leads, "%s", rows[i].place);
    }
    third_try();
    take("09:41 read idler backlash 0.14 0.16 0.10 0.12 with G04");
    agenda = agenda_now();
    SettingDue due =
        trials_setting(demo->plan, step, NULL, agenda.assessment, agenda.entries, agenda.count);
    ck_assert_ptr_null(due.check);
}
END_TEST

// From here on the build is one of the plan with a setting that is worked out.
static void begin_chain(void)
{
    Plan *before = demo->plan;
    demo->plan = demo_read_plan("tests/scenarios/chain.yaml");
    build = demo_build(demo, "TL-0405");
    plan_free(before);
    take("2025-03-10 09:00 MO pick up Chain");
}

static void chain_moved(const char *to, const char *back, const char *forth)
{
    g_autofree char *move = g_strdup_printf("move chain slack to %s turn", to);
    g_autofree char *one = g_strdup_printf("read chain play[1, back] %s loose", back);
    g_autofree char *other = g_strdup_printf("read chain play[1, forth] %s loose", forth);
    take(move);
    expect_asked("loose 1, back");
    take(one);
    expect_asked("loose 1, forth");
    take(other);
    expect_asked("tighten tensioner bolts");
    take("tighten tensioner bolts all with W1");
    expect_asked("tight 1, back");
}

START_TEST(what_a_formula_uses_is_asked_place_by_place)
{
    begin_chain();
    expect_asked("move");
    chain_moved("1", "10.0", "18.0");
    take("read chain play[1, back] 10.0");
    expect_asked("tight 1, forth");
    expect_trial(1, "1 1.00 loose 8.0 tight - - - 0 of 3 read");
    take("read chain play[1, forth] 17.0");
    expect_trial(1, "1 1.00 loose 8.0 tight 7.0 - - ▲ FAIL at 1: 7.0, 1.0 over");
    expect_asked("move");
    take("slacken tensioner bolts all");
    chain_moved("1.5", "10.0", "15.0");
    take("read chain play 10.0 14.5 10.0 15.0 10.0 14.0");
    expect_trial(1, "1 1.00 loose 8.0 tight 7.0 - - ▲ FAIL at 1: 7.0, 1.0 over");
    expect_trial(2, "2 1.50 loose 5.0 tight 4.5 5.0 4.0 √ pass: 4.0 to 5.0");
    expect_asked("done");
    take("read chain play[2, forth] 15.4"); // one place alone, of the same trial
    take("strike last typo");
    take("note on chain play \"links 2 to 5 are stiff\"");
    g_autoptr(Trials) trials = trials_now();
    const Trial *second = trials_last(trials);
    ck_assert_uint_eq(second->notes->len, 1);
    ck_assert_uint_eq(second->read, 3);
    g_autoptr(GArray) lines = trial_lines(trials, second);
    const TrialLine *struck = &g_array_index(lines, TrialLine, lines->len - 1);
    ck_assert_int_eq(struck->kind, TRIAL_STRUCK);
    ck_assert_str_eq(trials->inputs[struck->struck->input]->place, "2, forth");
}
END_TEST

START_TEST(what_was_read_again_is_kept)
{
    begin();
    third_try();
    take("09:41 read idler backlash 0.11 0.13 0.10 0.10 with G04");
    expect_lines(1, "=");
    take("09:42 read idler backlash 0.12 0.13 0.10 0.11 with G04");
    take("09:43 read idler backlash[3] 0.11 with G04");
    expect_lines(1, "tight 0.11 at 1 0.13 at 2 0.10 at 3 0.10 at 4|tight 0.10 at 3|=");
    expect_trial(1, "1 0.08 loose 0.07 tight 0.12 0.13 0.11 0.11 √ pass: 0.11 to 0.13");
    take("09:44 read idler backlash[3] <0.10 with G04");
    take("09:44 read idler backlash[3] 0.11 with G04");
    expect_lines(1, "tight 0.11 at 1 0.13 at 2 0.10 at 3 0.10 at 4|tight 0.10 at 3|tight 0.11 at 3"
                    "|tight <0.10 at 3|=");
}
END_TEST

START_TEST(where_a_formula_stood_before_is_kept)
{
    begin_chain();
    take_all("move chain slack to 1 turn\nread chain play[1, back] 10.0 loose\n"
             "read chain play[1, forth] 18.0 loose\nread chain play[1, forth] 17.0 loose\n"
             "move chain slack to 1.25 turn\nread chain play[1, back] 10.0 loose\n"
             "move chain slack to 1.5 turn");
    expect_lines(1, "1.00 8.0 at 1|1.00 7.0 at 1|1.25 -|=");
}
END_TEST

START_TEST(a_struck_move_joins_what_was_read_for_a_formula)
{
    begin_chain();
    chain_moved("1", "10.0", "18.0");
    take("read chain play[1, back] 10.0");
    take("read chain play[1, forth] 17.0");
    take("slacken tensioner bolts all");
    chain_moved("1.5", "10.0", "15.0");
    gint64 moved = last(3)->seq;
    take("read chain play 10.0 14.5 10.0 15.0 10.0 14.0");
    g_autofree char *strike = g_strdup_printf("strike #%" G_GINT64_FORMAT " \"typo\"", moved);
    take(strike);
    expect_trial(1, "1 1.00 loose 5.0 tight 4.5 5.0 4.0 ? in doubt, basis: 4.0 to 5.0");
    expect_asked("move");
    g_autofree char *again =
        g_strdup_printf("move chain slack to 1.25 turn after #%" G_GINT64_FORMAT, moved);
    take(again);
    expect_trial(2, "2 1.25 loose 5.0 tight 4.5 5.0 4.0 √ pass: 4.0 to 5.0");
    expect_asked("done");
}
END_TEST

START_TEST(what_is_read_for_a_formula_leads_to_its_setting)
{
    begin_chain();
    Agenda agenda = agenda_now();
    const Requirement *made =
        requirement_at(&agenda, find_place(&agenda, "read chain play[2, back]"));
    SettingDue due = trials_setting(demo->plan, step_of("Chain"), made, agenda.assessment,
                                    agenda.entries, agenda.count);
    ck_assert_ptr_eq(due.check, plan_check(demo->plan, "chain slack"));
}
END_TEST

static void expect_advice(const char *expected)
{
    g_autoptr(Trials) trials = trials_now();
    trials_judge(trials);
    g_auto(Advice) advice = advice_of(trials, NULL, NULL);
    g_ptr_array_add(advice.sentences, NULL);
    g_autofree char *words = g_strjoinv("\n", (char **)advice.sentences->pdata);
    ck_assert_str_eq(words, expected);
    ck_assert_ptr_null(advice.figure);
}

START_TEST(what_arithmetic_says)
{
    begin();
    expect_advice("First type where the jackscrew stands, not a reading: 1.50 for 1.50 turn from "
                  "mesh just solid.\n"
                  "By the plan 1 turn of the jackscrew gives 0.546 mm.\n"
                  "The jackscrew goes from 0.00 to 3.00, counted from mesh just solid.\n"
                  "The aim is 0.10 at the smallest.");
    first_try();
    expect_advice("Try 1 ▲ FAIL at 1: 0.35, 0.17 over.\nTightening has added 0.04.");
    third_try();
    take("09:41 read idler backlash 0.11 0.13 0.07 0.10 with G04");
    expect_advice("Try 2 ▼ FAIL at 3: 0.07, 0.01 under.\nTightening has added 0.04 each time.\n"
                  "From 0.50 to 0.08 turn it fell by 0.24 at 1, tight.\n"
                  "Over 4 places it spreads 0.06.");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        what_is_asked_from_the_first_move_to_the_last_place,
        a_try_that_fails_late_is_read_to_its_end,
        the_idler_of_the_demo,
        a_tool_found_wrong_later_voids_the_trial_it_held,
        a_struck_move_joins_its_readings_to_the_trial_before,
        a_struck_reading_is_asked_again,
        where_a_try_stood_before_is_kept,
        what_was_read_again_is_kept,
        which_place_of_a_step_leads_to_its_setting,
        what_a_formula_uses_is_asked_place_by_place,
        where_a_formula_stood_before_is_kept,
        a_struck_move_joins_what_was_read_for_a_formula,
        what_is_read_for_a_formula_leads_to_its_setting,
        what_arithmetic_says,
    };
    return run_on_build("trials", tests, G_N_ELEMENTS(tests), 0);
}
