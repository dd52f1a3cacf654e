#include "read.h"

#include <standbook/plan/adapter.h>
#include <standbook/rules/pattern.h>
#include <string.h>

static const TreeNode *get(const TreeNode *node, const char *key)
{
    return schema_get(&schema_of_group, node, key);
}

static gboolean says(const TreeNode *node, const char *key, const char *word)
{
    return g_strcmp0(text_of(&schema_of_group, node, key), word) == 0;
}

// The axis whose labels an order or a lubricant names: the only one, or the only one beside `each`.
static const Axis *ordered_axis(const PlanGroup *group)
{
    const TreeNode *each = get(group->node, "each");
    const Axis *found = NULL;
    for (guint i = 0; i < group->axes->len; i++) {
        const Axis *axis = g_ptr_array_index(group->axes, i);
        if (group->axes->len > 1 && each && g_str_equal(axis_name(axis), each->text))
            continue;
        if (found)
            return NULL;
        found = axis;
    }
    return found;
}

static guint label_of(const PlanGroup *group, const Axis *axis, guint position)
{
    for (guint i = group->axes->len; i > 0; i--) {
        const Axis *at = g_ptr_array_index(group->axes, i - 1);
        guint size = (guint)axis_size(at);
        if (at == axis)
            return position % size;
        position /= size;
    }
    return 0;
}

// Marks the positions that `2-4-7-9` or `2..4` names. FALSE with a fault.
static gboolean mark_positions(Reader *reader, const PlanGroup *group, const TreeNode *key,
                               gboolean *positions, const char *where)
{
    const Axis *axis = ordered_axis(group);
    g_autofree char *slashed = g_strdelimit(g_strdup(key->text), "-", '/');
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    g_auto(GStrv) labels = labels_read(slashed, &offset, &error);
    for (gsize i = 0; labels && labels[i]; i++) {
        gssize index = axis ? axis_find(axis, labels[i]) : -1;
        if (index < 0) {
            g_autofree char *message = g_strdup_printf("there is no bolt %s here", labels[i]);
            fault_at(reader, key, 0, where, message);
            return FALSE;
        }
        for (guint j = 0; j < places_count(group->axes); j++)
            positions[j] = positions[j] || label_of(group, axis, j) == (guint)index;
    }
    if (!labels)
        fault_at(reader, key, offset, where, error->message);
    return labels != NULL;
}

static void free_lubricant(gpointer data)
{
    PlanLubricant *lubricant = data;
    g_free(lubricant->positions);
    g_free(lubricant);
}

static PlanLubricant *add_lubricant(PlanGroup *group, const char *words)
{
    PlanLubricant *lubricant = g_new0(PlanLubricant, 1);
    lubricant->words = words;
    lubricant->positions = g_new0(gboolean, places_count(group->axes));
    g_ptr_array_add(group->lubricants, lubricant);
    return lubricant;
}

// Gives the lubricant every position that none before it has.
static void give_others(const PlanGroup *group, PlanLubricant *others)
{
    for (guint i = 0; i < places_count(group->axes); i++) {
        gboolean taken = FALSE;
        for (guint j = 0; j < group->lubricants->len; j++) {
            const PlanLubricant *other = g_ptr_array_index(group->lubricants, j);
            taken = taken || (other != others && other->positions[i]);
        }
        others->positions[i] = !taken;
    }
}

static void read_lubricants(Reader *reader, PlanGroup *group, const char *where)
{
    const TreeNode *node = get(group->node, "lubricant");
    PlanLubricant *others = NULL;
    if (node && node->kind == TREE_SCALAR)
        others = add_lubricant(group, node->text);
    for (guint i = 0; node && i < tree_count(node); i++) {
        const TreeNode *value = tree_at(node, i);
        PlanLubricant *lubricant = add_lubricant(group, value->text);
        if (g_str_equal(value->key->text, "others"))
            others = lubricant;
        else
            mark_positions(reader, group, value->key, lubricant->positions, where);
    }
    if (others)
        give_others(group, others);
}

