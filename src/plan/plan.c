#include <standbook/plan/plan.h>

#include "read.h"

#include <string.h>

static void free_setting(PlanSetting *setting)
{
    if (!setting)
        return;
    unit_free(setting->unit);
    number_free(setting->least);
    number_free(setting->most);
    number_free(setting->step);
    number_free(setting->gives);
    g_clear_pointer(&setting->stock, g_ptr_array_unref);
    g_array_unref(setting->inputs);
    g_free(setting);
}

void free_check(gpointer data)
{
    PlanCheck *check = data;
    g_ptr_array_unref(check->axes);
    g_ptr_array_unref(check->places);
    g_ptr_array_unref(check->limits);
    formula_free(check->formula);
    unit_free(check->unit);
    number_free(check->wear);
    number_free(check->doubt);
    number_free(check->aim_value);
    g_ptr_array_unref(check->with);
    g_ptr_array_unref(check->rests_on);
    g_ptr_array_unref(check->settled_by);
    g_ptr_array_unref(check->moved_by);
    free_setting(check->setting);
    g_free(check);
}

void free_group(gpointer data)
{
    PlanGroup *group = data;
    g_ptr_array_unref(group->axes);
    g_ptr_array_unref(group->lubricants);
    g_ptr_array_unref(group->with_new);
    number_free(group->length);
    number_free(group->ceiling);
    number_free(group->instead_of);
    g_free(group);
}

void free_step(gpointer data)
{
    PlanStep *step = data;
    GPtrArray *arrays[] = {step->dos,        step->cautions, step->hides,      step->after,
                           step->closes,     step->holds,    step->uses,       step->parts,
                           step->read_again, step->checks,   step->tightenings};
    for (gsize i = 0; i < G_N_ELEMENTS(arrays); i++)
        g_ptr_array_unref(arrays[i]);
    g_free(step->before);
    g_free(step);
}

void plan_free(Plan *plan)
{
    if (!plan)
        return;
    GPtrArray *arrays[] = {plan->units, plan->gates, plan->given, plan->consumables,
                           plan->steps, plan->axes,  plan->pairs};
    for (gsize i = 0; i < G_N_ELEMENTS(arrays); i++)
        g_ptr_array_unref(arrays[i]);
    g_hash_table_unref(plan->checks);
    g_hash_table_unref(plan->groups);
    g_hash_table_unref(plan->parts);
    tree_free(plan->tree);
    faults_free(plan->notices);
    g_string_chunk_free(plan->words);
    g_free(plan);
}

const Axis *plan_axis(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->axes->len; i++) {
        const Axis *axis = g_ptr_array_index(plan->axes, i);
        if (g_str_equal(axis_name(axis), name))
            return axis;
    }
    return NULL;
}

const PlanStep *plan_step(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->steps->len; i++) {
        const PlanStep *step = g_ptr_array_index(plan->steps, i);
        if (g_str_equal(step->name, name))
            return step;
    }
    return NULL;
}

const PlanCheck *plan_check(const Plan *plan, const char *name)
{
    return g_hash_table_lookup(plan->checks, name);
}

const PlanGroup *plan_group(const Plan *plan, const char *name)
{
    return g_hash_table_lookup(plan->groups, name);
}

const PlanPart *plan_part(const Plan *plan, const char *name)
{
    return g_hash_table_lookup(plan->parts, name);
}

gboolean plan_is_family(const Plan *one, const Plan *other)
{
    return one->family || other->family ? g_strcmp0(one->family, other->family) == 0
                                        : g_strcmp0(one->name, other->name) == 0;
}

gboolean plan_reads_again(const PlanStep *step, const PlanCheck *check)
{
    for (guint i = 0; i < step->read_again->len; i++)
        if (((const PlanName *)step->read_again->pdata[i])->check == check)
            return TRUE;
    return FALSE;
}

const PlanTightening *plan_tightening(const PlanStep *step, const char *group)
{
    for (guint i = 0; i < step->tightenings->len; i++) {
        const PlanTightening *tightening = step->tightenings->pdata[i];
        if (strcmp(tightening->group->name, group) == 0)
            return tightening;
    }
    return NULL;
}

gboolean consumable_has_clock(const PlanConsumable *consumable)
{
    return consumable->fit_within || consumable->fluid_after || consumable->run_after;
}

const PlanConsumable *plan_consumable(const Plan *plan, const char *name)
{
    for (guint i = 0; i < plan->consumables->len; i++) {
        const PlanConsumable *consumable = g_ptr_array_index(plan->consumables, i);
        if (g_str_equal(consumable->name, name))
            return consumable;
    }
    return NULL;
}

const Unit *plan_unit(const Plan *plan, Kind kind)
{
    for (guint i = 0; i < plan->units->len; i++)
        if (kind_equal(unit_kind(g_ptr_array_index(plan->units, i)), kind))
            return g_ptr_array_index(plan->units, i);
    return NULL;
}

