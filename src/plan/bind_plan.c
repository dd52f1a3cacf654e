// Constants, checks and stages of the whole plan.
#include "bind.h"

#include <string.h>

// Parses one value of a constant; a bare number has the plan's first unit.
static Array *given_value(Reader *reader, const TreeNode *node, const char *where, Kind *kind)
{
    Plan *plan = reader->plan;
    Site site = site_of(reader, NULL, where, node);
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_autoptr(Formula) formula = formula_parse(node->text, &offset, &error);
    if (!formula) {
        site_fault(&site, offset, error->message);
        return NULL;
    }
    if (plan->units->len)
        formula_give_unit(formula, g_ptr_array_index(plan->units, 0));
    gint first_doubt = plan->next_doubt;
    plan->next_doubt -= (gint)formula_doubt_count(formula);
    if (!site_find_names(&site, formula) || !site_kind(&site, formula, kind))
        return NULL;
    return site_value(&site, formula, first_doubt);
}

// Puts the one value into its place. FALSE if it is more than a number with its ±.
static gboolean put_value(Array *whole, gsize place, const Array *value)
{
    const Place *from = array_place(value, 0);
    if (array_axis_count(value) || from->state != PLACE_VALUE)
        return FALSE;
    const Weight *weight =
        from->weights && from->weights->len ? &g_array_index(from->weights, Weight, 0) : NULL;
    g_autoptr(Number) one = number_from_integer(1);
    if (from->weights && from->weights->len > 1)
        return FALSE;
    if (weight && !number_equal(weight->weight, one))
        return FALSE;
    array_set_constant(whole, place, from->value, weight ? weight->doubt : NULL,
                       weight ? weight->source : 0);
    return TRUE;
}

static void bind_labels(Reader *reader, PlanGiven *given, const char *where)
{
    given->value = array_new(&given->axis, 1);
    gboolean good = TRUE, known = FALSE; // the kind, by the first value without a fault
    for (guint i = 0; i < tree_count(given->node); i++) {
        const TreeNode *node = tree_at(given->node, i);
        Kind kind = {0};
        g_autoptr(Array) value = given_value(reader, node, where, &kind);
        gsize place = (gsize)axis_find(given->axis, node->key->text);
        good = good && value;
        if (!value)
            continue;
        if (known && !kind_equal(kind, given->kind))
            fault_at(reader, node, 0, where, "all labels of a constant have one kind of unit");
        else if (!put_value(given->value, place, value))
            fault_at(reader, node, 0, where, "write one number, with its ± if there is one");
        if (!known)
            given->kind = kind;
        known = TRUE;
    }
    given->state = good ? BINDING_DONE : BINDING_FAULTY;
}

static void bind_given(Reader *reader, PlanGiven *given)
{
    g_autofree char *where = g_strdup_printf("given \"%s\": ", given->name);
    if (plan_check(reader->plan, given->name))
        fault_at(reader, given->node->key, 0, where,
                 "there is a check of this name too; give one of them another name");
    given->state = BINDING_NOW;
    if (given->node->kind == TREE_MAP && given->axis) {
        bind_labels(reader, given, where);
    } else if (given->node->kind == TREE_SCALAR && *given->node->text) {
        given->value = given_value(reader, given->node, where, &given->kind);
        if (given->value && array_axis_count(given->value))
            given->axis = array_axis(given->value, 0);
        given->state = given->value ? BINDING_DONE : BINDING_FAULTY;
    } else {
        given->state = BINDING_FAULTY;
    }
}

// What the amount of a stage is measured in, NULL for a torque. Indexed by StageKind.
static const struct {
    const char *measure, *sample; // NULL: the plan's unit of torque, `40 N·m`
} amounts[] = {
    [STAGE_TURN] = {"°", "+60°, or +60 deg"},
    [STAGE_ANGLE] = {"°", "60° from snug, or 60 deg from snug"},
    [STAGE_SLACKEN] = {"°", "slacken 60°, or slacken 60 deg"},
    [STAGE_DRAW] = {"°", "draw 1 turn"},
    [STAGE_WAIT] = {"min", "wait 10 min"},
    [STAGE_SLOT] = {"°", "to slot within 30°, or 30 deg"},
};

// What the amount of a stage is written like. The caller frees.
static char *sample_of(const Stage *stage, const Unit *torque)
{
    const char *sample = amounts[stage->kind].sample;
    return sample ? g_strdup(sample) : g_strdup_printf("40 %s", unit_text(torque));
}

static gboolean group_has_axis(const PlanGroup *group, const char *name)
{
    for (guint i = 0; i < group->axes->len; i++)
        if (g_str_equal(axis_name(g_ptr_array_index(group->axes, i)), name))
            return TRUE;
    return FALSE;
}

// A bare figure has the plan's unit of torque.
static void give_torque_unit(Stage *stage, const Unit *torque)
{
    gsize offset = 0;
    stage->bare = formula_bare_term(stage->formula, &offset);
    stage->bare_offset = stage->amount_offset + offset;
    formula_give_unit(stage->formula, torque);
}

