// Checks: formula, limits, unit, and what stands beside the limits.
#include "bind.h"

#include <string.h>

// The unit said at a node. NULL with a fault; the fault of a step's or the plan's unit is told
// once.
static Unit *read_unit(Reader *reader, const TreeNode *node, const char *where)
{
    g_autoptr(GError) error = NULL;
    Unit *unit = unit_parse(node->text, &error);
    if (!unit && tell_once(reader, node))
        fault_at(reader, node, 0, where, error->message);
    return unit;
}

// The unit in which bare numbers of the check stand. A formula takes what its step says only where
// that fits its kind. NULL with *good unchanged for a pure number.
static Unit *default_unit(Reader *reader, const PlanCheck *check, const char *where, gboolean *good)
{
    const TreeNode *own = check_says_itself(check, "unit");
    const TreeNode *said = check_says(reader, check, "unit");
    if (said && g_str_equal(said->text, "none"))
        return NULL;
    if (said && (own || !check->formula)) {
        Unit *unit = read_unit(reader, said, where);
        *good = *good && unit;
        return unit;
    }
    g_autoptr(Unit) inherited = said ? read_unit(reader, said, where) : NULL;
    if (inherited && kind_equal(unit_kind(inherited), check->kind))
        return g_steal_pointer(&inherited);
    const Plan *plan = reader->plan;
    const Unit *unit = check->formula     ? plan_unit(plan, check->kind)
                       : plan->units->len ? g_ptr_array_index(plan->units, 0)
                                          : NULL;
    return unit ? unit_copy(unit) : NULL;
}

// Whether each label is one of another axis of the check, in the order of these.
static gboolean has_labels(const PlanCheck *check, const char *const *labels)
{
    gsize found = 0;
    for (guint i = 0; labels[found] && i < check->axes->len; i++)
        found += axis_find(g_ptr_array_index(check->axes, i), labels[found]) >= 0 ? 1 : 0;
    return !labels[found];
}

static gboolean parse_limit(Reader *reader, const PlanCheck *check, PlanLimit *limit,
                            const Unit *unit, const char *where)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    limit->limits = limits_parse(limit->node->text, unit, &offset, &error);
    if (!limit->limits)
        fault_at(reader, limit->node, offset, where, error->message);
    if (!limit->labels || has_labels(check, (const char *const *)limit->labels))
        return limit->limits != NULL;
    fault_at(reader, limit->node->key, 0, where,
             limit->labels[1] ? "these are no labels of as many axes of this check, in their order"
                              : "no axis of this check has this label");
    return FALSE;
}

// One side of a limit. Its axes must be those of the check, its kind that of the check.
static gboolean bind_side(const Site *site, const PlanCheck *check, const Formula *side)
{
    Kind kind;
    if (!side)
        return TRUE;
    if (!site_find_names(site, side) || !site_kind(site, side, &kind))
        return FALSE;
    if (!kind_equal(kind, check->kind)) {
        g_autofree char *one = kind_text(check->kind), *other = kind_text(kind);
        g_autofree char *message =
            g_strdup_printf("the %s %s, but its limits are %s%s",
                            check->formula ? "formula gives" : "check is read as", one, other,
                            kind_is_pure(kind) ? "; write their unit behind them" : "");
        site_fault(site, 0, message);
        return FALSE;
    }
    g_autoptr(Array) shape = site_shape(site, side);
    for (gsize i = 0; shape && i < array_axis_count(shape); i++) {
        gboolean there = FALSE;
        for (guint j = 0; j < check->axes->len; j++)
            there = there ||
                    g_str_equal(axis_name(check->axes->pdata[j]), axis_name(array_axis(shape, i)));
        if (there)
            continue;
        g_autofree char *message =
            g_strdup_printf("this limit varies over %s, which the check does not; fold it",
                            axis_name(array_axis(shape, i)));
        site_fault(site, 0, message);
        return FALSE;
    }
    return shape != NULL;
}

