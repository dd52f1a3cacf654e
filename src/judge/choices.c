#include "judge.h"

#include <standbook/judge/choices.h>

static void choice_clear(gpointer data)
{
    JudgementChoice *choice = data;
    number_free(choice->value);
    number_free(choice->variance);
}

static JudgementChoice choice_of(Judge *judge, CheckState *state, guint index, gsize label)
{
    const Requirement *made = judge_requirement(judge, index);
    guint place = g_array_index(judge->asked, PlanRequirement, index).place;
    const Place *at = judge_value_chosen(state, judge_value(judge, state), place, (gssize)label);
    JudgementChoice choice = {.verdict = VERDICT_OPEN};
    if (!at || at->state != PLACE_VALUE)
        return choice;
    choice.value = number_copy(at->value);
    choice.variance = judge_variance(at, judge);
    judge_against(made, at->bound, choice.value, choice.variance, &choice.verdict, &choice.reason);
    return choice;
}

GArray *judge_choices(Judge *judge, guint index)
{
    GArray *choices = g_array_new(FALSE, FALSE, sizeof(JudgementChoice));
    g_array_set_clear_func(choices, choice_clear);
    CheckState *state = judge->owners[index].check;
    const Axis *axis =
        state && state->check->choose ? plan_axis(judge->plan, state->check->choose) : NULL;
    for (gsize i = 0; axis && i < axis_size(axis); i++) {
        JudgementChoice choice = choice_of(judge, state, index, i);
        choice.label = axis_label(axis, i);
        g_array_append_val(choices, choice);
    }
    return choices;
}
