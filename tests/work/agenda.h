// An agenda of the build that build.h feeds, and places of it by their names.
#pragma once
#include "build.h"

#include <standbook/judge/judgement.h>
#include <standbook/work/agenda_item.h>

static Judgement *judgement; // of the build that was asked about last
static const LineTaker *judged;

// The build as it stands. What it points to holds until it is asked again.
static inline Agenda agenda_now(void)
{
    const GPtrArray *entries = line_taker_entries(build);
    if (judged != build) {
        judgement_free(judgement);
        judgement = judgement_new(demo->plan);
        judged = build;
    }
    while (judgement_entries(judgement) < entries->len)
        judgement_add(judgement, entries->pdata[judgement_entries(judgement)]);
    return (Agenda){demo->plan, judgement_now(judgement), (const Entry *const *)entries->pdata,
                    entries->len};
}

static inline const Requirement *requirement_at(const Agenda *agenda, guint index)
{
    ck_assert_uint_lt(index, agenda->assessment->requirements->len);
    return agenda->assessment->requirements->pdata[index];
}

// The place by its printed name: `read bore[1, T, top]`.
static inline guint find_place(const Agenda *agenda, const char *name)
{
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        g_autofree char *each = requirement_name(requirement_at(agenda, i));
        if (strcmp(each, name) == 0)
            return i;
    }
    ck_abort_msg("there is no %s", name);
    return AGENDA_NOWHERE;
}

static inline const PlanStep *step_of(const char *name)
{
    const PlanStep *step = plan_step(demo->plan, name);
    ck_assert_ptr_nonnull(step);
    return step;
}

// The place has this printed name; NULL: it is nowhere.
static inline void expect_place(const Agenda *agenda, guint index, const char *expected)
{
    g_autofree char *name = index == AGENDA_NOWHERE
                                ? g_strdup("nowhere")
                                : requirement_name(requirement_at(agenda, index));
    ck_assert_str_eq(name, expected ? expected : "nowhere");
}

// The place that comes next in a step behind `from` (a printed name, NULL: at the beginning) has
// this printed name; NULL: nothing is left.
static inline void expect_next(const char *step, const char *from, const char *expected)
{
    Agenda agenda = agenda_now();
    guint start = from ? find_place(&agenda, from) : AGENDA_NOWHERE;
    expect_place(&agenda, agenda_next(&agenda, step_of(step), start), expected);
}

static inline void expect_step(const char *expected)
{
    Agenda agenda = agenda_now();
    const PlanStep *step = agenda_step(&agenda);
    ck_assert_str_eq(step ? step->name : "none", expected);
}

// An answer that the field takes, whatever it is worth. A signature needs another person each time.
static inline AgendaAnswer answer_of(const AgendaItem *item)
{
    static const char *const people[] = {"MO", "JT", "EV"};
    AgendaAnswer answer = {.initials = "MO"};
    switch (item->field) {
    case AGENDA_VALUE:
        answer.typed = "1.25";
        answer.tool = "G03";
        break;
    case AGENDA_GO_NO_GO:
    case AGENDA_CHOICE:
        answer.typed = item->choices[0];
        break;
    case AGENDA_COUNT:
        answer.typed = "3";
        break;
    case AGENDA_TEXT:
        answer.typed = "the \"middle\" one, in 3";
        break;
    case AGENDA_TICK:
        answer.tool = item->made->asked == ASKED_WAIT ? NULL : "W3";
        break;
    case AGENDA_PART:
        answer.typed = !item->track ? NULL : g_strcmp0(item->track, "lot") == 0 ? "RX-77" : "PS 12";
        answer.use = item->new_needed ? AGENDA_NEW : AGENDA_REUSED;
        answer.why = item->new_needed ? NULL : "\"as new\" within its limits";
        break;
    case AGENDA_SIGNATURE:
        answer.initials = people[item->made->stage - 1];
        break;
    }
    return answer;
}