static void bind_amount(const Site *site, const PlanGroup *group, Stage *stage)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    const char *measure = amounts[stage->kind].measure;
    g_autoptr(Unit) unit =
        measure ? unit_parse(measure, NULL) : plan_torque_unit(site->reader->plan);
    stage->formula = formula_parse(stage->amount, &offset, &error);
    if (!stage->formula) {
        site_fault(site, offset, error->message);
        return;
    }
    if (!measure)
        give_torque_unit(stage, unit);
    stage->first_doubt = site->reader->plan->next_doubt;
    site->reader->plan->next_doubt -= (gint)formula_doubt_count(stage->formula);
    Kind kind;
    if (!site_find_names(site, stage->formula) || !site_kind(site, stage->formula, &kind))
        return;
    g_autoptr(Array) shape = site_shape(site, stage->formula);
    for (gsize i = 0; shape && i < array_axis_count(shape); i++)
        if (!group_has_axis(group, axis_name(array_axis(shape, i))))
            site_fault(site, 0, "this varies over an axis that the bolts do not have; fold it");
    if (kind_equal(kind, unit_kind(unit))) {
        g_autoptr(Number) constant = formula_constant(stage->formula);
        if (constant && number_sign(constant) <= 0)
            late_fault(site->reader, site->line, site->column, site->where,
                       "what a bolt is tightened to, turned by or left to wait is above 0");
        return;
    }
    g_autofree char *asked = kind_text(unit_kind(unit)), *said = kind_text(kind);
    g_autofree char *sample = sample_of(stage, unit);
    g_autofree char *message =
        g_strdup_printf("this stage asks for %s, not %s; write %s", asked, said, sample);
    site_fault(site, 0, message);
}

static void bind_until(const Site *site, const PlanStep *step, Stage *stage)
{
    PlanCheck *check = g_hash_table_lookup(site->reader->plan->checks, stage->amount);
    stage->until = check;
    if (!check) {
        g_autofree char *message =
            g_strdup_printf("there is no check called `%s`; write the name of one", stage->amount);
        site_fault(site, 0, message);
        return;
    }
    check->used = TRUE;
    if (check->step != step && !plan_step_follows(step, check->step))
        site_fault(site, 0, "this check is read in a step that need not come before this one");
}

// A unit of torque that is written in these stages and is not the plan's own; NULL for none.
static const Unit *other_torque(const GPtrArray *stages, const Unit *torque)
{
    for (guint i = 0; i < stages->len; i++) {
        const Stage *stage = g_ptr_array_index(stages, i);
        const Unit *unit = stage_is_torque(stage->kind) && stage->formula
                               ? formula_term_unit(stage->formula, torque)
                               : NULL;
        if (unit)
            return unit;
    }
    return NULL;
}

// `20 lbf ft > 40`, `20 lbf ft + 40`: whether the second is meant in the unit beside it or in the
// plan's, only who wrote it knows.
static void check_bare_torques(Reader *reader, const PlanTightening *tightening, const char *where)
{
    g_autoptr(Unit) torque = plan_torque_unit(reader->plan);
    const Unit *other = other_torque(tightening->stages, torque);
    for (guint i = 0; other && i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        if (!stage->bare)
            continue;
        g_autofree char *message =
            g_strdup_printf("%s of what? write %s %s or %s %s", stage->bare, stage->bare,
                            unit_text(other), stage->bare, unit_text(torque));
        late_fault(reader, tightening->stages_at->line,
                   tightening->stages_at->column + (guint)stage->bare_offset, where, message);
    }
}

static void bind_stages(Reader *reader, PlanTightening *tightening)
{
    g_autofree char *where = g_strdup_printf("step \"%s\", group \"%s\": ", tightening->step->name,
                                             tightening->group->name);
    const TreeNode *first = schema_get(&schema_of_group, tightening->group->node, "stages");
    hush(reader, tightening->again && tightening->stages_at == first); // told where they stand
    for (guint i = 0; i < tightening->stages->len; i++) {
        Stage *stage = g_ptr_array_index(tightening->stages, i);
        Site site = site_of(reader, tightening->step, where, tightening->stages_at);
        site.column += (guint)stage->amount_offset;
        if (stage->kind == STAGE_UNTIL)
            bind_until(&site, tightening->step, stage);
        else if (stage->amount)
            bind_amount(&site, tightening->group, stage);
    }
    check_bare_torques(reader, tightening, where);
    hush(reader, FALSE);
}

static void each_check(Reader *reader, void (*visit)(Reader *reader, PlanCheck *check))
{
    GPtrArray *steps = reader->plan->steps;
    for (guint i = 0; i < steps->len; i++) {
        const PlanStep *step = g_ptr_array_index(steps, i);
        for (guint j = 0; j < step->checks->len; j++)
            visit(reader, g_ptr_array_index(step->checks, j));
    }
}

static void bind_unbound(Reader *reader, PlanCheck *check)
{
    if (check->state == BINDING_NOT_YET)
        bind_check(reader, check);
}

