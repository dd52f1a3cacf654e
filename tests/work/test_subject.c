// What a step closes and what a gate still lacks, subject by subject, on the demo's plan.
#include "agenda.h"

#include <standbook/work/gate.h>
#include <standbook/work/subject.h>
#include <standbook/work/tool_doubt.h>

static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

static Telling telling_of(const Agenda *agenda, const Taken *taken)
{
    Moment now;
    ck_assert(moment_parse("2025-03-20 10:00", &now, NULL));
    return (Telling){agenda, taken, now};
}

// `left in doubt main caps: 6 at 100 N·m, W2: W2 is wrong`, one a line, those of that many.
static void expect_subjects(GArray *subjects, guint most, const char *expected)
{
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < subjects->len && i < most; i++) {
        const Subject *subject = &g_array_index(subjects, Subject, i);
        g_string_append_printf(words, "%s%s %s%s%s%s%s\n", subject->left ? "left " : "",
                               verdict_words(subject->verdict), subject->name,
                               subject->said ? ": " : "", subject->said ? subject->said : "",
                               subject->note ? "; " : "", subject->note ? subject->note : "");
    }
    ck_assert_str_eq(words->str, expected);
    g_array_unref(subjects);
}

static const char caps[] =
    "2025-03-04 08:00 MO pick up Main clearances\ntighten main caps stage 1 all with W4\n"
    "tighten main caps stage 2 all with W3\ntighten main caps stage 3 all with W3\n"
    "slacken main caps all \"mock-up\"\npick up Crank\ntighten main caps stage 1 all with W4\n"
    "tighten main caps stage 2 all with W3\ntighten main caps[3] stage 3 with W3\n"
    "tighten main caps[4] stage 3 with W3\ntighten main caps[1] stage 3 with W3";

START_TEST(what_a_step_closes_stands_unsettled_first)
{
    take_all(caps);
    take_all("JT pick up Sump\nread pan depth 142 with G07\nread pick-up depth 136 with G07");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    expect_subjects(subjects_closed(&telling, step_of("Sump")), 4,
                    "left in doubt pick-up clearance\nleft open rod bolt paint seen\n"
                    "left open rod bolts: 0 of 8, until bolt stretch\n"
                    "left open main caps: 3 of 6 at 100 N·m, W3\n");
}
END_TEST

START_TEST(what_is_settled_is_one_line_over_its_places)
{
    take_all("2025-03-05 08:00 MO pick up Rings\n"
             "read top ring gap 0.36 0.36 0.36 0.95 with G08\n"
             "read second ring gap 0.30 0.30 0.30 0.30 with G08");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    expect_subjects(subjects_closed(&telling, step_of("Rings")), 9,
                    "left fail top ring gap 4\nleft open ring sets 1 2 3 4\n"
                    "pass top ring gap 1 2 3\npass second ring gap 1 2 3 4\n");
    take_all("concede top ring gap[4] \"agreed\"");
    agenda = agenda_now();
    g_autoptr(Taken) after = taken_new(agenda.entries, agenda.count, NULL);
    telling = telling_of(&agenda, after);
    expect_subjects(subjects_closed(&telling, step_of("Rings")), 9,
                    "left open ring sets 1 2 3 4\npass top ring gap 1 2 3\n"
                    "conceded top ring gap 4; conceded 5 Mar, MO\n"
                    "pass second ring gap 1 2 3 4\n");
}
END_TEST

START_TEST(what_was_conceded_is_named_place_by_place)
{
    take_all("2025-02-25 08:00 MO pick up Check returned work\n"
             "read main journal[1] 59.760 59.760 59.742 59.742 with G01\n"
             "concede main journal[1, front] \"agreed\"");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    g_autoptr(GArray) subjects = subjects_closed(&telling, step_of("Check returned work"));
    for (guint i = 0; i < subjects->len; i++)
        if (g_array_index(subjects, Subject, i).verdict == VERDICT_CONCEDED) {
            ck_assert_str_eq(g_array_index(subjects, Subject, i).name,
                             "main journal 1, front, v; 1, front, h");
            return;
        }
    ck_abort_msg("nothing is conceded");
}
END_TEST

