// A setting whose places have each an adjuster of their own: the trials, what is asked next and the
// advice are those of one place.
#include "agenda.h"

#include <standbook/work/advice.h>
#include <standbook/work/earlier.h>
#include <standbook/work/move_slip.h>
#include <standbook/work/summary.h>

static guint place_of(const PlanCheck *check, const char *label)
{
    for (guint i = 0; i < places_count(check->places); i++) {
        g_autofree char *each = places_label(check->places, i);
        if (strcmp(each, label) == 0)
            return i;
    }
    ck_abort_msg("there is no place %s", label);
    return 0;
}

static Trials *trials_at(const char *name, const char *label)
{
    Agenda agenda = agenda_now();
    const PlanCheck *check = plan_check(demo->plan, name);
    Trials *trials = trials_new(demo->plan, check->step, check, place_of(check, label),
                                agenda.assessment, agenda.entries, agenda.count);
    trials_judge(trials);
    return trials;
}

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

// From here on the build is one of a plan with a screw for each valve.
static void begin_with(const char *plan)
{
    Plan *before = demo->plan;
    demo->plan = demo_read_plan(plan);
    build = demo_build(demo, "TL-0405");
    plan_free(before);
    take("2025-03-10 09:00 MO pick up Lash");
}

static void begin(void)
{
    begin_with("tests/scenarios/screws.yaml");
}

// The first intake valve in two tries; the second passes.
static void set_first(void)
{
    take_all("move lash[1, in] to 0 turn\n"
             "read lash[1, in] 0.42 loose with G04\n"
             "tighten lock nuts[1, in] with W1\n"
             "read lash[1, in] 0.47 with G04\n"
             "slacken lock nuts[1, in]\n"
             "move lash[1, in] to -7/24 turn\n"
             "read lash[1, in] 0.13 loose with G04\n"
             "tighten lock nuts[1, in] with W1\n"
             "read lash[1, in] 0.18 with G04");
}

static void expect_asked(const char *label, const char *expected)
{
    static const char *const asks[] = {"done", "move", "loose", "tighten", "tight"};
    g_autoptr(Trials) trials = trials_at("lash", label);
    TrialNext next = trials_next(trials, FALSE);
    g_autofree char *words = g_strdup_printf("%s%s%s", asks[next.ask], next.tightening ? " " : "",
                                             next.tightening ? next.tightening->group->name
                                             : next.ask == TRIAL_LOOSE || next.ask == TRIAL_TIGHT
                                                 ? trials->inputs[next.input]->place
                                                 : "");
    ck_assert_str_eq(words, expected);
}

static void expect_tries(const char *label, guint count, Verdict verdict)
{
    g_autoptr(Trials) trials = trials_at("lash", label);
    ck_assert_uint_eq(trials->places, 1);
    ck_assert_uint_eq(trials->all->len, count);
    ck_assert_uint_eq(trials_last(trials)->verdict, verdict);
}

// Moves, readings, nuts and strikes elsewhere are no part of it.
// `--0.29 mm--`, `=`, `later 0.27` or `before`: the lines of a place's last try.
static char *last_lines(const char *label)
{
    static const char *const words[] = {
        [TRIAL_BEFORE] = "before", [TRIAL_STANDS] = "=", [TRIAL_LATER] = "later"};
    g_autoptr(Trials) trials = trials_at("lash", label);
    g_autoptr(GArray) lines = trial_lines(trials, trials_last(trials));
    GString *said = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++) {
        const TrialLine *line = &g_array_index(lines, TrialLine, i);
        g_autofree char *typed = line->struck ? trial_struck_typed(line->struck) : NULL;
        g_autofree char *value = line->tight ? trial_line_span(trials, line) : NULL;
        g_string_append_printf(said, "%s%s%s%s", i ? ", " : "", typed ? typed : words[line->kind],
                               value ? " " : "", value ? value : "");
    }
    return g_string_free(said, FALSE);
}

