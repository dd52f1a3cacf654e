#include "read.h"

#include <string.h>

static void free_part(gpointer data)
{
    PlanPart *part = data;
    g_ptr_array_unref(part->axes);
    g_free(part);
}

static void free_tightening(gpointer data)
{
    PlanTightening *tightening = data;
    g_ptr_array_unref(tightening->stages);
    g_free(tightening->order);
    g_free(tightening->each);
    g_free(tightening);
}

// `named` is where the name stands. A name twice keeps the first.
static PlanPart *add_part(Reader *reader, PlanStep *step, const TreeNode *named,
                          const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("step \"%s\", part \"%s\": ", step->name, named->text);
    PlanPart *part = g_new0(PlanPart, 1);
    part->name = named->text;
    part->step = step;
    part->count = 1;
    part->node = node;
    g_ptr_array_add(step->parts, part);
    const PlanPart *other = plan_part(reader->plan, part->name);
    if (other) {
        g_autofree char *message = g_strdup_printf(
            "there is a part of this name already, in step \"%s\"; give this one another name",
            other->step->name);
        fault_at(reader, named, 0, where, message);
    } else {
        g_hash_table_insert(reader->plan->parts, (gpointer)part->name, part);
    }
    check_plain_name(reader, named, where);
    return part;
}

static void read_part(Reader *reader, PlanStep *step, const TreeNode *node)
{
    g_autofree char *where =
        g_strdup_printf("step \"%s\", part \"%s\": ", step->name, node->key->text);
    PlanPart *part = add_part(reader, step, node->key, node);
    if (node->kind != TREE_SCALAR || *node->text)
        schema_check(&schema_of_part, node, where, reader->faults);
    part->axes = read_places(reader, schema_get(&schema_of_part, node, "at"), NULL, where);
    const char *count = text_of(&schema_of_part, node, "count");
    part->count = count ? (guint)g_ascii_strtoull(count, NULL, 10) : 1;
    if (part->count == 0 || part->count > LABELS_MOST)
        fault_at(reader, tree_get(node, "count"), 0, where, "count: write 1 to 1000");
    part->new_needed = g_strcmp0(text_of(&schema_of_part, node, "use"), "new") == 0;
    part->track = text_of(&schema_of_part, node, "track");
    part->formerly = text_of(&schema_of_part, node, "formerly");
}

// `fit: crank`, `fit: [crank, shells]` or with a mapping for each.
static void read_parts(Reader *reader, PlanStep *step, const TreeNode *node)
{
    if (node && node->kind == TREE_SCALAR)
        add_part(reader, step, node, node)->axes = g_ptr_array_new();
    for (guint i = 0; node && i < tree_count(node); i++) {
        const TreeNode *item = tree_at(node, i);
        if (node->kind == TREE_MAP)
            read_part(reader, step, item);
        else
            add_part(reader, step, item, item)->axes = g_ptr_array_new();
    }
}

static void add_hold(PlanStep *step, const char *words, guint persons)
{
    PlanHold *hold = g_new0(PlanHold, 1);
    hold->words = words;
    hold->persons = persons;
    g_ptr_array_add(step->holds, hold);
}

static void read_holds(Reader *reader, PlanStep *step, const TreeNode *node, const char *where)
{
    if (node && node->kind == TREE_SCALAR)
        add_hold(step, node->text, 1);
    for (guint i = 0; node && i < tree_count(node); i++) {
        const TreeNode *item = tree_at(node, i);
        gboolean two = g_str_equal(item->text, "two persons");
        if (!two && !g_str_equal(item->text, "second person"))
            fault_at(reader, item, 0, where, "hold: write `second person` or `two persons`");
        add_hold(step, item->key->text, two ? 2 : 1);
    }
}

// Gate and phase hold until the next that is said.
static void read_gate(Reader *reader, PlanStep *step, const TreeNode *node, const char *where)
{
    const TreeNode *gate = schema_get(&schema_of_step, node, "gate");
    const TreeNode *phase = schema_get(&schema_of_step, node, "phase");
    GPtrArray *gates = reader->plan->gates;
    if (phase)
        reader->phase = phase->text;
    step->phase = reader->phase;
    guint index = 0;
    while (gate && index < gates->len && !g_str_equal(gates->pdata[index], gate->text))
        index++;
    if (gate && index == gates->len)
        fault_unknown(reader, gate, where, "gate", (const char *const *)gates->pdata, gates->len);
    else if (gate && index < reader->gate)
        fault_at(reader, gate, 0, where, "this gate lies before that of the step above");
    else if (gate)
        reader->gate = index;
    step->gate = reader->gate;
}

static GPtrArray *unresolved(const TreeNode *node, const char *key)
{
    GPtrArray *names = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) nodes = nodes_of(&schema_of_step, node, key);
    for (guint i = 0; i < nodes->len; i++) {
        PlanName *name = g_new0(PlanName, 1);
        name->node = g_ptr_array_index(nodes, i);
        g_ptr_array_add(names, name);
    }
    return names;
}

static PlanStep *step_new(const TreeNode *node)
{
    PlanStep *step = g_new0(PlanStep, 1);
    step->name = node->key->text;
    step->node = node;
    step->dos = texts_of(&schema_of_step, node, "do");
    step->cautions = texts_of(&schema_of_step, node, "caution");
    step->hides = texts_of(&schema_of_step, node, "hides");
    step->after = g_ptr_array_new();
    step->closes = unresolved(node, "closes");
    step->read_again = unresolved(node, "read again");
    step->holds = g_ptr_array_new_with_free_func(g_free);
    step->uses = g_ptr_array_new();
    step->parts = g_ptr_array_new_with_free_func(free_part);
    step->checks = g_ptr_array_new();
    step->tightenings = g_ptr_array_new_with_free_func(free_tightening);
    step->begins = text_of(&schema_of_step, node, "begins");
    step->formerly = text_of(&schema_of_step, node, "formerly");
    return step;
}

void read_steps(Reader *reader, const TreeNode *node)
{
    g_autofree char *where = g_strdup_printf("step \"%s\": ", node->key->text);
    if (node->kind != TREE_SCALAR || *node->text)
        schema_check(&schema_of_step, node, where, reader->faults);
    check_plain_name(reader, node->key, where);
    PlanStep *step = step_new(node);
    step->index = reader->plan->steps->len;
    g_ptr_array_add(reader->plan->steps, step);
    const char *minutes = text_of(&schema_of_step, node, "minutes");
    step->minutes = minutes ? (guint)g_ascii_strtoull(minutes, NULL, 10) : 0;
    read_gate(reader, step, node, where);
    read_holds(reader, step, schema_get(&schema_of_step, node, "hold"), where);
    read_parts(reader, step, schema_get(&schema_of_step, node, "fit"));
    read_groups(reader, step, schema_get(&schema_of_step, node, "fasteners"));
    read_checks(reader, step,
                schema_get(&schema_of_step, node, "checks")); // at the bolts of groups
    read_retightens(reader, step, schema_get(&schema_of_step, node, "retighten"));
}