static void check_limits_or_use(Reader *reader, PlanCheck *check)
{
    if (check->limits->len || check->used || check->state == BINDING_FAULTY ||
        (check->node->kind == TREE_MAP && tree_get(check->node, "limits")))
        return;
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", check->step->name, check->name);
    faults_add(reader->faults, check->line, check->column,
               "%sit has no limits and nothing uses it; write limits, or `any`", where);
}

// What gauges of these names read, whatever stands in front: a lever dial indicator, a feeler
// gauge.
static const struct {
    const char *name, *reads;
    Kind kind;
} gauges[] = {
    {"micrometer", "lengths", {.length = 1}},
    {"caliper", "lengths", {.length = 1}},
    {"dial indicator", "lengths", {.length = 1}},
    {"feeler", "lengths", {.length = 1}},
    {"bore gauge", "lengths", {.length = 1}},
    {"depth gauge", "lengths", {.length = 1}},
    {"plastic strip", "lengths", {.length = 1}},
    {"degree wheel", "angles", {.angle = 1}},
    {"thermometer", "temperatures", {.temperature = 1}},
};

// A check inherits the gauge of its step or plan, also where that cannot read it.
static void check_gauge(Reader *reader, PlanCheck *check)
{
    if (!check->gauge || check->formula_text || check->state == BINDING_FAULTY ||
        kind_is_pure(check->kind))
        return;
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", check->step->name, check->name);
    for (gsize i = 0; i < G_N_ELEMENTS(gauges); i++)
        if (strstr(check->gauge, gauges[i].name) && !kind_equal(check->kind, gauges[i].kind))
            faults_add(reader->plan->notices, check->line, check->column,
                       "%sa %s reads %s, but this is in %s; name the gauge that reads it", where,
                       check->gauge, gauges[i].reads,
                       check->unit ? unit_text(check->unit) : "another unit");
}

// UNTIL -----------------------------------------------------------------------------------------

static gboolean names_group(const GPtrArray *names, const PlanGroup *group)
{
    for (guint i = 0; i < names->len; i++)
        if (((const PlanName *)names->pdata[i])->group == group)
            return TRUE;
    return FALSE;
}

// The first check that is read for this one, itself or by its formula, where neither it nor what it
// is worked out of rests on the group; NULL where one does, or none is read. Formulas have no rings
// once they are bound.
static const PlanCheck *read_without(const Plan *plan, const PlanCheck *check,
                                     const PlanGroup *group, gboolean *rests)
{
    const PlanCheck *read = check->formula_text ? NULL : check;
    *rests |= names_group(check->rests_on, group);
    for (gsize i = 0; check->formula && i < formula_name_count(check->formula) && !*rests; i++) {
        const PlanCheck *input = plan_check(plan, formula_name(check->formula, i));
        const PlanCheck *of = input ? read_without(plan, input, group, rests) : NULL;
        read = read ? read : of;
    }
    return *rests ? NULL : read;
}

// Whether the plan takes these bolts down again behind this tightening.
static gboolean is_taken_down(const Plan *plan, const PlanTightening *tightening)
{
    gboolean taken = tightening->group->then_off && !tightening->again;
    for (guint i = tightening->step->index + 1; i < plan->steps->len && !taken; i++)
        taken = plan_tightening(plan->steps->pdata[i], tightening->group->name) != NULL;
    return taken;
}

// What a stage was pulled until says nothing of the bolt that comes in its place.
static void check_until(Reader *reader, const PlanTightening *tightening)
{
    const PlanGroup *group = tightening->group;
    for (guint i = 0; i < tightening->stages->len; i++) {
        const Stage *stage = tightening->stages->pdata[i];
        gboolean rests = FALSE;
        const PlanCheck *read = stage->until && stage->until->state == BINDING_DONE
                                    ? read_without(reader->plan, stage->until, group, &rests)
                                    : NULL;
        if (read && !is_taken_down(reader->plan, tightening))
            faults_add(reader->plan->notices, read->line, read->column,
                       "step \"%s\", check \"%s\": `until %s` would stand when a bolt is loosened "
                       "or replaced; write `rests on: [%s]` here",
                       read->step->name, read->name, stage->until->name, group->name);
    }
}

static void check_all_until(Reader *reader)
{
    for (guint i = 0; i < reader->plan->steps->len; i++) {
        const PlanStep *step = reader->plan->steps->pdata[i];
        for (guint j = 0; j < step->tightenings->len; j++)
            check_until(reader, step->tightenings->pdata[j]);
    }
}

void bind_plan(Reader *reader)
{
    Plan *plan = reader->plan;
    for (guint i = 0; i < plan->given->len; i++)
        bind_given(reader, g_ptr_array_index(plan->given, i));
    each_check(reader, bind_unbound);
    for (guint i = 0; i < plan->steps->len; i++)
        bind_inputs(reader, g_ptr_array_index(plan->steps, i));
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = g_ptr_array_index(plan->steps, i);
        for (guint j = 0; j < step->tightenings->len; j++)
            bind_stages(reader, g_ptr_array_index(step->tightenings, j));
    }
    each_check(reader, check_limits_or_use);
    each_check(reader, check_gauge);
    check_all_until(reader);
}
