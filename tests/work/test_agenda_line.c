// What an item of the agenda makes of an answer is a line that is taken, and it lands on exactly
// that requirement: for every requirement of the demo's plan, in a build that begins empty.
#include "agenda.h"

static gboolean is_worked_out(const Requirement *made)
{
    return made->check && made->check->formula && !made->check->choose;
}

// Of all requirements that are answered, that one alone rests on the newest entry, or on one of the
// same line.
static void expect_lands(const Agenda *agenda, guint index, gint64 before, const char *line)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *made = requirement_at(agenda, i);
        g_autofree char *name = requirement_name(made);
        if (!is_worked_out(made))
            ck_assert_msg((made->entry > before) == (i == index), "%s: %s is entry %d", line, name,
                          (int)made->entry);
    }
}

// The entries that the line makes name the requirement, also where the judge waits for more: a
// choice is judged once what it chooses from is known.
static void expect_named(const Requirement *made, guint before, const char *line)
{
    const GPtrArray *entries = line_taker_entries(build);
    const Entry *entry = entries->pdata[entries->len - 1];
    const char *labels = kind_field(entry->kind, "place") ? "place" : "bolts";
    ck_assert_uint_gt(entries->len, before);
    ck_assert_msg(g_strcmp0(entry_text(entry, "step"), made->step->name) == 0, "%s", line);
    g_autoptr(GString) place = g_string_new(NULL);
    for (gsize i = 0; kind_field(entry->kind, labels) && i < entry_list_length(entry, labels); i++)
        g_string_append_printf(place, "%s%s", i ? ", " : "", entry_list_item(entry, labels, i));
    ck_assert_msg(strcmp(place->str, made->place) == 0, "%s: %s", line, place->str);
}

static char *line_for(const Agenda *agenda, guint index)
{
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    AgendaAnswer answer = answer_of(&item);
    return agenda_line(&item, &answer);
}

// Enters an answer at that place. The agenda is as things stand, before and afterwards.
static void take_place(Agenda *agenda, guint index)
{
    guint before = (guint)agenda->count;
    const Requirement *made = requirement_at(agenda, index);
    gboolean chosen = made->check && made->check->choose;
    gboolean judged_later = chosen || made->asked == ASKED_WAIT;
    g_autofree char *line = line_for(agenda, index);
    ck_assert_ptr_nonnull(line);
    take(line);
    *agenda = agenda_now();
    expect_named(requirement_at(agenda, index), before, line);
    if (!judged_later)
        expect_lands(agenda, index, (gint64)before, line);
}

// The places of the plan at which nothing is typed.
static guint worked_out_places(void)
{
    guint count = 0;
    for (guint i = 0; i < demo->plan->steps->len; i++) {
        const PlanStep *step = demo->plan->steps->pdata[i];
        for (guint j = 0; j < step->checks->len; j++) {
            const PlanCheck *check = step->checks->pdata[j];
            count += check->formula && !check->choose ? places_count(check->places) : 0;
        }
    }
    return count;
}

START_TEST(a_line_lands_on_its_requirement_and_no_other)
{
    take("2025-01-02 08:00 MO note \"begun\"");
    Agenda agenda = agenda_now();
    guint count = agenda.assessment->requirements->len, typed = 0;
    for (guint i = 0; i < count; i++) {
        if (!agenda_asks(&agenda, requirement_at(&agenda, i)->step, i))
            continue;
        take_place(&agenda, i);
        typed++;
    }
    ck_assert_uint_eq(typed + worked_out_places(), count);
    for (guint i = 0; i < count; i++)
        ck_assert(!agenda_is_open(&agenda, i));
}
END_TEST

// The shop's reasons.
START_TEST(a_line_with_a_tool_or_lot_that_the_shop_does_not_know_says_so)
{
    take("2025-01-02 08:00 MO note \"begun\"");
    Agenda agenda = agenda_now();
    g_auto(AgendaItem) bore = agenda_item(&agenda, find_place(&agenda, "read bore[1, T, top]"));
    g_auto(AgendaItem) shell =
        agenda_item(&agenda, find_place(&agenda, "fit main shells[2, upper]"));
    const AgendaAnswer value = {.typed = "90.006", .tool = "G99"}, part = {.typed = "MB-1"};
    g_autofree char *read = agenda_line(&bore, &value), *fit = agenda_line(&shell, &part);
    g_autofree char *no_tool = demo_try(demo, build, read), *no_lot = demo_try(demo, build, fit);
    ck_assert_ptr_nonnull(strstr(no_tool, "G99"));
    ck_assert_ptr_nonnull(strstr(no_lot, "MB-1"));
}
END_TEST

static void expect_line(const char *place, AgendaAnswer answer, const char *expected)
{
    Agenda agenda = agenda_now();
    g_auto(AgendaItem) item = agenda_item(&agenda, find_place(&agenda, place));
    g_autofree char *line = agenda_line(&item, &answer);
    ck_assert_msg(g_strcmp0(line, expected) == 0, "%s\n  gives    %s\n  expected %s", place, line,
                  expected);
}