Unit *plan_torque_unit(const Plan *plan)
{
    g_autoptr(Unit) usual = unit_parse("N·m", NULL);
    const Unit *own = plan_unit(plan, unit_kind(usual));
    return unit_copy(own ? own : usual);
}

gboolean plan_step_follows(const PlanStep *later, const PlanStep *earlier)
{
    return (later->before[earlier->index / 64] >> (earlier->index % 64) & 1) != 0;
}

guint places_count(const GPtrArray *axes)
{
    gsize count = 1;
    for (guint i = 0; i < axes->len; i++) {
        const Axis *axis = g_ptr_array_index(axes, i);
        count = MIN(count * axis_size(axis), G_MAXUINT);
    }
    return (guint)count;
}

gboolean places_meet(const GPtrArray *axes, const char *const *labels, const GPtrArray *others,
                     const char *const *other_labels)
{
    if (!labels || !other_labels)
        return TRUE;
    for (guint i = 0; i < axes->len; i++)
        for (guint j = 0; j < others->len; j++)
            if (strcmp(axis_name(axes->pdata[i]), axis_name(others->pdata[j])) == 0 &&
                strcmp(labels[i], other_labels[j]) != 0)
                return FALSE;
    return TRUE;
}

char *places_label(const GPtrArray *axes, guint index)
{
    GString *label = g_string_new(NULL);
    for (guint i = axes->len; i > 0; i--) {
        const Axis *axis = g_ptr_array_index(axes, i - 1);
        guint size = (guint)axis_size(axis);
        if (label->len)
            g_string_prepend(label, ", ");
        g_string_prepend(label, axis_label(axis, index % size));
        index /= size;
    }
    return g_string_free(label, FALSE);
}

// Whether the labels of a limit stand in a place, in the order of its axes: `1, 2` is not `2, 1`.
static gboolean fits(const PlanLimit *limit, const char *const *labels)
{
    gsize found = 0;
    for (gsize i = 0; limit->labels && limit->labels[found] && labels[i]; i++)
        found += strcmp(limit->labels[found], labels[i]) == 0 ? 1 : 0;
    return !limit->labels || !limit->labels[found];
}

const PlanLimit *check_limit_at(const PlanCheck *check, const char *const *labels)
{
    for (guint i = 0; i < check->limits->len; i++)
        if (fits(check->limits->pdata[i], labels))
            return check->limits->pdata[i];
    return NULL;
}

// What was worked out is cut where its limits end; what was read is not.
static gboolean shows_all(const PlanCheck *check)
{
    return !check->decimals_said && (!check->formula || check->asks == LIMITS_ANY);
}

static gboolean is_whole_in(const Number *shown, guint decimals)
{
    g_autofree char *digits = number_decimal(shown, decimals);
    g_autoptr(Number) back = number_from_text(digits, NULL);
    return back && number_equal(back, shown);
}

// The fewest decimals from `least` on that show the number whole; of one that has no end, and
// would be a bare whole number, some.
static guint decimals_needed(const Number *shown, guint least)
{
    enum { MORE_DECIMALS = 6, SOME_DECIMALS = 3 };
    for (guint decimals = least; decimals <= least + MORE_DECIMALS; decimals++)
        if (is_whole_in(shown, decimals))
            return decimals;
    return least ? least : SOME_DECIMALS;
}

static guint value_decimals(const PlanCheck *check, const Number *value, guint typed)
{
    g_autoptr(Number) shown = unit_from_base(check->unit, value);
    guint least = MAX(check->decimals, typed);
    return shows_all(check) ? decimals_needed(shown, least) : check->decimals;
}

char *check_value_words(const PlanCheck *check, const Number *value)
{
    return check_typed_words(check, value, 0);
}

char *check_words_finer(const PlanCheck *check, const Number *value, guint more)
{
    g_autoptr(Number) shown = unit_from_base(check->unit, value);
    return number_decimal(shown, check->decimals + more);
}

char *check_typed_words(const PlanCheck *check, const Number *value, guint typed)
{
    g_autoptr(Number) shown = unit_from_base(check->unit, value);
    return number_decimal(shown, value_decimals(check, value, typed));
}

char *check_typed_shown(const PlanCheck *check, const Number *value, guint typed)
{
    return unit_show(check->unit, value, value_decimals(check, value, typed));
}

Number *check_step(const PlanCheck *check)
{
    g_autoptr(Number) ten = number_from_integer(10);
    g_autoptr(Number) last = number_power(ten, -(gint)check->decimals);
    return unit_width_to_base(check->unit, last);
}

char *check_width_words(const PlanCheck *check, const Number *width)
{
    g_autoptr(Number) shown = unit_width_from_base(check->unit, width);
    return number_decimal(shown, check->decimals);
}