// Which run each position belongs to: all the same, each bolt its own, or by the label of an axis.
static guint *read_runs(Reader *reader, const PlanGroup *group, const char *where)
{
    guint count = places_count(group->axes);
    guint *runs = g_new0(guint, count);
    const TreeNode *each = get(group->node, "each");
    gboolean single = each && g_str_equal(each->text, "bolt");
    guint inner = count;
    for (guint i = 0; each && i < group->axes->len; i++) {
        const Axis *axis = g_ptr_array_index(group->axes, i);
        guint size = (guint)axis_size(axis);
        inner /= size;
        if (!g_str_equal(axis_name(axis), each->text) || single)
            continue;
        for (guint j = 0; j < count; j++)
            runs[j] = j / inner % size;
        return runs;
    }
    for (guint i = 0; single && i < count; i++)
        runs[i] = i;
    if (each && !single)
        fault_at(reader, each, 0, where, "each: write bolt, or an axis of its bolts");
    return runs;
}

// Spreads an order of the labels of one axis over all positions, run by run.
static guint *spread_order(const PlanGroup *group, const guint *runs, const Axis *axis,
                           const guint *labels)
{
    guint count = places_count(group->axes), size = (guint)axis_size(axis), filled = 0;
    guint *order = g_new0(guint, count);
    gboolean each_bolt = count == size;
    for (guint run = 0; run < count / size; run++)
        for (guint i = 0; i < size; i++)
            for (guint j = 0; j < count; j++)
                if (label_of(group, axis, j) == labels[i] && (each_bolt || runs[j] == run))
                    order[filled++] = j;
    return order;
}

static guint *as_numbered(const PlanGroup *group)
{
    guint *order = g_new0(guint, places_count(group->axes));
    for (guint i = 0; i < places_count(group->axes); i++)
        order[i] = i;
    return order;
}

// The message of pattern_order says itself whether it speaks of the order or the layout.
static void fault_order(Reader *reader, const PlanGroup *group, const char *where,
                        const char *message)
{
    const TreeNode *order = get(group->node, "order");
    gboolean layout = group->layout && (!order || g_str_has_prefix(message, "layout:"));
    fault_at(reader, layout ? group->layout : order, 0, where, message);
}

static GPtrArray *labels_of(const Axis *axis)
{
    GPtrArray *labels = g_ptr_array_new();
    for (gsize i = 0; i < axis_size(axis); i++)
        g_ptr_array_add(labels, (gpointer)axis_label(axis, i));
    return labels;
}

static void read_order(Reader *reader, PlanTightening *tightening, const char *where)
{
    const PlanGroup *group = tightening->group;
    const TreeNode *node = get(group->node, "order");
    const Axis *axis = ordered_axis(group);
    if ((!node && !group->layout) || group->axes->len == 0) {
        tightening->order = as_numbered(group);
        return;
    }
    if (!axis) {
        fault_order(reader, group, where,
                    "order: bolts along several axes need `each` with one of them");
        return;
    }
    g_autoptr(GError) error = NULL;
    g_autoptr(GPtrArray) bolts = labels_of(axis);
    g_autoptr(GArray) labels =
        pattern_order(node ? node->text : NULL, group->layout ? group->layout->text : NULL,
                      (const char *const *)bolts->pdata, bolts->len, &error);
    if (labels)
        tightening->order =
            spread_order(group, tightening->each, axis, (const guint *)(gpointer)labels->data);
    else
        fault_order(reader, group, where, error->message);
}

