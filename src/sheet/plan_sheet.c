#include "plan_words.h"

#include <standbook/base/text.h>
#include <standbook/plan/requirement.h>
#include <standbook/sheet/plan_sheet.h>
#include <string.h>

static void fact(Document *document, const char *before, const char *text)
{
    g_autofree char *line = text && *text ? g_strconcat(before, text, NULL) : NULL;
    if (line)
        document_line(document, line);
}

static const char *top_text(const Plan *plan, const char *key)
{
    const TreeNode *node = tree_get(plan->tree, key);
    return node && node->kind == TREE_SCALAR ? node->text : NULL;
}

typedef const char *(*NameOf)(gconstpointer item);

static char *joined(const GPtrArray *items, NameOf name_of)
{
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < items->len; i++)
        g_string_append_printf(words, "%s%s", i ? ", " : "", name_of(g_ptr_array_index(items, i)));
    return g_string_free(words, FALSE);
}

static const char *own_text(gconstpointer item)
{
    return item;
}

static const char *step_name(gconstpointer item)
{
    return ((const PlanStep *)item)->name;
}

static const char *consumable_name(gconstpointer item)
{
    return ((const PlanConsumable *)item)->name;
}

static const char *written_name(gconstpointer item)
{
    return ((const PlanName *)item)->node->text;
}

static const char *unit_name(gconstpointer item)
{
    return unit_text(item);
}

static void fact_list(Document *document, const char *before, const GPtrArray *items,
                      NameOf name_of)
{
    g_autofree char *words = joined(items, name_of);
    fact(document, before, words);
}

// HEAD ------------------------------------------------------------------------------------------

static void named_row(Document *document, const char *name, const TreeNode *node)
{
    g_autofree char *words = node_words(node);
    document_row(document, (const char *const[]){name, words});
}

static void section_given(Document *document, const Plan *plan)
{
    const DocumentColumn columns[] = {{"", ALIGN_LEFT}, {"", ALIGN_LEFT}};
    if (plan->given->len) {
        document_heading(document, 2, "Given");
        document_table(document, columns, G_N_ELEMENTS(columns));
    }
    for (guint i = 0; i < plan->given->len; i++) {
        const PlanGiven *given = g_ptr_array_index(plan->given, i);
        named_row(document, given->name, given->node);
    }
    if (plan->consumables->len) {
        document_heading(document, 2, "Consumables");
        document_table(document, columns, G_N_ELEMENTS(columns));
    }
    for (guint i = 0; i < plan->consumables->len; i++) {
        const PlanConsumable *each = g_ptr_array_index(plan->consumables, i);
        named_row(document, each->name, each->node);
    }
}

static void section_plan(Document *document, const Plan *plan)
{
    g_autoptr(Unit) torque = plan_torque_unit(plan);
    g_autofree char *steps = text_counted(plan->steps->len, "step");
    g_autofree char *things = text_counted(plan_requirement_count(plan), "thing");
    g_autofree char *counts =
        g_strdup_printf("%s %s for %s. Torques are in %s where no unit stands.", steps,
                        plan->steps->len == 1 ? "asks" : "ask", things, unit_text(torque));
    fact(document, "revision ", plan->revision);
    fact(document, "family: ", plan->family);
    fact(document, "source: ", plan->source);
    fact(document, "numbering: ", top_text(plan, "numbering"));
    fact(document, "note: ", top_text(plan, "note"));
    fact_list(document, "gates: ", plan->gates, own_text);
    fact_list(document, "units: ", plan->units, unit_name);
    document_line(document, counts);
    section_given(document, plan);
}

// STEPS -----------------------------------------------------------------------------------------

static void section_parts(Document *document, const PlanStep *step)
{
    const DocumentColumn columns[] = {
        {"fit", ALIGN_LEFT}, {"", ALIGN_LEFT}, {"", ALIGN_WHOLE}, {"", ALIGN_WHOLE}};
    if (step->parts->len)
        document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < step->parts->len; i++) {
        const PlanPart *part = g_ptr_array_index(step->parts, i);
        g_autofree char *at = axes_words(part->axes);
        g_autofree char *count = part->count > 1 ? g_strdup_printf("%u", part->count) : NULL;
        g_autofree char *where =
            g_strconcat(count ? count : "", count && *at ? " at each " : "", at, NULL);
        g_autofree char *track = part->track ? g_strconcat(part->track, " asked", NULL) : NULL;
        document_row(document,
                     (const char *const[]){part->name, where,
                                           part->new_needed ? "new" : "may be reused", track});
    }
}

static void put_rest(Document *document, const char *rest)
{
    if (*rest)
        document_under(document, rest);
}