// The demo's build, without the line that begins so and all behind it.
static void feed_upto(const char *upto)
{
    g_autofree char *text = NULL;
    ck_assert(g_file_get_contents("demo-data/tl-0412.log", &text, NULL, NULL));
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    build = demo_build(demo, "TL-0412");
    for (guint i = 0; lines[i] && !g_str_has_prefix(lines[i], upto); i++)
        take(lines[i]);
}

START_TEST(a_tool_late_for_its_calibration_is_named_and_told)
{
    feed_upto("09:45 note \"W2 used here");
    take("2026-11-02 09:00 MO tighten main caps in Crank[3] stage 3 with W3");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    guint cap = find_place(&agenda, "bolt main caps in Crank[3], stage 3");
    g_autofree char *words = late_tool_words(&agenda, taken, cap, telling.now);
    ck_assert_str_eq(words,
                     "W3 was due 15 Oct: what it was used for since is in doubt.\n"
                     "Found good it stands, in standbook log --shop: INITIALS calibration W3 "
                     "2025-03-20 good");
    guint other = find_place(&agenda, "bolt main caps in Crank[4], stage 3"); // W2 is wrong
    ck_assert_ptr_null(late_tool_words(&agenda, taken, other, telling.now));
}
END_TEST

START_TEST(a_tool_found_wrong_is_named_and_told)
{
    feed_upto("09:45 note \"W2 used here");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    guint cap = find_place(&agenda, "bolt main caps in Crank[3], stage 3");
    const Entry *news = wrong_tool(&agenda, cap);
    ck_assert_ptr_nonnull(news);
    ck_assert_str_eq(wrong_tool_label(taken, news), "W2");
    g_autofree char *words = wrong_tool_words(taken, news, telling.now);
    ck_assert_str_eq(words, "W2 set 100 gives 91, set 45 gives 41, set 90 gives 82, about -9 %; "
                            "last good check 2024-01-30 (KF-118, 11 Mar).");
    // What was read with those caps tight is in doubt for the same reason.
    ck_assert_ptr_eq(wrong_tool(&agenda, find_place(&agenda, "read main clearance[2]")), news);
    ck_assert_ptr_null(wrong_tool(&agenda, find_place(&agenda, "read bore[1, T, top]")));
    expect_subjects(subjects_closed(&telling, step_of("Sump")), 3,
                    "left open pick-up clearance\nleft open rod bolt paint seen\n"
                    "left in doubt main caps: 6 at 100 N·m, W2; W2 is wrong\n");
}
END_TEST

// What is told of the tool at that place, one thing a line.
static void expect_tool(const char *place, const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    g_autoptr(GArray) lines =
        tool_doubt(&agenda, taken, find_place(&agenda, place), telling_of(&agenda, taken).now);
    g_autoptr(GString) words = g_string_new(NULL);
    for (guint i = 0; i < lines->len; i++) {
        const ToolLine *line = &g_array_index(lines, ToolLine, i);
        g_string_append_printf(words, "%s: %s\n", line->head, line->said);
    }
    ck_assert_str_eq(words->str, expected);
}