// An angle stands on a bolt that is snug: behind a torque, and not behind one slackened wholly.
// What is taken up again was tight before.
static void check_snug(Reader *reader, const PlanTightening *tightening, const char *where)
{
    gboolean snug = tightening->again;
    for (guint i = 0; tightening->stages && i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        gboolean turns = stage_is_angle(stage->kind) || stage->kind == STAGE_SLOT;
        if (turns && !snug) {
            late_fault(reader, tightening->stages_at->line,
                       tightening->stages_at->column + (guint)stage->offset, where,
                       "nothing is snug yet; write a snug stage or a torque before this angle");
            return;
        }
        snug = stage->kind == STAGE_SLACKEN ? snug && stage->amount
                                            : snug || stage->kind != STAGE_WAIT;
    }
}

static void read_stages(Reader *reader, PlanTightening *tightening, const TreeNode *node,
                        const char *text, const char *where)
{
    gsize offset = 0;
    g_autoptr(GError) error = NULL;
    tightening->stages_at = node;
    tightening->stages = text ? stages_read(text, &offset, &error) : NULL;
    if (error)
        fault_at(reader, node, offset, where, error->message);
    check_snug(reader, tightening, where);
    for (guint i = 0; tightening->stages && i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        if (stage->kind == STAGE_UNTIL && !get(tightening->group->node, "ceiling"))
            fault_at(reader, node, stage->offset, where,
                     "`until` needs a `ceiling`, the torque that it must not pass");
    }
    if (!tightening->stages)
        tightening->stages = g_ptr_array_new();
}

static PlanTightening *add_tightening(PlanStep *step, const PlanGroup *group, const TreeNode *key)
{
    PlanTightening *tightening = g_new0(PlanTightening, 1);
    tightening->group = group;
    tightening->step = step;
    tightening->line = key->line;
    tightening->column = key->column;
    g_ptr_array_add(step->tightenings, tightening);
    return tightening;
}

static Number *group_amount(Reader *reader, const PlanGroup *group, const char *key,
                            const Unit *bare, const char *where)
{
    const TreeNode *node = get(group->node, key);
    Number *amount = node ? read_amount(reader, node, bare, unit_kind(bare), where) : NULL;
    g_autofree char *above = g_strdup_printf("%s: write an amount above 0", key);
    if (amount && number_sign(amount) <= 0)
        late_fault(reader, node->line, node->column, where, above);
    return amount;
}

// Bare torques and lengths are in the plan's own unit, as its stages and readings are.
static void read_group_amounts(Reader *reader, PlanGroup *group, const char *where)
{
    g_autoptr(Unit) torque = plan_torque_unit(reader->plan);
    g_autoptr(Unit) usual = unit_parse("mm", NULL);
    const Unit *own = plan_unit(reader->plan, unit_kind(usual));
    group->length = group_amount(reader, group, "length", own ? own : usual, where);
    group->ceiling = group_amount(reader, group, "ceiling", torque, where);
    group->instead_of = group_amount(reader, group, "instead of", torque, where);
}

static void read_group_texts(PlanGroup *group)
{
    const TreeNode *node = group->node;
    group->layout = get(node, "layout");
    group->thread = get(node, "thread");
    group->strength = get(node, "class");
    group->clamps = get(node, "clamps");
    group->adapter = get(node, "adapter");
    group->source = get(node, "source");
    group->new_needed = says(node, "use", "new");
    group->once = says(node, "use", "once");
    group->track = text_of(&schema_of_group, node, "track");
    group->with_new = texts_of(&schema_of_group, node, "with new");
    group->then_off = says(node, "then off", "yes");
    group->as_group = says(node, "log", "group");
    group->mark = says(node, "mark", "yes");
    group->formerly = text_of(&schema_of_group, node, "formerly");
}

static void check_adapter(Reader *reader, const PlanGroup *group, const char *where)
{
    g_autofree char *label = NULL;
    g_autoptr(Number) angle = NULL;
    g_autoptr(GError) error = NULL;
    const char *bolts = NULL;
    g_autofree char *front = group->adapter ? adapter_front(group->adapter->text, &bolts) : NULL;
    if (front && !adapter_read(front, &label, &angle, &error))
        late_fault(reader, group->adapter->line, group->adapter->column, where, error->message);
}

