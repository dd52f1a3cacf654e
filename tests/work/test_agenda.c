// What is next in a step and over a build, on the demo's plan.
#include "../judge/story.h"
#include "agenda.h"

// Takes all lines of a text.
static void take_all(const char *lines)
{
    g_auto(GStrv) each = g_strsplit(lines, "\n", -1);
    for (guint i = 0; each[i]; i++)
        take(each[i]);
}

static void expect_beside(const char *step, const char *from, gint direction, const char *expected)
{
    Agenda agenda = agenda_now();
    guint start = from ? find_place(&agenda, from) : AGENDA_NOWHERE;
    expect_place(&agenda, agenda_beside(&agenda, step_of(step), start, direction), expected);
}

static void expect_held(const char *step, const char *by)
{
    Agenda agenda = agenda_now();
    const PlanStep *held = agenda_held_by(&agenda, step_of(step));
    ck_assert_str_eq(held ? held->name : "nothing", by);
}

static void expect_closed(const char *step, gint64 since, gboolean closed)
{
    Agenda agenda = agenda_now();
    ck_assert_msg(agenda_is_closed(&agenda, step_of(step), since) == closed, "%s", step);
}

static void expect_done(const char *step, gboolean done)
{
    Agenda agenda = agenda_now();
    ck_assert_msg(agenda_is_done(&agenda, step_of(step)) == done, "%s", step);
}

// IN A STEP -------------------------------------------------------------------------------------

START_TEST(the_next_place_follows_and_one_passed_over_comes_again)
{
    take_all("2025-01-02 08:00 MO pick up Receive");
    expect_next("Receive", NULL, "look serial number");
    expect_next("Receive", "look serial number", "look complaint");
    take_all("look complaint \"knock\"\nlook missing parts none");
    expect_next("Receive", "look missing parts", "look photographs all round");
    take_all("look photographs all round yes");
    expect_next("Receive", "look photographs all round", "look serial number");
    take_all("look serial number \"H23-4/01320\"");
    expect_next("Receive", "look serial number", "sign Receive, 1");
    take_all("sign Receive");
    expect_next("Receive", "sign Receive, 1", "sign Receive, 2");
    expect_done("Receive", FALSE);
    take_all("JT sign Receive");
    expect_next("Receive", "sign Receive, 2", NULL);
    expect_done("Receive", TRUE);
}
END_TEST

START_TEST(beside_a_place_stands_the_next_one_done_or_not_but_none_that_is_worked_out)
{
    take_all("2025-01-02 08:00 MO pick up Sump\nread pan depth 150.00 with G06");
    expect_beside("Sump", NULL, 1, "read pan depth");
    expect_beside("Sump", "read pan depth", 1, "read pick-up depth");
    expect_beside("Sump", "read pick-up depth", -1, "read pan depth");
    expect_beside("Sump", "read pan depth", -1, NULL);
    expect_beside("Sump", "read pick-up depth", 1, "look rod bolt paint seen");
    expect_beside("Sump", NULL, -1, "sign Sump, 1");
    expect_beside("Sump", "sign Sump, 1", 1, NULL);
}
END_TEST

START_TEST(bolts_come_in_the_order_asked_stage_by_stage)
{
    take_all("2025-01-02 08:00 MO pick up Main clearances");
    expect_next("Main clearances", NULL, "bolt main caps in Main clearances[3], stage 1");
    take_all("tighten main caps[3] stage 1 with W4");
    expect_next("Main clearances", "bolt main caps in Main clearances[3], stage 1",
                "bolt main caps in Main clearances[4], stage 1");
    take_all("tighten main caps stage 1 from 1 to 6 with W4");
    // Bolt 4 was passed over: no stage begins without it.
    expect_next("Main clearances", "bolt main caps in Main clearances[6], stage 1",
                "bolt main caps in Main clearances[4], stage 1");
    take_all("tighten main caps[4] stage 1 with W4");
    expect_next("Main clearances", "bolt main caps in Main clearances[4], stage 1",
                "bolt main caps in Main clearances[3], stage 2");
    take_all("tighten main caps stage 2 all with W3\nslacken main caps[1] \"slipped\"");
    expect_next("Main clearances", NULL, "bolt main caps in Main clearances[1], stage 1");
}
END_TEST