START_TEST(a_doubt_for_a_tool_found_wrong_is_told_whole)
{
    feed_upto("09:45 note \"W2 used here");
    const char *told =
        "certificate: good 30 Jan 2024, due 31 Jan 2025, 38 days late when used\n"
        "found wrong: 11 Mar 2025 (KF-118): set 100 gives 91, set 45 gives 41, set 90 gives 82, "
        "about "
        "-9 %; last good check 2024-01-30\n"
        "got: about 41 N·m of 45\n"
        "in doubt: main caps, S17 (18); main caps, S18 (18); cam gear bolt, S25 (1); idler "
        "carrier, S26 (6)\n"
        "settles it: do it again with another; or uphold it (u): why it stands, and "
        "who else says so\n";
    g_autofree char *idler =
        g_strconcat("used: W2 click wrench, 10 Mar by MO: tighten idler carrier[1, 3, 2] stage 2 "
                    "in Idler backlash with W2\n",
                    told, NULL);
    expect_tool("bolt idler carrier in Idler backlash[1], stage 2", idler);
    expect_tool("read idler backlash[1]", idler); // it stands on those nuts
    expect_tool("read bore[1, T, top]", "");
    // Used again before it was put right: that it is wrong was known.
    take("2025-03-12 09:00 MO tighten cam gear bolt stage 1 all with W2");
    expect_tool("bolt cam gear bolt in Timing gears[1], stage 1",
                "used: W2 click wrench, 12 Mar by MO: tighten cam gear bolt[1] stage 1 in Timing "
                "gears with W2\n"
                "certificate: wrong 11 Mar 2025 (KF-118)\n"
                "found wrong: 11 Mar 2025 (KF-118): set 100 gives 91, set 45 gives 41, set 90 "
                "gives 82, about -9 %; last good check 2024-01-30\n"
                "got: about 82 N·m of 90\n"
                "in doubt: main caps, S17 (18); main caps, S18 (18); cam gear bolt, S25 (1); idler "
                "carrier, S26 (6)\n"
                "settles it: do it again with another; or uphold it (u): why it stands, and "
                "who else says so\n");
}
END_TEST

START_TEST(a_doubt_for_a_date_or_a_range_says_what_settles_it)
{
    feed_upto("09:45 note \"W2 used here");
    take_all("2026-11-02 09:00 MO tighten main caps in Crank[3] stage 3 with W3");
    expect_tool("bolt main caps in Crank[3], stage 3",
                "used: W3 click wrench, 2 Nov 2026 by MO: tighten main caps[3] stage 3 in Crank "
                "with W3\n"
                "certificate: good 15 Oct 2024, due 15 Oct 2025, 383 days late when used\n"
                "in doubt: main caps, S18 (1)\n"
                "settles it: a check of W3: found wrong all stays in doubt, found good it stands, "
                "in standbook log --shop: INITIALS calibration W3 2025-03-20 good\n");
    take_all("2025-03-11 10:00 MO read top ring gap[2] 3.6 with G08");
    expect_tool("read top ring gap[2]",
                "used: G08 feelers, 11 Mar by MO: read top ring gap[2] 3.6 mm with G08\n"
                "certificate: good 16 Oct 2024\nin doubt: top ring gap, S19 (1)\n"
                "settles it: G08 was used outside its range: do it again with "
                "one that holds it\n");
}
END_TEST

START_TEST(a_gate_tells_its_gaps_and_what_stands)
{
    feed_upto("14:20 tighten mount nuts all with W3");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    ck_assert_uint_eq(gate_next(&agenda), 0);
    ck_assert_str_eq(gate_step(&agenda, 0)->name, "Pre-start proof");
    expect_subjects(
        subjects_missing(&telling, 0), 99,
        "left open two turns by hand\nleft open fuel leaks\n"
        "left open extinguisher in place\nleft open mount nuts: 0 of 4 at 67 to 69 N·m\n"
        "left open Pre-start proof: not signed\n");
    // What was conceded, and what the last phase of the gate asks for.
    expect_subjects(subjects_standing(&telling, 0), 99,
                    "conceded piston clearance 4; conceded 26 Feb, EV\n"
                    "pass priming pressure\npass oil at far rocker\n"
                    "noted seconds to far rocker\npass run-down torque 1 2 3 4\n");
}
END_TEST