// Whether a number is at least half of the last of so many decimals.
static gboolean reaches(const Number *number, guint decimals)
{
    g_autofree char *digits = number_decimal(number, decimals);
    return strpbrk(digits, "123456789") != NULL;
}

// Rounded up, in so many decimals, or more where it would not reach the last.
static char *doubt_words(const PlanCheck *check, const Number *doubt, guint decimals)
{
    enum { MORE_DECIMALS = 3 };
    g_autoptr(Number) shown = unit_width_from_base(check->unit, doubt);
    guint most = decimals + MORE_DECIMALS;
    while (decimals < most && !reaches(shown, decimals))
        decimals++;
    g_autofree char *digits = number_decimal_up(shown, decimals);
    return g_strdup(digits + (g_str_has_prefix(digits, "0.") ? 1 : 0));
}

char *check_doubt_words(const PlanCheck *check, const Number *doubt)
{
    return doubt_words(check, doubt, check->decimals);
}

char *check_doubt_beside(const PlanCheck *check, const Number *value, guint typed,
                         const Number *doubt)
{
    enum { DECIMALS_MOST = 5 }; // what a table has room for
    guint beside = MIN(value_decimals(check, value, typed), DECIMALS_MOST);
    return doubt_words(check, doubt, MAX(beside, check->decimals));
}

char *check_stated_words(const PlanCheck *check, const Number *value)
{
    g_autoptr(Number) shown = unit_from_base(check->unit, value);
    return number_decimal(shown, decimals_needed(shown, check->decimals));
}

char *check_stated_width(const PlanCheck *check, const Number *width)
{
    g_autoptr(Number) shown = unit_width_from_base(check->unit, width);
    return number_decimal(shown, decimals_needed(shown, check->decimals));
}

// A limit is never printed rounded where it has an end: a 64th of an inch has six decimals. What
// has none is cut where nothing hangs on it any more.
static char *limit_digits(const PlanCheck *check, const Number *shown)
{
    enum { MORE_DECIMALS = 3, DECIMALS_OF_A_64TH = 6 };
    guint cut = check->decimals + MORE_DECIMALS, most = MAX(cut, DECIMALS_OF_A_64TH);
    guint decimals = check->decimals;
    while (decimals <= most && !is_whole_in(shown, decimals))
        decimals++;
    return number_decimal(shown, decimals <= most ? decimals : cut);
}

char *check_limit_words(const PlanCheck *check, const Number *limit)
{
    g_autoptr(Number) shown = unit_from_base(check->unit, limit);
    return limit_digits(check, shown);
}

char *check_excess_words(const PlanCheck *check, const Number *excess)
{
    g_autoptr(Number) shown = unit_width_from_base(check->unit, excess);
    return limit_digits(check, shown);
}

char *check_stated_doubt(const PlanCheck *check, const Number *doubt, const Number *stated)
{
    g_autoptr(Number) shown = unit_width_from_base(check->unit, stated);
    return doubt_words(check, doubt, decimals_needed(shown, check->decimals));
}

enum { SIXTY_FOURTHS = 64, LEAST_DECIMALS = 3 };

static Number *nearest_64th(const Number *inches)
{
    g_autoptr(Number) below = number_from_integer(SIXTY_FOURTHS);
    g_autoptr(Number) parts = number_multiply(inches, below);
    g_autofree char *rounded = number_decimal(parts, 0);
    g_autoptr(Number) whole = number_from_text(rounded, NULL);
    return number_divide(whole, below);
}

// ` -.00035`, with all the digits it has; empty where nothing is over that so many would show.
static char *over_words(const Number *over, guint decimals)
{
    g_autoptr(Number) size = number_abs(over);
    if (!reaches(size, decimals))
        return g_strdup("");
    g_autofree char *digits = number_decimal(size, decimals_needed(size, decimals));
    return g_strconcat(number_sign(over) < 0 ? " -" : " +",
                       digits + (g_str_has_prefix(digits, "0.") ? 1 : 0), NULL);
}

char *check_inch_words(const PlanCheck *check, const Number *value)
{
    if (!check->unit || strcmp(unit_text(check->unit), "in") != 0)
        return NULL;
    g_autoptr(Number) inches = unit_from_base(check->unit, value);
    g_autoptr(Number) near = nearest_64th(inches);
    if (number_sign(near) == 0)
        return NULL;
    g_autoptr(Number) over = number_subtract(inches, near);
    g_autofree char *mixed = number_mixed(near, SIXTY_FOURTHS);
    char *joint = strchr(mixed + 1, '-');
    if (joint)
        *joint = ' ';
    g_autofree char *rest = over_words(over, MAX(check->decimals, LEAST_DECIMALS));
    return g_strconcat(mixed, rest, NULL);
}

gboolean setting_has_stock(const PlanSetting *setting, const Number *position)
{
    gboolean there = !setting->stock;
    for (guint i = 0; !there && i < setting->stock->len; i++)
        there = number_equal(setting->stock->pdata[i], position);
    return there;
}