START_TEST(what_a_later_step_reads_stands_behind_the_try)
{
    begin_with("tests/plans/lash-again.yaml");
    set_first();
    take_all("read lash[1, ex] 0.35 with G04\n"
             "read lash[1, ex] 0.36 with G04\n"
             "pick up Cold again\n"
             "read lash[1, in] 0.27 with G04\n"
             "read lash[1, ex] 0.28 with G04\n"
             "read lash[1, ex] 0.29 with G04\n"
             "strike last typo");
    g_autofree char *in = last_lines("1, in"), *ex = last_lines("1, ex");
    ck_assert_str_eq(in, "=, later 0.27");
    ck_assert_str_eq(ex, "before 0.35, =, later 0.28, 0.29 mm");
}
END_TEST

START_TEST(the_trials_are_those_of_one_place)
{
    begin();
    expect_asked("1, in", "move");
    set_first();
    expect_tries("1, in", 2, VERDICT_PASS);
    expect_asked("1, in", "done");
    expect_asked("1, ex", "move");
    take("move lash[1, ex] to 0 turn");
    expect_asked("1, ex", "loose1, ex");
    take("read lash[1, ex] 0.50 loose with G04");
    expect_asked("1, ex", "tighten lock nuts");
    take_all("tighten lock nuts[1, ex] with W1\nread lash[1, ex] 0.55 with G04\n"
             "slacken lock nuts[1, ex]\nmove lash[1, ex] to -5/24 turn");
    expect_tries("1, ex", 2, VERDICT_OPEN);
    expect_tries("1, in", 2, VERDICT_PASS);
    take("slacken lock nuts[1, in]");
    expect_tries("1, in", 2, VERDICT_PASS); // as it was read
    expect_asked("1, in", "move");
    take("strike last typo");
    expect_asked("1, in", "done");
}
END_TEST

static void expect_due(const char *made, const char *expected)
{
    Agenda agenda = agenda_now();
    const Requirement *at = made ? requirement_at(&agenda, find_place(&agenda, made)) : NULL;
    SettingDue due = trials_setting(demo->plan, step_of("Lash"), at, agenda.assessment,
                                    agenda.entries, agenda.count);
    g_autofree char *label =
        due.check ? places_label(due.check->places, due.place) : g_strdup("none");
    ck_assert_str_eq(label, expected);
}

START_TEST(a_place_leads_to_its_own_setting)
{
    begin();
    expect_due("read lash[1, in]", "1, in");
    expect_due("read lash[2, ex]", "2, ex");
    expect_due("bolt lock nuts in Lash[2, in], stage 1", "2, in");
    expect_due(NULL, "1, in");
    set_first();
    expect_due("read lash[1, in]", "none");
    expect_due("bolt lock nuts in Lash[1, in], stage 1", "none");
    expect_due("sign Lash, 1", "1, ex");
    take("not needed lash[1, ex] \"one exhaust valve only\"");
    expect_due(NULL, "2, in");
}
END_TEST

static NextMove next_at(const Trials *trials)
{
    g_autoptr(GArray) earlier = g_array_new(FALSE, FALSE, sizeof(SettingLearned));
    earlier_here(trials, earlier);
    return next_move_of(trials, earlier);
}

static void expect_said(const char *check, const char *label, const char *part)
{
    g_autoptr(Trials) trials = trials_at(check, label);
    g_auto(NextMove) next = next_at(trials);
    g_auto(Advice) advice = advice_of(trials, &next, NULL);
    g_ptr_array_add(advice.sentences, NULL);
    g_autofree char *words = g_strjoinv("\n", (char **)advice.sentences->pdata);
    ck_assert_msg(strstr(words, part) != NULL, "`%s` is not in:\n%s", part, words);
}

// Where the work on the step goes on, as the shop says it.
static void expect_goes_on(const char *expected)
{
    Agenda agenda = agenda_now();
    expect_place(&agenda, summary_standpoint(&agenda).place, expected);
}

START_TEST(a_place_that_is_half_done_comes_first)
{
    begin();
    take("move lash[1, ex] to 0 turn");
    expect_goes_on("read lash[1, ex]");
    take("read lash[1, ex] 0.50 loose with G04");
    take("tighten lock nuts[1, ex] with W1");
    expect_goes_on("read lash[1, ex]");
    take("read lash[1, ex] 0.55 with G04"); // outside: it is moved again
    expect_goes_on("read lash[1, ex]");
    take("slacken lock nuts[1, ex]");
    take("move lash[1, ex] to -5/24 turn");
    take("read lash[1, ex] 0.32 loose with G04");
    expect_goes_on("read lash[1, ex]");
    take("tighten lock nuts[1, ex] with W1");
    expect_goes_on("read lash[1, ex]");
    take("read lash[1, ex] 0.35 with G04");
    expect_goes_on("read lash[2, in]");
    take("move lash[2, in] to 0 turn");
    take("strike last typo");
    expect_goes_on("read lash[2, in]");
}
END_TEST

