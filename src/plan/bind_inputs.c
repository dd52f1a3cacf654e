// What is read for a setting, and what its moves disturb.
#include "bind.h"

// The steps of looking through all settings of a plan: more than a workshop's plan comes near to.
enum { LOOKED_MOST = 2000000 };

// A step whose formulas are worked out once with nothing read: what they come to waits for the
// readings they use. What is not disturbed by a move is open and waits for nothing told.
typedef struct {
    const Plan *plan;
    const PlanStep *step;
    GHashTable *values; // by PlanCheck: Array
    GArray *sources;    // PlanInput: what each source stands for
} Look;

// Whether moves of the step's settings may disturb what this check comes to: in the same step, and
// neither a setting of its own nor a finding.
static gboolean is_moved(const PlanStep *step, const PlanCheck *check)
{
    return check->step == step && !check->setting && !check->finding &&
           (check->asks == LIMITS_VALUE || check->asks == LIMITS_ANY) &&
           check->state == BINDING_DONE;
}

static Array *look_at(Look *look, const Formula *formula);

static Array *look_at_read(Look *look, const PlanCheck *check)
{
    Array *value = array_new((const Axis *const *)check->axes->pdata, check->axes->len);
    for (guint i = 0; i < array_size(value) && is_moved(look->step, check); i++) {
        PlanInput input = {.check = check, .place = i};
        array_set_awaited(value, i, (gint)look->sources->len);
        g_array_append_val(look->sources, input);
    }
    return value;
}

static Array *value_of(const char *name, gpointer user)
{
    Look *look = user;
    const PlanCheck *check = plan_check(look->plan, name);
    if (!check)
        return site_given(look->plan, name);
    Array *value = g_hash_table_lookup(look->values, check);
    if (!value) {
        gboolean worked_out = check->formula && is_moved(look->step, check);
        value = worked_out ? look_at(look, check->formula) : look_at_read(look, check);
        g_hash_table_insert(look->values, (gpointer)check, value);
    }
    return array_copy(value);
}

static Array *look_at(Look *look, const Formula *formula)
{
    FormulaContext context = {.value = value_of, .first_doubt = -1, .user = look};
    return formula_evaluate(formula, &context, NULL, NULL);
}

// By the place of the setting, then in the order its formula names the checks, then by place.
static gint compare_inputs(gconstpointer one, gconstpointer other, gpointer user)
{
    GHashTable *order = user;
    const PlanInput *a = one, *b = other;
    guint named_a = GPOINTER_TO_UINT(g_hash_table_lookup(order, a->check));
    guint named_b = GPOINTER_TO_UINT(g_hash_table_lookup(order, b->check));
    if (a->of != b->of)
        return a->of < b->of ? -1 : 1;
    if (named_a != named_b)
        return named_a < named_b ? -1 : 1;
    return (a->place > b->place) - (a->place < b->place);
}

// What one place of a setting uses.
static void add_uses(const Look *look, PlanCheck *setting, guint of, const GArray *uses,
                     GHashTable *order)
{
    for (guint i = 0; i < uses->len; i++) {
        gint source = g_array_index(uses, gint, i);
        PlanInput input = g_array_index(look->sources, PlanInput, source);
        input.of = of;
        g_array_append_val(setting->setting->inputs, input);
        if (!g_hash_table_contains(order, input.check)) {
            guint next = g_hash_table_size(order);
            g_hash_table_insert(order, (gpointer)input.check, GUINT_TO_POINTER(next));
        }
    }
}

static void add_setting(gpointer check, gpointer order, gpointer setting)
{
    (void)order;
    g_ptr_array_add(((PlanCheck *)check)->moved_by, setting);
}