START_TEST(each_run_goes_through_its_stages_and_a_wait_stands_in_front_of_the_next)
{
    take_all("2025-01-02 08:00 MO pick up Big-end clearances\n"
             "fit rod bolts lot RX-77 new\n"
             "tighten rod bolts[1, a] stage 1 with W4\ntighten rod bolts[1, b] stage 1 with W4");
    expect_next("Big-end clearances", "bolt rod bolts in Big-end clearances[1, b], stage 1",
                "bolt rod bolts in Big-end clearances[1, a], stage 2");
    // Rod 2 does not wait for rod 1.
    expect_next("Big-end clearances", "bolt rod bolts in Big-end clearances[1, b], stage 2",
                "bolt rod bolts in Big-end clearances[2, a], stage 1");
    take_all("pick up Head on\ntighten head nuts stage 1 all with W4\n"
             "tighten head nuts stage 2 all with W4\ntighten head nuts stage 3 all with W3");
    expect_next("Head on", "bolt head nuts in Head on[10], stage 3",
                "wait head nuts in Head on, stage 4");
    expect_next("Head on", "bolt head nuts in Head on[3], stage 5",
                "wait head nuts in Head on, stage 4");
}
END_TEST

START_TEST(what_is_not_needed_or_withdrawn_is_passed_over)
{
    take_all("2025-01-02 08:00 MO pick up Measure head\nread found guide clearance 0.05 0.05 0.05 "
             "0.05 with G19\nread spring free length 47.4 47.5 47.3 47.4 47.5 47.2 47.4 47.3");
    expect_next("Measure head", "read spring free length[8]", "read spring load[1]");
    take_all("not needed spring load[1] \"no such spring\"\nwithdraw spring load[2] \"lost\"");
    expect_next("Measure head", "read spring free length[8]", "read spring load[3]");
    expect_beside("Measure head", "read spring free length[8]", 1, "read spring load[3]");
}
END_TEST

START_TEST(faults_come_behind_what_is_open_and_as_the_readings_that_go_into_them)
{
    take_all("2025-01-02 08:00 MO pick up Rings\nfit ring sets new\n"
             "read top ring gap 0.36 0.90 0.36 0.95 with G08\n"
             "read second ring gap[1] 0.30 with G08");
    expect_next("Rings", NULL, "read second ring gap[2]");
    take_all("read second ring gap[2] 0.30\nread second ring gap[3] 0.30\n"
             "read second ring gap[4] 0.30");
    expect_next("Rings", "read second ring gap[4]", "read top ring gap[2]");
    expect_next("Rings", "read top ring gap[2]", "read top ring gap[4]");
    expect_next("Rings", "read top ring gap[4]", "read top ring gap[2]");
    take_all("concede top ring gap[2] \"agreed\"\nconcede top ring gap[4] \"agreed\"");
    expect_next("Rings", "read top ring gap[4]", "sign Rings, 1");

    take_all("pick up Deck height\nlook gasket grade 1.20\n"
             "read deck reading -0.50 -0.50 -0.90 -0.90 -0.90 -0.90 -0.50 -0.50 with G04");
    expect_next("Deck height", "read deck reading[4, rear]", "read deck reading[2, front]");
    expect_next("Deck height", "read deck reading[2, front]", "read deck reading[3, front]");
    expect_next("Deck height", "read deck reading[3, front]", "read deck reading[2, front]");
    take_all("concede deck height \"agreed\"");
    expect_next("Deck height", "read deck reading[4, rear]", "sign Deck height, 1");
}
END_TEST

START_TEST(a_fault_without_a_reading_in_its_step_goes_back_to_one_of_another)
{
    Story story;
    story_begin(&story, "plan: Pan\n"
                        "units: [mm]\n"
                        "steps:\n"
                        "  Measure:\n"
                        "    checks:\n"
                        "      depth: {decimals: 1}\n"
                        "  Again:\n"
                        "    read again: [depth]\n"
                        "  Judge:\n"
                        "    checks:\n"
                        "      whole depth = depth + 1 mm: {limits: 5..6 mm}\n"
                        "      clearance = 9 mm - whole depth: {limits: 5..6 mm}\n");
    story_enter(&story, "read",
                "{'check':'depth','step':'Measure','value':{'value':'9','unit':'mm','typed':'9'}}");
    Assessment *assessment =
        assess(story.plan, (const Entry *const *)story.entries->pdata, story.entries->len, 0, NULL);
    Agenda agenda = {story.plan, assessment, (const Entry *const *)story.entries->pdata, 1};
    const PlanStep *step = plan_step(story.plan, "Judge");
    guint again = find_place(&agenda, "read depth in Again");
    expect_place(&agenda, agenda_input(&agenda, find_place(&agenda, "read whole depth")),
                 "read depth in Again");
    ck_assert_uint_eq(agenda_input(&agenda, find_place(&agenda, "read clearance")), again);
    ck_assert(!agenda_is_done(&agenda, step));
    assessment_free(assessment);
    story_end(&story);
}
END_TEST