// Each is advised by its own limits, and begins with what the screws before it have shown.
START_TEST(the_advice_is_for_one_place)
{
    begin();
    set_first();
    expect_said("lash", "1, in", "Leave it: ");
    // what was only read has not answered, and teaches nothing
    take("move lash[2, in] to 0 turn");
    take("read lash[2, in] 0.30 loose with G04");
    take("tighten lock nuts[2, in] with W1");
    take("read lash[2, in] 0.34 with G04");
    take("move lash[1, ex] to 0 turn");
    take("read lash[1, ex] 0.46 loose with G04");
    expect_said("lash", "1, ex", "Tighten when loose reads 0.26 to 0.30.");
    expect_said("lash", "1, ex", "It begins with 1 place set before, here or in earlier builds");
    g_autoptr(Trials) trials = trials_at("lash", "1, ex");
    g_auto(NextMove) with = next_at(trials), without = next_move_of(trials, NULL);
    ck_assert(with.earlier == 1 && without.earlier == 0);
    ck_assert(with.learned.ln_slope_sd < without.learned.ln_slope_sd);
    ck_assert(with.learned.shift_sd < without.learned.shift_sd);
    ck_assert(next_move_moves(&with) && with.advice.move < 0);
}
END_TEST

// One adjuster for places that want different things is not advised, and that is said.
START_TEST(what_one_adjuster_cannot_serve_is_said)
{
    begin();
    take("pick up Gaps");
    take("move wedge gap to 0 turn");
    expect_said("wedge gap", "in",
                "No move is advised: one wedge moves all places, and their limits differ.");
    take("move peg gap[ex] to 0 turn");
    expect_said("peg gap", "in",
                "No move is advised: a move names a place, and the plan has one peg for all; it "
                "says `each: yes` where each place has its own.");
}
END_TEST

static void expect_move_slip(const char *check, const char *typed, const char *expected)
{
    g_autoptr(Trials) trials = trials_at(check, "in");
    g_auto(NextMove) next = next_move_of(trials, NULL);
    g_autofree char *slip = move_slip(trials, &next, typed, FALSE);
    ck_assert_pstr_eq(slip, expected);
}

// 1 mm a turn, limits 0.10 mm apart, and no range.
START_TEST(a_move_too_far_for_the_limits_is_asked_about)
{
    begin();
    take("pick up Gaps");
    expect_move_slip("peg gap", "12", NULL); // from where is not known
    take("move peg gap to 1 turn");
    expect_move_slip("peg gap", "3", NULL); // 20 widths
    expect_move_slip("peg gap", "3.1",
                     "Far for its limits, 21 times their width? Enter again keeps 3.10 turn");
    expect_move_slip("peg gap", "-12",
                     "Far for its limits, 130 times their width? Enter again keeps -12.00 turn");
}
END_TEST

START_TEST(a_move_must_say_which)
{
    begin();
    char *refusal = demo_try(demo, build, "move lash to 1 turn");
    ck_assert_str_eq(refusal, "column 11: each place of `lash` has a screw of its own; say which "
                              "was moved, such as `lash[1, in]`");
    g_free(refusal);
    take("move lash[1] to 1 turn");
    expect_asked("1, in", "loose1, in");
    expect_asked("1, ex", "loose1, ex");
    expect_asked("2, ex", "move");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {
        the_trials_are_those_of_one_place,
        a_place_leads_to_its_own_setting,
        a_place_that_is_half_done_comes_first,
        the_advice_is_for_one_place,
        what_one_adjuster_cannot_serve_is_said,
        a_move_too_far_for_the_limits_is_asked_about,
        a_move_must_say_which,
        what_a_later_step_reads_stands_behind_the_try,
    };
    return run_on_build("setting each", tests, G_N_ELEMENTS(tests), 0);
}