// Adds what all places of a setting use, with the order in which its checks are named; FALSE where
// it is too much.
static gboolean find_uses(Reader *reader, Look *look, PlanCheck *setting, GHashTable *order)
{
    g_autoptr(Array) value = look_at(look, setting->formula);
    g_autoptr(GArray) uses = g_array_new(FALSE, FALSE, sizeof(gint));
    guint64 left = LOOKED_MOST - reader->looked;
    gboolean good = TRUE;
    for (guint i = 0; value && good && i < array_size(value); i++) {
        g_array_set_size(uses, 0);
        good = place_awaited(array_place(value, i), uses, &left);
        add_uses(look, setting, i, uses, order);
    }
    reader->looked = LOOKED_MOST - left;
    return good;
}

// What one of an axis is chosen of has no reading of its own at each place that is judged. NULL if
// there is none.
static const PlanCheck *chosen_of(const GArray *inputs)
{
    for (guint i = 0; i < inputs->len; i++)
        if (g_array_index(inputs, PlanInput, i).check->choose)
            return g_array_index(inputs, PlanInput, i).check;
    return NULL;
}

// A setting whose readings cannot be told has none, and says so.
static void refuse_inputs(Reader *reader, PlanCheck *setting, const char *message)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", check \"%s\": ", setting->step->name, setting->name);
    g_array_set_size(setting->setting->inputs, 0);
    late_fault(reader, setting->line, setting->formula_column, where, message);
}

static void bind_formula_inputs(Reader *reader, Look *look, PlanCheck *setting)
{
    g_autoptr(GHashTable) order = g_hash_table_new(NULL, NULL);
    GArray *inputs = setting->setting->inputs;
    if (!find_uses(reader, look, setting, order)) {
        refuse_inputs(reader, setting,
                      "too many readings in all are used by the settings of this plan; fold fewer "
                      "places for each place of a setting");
        return;
    }
    const PlanCheck *chosen = chosen_of(inputs);
    if (chosen) {
        g_autofree char *message =
            g_strdup_printf("one %s is chosen of `%s`, so no setting can be worked out of it; "
                            "leave out its `choose`, or the `set` here",
                            chosen->choose, chosen->name);
        refuse_inputs(reader, setting, message);
        return;
    }
    g_array_sort_with_data(inputs, compare_inputs, order);
    g_hash_table_foreach(order, add_setting, setting);
}

// A check that is read is its own input.
static void add_itself(PlanCheck *setting)
{
    for (guint i = 0; !setting->choose && i < places_count(setting->axes); i++) {
        PlanInput input = {.check = setting, .place = i, .of = i};
        g_array_append_val(setting->setting->inputs, input);
    }
}

static void bind_setting_inputs(Reader *reader, Look *look, PlanCheck *check)
{
    if (!check->formula)
        add_itself(check);
    else if (!check->choose)
        bind_formula_inputs(reader, look, check);
    if (!check->formula || !check->setting->inputs->len)
        g_ptr_array_add(check->moved_by, check);
    bind_each(reader, check);
}

static void free_array(gpointer array)
{
    array_free(array);
}

// Formulas stand mostly below those they use: looked at in that order, none is reached through many
// others.
static void look_at_step(Look *look)
{
    for (guint i = 0; i < look->step->checks->len; i++) {
        const PlanCheck *check = g_ptr_array_index(look->step->checks, i);
        if (check->formula && is_moved(look->step, check))
            array_free(value_of(check->name, look));
    }
}

void bind_inputs(Reader *reader, const PlanStep *step)
{
    g_autoptr(GHashTable) values = g_hash_table_new_full(NULL, NULL, NULL, free_array);
    g_autoptr(GArray) sources = g_array_new(FALSE, FALSE, sizeof(PlanInput));
    Look look = {reader->plan, step, values, sources};
    for (guint i = 0; i < step->checks->len; i++) {
        PlanCheck *check = g_ptr_array_index(step->checks, i);
        if (!check->setting || check->state != BINDING_DONE)
            continue;
        if (check->formula && !g_hash_table_size(values))
            look_at_step(&look);
        bind_setting_inputs(reader, &look, check);
    }
}
