// An entry as it is said at the stand: the place, what was done there, with what.
#include "agenda_inside.h"

#include <standbook/work/entry_words.h>
#include <string.h>

static char *list_words(const Entry *entry, const char *field)
{
    GString *words = g_string_new(NULL);
    for (gsize i = 0; i < entry_list_length(entry, field); i++)
        g_string_append_printf(words, "%s%s", i ? ", " : "", entry_list_item(entry, field, i));
    return g_string_free(words, FALSE);
}

static const PlanTightening *tightening_of(const Plan *plan, const Entry *entry)
{
    const PlanStep *step = plan_step(plan, entry_text(entry, "step"));
    return step ? plan_tightening(step, entry_text(entry, "tightening")) : NULL;
}

// `bolt 1`, `bolts 1, 3`, `all 18`.
static char *bolts_words(const PlanTightening *tightening, const Entry *entry)
{
    gsize count = entry_list_length(entry, "bolts");
    if (count > 1 && count == places_count(tightening->group->axes))
        return g_strdup_printf("all %" G_GSIZE_FORMAT, count);
    g_autofree char *labels = list_words(entry, "bolts");
    return g_strdup_printf("bolt%s%s%s", count > 1 ? "s" : "", *labels ? " " : "", labels);
}

// What the stage asks for; where that depends on a reading, as it is written.
static char *stage_words(const Plan *plan, const Stage *stage)
{
    g_autoptr(Number) amount = stage->formula ? formula_constant(stage->formula) : NULL;
    g_autoptr(Unit) unit = agenda_amount_unit(plan, stage);
    return agenda_amount_words(stage, amount, unit);
}

static char *tick_said(const Plan *plan, const Taken *taken, const Entry *entry)
{
    const PlanTightening *tightening = tightening_of(plan, entry);
    gint64 stage = entry_number(entry, "stage");
    if (!tightening || stage < 1 || stage > tightening->stages->len)
        return NULL;
    g_autofree char *bolts = bolts_words(tightening, entry);
    const Stage *asked = tightening->stages->pdata[stage - 1];
    gboolean angle = stage_is_angle(asked->kind);
    g_autofree char *amount = stage_words(plan, asked);
    g_autofree char *shown = value_words(json_object_get(entry->body, "value"));
    const char *named = taken_tool(taken, entry_text(entry, "tool"));
    const char *tool = !named && angle ? "by a mark" : named;
    const char *adapter = entry_text(entry, "adapter");
    g_autofree char *set = value_words(json_object_get(entry->body, "setting"));
    return g_strconcat(bolts, " · ", amount, *shown ? " · shown " : "", shown, tool ? " · " : "",
                       tool ? tool : "", adapter ? " with " : "", adapter ? adapter : "",
                       *set ? ", set " : "", set, NULL);
}

static char *read_said(const Entry *entry)
{
    g_autofree char *place = list_words(entry, "place");
    g_autofree char *value = value_words(json_object_get(entry->body, "value"));
    return g_strconcat(entry_text(entry, "check"), *place ? " " : "", place, " · ", value, NULL);
}

char *entry_said(const Plan *plan, const Taken *taken, const Entry *entry)
{
    char *said = NULL;
    if (strcmp(entry->kind->name, "tick") == 0)
        said = tick_said(plan, taken, entry);
    else if (strcmp(entry->kind->name, "read") == 0)
        said = read_said(entry);
    return said ? said : entry_words(taken, entry);
}