START_TEST(what_was_found_and_waits_for_its_answer_is_not_asked_again)
{
    take_all("2025-01-02 08:00 MO pick up Strip bottom end\n"
             "read found crank travel 0.02 0.93 with G04\nread found idler backlash 0.44 with G04\n"
             "look cap numbers read 3\nlook rod numbers read 4\n"
             "look idler marks photographed yes");
    expect_next("Strip bottom end", NULL, "sign Strip bottom end, 1");
    take_all("sign Strip bottom end");
    expect_next("Strip bottom end", NULL, NULL);
    expect_done("Strip bottom end", TRUE);
}
END_TEST

START_TEST(what_is_optional_is_offered_last_and_keeps_nothing)
{
    take_all("2025-01-02 08:00 MO pick up Crank\n"
             "fit main shells lot MB-2417-C new\nfit thrust washers new count 2\n"
             "fit rear seal new\n"
             "tighten main caps in Main clearances stage 1 all with W4\n"
             "tighten main caps in Main clearances stage 2 all with W3\n"
             "tighten main caps in Main clearances stage 3 all with W3\n"
             "slacken main caps all \"mock-up\"\n"
             "tighten main caps stage 1 all with W4\ntighten main caps stage 2 all with W3\n"
             "tighten main caps stage 3 all with W3\n"
             "read crank travel 0.00 0.12 with G04\nread crank drag 2.0 with G17");
    expect_next("Crank", NULL, "read main strip[2]");
    take_all("sign Crank");
    expect_next("Crank", NULL, "read main strip[2]");
    expect_done("Crank", TRUE);
}
END_TEST

START_TEST(a_choice_is_made_although_it_is_worked_out)
{
    take_all("2025-01-02 08:00 MO pick up Main clearances");
    expect_beside("Main clearances", "read trial main bore[3, rear]", 1,
                  "read clearance by grade[1]");
    Agenda agenda = agenda_now();
    g_auto(AgendaItem) item =
        agenda_item(&agenda, find_place(&agenda, "read clearance by grade[1]"));
    ck_assert_int_eq(item.field, AGENDA_CHOICE);
    ck_assert_uint_eq(g_strv_length(item.choices), 2);
    ck_assert_str_eq(item.choices[1], "B");
}
END_TEST

START_TEST(a_card_asks_for_nothing_but_signatures)
{
    static const char text[] = "plan: Card\nsteps: {Card: {do: Measure}}\n";
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, strlen(text), faults);
    ck_assert_ptr_nonnull(plan);
    Judgement *card_judged = judgement_new(plan);
    Agenda card = {plan, judgement_now(card_judged), NULL, 0};
    ck_assert(agenda_is_card(&card));
    ck_assert(!agenda_has_work(&card, plan_step(plan, "Card")));
    judgement_free(card_judged);
    take_all("2025-01-02 08:00 MO note \"begun\"");
    Agenda agenda = agenda_now();
    ck_assert(!agenda_is_card(&agenda));
    ck_assert(agenda_has_work(&agenda, step_of("Crank")));
}
END_TEST

// OVER THE BUILD --------------------------------------------------------------------------------

START_TEST(a_step_is_held_by_the_first_in_front_of_it_that_is_not_signed)
{
    take_all("2025-01-02 08:00 MO note \"begun\"");
    expect_held("Receive", "nothing");
    expect_held("Test before strip", "Receive");
    expect_held("Crank", "Camshaft");
    take_all("sign Camshaft");
    expect_held("Crank", "Main clearances");
    take_all("sign Main clearances");
    expect_held("Crank", "Main clearances"); // its hold is open
    take_all("JT sign Main clearances");
    expect_held("Crank", "nothing");
    take_all("MO reopen Camshaft \"not yet\"");
    expect_held("Crank", "Camshaft");
    take_all("not needed Camshaft \"another engine\"");
    expect_held("Crank", "nothing");
}
END_TEST