START_TEST(one_bolt_and_a_second_signature_are_told_by_name)
{
    feed_upto("14:20 tighten mount nuts all with W3");
    take_all("2025-03-19 14:20 MO tighten mount nuts[1] with W3\ntighten mount nuts[3] with W3\n"
             "tighten mount nuts[2] with W3");
    Agenda agenda = agenda_now();
    g_autoptr(Taken) taken = taken_new(agenda.entries, agenda.count, NULL);
    Telling telling = telling_of(&agenda, taken);
    expect_subjects(subjects_missing(&telling, 0), 99,
                    "left open two turns by hand\nleft open fuel leaks\n"
                    "left open extinguisher in place\n"
                    "left open mount nuts: bolt 4 not tight: 69 N·m\n"
                    "left open Pre-start proof: not signed\n");
    take_all("tighten mount nuts[4] with W3\nlook two turns by hand yes\nlook fuel leaks none\n"
             "look extinguisher in place yes\nsign Pre-start proof");
    agenda = agenda_now();
    g_autoptr(Taken) after = taken_new(agenda.entries, agenda.count, NULL);
    telling = telling_of(&agenda, after);
    expect_subjects(subjects_missing(&telling, 0), 99,
                    "left open Pre-start proof: second signature missing\n");
}
END_TEST

// How many a gate asks for in its last phase, parts apart, and how many of them are left.
static void count_last(const Agenda *agenda, guint *all, guint *left)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = agenda_made(agenda, i);
        gboolean counts =
            gate_asks(0, made) && made->asked != ASKED_FIT && gate_is_last(agenda, 0, made->step);
        *all += counts ? 1 : 0;
        *left += counts && requirement_is_left(made) ? 1 : 0;
    }
}

START_TEST(what_stands_before_a_gate_is_summed_up)
{
    feed_upto("14:20 tighten mount nuts all with W3");
    Agenda agenda = agenda_now();
    g_autoptr(GArray) sums = gate_sums(&agenda, 0);
    g_autoptr(GString) words = g_string_new(NULL);
    guint all = 0, left = 0;
    for (guint i = 0; i < sums->len; i++) {
        const GateSum *sum = &g_array_index(sums, GateSum, i);
        all += sum->all;
        left += sum->all - sum->settled;
        g_string_append_printf(words, "%s %s\n", sum->what, sum->said);
    }
    const GateCount *gate = agenda.assessment->gates->pdata[0];
    guint counted = 0;
    for (guint i = 0; i < VERDICTS; i++)
        counted += gate->counts[i];
    count_last(&agenda, &all, &left);
    ck_assert_uint_eq(all, counted); // none is left out
    ck_assert_uint_eq(left, gate->left);
    ck_assert_str_eq(words->str, "steps S01 to S36 36 signed, none left\n"
                                 "bolts 270 ticks, all at the last stage\n"
                                 "checks 416 places, none in doubt, none failed\n"
                                 "parts and lots 96 fitted\n");
}
END_TEST

static void expect_lots(const char *expected)
{
    Agenda agenda = agenda_now();
    g_autofree char *words = gate_lots(&agenda, demo->shop);
    ck_assert_pstr_eq(words, expected);
}

// Two tins of cam paste: CP-12 ran out a week before, CP-15 is good.
START_TEST(a_lot_past_its_date_is_told_once_another_was_used)
{
    feed_upto("09:14 lay cam paste");
    expect_lots(NULL);
    take("2025-03-07 09:14 JT lay cam paste on tappets lot CP-15");
    expect_lots("CP-12 past its date, not used");
    take("09:20 lay cam paste on tappets lot CP-12");
    expect_lots(NULL); // that it is in doubt is told elsewhere
    take("09:21 strike last wrong tool");
    expect_lots("CP-12 past its date, not used");
}
END_TEST

int main(void)
{
    const TTest *tests[] = {what_a_step_closes_stands_unsettled_first,
                            what_is_settled_is_one_line_over_its_places,
                            what_was_conceded_is_named_place_by_place,
                            a_tool_found_wrong_is_named_and_told,
                            a_tool_late_for_its_calibration_is_named_and_told,
                            a_doubt_for_a_tool_found_wrong_is_told_whole,
                            a_doubt_for_a_date_or_a_range_says_what_settles_it,
                            a_gate_tells_its_gaps_and_what_stands,
                            one_bolt_and_a_second_signature_are_told_by_name,
                            what_stands_before_a_gate_is_summed_up,
                            a_lot_past_its_date_is_told_once_another_was_used};
    return run_on_build("subject", tests, G_N_ELEMENTS(tests), 0);
}