// The unit stands behind the limits, and the decimals are those of the figures there.
static void section_checks(Document *document, const PlanStep *step)
{
    static const char *const shown[] = {"at", "limits", "gauge", "unit", "decimals", NULL};
    const DocumentColumn columns[] = {
        {"check", ALIGN_LEFT}, {"at", ALIGN_LEFT}, {"limits", ALIGN_LEFT}, {"gauge", ALIGN_LEFT}};
    if (step->checks->len)
        document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < step->checks->len; i++) {
        const PlanCheck *check = g_ptr_array_index(step->checks, i);
        const char *formula = check->formula_text;
        g_autofree char *at = axes_words(check->places), *limits = check_limits_words(check);
        g_autofree char *rest = rest_words(check->node, shown);
        g_autofree char *under = g_strconcat(formula ? "= " : "", formula ? formula : "",
                                             formula && *rest ? "; " : "", rest, NULL);
        gboolean read = !formula && check->asks == LIMITS_VALUE;
        document_row(document,
                     (const char *const[]){check->name, at, limits, read ? check->gauge : ""});
        put_rest(document, under);
    }
}

static char *order_words(const PlanTightening *tightening)
{
    const GPtrArray *axes = tightening->group->axes;
    guint count = places_count(axes);
    gboolean numbered = TRUE;
    GString *words = g_string_new(NULL);
    for (guint i = 0; i < count; i++) {
        g_autofree char *label = places_label(axes, tightening->order[i]);
        numbered = numbered && tightening->order[i] == i;
        g_string_append_printf(words, "%s%s", i == 0 ? "" : axes->len > 1 ? "; " : " ", label);
    }
    if (numbered)
        g_string_assign(words, count > 1 ? "as numbered" : "");
    return g_string_free(words, FALSE);
}

static void section_tightenings(Document *document, const PlanStep *step)
{
    const DocumentColumn columns[] = {{"bolt set", ALIGN_LEFT},
                                      {"bolts", ALIGN_LEFT},
                                      {"stages", ALIGN_LEFT},
                                      {"order", ALIGN_LEFT}};
    if (step->tightenings->len)
        document_table(document, columns, G_N_ELEMENTS(columns));
    for (guint i = 0; i < step->tightenings->len; i++) {
        const PlanTightening *each = g_ptr_array_index(step->tightenings, i);
        const PlanGroup *group = each->group;
        g_autofree char *name = g_strconcat(group->name, each->again ? ", again" : "", NULL);
        g_autofree char *bolts = axes_words(group->axes), *stages = stages_words(each);
        g_autofree char *order = order_words(each);
        g_autofree char *rest =
            each->again ? g_strdup("") : rest_words(group->node, group_columns());
        document_row(document, (const char *const[]){name, bolts, stages, order});
        put_rest(document, rest);
    }
}

static void section_signatures(Document *document, const PlanStep *step)
{
    for (guint i = 0; i < step->holds->len; i++) {
        const PlanHold *hold = g_ptr_array_index(step->holds, i);
        g_autofree char *line = g_strdup_printf(
            "HOLD: %s (%s)", hold->words, hold->persons > 1 ? "two persons" : "a second person");
        document_line(document, line);
    }
}

// Said only where it is not simply the step above.
static char *after_words(const Plan *plan, const PlanStep *step)
{
    const PlanStep *above =
        step->index > 0 ? g_ptr_array_index(plan->steps, step->index - 1) : NULL;
    if (step->after->len == 0)
        return g_strdup(above ? "; after nothing" : "");
    if (step->after->len == 1 && g_ptr_array_index(step->after, 0) == above)
        return g_strdup("");
    g_autofree char *names = joined(step->after, step_name);
    return g_strconcat("; after ", names, NULL);
}

static void section_step(Document *document, const Plan *plan, const PlanStep *step)
{
    g_autofree char *heading = g_strdup_printf("%u  %s", step->index + 1, step->name);
    g_autofree char *minutes =
        step->minutes ? g_strdup_printf(", %u min", step->minutes) : g_strdup("");
    g_autofree char *after = after_words(plan, step);
    g_autofree char *line =
        g_strconcat(step->phase ? step->phase : "", step->phase ? ", " : "", "gate ",
                    (const char *)g_ptr_array_index(plan->gates, step->gate), minutes, after, NULL);
    document_heading(document, 2, heading);
    document_line(document, line);
    for (guint i = 0; i < step->dos->len; i++)
        fact(document, "", g_ptr_array_index(step->dos, i));
    for (guint i = 0; i < step->cautions->len; i++)
        fact(document, "CAUTION: ", g_ptr_array_index(step->cautions, i));
    fact(document, "begins: ", step->begins);
    fact_list(document, "uses: ", step->uses, consumable_name);
    fact_list(document, "closes: ", step->closes, written_name);
    fact_list(document, "hides: ", step->hides, own_text);
    fact_list(document, "read again: ", step->read_again, written_name);
    section_signatures(document, step);
    section_parts(document, step);
    section_tightenings(document, step);
    section_checks(document, step);
}

Document *sheet_plan(const Plan *plan)
{
    g_autofree char *title = g_strconcat("Plan ", plan->name, NULL);
    Document *document = document_new("plan", title);
    section_plan(document, plan);
    for (guint i = 0; i < plan->steps->len; i++)
        section_step(document, plan, g_ptr_array_index(plan->steps, i));
    return document;
}
