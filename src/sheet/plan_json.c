#include "plan_words.h"

#include <standbook/plan/requirement.h>
#include <standbook/sheet/plan_sheet.h>

static json_t *texts_json(const GPtrArray *texts)
{
    json_t *list = json_array();
    for (guint i = 0; i < texts->len; i++)
        json_array_append_new(list, json_string(g_ptr_array_index(texts, i)));
    return list;
}

static json_t *names_json(const GPtrArray *names)
{
    json_t *list = json_array();
    for (guint i = 0; i < names->len; i++) {
        const PlanName *name = g_ptr_array_index(names, i);
        json_array_append_new(list, json_string(name->node->text));
    }
    return list;
}

static json_t *places_json(const GPtrArray *axes)
{
    json_t *list = json_array();
    for (guint i = 0; axes->len && i < places_count(axes); i++) {
        g_autofree char *label = places_label(axes, i);
        json_array_append_new(list, json_string(label));
    }
    return list;
}

static json_t *limits_json(const PlanCheck *check)
{
    json_t *all = json_object();
    for (guint i = 0; i < check->limits->len; i++) {
        const PlanLimit *limit = g_ptr_array_index(check->limits, i);
        json_object_set_new(all, limit->label ? limit->label : "",
                            json_string(limits_text(limit->limits)));
    }
    return all;
}

static json_t *check_json(const PlanCheck *check)
{
    return json_pack("{s:s,s:s?,s:o,s:o,s:s?,s:s?,s:o}", "name", check->name, "formula",
                     check->formula_text, "places", places_json(check->places), "limits",
                     limits_json(check), "unit", check->unit ? unit_text(check->unit) : NULL,
                     "gauge", check->gauge, "written", rest_json(check->node, check_columns()));
}

static json_t *part_json(const PlanPart *part)
{
    return json_pack("{s:s,s:o,s:i,s:s,s:s?}", "name", part->name, "places",
                     places_json(part->axes), "count", (int)part->count, "use",
                     part->new_needed ? "new" : "may be reused", "track", part->track);
}

static json_t *order_json(const PlanTightening *tightening)
{
    json_t *list = json_array();
    for (guint i = 0; i < places_count(tightening->group->axes); i++) {
        g_autofree char *label = places_label(tightening->group->axes, tightening->order[i]);
        json_array_append_new(list, json_string(label));
    }
    return list;
}

static json_t *tightening_json(const PlanTightening *tightening)
{
    const PlanGroup *group = tightening->group;
    json_t *stages = json_array();
    for (guint i = 0; i < tightening->stages->len; i++) {
        const Stage *stage = g_ptr_array_index(tightening->stages, i);
        json_array_append_new(stages, json_string(stage->text));
    }
    return json_pack("{s:s,s:b,s:o,s:o,s:o,s:o}", "bolts", group->name, "again", tightening->again,
                     "positions", places_json(group->axes), "stages", stages, "order",
                     order_json(tightening), "written",
                     tightening->again ? json_object() : rest_json(group->node, group_columns()));
}

static json_t *holds_json(const PlanStep *step)
{
    json_t *list = json_array();
    for (guint i = 0; i < step->holds->len; i++) {
        const PlanHold *hold = g_ptr_array_index(step->holds, i);
        json_array_append_new(
            list, json_pack("{s:s,s:i}", "words", hold->words, "persons", (int)hold->persons));
    }
    return list;
}

static void put_lists(json_t *object, const PlanStep *step)
{
    json_t *after = json_array(), *uses = json_array(), *parts = json_array();
    json_t *checks = json_array(), *tightenings = json_array();
    for (guint i = 0; i < step->after->len; i++)
        json_array_append_new(
            after, json_string(((const PlanStep *)g_ptr_array_index(step->after, i))->name));
    for (guint i = 0; i < step->uses->len; i++)
        json_array_append_new(
            uses, json_string(((const PlanConsumable *)g_ptr_array_index(step->uses, i))->name));
    for (guint i = 0; i < step->parts->len; i++)
        json_array_append_new(parts, part_json(g_ptr_array_index(step->parts, i)));
    for (guint i = 0; i < step->checks->len; i++)
        json_array_append_new(checks, check_json(g_ptr_array_index(step->checks, i)));
    for (guint i = 0; i < step->tightenings->len; i++)
        json_array_append_new(tightenings,
                              tightening_json(g_ptr_array_index(step->tightenings, i)));
    const struct {
        const char *key;
        json_t *list;
    } lists[] = {{"after", after},
                 {"do", texts_json(step->dos)},
                 {"cautions", texts_json(step->cautions)},
                 {"uses", uses},
                 {"hides", texts_json(step->hides)},
                 {"closes", names_json(step->closes)},
                 {"read again", names_json(step->read_again)},
                 {"holds", holds_json(step)},
                 {"parts", parts},
                 {"checks", checks},
                 {"tightenings", tightenings}};
    for (gsize i = 0; i < G_N_ELEMENTS(lists); i++)
        json_object_set_new(object, lists[i].key, lists[i].list);
}

static json_t *step_json(const Plan *plan, const PlanStep *step)
{
    json_t *object = json_pack("{s:i,s:s,s:s?,s:s,s:i,s:s?}", "number", (int)step->index + 1,
                               "name", step->name, "phase", step->phase, "gate",
                               (const char *)g_ptr_array_index(plan->gates, step->gate), "minutes",
                               (int)step->minutes, "begins", step->begins);
    put_lists(object, step);
    return object;
}

// A mapping of the plan's head as it is written; an empty one where there is none.
static json_t *top_json(const Plan *plan, const char *key)
{
    const TreeNode *node = tree_get(plan->tree, key);
    return node ? node_json(node) : json_object();
}

json_t *plan_json(const Plan *plan)
{
    json_t *steps = json_array(), *units = json_array();
    for (guint i = 0; i < plan->units->len; i++)
        json_array_append_new(units, json_string(unit_text(g_ptr_array_index(plan->units, i))));
    for (guint i = 0; i < plan->steps->len; i++)
        json_array_append_new(steps, step_json(plan, g_ptr_array_index(plan->steps, i)));
    return json_pack("{s:s,s:s?,s:s?,s:s?,s:o,s:o,s:o,s:o,s:I,s:o,s:o,s:o}", "plan", plan->name,
                     "revision", plan->revision, "family", plan->family, "source", plan->source,
                     "numbering", node_json(tree_get(plan->tree, "numbering")), "note",
                     node_json(tree_get(plan->tree, "note")), "gates", texts_json(plan->gates),
                     "units", units, "asked", (json_int_t)plan_requirement_count(plan), "given",
                     top_json(plan, "given"), "consumables", top_json(plan, "consumables"), "steps",
                     steps);
}