// A name twice keeps the first. TRUE if the group is kept by the plan.
static gboolean keep_group(Reader *reader, PlanGroup *group, const char *where)
{
    const PlanGroup *other = plan_group(reader->plan, group->name);
    const PlanCheck *check = plan_check(reader->plan, group->name);
    if (other || check) {
        g_autofree char *there = already_where(reader, other ? other->step : check->step,
                                               other ? other->node->key->line : check->line);
        g_autofree char *message =
            g_strdup_printf("there is a %s of this name already, %s; give this group another name",
                            other ? "group" : "check", there);
        fault_at(reader, group->node->key, 0, where, message);
    }
    if (!other)
        g_hash_table_insert(reader->plan->groups, (gpointer)group->name, group);
    return !other;
}

static void read_group(Reader *reader, PlanStep *step, const TreeNode *node)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", group \"%s\": ", step->name, node->key->text);
    schema_check(&schema_of_group, node, where, reader->faults);
    check_plain_name(reader, node->key, where);
    PlanGroup *group = g_new0(PlanGroup, 1);
    group->name = node->key->text;
    group->step = step;
    group->node = node;
    group->lubricants = g_ptr_array_new_with_free_func(free_lubricant);
    group->axes = read_places(reader, get(node, "bolts"), "bolt", where);
    read_group_texts(group);
    read_group_amounts(reader, group, where);
    if (!keep_group(reader, group, where)) {
        free_group(group);
        return;
    }
    check_adapter(reader, group, where);
    read_lubricants(reader, group, where);
    PlanTightening *tightening = add_tightening(step, group, node->key);
    tightening->each = read_runs(reader, group, where);
    read_order(reader, tightening, where);
    const TreeNode *stages = get(node, "stages");
    read_stages(reader, tightening, stages, stages ? stages->text : NULL, where);
}

void read_groups(Reader *reader, PlanStep *step, const TreeNode *node)
{
    for (guint i = 0; node && i < tree_count(node); i++)
        read_group(reader, step, tree_at(node, i));
}

// Stages of a retighten that every bolt goes through by itself, as with `each: bolt`.
static char *without_one_by_one(const char *text)
{
    static const char one_by_one[] = ", one by one";
    return g_str_has_suffix(text, one_by_one) ? g_strndup(text, strlen(text) - strlen(one_by_one))
                                              : NULL;
}

static void read_retighten(Reader *reader, PlanStep *step, const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("step \"%s\": ", step->name);
    const PlanGroup *group = plan_group(reader->plan, node->key->text);
    if (!group) {
        g_autofree const char **names =
            (const char **)g_hash_table_get_keys_as_array(reader->plan->groups, NULL);
        fault_unknown(reader, node->key, where, "group above", names,
                      g_hash_table_size(reader->plan->groups));
        return;
    }
    if (node->kind != TREE_SCALAR || !*node->text) {
        fault_at(reader, node->key, 0, where, "write stages such as 75, or `as before`");
        return;
    }
    PlanTightening *tightening = add_tightening(step, group, node->key);
    tightening->again = TRUE;
    g_autofree char *alone = without_one_by_one(node->text);
    gboolean as_before = g_str_equal(alone ? alone : node->text, "as before");
    hush(reader, TRUE); // a faulty order was told where the group stands
    tightening->each = read_runs(reader, group, where);
    read_order(reader, tightening, where);
    hush(reader, as_before);
    const TreeNode *stages = as_before ? get(group->node, "stages") : node;
    if (alone) {
        g_free(tightening->each);
        tightening->each = as_numbered(group);
    }
    const char *text = alone && !as_before ? alone : stages ? stages->text : NULL;
    read_stages(reader, tightening, stages, text, where);
    hush(reader, FALSE);
}

void read_retightens(Reader *reader, PlanStep *step, const TreeNode *node)
{
    for (guint i = 0; node && i < tree_count(node); i++)
        read_retighten(reader, step, tree_at(node, i));
}