START_TEST(a_step_is_closed_by_all_its_signatures_until_it_is_taken_up_for_what_is_left)
{
    take_all("2025-01-02 08:00 MO pick up Receive\nlook serial number 1\nlook complaint \"knock\"\n"
             "sign Receive"); // entries 1 to 4 and what the build took
    gint64 first = (gint64)agenda_now().count;
    expect_closed("Receive", 1, FALSE); // the second signature is missing
    take_all("JT sign Receive");
    expect_closed("Receive", first, TRUE); // though something is left open
    expect_done("Receive", FALSE);
    take_all("MO pick up Receive");
    gint64 again = (gint64)agenda_now().count;
    expect_closed("Receive", again, FALSE);
    take_all("look missing parts none\nlook photographs all round yes");
    expect_closed("Receive", again, TRUE); // nothing is left
    expect_closed("Strip top end", again, FALSE);
}
END_TEST

START_TEST(the_step_to_go_on_with_is_the_one_in_hand_else_the_first_left)
{
    take_all("2025-01-02 08:00 MO note \"begun\"");
    expect_step("Receive");
    take_all("08:10 pick up Rings");
    expect_step("Rings");
    take_all("08:20 put down \"telephone\"");
    expect_step("Receive");
    take_all("08:30 pick up Rings\nJT pick up Sump");
    expect_step("Sump");
    take_all("sign Sump");
    expect_step("Rings"); // which MO still has
    take_all("MO pick up Crank\nput down");
    expect_step("Receive"); // MO left Rings for Crank
    take_all("pick up Flywheel\nstrike last typo");
    expect_step("Receive");
}
END_TEST

// The steps in hand, the one picked up last first.
static void expect_hands(const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GArray) hands = agenda_hands(&agenda);
    g_autoptr(GString) steps = g_string_new(NULL);
    for (guint i = 0; i < hands->len; i++)
        g_string_append_printf(steps, "%s%s", i ? ", " : "",
                               g_array_index(hands, AgendaHand, i).step->name);
    ck_assert_str_eq(steps->str, expected);
}

START_TEST(two_people_may_have_a_step_in_hand)
{
    take_all("2025-01-02 08:00 MO pick up Rings");
    expect_hands("Rings");
    take_all("JT pick up Rings");
    expect_hands("Rings, Rings");
    take_all("EV pick up Sump\nJT put down");
    expect_hands("Sump, Rings");
    take_all("MO sign Rings");
    expect_hands("Sump");
}
END_TEST

START_TEST(a_held_step_and_one_that_is_done_are_passed_over)
{
    take_all("2025-01-02 08:00 MO look serial number x\nlook complaint x\nlook missing parts x\n"
             "look photographs all round yes\nsign Receive\nJT sign Receive");
    expect_step("Test before strip");
    take_all("MO not needed Test before strip \"in pieces\"\n"
             "not needed Strip top end \"in pieces\"");
    expect_step("Strip bottom end");
    take_all("look photographs all round in Receive no"); // a fault brings it back
    expect_step("Receive");
}
END_TEST

// ITEMS -----------------------------------------------------------------------------------------

static AgendaItem item_of(const Agenda *agenda, const char *place)
{
    return agenda_item(agenda, find_place(agenda, place));
}

START_TEST(a_bolt_knows_what_is_wanted_of_it)
{
    take_all("2025-01-02 08:00 MO pick up Head on");
    Agenda agenda = agenda_now();
    g_auto(AgendaItem) nut = item_of(&agenda, "bolt head nuts in Head on[2], stage 3");
    ck_assert_int_eq(nut.field, AGENDA_TICK);
    ck_assert_str_eq(nut.place, "bolt 2");
    ck_assert_str_eq(nut.amount_words, "75 N·m");
    ck_assert_str_eq(unit_text(nut.amount_unit), "N·m");
    ck_assert_uint_eq(nut.turn, 5); // 3-8-4-7-2
    ck_assert_uint_eq(nut.turns, 10);
    ck_assert_str_eq(nut.lubricant, "engine oil");
    ck_assert_ptr_null(nut.consumed);
    ck_assert(!nut.all_at_once);
    g_auto(AgendaItem) wait = item_of(&agenda, "wait head nuts in Head on, stage 4");
    ck_assert_str_eq(wait.amount_words, "wait 10 min");
    g_autofree char *minutes = number_text(wait.amount);
    ck_assert_str_eq(minutes, "10");
    g_auto(AgendaItem) stud = item_of(&agenda, "bolt head studs in Head on[4], stage 1");
    ck_assert_str_eq(stud.consumed, "thread sealant");
    g_auto(AgendaItem) angle = item_of(&agenda, "bolt flywheel bolts in Flywheel[4], stage 2");
    ck_assert_str_eq(angle.amount_words, "+50°");
    g_auto(AgendaItem) snug =
        item_of(&agenda, "bolt manifold inner nut in Manifolds and pumps[1], stage 1");
    ck_assert_str_eq(snug.amount_words, "snug");
    ck_assert_ptr_null(snug.amount);
    g_auto(AgendaItem) sump = item_of(&agenda, "bolt sump in Sump[L5], stage 2");
    ck_assert(sump.all_at_once);
    ck_assert_str_eq(sump.place, "bolt L5");
    ck_assert_str_eq(sump.consumed, "gasket sealant");
    g_auto(AgendaItem) rod = item_of(&agenda, "bolt rod bolts in Fit pistons[2, b], stage 1");
    ck_assert_str_eq(rod.place, "rod 2, b");
    ck_assert_uint_eq(rod.turn, 2);
    ck_assert_uint_eq(rod.turns, 2);
}
END_TEST

