// What is read for a setting, and what its moves disturb.
#include "bind.h"

#include <string.h>

// A formula looked at with one place of one check read and all else open: what counts that reading
// uses it.
typedef struct {
    const Plan *plan;
    const PlanCheck *read;
    guint place;
    GHashTable *values; // by PlanCheck: Array, of formulas already worked out
} Look;

// Whether a move of the setting disturbs what this check comes to: in the same step, and neither a
// setting of its own nor a finding.
static gboolean is_moved(const PlanCheck *setting, const PlanCheck *check)
{
    return check && check->step == setting->step && !check->setting && !check->finding &&
           (check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY) &&
           check->state == BINDING_DONE;
}

// Adds the checks that are read for a formula, each once, in the order they are named.
static void add_read(const Plan *plan, const PlanCheck *setting, const Formula *formula,
                     GHashTable *seen, GPtrArray *read)
{
    for (gsize i = 0; i < formula_name_count(formula); i++) {
        PlanCheck *check = g_hash_table_lookup(plan->checks, formula_name(formula, i));
        if (!is_moved(setting, check) || !g_hash_table_add(seen, check))
            continue;
        if (check->formula)
            add_read(plan, setting, check->formula, seen, read);
        else
            g_ptr_array_add(read, check);
    }
}

static Array *look_at(Look *look, const Formula *formula);

static Array *value_of(const char *name, gpointer user)
{
    Look *look = user;
    const PlanCheck *check = plan_check(look->plan, name);
    if (!check)
        return site_given(look->plan, name);
    Array *known = g_hash_table_lookup(look->values, check);
    if (known)
        return array_copy(known);
    Array *value = check->formula ? look_at(look, check->formula) : NULL;
    if (!value)
        value = array_new((const Axis *const *)check->axes->pdata, check->axes->len);
    if (check == look->read) {
        g_autoptr(Number) one = number_from_integer(1);
        array_set_reading(value, look->place, one, BOUND_NONE, 0, 0);
    }
    g_hash_table_insert(look->values, (gpointer)check, array_copy(value));
    return value;
}

static Array *look_at(Look *look, const Formula *formula)
{
    FormulaContext context = {.value = value_of, .first_doubt = -1, .user = look};
    return formula_evaluate(formula, &context, NULL, NULL);
}

static void free_array(gpointer array)
{
    array_free(array);
}

// Adds the places of the setting that use one place of a check.
static void add_uses(const Plan *plan, PlanCheck *setting, const PlanCheck *read, guint place)
{
    Look look = {plan, read, place, g_hash_table_new_full(NULL, NULL, NULL, free_array)};
    g_autoptr(Array) value = look_at(&look, setting->formula);
    for (guint i = 0; value && i < array_size(value); i++) {
        PlanInput input = {.check = read, .place = place, .of = i};
        if (array_place(value, i)->read)
            g_array_append_val(setting->setting->inputs, input);
    }
    g_hash_table_unref(look.values);
}

static gint compare_inputs(gconstpointer one, gconstpointer other)
{
    const PlanInput *a = one, *b = other;
    return (a->of > b->of) - (a->of < b->of);
}

// What reading all of it comes to in work, each place once.
static guint64 work_of(const PlanCheck *setting, const GPtrArray *read)
{
    guint64 places = 0;
    for (guint i = 0; i < read->len; i++)
        places += places_count(((const PlanCheck *)read->pdata[i])->axes);
    return places * places_count(setting->axes) * (1 + strlen(setting->formula_text) / 8);
}

// A check that is read is its own input.
static void add_itself(PlanCheck *setting)
{
    for (guint i = 0; !setting->choose && i < places_count(setting->axes); i++) {
        PlanInput input = {.check = setting, .place = i, .of = i};
        g_array_append_val(setting->setting->inputs, input);
    }
}

static void bind_formula_inputs(Reader *reader, PlanCheck *setting)
{
    g_autoptr(GHashTable) seen = g_hash_table_new(NULL, NULL);
    g_autoptr(GPtrArray) read = g_ptr_array_new();
    GArray *inputs = setting->setting->inputs;
    add_read(reader->plan, setting, setting->formula, seen, read);
    if (setting->choose || !can_work(reader, work_of(setting, read)))
        return;
    for (guint i = 0; i < read->len; i++)
        for (guint j = 0; j < places_count(((const PlanCheck *)read->pdata[i])->axes); j++)
            add_uses(reader->plan, setting, read->pdata[i], j);
    g_array_sort(inputs, compare_inputs); // keeps the order of those of one place
    for (guint i = 0; inputs->len && i < read->len; i++)
        g_ptr_array_add(((PlanCheck *)read->pdata[i])->moved_by, setting);
}

void bind_inputs(Reader *reader, PlanCheck *check)
{
    if (!check->setting || check->state != BINDING_DONE)
        return;
    if (check->formula)
        bind_formula_inputs(reader, check);
    else
        add_itself(check);
    if (!check->formula || !check->setting->inputs->len)
        g_ptr_array_add(check->moved_by, check);
}