// Parses all limits and takes from them what the check asks for, its unit and its decimals.
static gboolean parse_limits(Reader *reader, PlanCheck *check, const char *where)
{
    gboolean good = TRUE;
    g_autoptr(Unit) unit = default_unit(reader, check, where, &good);
    check->unit = unit ? unit_copy(unit) : NULL;
    for (guint i = 0; i < check->limits->len; i++) {
        PlanLimit *limit = g_ptr_array_index(check->limits, i);
        if (!parse_limit(reader, check, limit, unit, where)) {
            good = FALSE;
            continue;
        }
        check->decimals = MAX(check->decimals, limits_decimals(limit->limits));
        check->asks = limits_form(limit->limits);
        if (limits_has_unit(limit->limits) && !check_says_itself(check, "unit")) {
            unit_free(check->unit);
            check->unit = limits_unit(limit->limits) ? unit_copy(limits_unit(limit->limits)) : NULL;
        }
    }
    const TreeNode *decimals = check_says(reader, check, "decimals");
    check->decimals_said = decimals != NULL;
    if (decimals)
        check->decimals = (guint)MIN(g_ascii_strtoull(decimals->text, NULL, 10), 12);
    if (check->asks != LIMITS_VALUE && check->asks != LIMITS_ANY)
        g_clear_pointer(&check->unit, unit_free);
    if (!check->formula && check->unit)
        check->kind = unit_kind(check->unit);
    return good;
}

static gboolean bind_sides(Reader *reader, PlanCheck *check, const char *where)
{
    gboolean good = TRUE;
    for (guint i = 0; i < check->limits->len; i++) {
        const PlanLimit *limit = g_ptr_array_index(check->limits, i);
        Site site = site_of(reader, check->step, where, limit->node);
        LimitsForm form = limits_form(limit->limits);
        if (form != check->asks) {
            site_fault(&site, 0, "all labels of a check must ask for the same sort of answer");
            return FALSE;
        }
        if (form == LIMITS_VALUE)
            good = bind_side(&site, check, limits_lower(limit->limits)) &&
                   bind_side(&site, check, limits_upper(limit->limits)) && good;
        if (check->formula && form != LIMITS_VALUE && form != LIMITS_ANY) {
            site_fault(&site, 0, "a formula gives a number; write limits such as 0.05..0.08");
            good = FALSE;
        }
    }
    return good;
}

// Whether no check that is read, or rests on one that is, stands in the formula.
static gboolean is_by_plan(const Reader *reader, const Formula *formula)
{
    for (gsize i = 0; i < formula_name_count(formula); i++) {
        const PlanCheck *check = plan_check(reader->plan, formula_name(formula, i));
        if (check && !check->by_plan)
            return FALSE;
    }
    return TRUE;
}

// Parses the formula and takes its kind and places.
static gboolean bind_formula(Reader *reader, PlanCheck *check, const char *where)
{
    Site site = {reader, check->step, where, check->line, check->formula_column};
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    check->formula = formula_parse(check->formula_text, &offset, &error);
    if (!check->formula) {
        site_fault(&site, offset, error->message);
        return FALSE;
    }
    check->first_doubt = reader->plan->next_doubt;
    reader->plan->next_doubt -= (gint)formula_doubt_count(check->formula);
    if (!site_find_names(&site, check->formula) || !site_kind(&site, check->formula, &check->kind))
        return FALSE;
    check->by_plan = is_by_plan(reader, check->formula);
    g_autoptr(Array) shape = site_shape(&site, check->formula);
    g_ptr_array_set_size(check->axes, 0);
    for (gsize i = 0; shape && i < array_axis_count(shape); i++) {
        Axis *axis = axis_copy(array_axis(shape, i));
        g_ptr_array_add(reader->plan->pairs, axis); // which owns it
        g_ptr_array_add(check->axes, axis);
    }
    return shape != NULL;
}

// Constant bounds over all limits: the least lower and the greatest upper one. NULL where unknown.
static Number *outer_bound(const PlanCheck *check, gboolean upper)
{
    Number *bound = NULL;
    for (guint i = 0; i < check->limits->len; i++) {
        const PlanLimit *limit = g_ptr_array_index(check->limits, i);
        const Formula *side = check->asks != LIMITS_VALUE ? NULL
                              : upper                     ? limits_upper(limit->limits)
                                                          : limits_lower(limit->limits);
        g_autoptr(Number) number = side ? formula_constant(side) : NULL;
        if (number && (!bound || (number_compare(number, bound) > 0) == upper)) {
            number_free(bound);
            bound = g_steal_pointer(&number);
        }
    }
    return bound;
}