// Mount nuts: 60 + run-down torque, each its own.
START_TEST(a_torque_that_is_a_formula_is_worked_out_for_its_bolt)
{
    take_all("2025-01-02 08:00 MO pick up Pre-start proof");
    Agenda agenda = agenda_now();
    g_auto(AgendaItem) before = item_of(&agenda, "bolt mount nuts in Pre-start proof[4], stage 1");
    ck_assert_ptr_null(before.amount);
    ck_assert_str_eq(before.amount_words, "60 + run-down torque");
    take_all("read run-down torque 8 7 6 9 with G17");
    agenda = agenda_now();
    g_auto(AgendaItem) nut = item_of(&agenda, "bolt mount nuts in Pre-start proof[4], stage 1");
    ck_assert_str_eq(nut.amount_words, "69 N·m");
    g_auto(AgendaItem) other = item_of(&agenda, "bolt mount nuts in Pre-start proof[1], stage 1");
    ck_assert_str_eq(other.amount_words, "68 N·m");
}
END_TEST

START_TEST(an_item_knows_its_field)
{
    static const struct {
        const char *place;
        AgendaField field;
        const char *words, *unit, *gauge;
    } rows[] = {
        {"read bore[4, T, mid]", AGENDA_VALUE, "cylinder 4, T, mid", "mm", "bore gauge"},
        {"read main journal[3, front, v]", AGENDA_VALUE, "main 3, front, v", "mm", "micrometer"},
        {"look no leaks", AGENDA_GO_NO_GO, "", NULL, NULL},
        {"look white cloth", AGENDA_CHOICE, "", NULL, NULL},
        {"look complaint", AGENDA_TEXT, "", NULL, NULL},
        {"look clips seated", AGENDA_COUNT, "", NULL, NULL},
        {"fit main shells[2, upper]", AGENDA_PART, "main 2, upper", NULL, NULL},
        {"fit flywheel bolts[6]", AGENDA_PART, "bolt 6", NULL, NULL},
        {"sign Crank, 1", AGENDA_SIGNATURE, "", NULL, NULL},
    };
    take_all("2025-01-02 08:00 MO note \"begun\"");
    Agenda agenda = agenda_now();
    for (gsize i = 0; i < G_N_ELEMENTS(rows); i++) {
        g_auto(AgendaItem) item = item_of(&agenda, rows[i].place);
        ck_assert_msg(item.field == rows[i].field, "%s", rows[i].place);
        ck_assert_msg(g_strcmp0(item.unit, rows[i].unit) == 0, "%s", rows[i].place);
        ck_assert_msg(g_strcmp0(item.gauge, rows[i].gauge) == 0, "%s", rows[i].place);
        ck_assert_str_eq(item.place, rows[i].words);
    }
    g_auto(AgendaItem) shells = item_of(&agenda, "fit main shells[2, upper]");
    ck_assert(shells.new_needed);
    ck_assert_str_eq(shells.track, "lot");
    g_auto(AgendaItem) washers = item_of(&agenda, "fit thrust washers");
    ck_assert_uint_eq(washers.pieces, 2);
    g_auto(AgendaItem) hold = item_of(&agenda, "sign Main clearances, 2");
    ck_assert_str_eq(hold.hold, "grades chosen");
    g_auto(AgendaItem) setting = item_of(&agenda, "read idler backlash[1]");
    ck_assert_ptr_nonnull(setting.set);
}
END_TEST

