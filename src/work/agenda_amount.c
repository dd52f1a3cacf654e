// What a stage asks for at one bolt, also where that is a formula: `60 + run-down torque`.
#include "agenda_inside.h"

#include <string.h>

typedef struct {
    const Agenda *agenda;
    const PlanStep *step; // from which the formula looks
} View;

static const PlanGiven *given_of(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->given->len; i++) {
        const PlanGiven *given = plan->given->pdata[i];
        if (strcmp(given->name, name) == 0)
            return given;
    }
    return NULL;
}

static gboolean kind_of_name(const char *name, Kind *kind, gpointer user)
{
    const View *view = user;
    const PlanCheck *check = plan_check(view->agenda->plan, name);
    const PlanGiven *given = check ? NULL : given_of(view->agenda->plan, name);
    if (check)
        *kind = check->kind;
    else if (given)
        *kind = given->kind;
    return check || given;
}

gssize agenda_place_in(const Array *array, const GPtrArray *axes, const char *const *labels)
{
    gsize place = 0;
    for (gsize i = 0; i < array_axis_count(array); i++) {
        const Axis *axis = array_axis(array, i);
        gssize index = -1;
        for (guint j = 0; j < axes->len && labels[j]; j++)
            if (strcmp(axis_name(axes->pdata[j]), axis_name(axis)) == 0)
                index = axis_find(axis, labels[j]);
        if (index < 0)
            return -1;
        place = place * axis_size(axis) + (gsize)index;
    }
    return (gssize)place;
}

// Of a check that is read in several steps the last one counts that the step can see.
static gboolean is_seen(const Requirement *made, const PlanCheck *check, const PlanStep *step)
{
    return made->check == check && (made->step == step || plan_step_follows(step, made->step));
}

static Array *value_of_check(const View *view, const PlanCheck *check)
{
    const GPtrArray *all = view->agenda->assessment->requirements;
    Array *array = array_new((const Axis *const *)check->places->pdata, check->places->len);
    for (guint i = 0; array && i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        gssize place =
            is_seen(made, check, view->step)
                ? agenda_place_in(array, check->places, (const char *const *)made->labels)
                : -1;
        if (place < 0)
            continue;
        if (made->verdict == VERDICT_NOT_NEEDED)
            array_set_not_needed(array, (gsize)place);
        else if (made->value)
            array_set_reading(array, (gsize)place, made->value, made->bound, (gint)i, 0);
    }
    return array;
}

static Array *value_of_name(const char *name, gpointer user)
{
    const View *view = user;
    const PlanCheck *check = plan_check(view->agenda->plan, name);
    if (check)
        return value_of_check(view, check);
    const PlanGiven *given = given_of(view->agenda->plan, name);
    return given ? array_copy(given->value) : NULL;
}

Array *agenda_worked(const Agenda *agenda, const PlanStep *step, const Formula *formula,
                     gint first_doubt)
{
    View view = {agenda, step};
    const FormulaContext context = {
        .kind = kind_of_name, .value = value_of_name, .first_doubt = first_doubt, .user = &view};
    return formula_evaluate(formula, &context, NULL, NULL);
}

Number *agenda_amount(const Agenda *agenda, const Requirement *made, const PlanTightening *of,
                      const Stage *stage)
{
    Number *constant = stage->formula ? formula_constant(stage->formula) : NULL;
    if (!stage->formula || constant)
        return constant;
    g_autoptr(Array) array = agenda_worked(agenda, made->step, stage->formula, stage->first_doubt);
    gssize place =
        array ? agenda_place_in(array, of->group->axes, (const char *const *)made->labels) : -1;
    const Place *found = place < 0 ? NULL : array_place(array, (gsize)place);
    return found && found->value ? number_copy(found->value) : NULL;
}

Unit *agenda_amount_unit(const Plan *plan, const Stage *stage)
{
    const Unit *written = stage->formula ? formula_first_unit(stage->formula) : NULL;
    if (stage_is_torque(stage->kind))
        return written ? unit_copy(written) : plan_torque_unit(plan);
    if (stage->kind == STAGE_WAIT)
        return unit_parse("min", NULL);
    g_autoptr(Unit) usual = unit_parse("°", NULL);
    const Unit *own = plan_unit(plan, unit_kind(usual));
    return unit_copy(own ? own : usual);
}

char *agenda_amount_words(const Stage *stage, const Number *amount, const Unit *unit)
{
    const char *before = stage->kind == STAGE_TURN    ? "+"
                         : stage->kind == STAGE_CHECK ? "check "
                                                      : "";
    if (!amount || !(stage_is_torque(stage->kind) || stage->kind == STAGE_TURN))
        return g_strdup(stage->text);
    g_autofree char *text = unit_show_short(unit, amount);
    return g_strconcat(before, text, NULL);
}