// On which side of the limits the service limit lies says whether wear opens or closes.
static void bind_wear(Reader *reader, PlanCheck *check, const char *where)
{
    const TreeNode *node = check_says_itself(check, "wear");
    check->wear = node ? read_amount(reader, node, check->unit, check->kind, where) : NULL;
    if (!check->wear)
        return;
    g_autoptr(Number) lower = outer_bound(check, FALSE), upper = outer_bound(check, TRUE);
    check->wear_above = upper && number_compare(check->wear, upper) >= 0;
    gboolean below = lower && number_compare(check->wear, lower) <= 0;
    if (!check->wear_above && !below)
        fault_at(reader, node, 0, where,
                 "the service limit must lie outside the limits; check both figures");
}

static void bind_doubt(Reader *reader, PlanCheck *check, const char *where)
{
    const TreeNode *own = check_says_itself(check, "doubt");
    const TreeNode *node = check_says(reader, check, "doubt");
    g_autoptr(Unit) width = check->unit ? unit_of_difference(check->unit) : NULL;
    if (own) {
        check->doubt = read_amount(reader, own, width, check->kind, where);
    } else if (node && !check->formula &&
               (check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY)) {
        gboolean before = reader->hushed;
        hush(reader, TRUE); // a step's doubt holds for the checks whose kind it has
        check->doubt = read_amount(reader, node, width, check->kind, where);
        hush(reader, before);
    }
}

static void bind_aim(Reader *reader, PlanCheck *check, const char *where)
{
    const TreeNode *node = check_says_itself(check, "aim");
    if (!node)
        return;
    gboolean low = g_str_equal(node->text, "low"), high = g_str_equal(node->text, "high");
    check->aim = low ? AIM_LOW : high ? AIM_HIGH : AIM_VALUE;
    if (low || high)
        return;
    TreeNode number = *node;
    if (g_str_has_prefix(node->text, "smallest ")) {
        check->aim = AIM_SMALLEST;
        number.text += strlen("smallest ");
        number.column += (guint)strlen("smallest ");
    }
    check->aim_value = read_amount(reader, &number, check->unit, check->kind, where);
}

static void bind_choice(Reader *reader, const PlanCheck *check, const char *where)
{
    gboolean there = !check->choose || !plan_axis(reader->plan, check->choose);
    for (guint i = 0; i < check->axes->len; i++)
        there = there || g_str_equal(axis_name(check->axes->pdata[i]), check->choose);
    if (!there)
        fault_at(reader, check_says_itself(check, "choose"), 0, where,
                 "the check does not vary over this axis, so there is nothing to choose");
}

static gboolean bind_unit(Reader *reader, const PlanCheck *check, const char *where)
{
    const TreeNode *own = check_says_itself(check, "unit");
    gboolean shown =
        check->unit ? kind_equal(unit_kind(check->unit), check->kind) : kind_is_pure(check->kind);
    if (shown || check->asks == LIMITS_ANSWER || check->asks == LIMITS_TEXT)
        return TRUE;
    g_autofree char *kind = kind_text(check->kind);
    g_autofree char *message =
        check->unit ? g_strdup_printf("the formula gives %s, which is not shown in this unit", kind)
                    : g_strdup_printf("the formula gives %s, for which the plan has no unit; add "
                                      "one to `units`",
                                      kind);
    Site site = {reader, check->step, where, check->line,
                 check->formula ? check->formula_column : check->column};
    if (own)
        fault_at(reader, own, 0, where, message);
    else
        site_fault(&site, 0, message);
    return FALSE;
}

static void find_places(PlanCheck *check)
{
    for (guint i = 0; i < check->axes->len; i++)
        if (g_strcmp0(axis_name(check->axes->pdata[i]), check->choose) != 0)
            g_ptr_array_add(check->places, check->axes->pdata[i]);
}

void bind_check(Reader *reader, PlanCheck *check)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", check->step->name, check->name);
    check->state = BINDING_NOW;
    reader->depth++;
    gboolean good = !check->formula_text || bind_formula(reader, check, where);
    if (good) {
        good = parse_limits(reader, check, where) && bind_sides(reader, check, where) &&
               bind_unit(reader, check, where);
        check->state = good ? BINDING_DONE : BINDING_FAULTY;
    }
    if (good) {
        bind_wear(reader, check, where);
        bind_doubt(reader, check, where);
        bind_aim(reader, check, where);
        bind_choice(reader, check, where);
        bind_setting(reader, check, where);
    }
    find_places(check);
    check->state = good ? BINDING_DONE : BINDING_FAULTY;
    reader->depth--;
}