START_TEST(a_label_that_two_axes_share_is_named_with_its_axis)
{
    Story story;
    story_begin(&story, "plan: Head\n"
                        "units: [mm]\n"
                        "axes: {cylinder: 1..4, valve: 3..6}\n"
                        "steps:\n"
                        "  Measure:\n"
                        "    checks:\n"
                        "      lift: {at: [cylinder, valve], limits: 6..7 mm}\n");
    Assessment *assessment = assess(story.plan, NULL, 0, 0, NULL);
    Agenda agenda = {story.plan, assessment, NULL, 0};
    g_auto(AgendaItem) shared = item_of(&agenda, "read lift[4, 3]");
    g_auto(AgendaItem) apart = item_of(&agenda, "read lift[1, 6]");
    ck_assert_str_eq(shared.target, "lift[cylinder 4, valve 3] in Measure");
    ck_assert_str_eq(apart.target, "lift[1, 6] in Measure");
    assessment_free(assessment);
    story_end(&story);
}
END_TEST

// THE WHOLE -------------------------------------------------------------------------------------

static guint next_signature(const Agenda *agenda, const PlanStep *step)
{
    guint place = AGENDA_NOWHERE;
    do
        place = agenda_beside(agenda, step, place, 1);
    while (requirement_at(agenda, place)->asked != ASKED_SIGN || !agenda_is_open(agenda, place));
    return place;
}

// Who does what comes next, and signs what is at fault, types each place once and nothing out of
// order.
START_TEST(a_build_that_follows_the_agenda_is_in_order)
{
    take_all("2025-01-02 08:00 MO note \"begun\"");
    Agenda agenda = agenda_now();
    guint typed = 0, asked = 0;
    for (guint i = 0; i < demo->plan->steps->len; i++) {
        const PlanStep *step = demo->plan->steps->pdata[i];
        guint place = AGENDA_NOWHERE;
        ck_assert_ptr_null(agenda_held_by(&agenda, step));
        while (!agenda_is_signed(&agenda, step)) {
            place = agenda_next(&agenda, step, place);
            if (requirement_at(&agenda, place)->verdict != VERDICT_OPEN)
                place = next_signature(&agenda, step); // nothing but faults is left
            g_auto(AgendaItem) item = agenda_item(&agenda, place);
            AgendaAnswer answer = answer_of(&item);
            g_autofree char *line = agenda_line(&item, &answer);
            take(line);
            agenda = agenda_now();
            typed++;
        }
    }
    for (guint i = 0; i < agenda.assessment->requirements->len; i++) {
        const Requirement *made = requirement_at(&agenda, i);
        asked += agenda_asks(&agenda, made->step, i) && !made->optional ? 1 : 0;
        ck_assert(!(made->doubts & reason_bit(REASON_ORDER)));
    }
    ck_assert_uint_eq(typed, asked);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {
        the_next_place_follows_and_one_passed_over_comes_again,
        beside_a_place_stands_the_next_one_done_or_not_but_none_that_is_worked_out,
        bolts_come_in_the_order_asked_stage_by_stage,
        each_run_goes_through_its_stages_and_a_wait_stands_in_front_of_the_next,
        what_is_not_needed_or_withdrawn_is_passed_over,
        faults_come_behind_what_is_open_and_as_the_readings_that_go_into_them,
        a_fault_without_a_reading_in_its_step_goes_back_to_one_of_another,
        what_was_found_and_waits_for_its_answer_is_not_asked_again,
        what_is_optional_is_offered_last_and_keeps_nothing,
        a_choice_is_made_although_it_is_worked_out,
        a_card_asks_for_nothing_but_signatures,
        a_step_is_held_by_the_first_in_front_of_it_that_is_not_signed,
        a_step_is_closed_by_all_its_signatures_until_it_is_taken_up_for_what_is_left,
        the_step_to_go_on_with_is_the_one_in_hand_else_the_first_left,
        two_people_may_have_a_step_in_hand,
        a_held_step_and_one_that_is_done_are_passed_over,
        a_bolt_knows_what_is_wanted_of_it,
        a_torque_that_is_a_formula_is_worked_out_for_its_bolt,
        an_item_knows_its_field,
        a_label_that_two_axes_share_is_named_with_its_axis,
        a_build_that_follows_the_agenda_is_in_order,
    };
    return run_on_build("agenda", tests, G_N_ELEMENTS(tests), 0);
}