START_TEST(lines_are_as_a_builder_writes_them)
{
    expect_line("read main bore[1, front]",
                (AgendaAnswer){.typed = "59.790", .tool = "G03", .initials = "MO"},
                "MO read main bore[1, front] in Main clearances 59.790 with G03");
    expect_line("read deck flatness", (AgendaAnswer){.typed = "<0.03"},
                "read deck flatness in Check returned work <0.03");
    expect_line("read deck flatness", (AgendaAnswer){.typed = "(0.03 + 0.02) / 2"},
                "read deck flatness in Check returned work \"(0.03 + 0.02) / 2\"");
    expect_line("read deck flatness", (AgendaAnswer){.typed = "5' 2\"", .tool = "G05"},
                "read deck flatness in Check returned work \"5' 2\"\"\" with G05");
    expect_line("read inlet lash in Cold retorque[2]", (AgendaAnswer){.typed = "0.30"},
                "read inlet lash[2] in Cold retorque 0.30");
    expect_line("read lash as found[in, 3]", (AgendaAnswer){.typed = "0.28", .tool = "G08"},
                "read lash as found[in, 3] in Test before strip 0.28 with G08");
    expect_line("read idler backlash[1]", (AgendaAnswer){.typed = "0.31", .loose = TRUE},
                "read idler backlash[1] in Idler backlash 0.31 loose");
    expect_line("read deck flatness", (AgendaAnswer){.typed = "0.03", .loose = TRUE},
                "read deck flatness in Check returned work 0.03");
    expect_line("look no leaks", (AgendaAnswer){.typed = "1"}, "look no leaks in First run yes");
    expect_line("look no leaks", (AgendaAnswer){.typed = "0"}, "look no leaks in First run no");
    expect_line("look white cloth", (AgendaAnswer){.typed = "2"},
                "look white cloth in Final wash grey");
    expect_line("look gasket grade", (AgendaAnswer){.typed = "1.35"},
                "look gasket grade in Deck height 1.35");
    expect_line("look gasket grade", (AgendaAnswer){.typed = "2"},
                "look gasket grade in Deck height 1.35");
    expect_line("look complaint", (AgendaAnswer){.typed = "says \"knock\""},
                "look complaint in Receive \"says \"\"knock\"\"\"");
    expect_line("look clips seated", (AgendaAnswer){.typed = "8"},
                "look clips seated in Pistons on rods 8");
    expect_line("read clearance by grade[2]", (AgendaAnswer){.typed = "B"},
                "choose clearance by grade[2] in Main clearances B");
    expect_line("bolt main caps in Crank[3], stage 2", (AgendaAnswer){.tool = "W3"},
                "tighten main caps[3] in Crank stage 2 with W3");
    expect_line("bolt rod bolts in Fit pistons[2, a], stage 1",
                (AgendaAnswer){.typed = "31", .tool = "W4"},
                "tighten rod bolts[2, a] in Fit pistons stage 1 31 with W4");
    expect_line("bolt sump in Sump[L4], stage 1", (AgendaAnswer){.tool = "W1", .all = TRUE},
                "tighten sump in Sump stage 1 all with W1");
    expect_line("wait head nuts in Head on, stage 4", (AgendaAnswer){.initials = "JT"},
                "JT waited head nuts in Head on stage 4");
    expect_line("fit main shells[2, upper]", (AgendaAnswer){.typed = "MB-2417-C"},
                "fit main shells[2, upper] in Crank lot MB-2417-C new");
    expect_line("fit thrust washers", (AgendaAnswer){0}, "fit thrust washers in Crank count 2 new");
    expect_line("fit camshaft", (AgendaAnswer){.use = AGENDA_REUSED, .why = "journals in limits"},
                "fit camshaft in Camshaft reused \"journals in limits\"");
    expect_line("fit main shells[2, upper]", (AgendaAnswer){.use = AGENDA_REUSED, .why = "as new"},
                "fit main shells[2, upper] in Crank reused \"as new\"");
    expect_line("fit pistons[1]", (AgendaAnswer){.typed = "PS 12"},
                "fit pistons[1] in Pistons on rods serial \"PS 12\" new");
    expect_line("sign Crank, 1", (AgendaAnswer){.initials = "MO"}, "MO sign Crank");
    expect_line("sign Main clearances, 2", (AgendaAnswer){.initials = "JT"},
                "JT sign Main clearances, 2");
}
END_TEST

START_TEST(an_answer_that_says_too_little_gives_no_line)
{
    expect_line("read deck flatness", (AgendaAnswer){.typed = ""}, NULL);
    expect_line("look complaint", (AgendaAnswer){0}, NULL);
    expect_line("fit main shells[2, upper]", (AgendaAnswer){0}, NULL);
    expect_line("fit camshaft", (AgendaAnswer){.use = AGENDA_REWORKED}, NULL);
    expect_line("fit ring sets[1]", (AgendaAnswer){.typed = "0.31"}, NULL); // a value for a part
    // Angles and groups that are logged bolt by bolt refuse the round key.
    expect_line("bolt flywheel bolts in Flywheel[1], stage 2", (AgendaAnswer){.all = TRUE}, NULL);
    expect_line("bolt head nuts in Head on[1], stage 1", (AgendaAnswer){.all = TRUE}, NULL);
}
END_TEST

int main(void)
{
    const TTest *tests[] = {lines_are_as_a_builder_writes_them,
                            an_answer_that_says_too_little_gives_no_line,
                            a_line_with_a_tool_or_lot_that_the_shop_does_not_know_says_so,
                            a_line_lands_on_its_requirement_and_no_other};
    return run_on_build("agenda lines", tests, G_N_ELEMENTS(tests), 0);
}
