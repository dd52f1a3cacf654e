#include "bolt_tool.h"

#include "bench_work.h"

#include <standbook/work/agenda_item.h>
#include <standbook/work/wrench.h>
#include <string.h>

// The adapter that the plan names for a bolt, if the shop has a tool of that label; else NULL.
static char *planned_adapter(const Desk *desk, const Tightening *tightening, const Turn *turn)
{
    g_autofree char *words = wrench_adapter(tightening->plan->group, turn->made->place);
    return words && wrench_adapter_tool(session_shop(desk->shop), words) ? g_steal_pointer(&words)
                                                                         : NULL;
}

// What the stage asks for at that bolt, in base units, also where it is worked out from what was
// read there; NULL where that is not known yet.
static Number *amount_at(Desk *desk, const Stage *stage, const Turn *turn)
{
    BenchWork work;
    guint index;
    Number *constant = stage->formula ? formula_constant(stage->formula) : NULL;
    if (constant || !stage->formula || !bench_work(desk, turn->made->step->name, &work) ||
        !g_ptr_array_find(work.agenda.assessment->requirements, turn->made, &index))
        return constant;
    g_auto(AgendaItem) item = agenda_item(&work.agenda, index);
    return item.amount ? unit_to_base(item.amount_unit, item.amount) : NULL;
}

// What is asked of a tool at a stage; FALSE if none is needed. `*value` and `*adapter`, which the
// need points to, are freed by the caller.
static gboolean stage_needs(Desk *desk, const Tightening *tightening, const Turn *turn,
                            ToolNeed *need, Number **value, char **adapter)
{
    const Stage *stage = tightening_stage(tightening, turn->stage);
    gboolean angle = stage_is_angle(stage->kind);
    if (!stage_is_torque(stage->kind) && stage->kind != STAGE_UNTIL && !angle)
        return FALSE;
    *value = amount_at(desk, stage, turn);
    *adapter = angle ? NULL : planned_adapter(desk, tightening, turn);
    *need =
        (ToolNeed){.need = angle ? NEED_ANGLE : NEED_TORQUE,
                   .sort = *adapter,
                   .value = *value,
                   .ceiling = stage->kind == STAGE_UNTIL ? tightening->plan->group->ceiling : NULL};
    return TRUE;
}

// What the tool is set to, or turned by, in base units; NULL if that is not known.
static Number *set_of(const Desk *desk, const ToolNeed *need, const BoltTool *tool)
{
    return need->value
               ? wrench_setting(need->value, session_shop(desk->shop), tool->tool, tool->adapter)
               : NULL;
}

// `18.5`, in the unit of the wrench's range, else of the stage; it is said unless both the stage
// and the plan have it: `20 lbf·ft`. NULL where the stage has no torque of its own.
static char *set_words(const Desk *desk, const Tightening *tightening, const Turn *turn,
                       const ToolNeed *need, BoltTool *tool)
{
    if (need->need != NEED_TORQUE || !need->value)
        return NULL;
    g_autofree char *written = tightening_unit(tightening, turn->stage);
    g_autoptr(Unit) own = wrench_unit(shop_find(session_shop(desk->shop), "tool", tool->tool));
    g_autoptr(Unit) unit = own ? g_steal_pointer(&own) : unit_parse(written, NULL);
    tool->unknown = !tool->set;
    if (!tool->set)
        return g_strdup("?");
    g_autofree char *set = wrench_setting_words(tool->set, unit);
    gboolean other =
        strcmp(unit_text(unit), tightening->torque) != 0 || strcmp(unit_text(unit), written) != 0;
    return g_strconcat(set, other ? " " : "", other ? unit_text(unit) : "", NULL);
}

// What the bolt gets, also where the stage is worked out; NULL where that is no torque.
static char *torque_words(const Tightening *tightening, const Turn *turn, const ToolNeed *need)
{
    if (need->need != NEED_TORQUE || !need->value)
        return NULL;
    g_autofree char *written = tightening_unit(tightening, turn->stage);
    g_autoptr(Unit) unit = unit_parse(written, NULL);
    g_autoptr(Number) shown = unit_from_base(unit, need->value);
    return number_short(shown);
}

BoltTool bolt_tool(Desk *desk, const Tightening *tightening, const Turn *turn)
{
    BoltTool tool = {.tool = NULL};
    ToolNeed need;
    g_autoptr(Number) value = NULL;
    g_autofree char *adapter = NULL;
    gboolean needed = stage_needs(desk, tightening, turn, &need, &value, &adapter);
    tool.torque = needed ? torque_words(tightening, turn, &need) : NULL;
    tool.tool = needed ? toolbox_for(desk, &need) : NULL;
    tool.by_mark = needed && !tool.tool && need.need == NEED_ANGLE && toolbox_is_none(desk, &need);
    tool.asked = needed && !tool.tool && !tool.by_mark;
    tool.wrong = needed && !tool.by_mark ? toolbox_wrong_words(desk, &need, tool.tool) : NULL;
    if (!tool.tool) {
        tool.words = tool.asked ? g_strdup_printf("g: which %s?", need_words(need.need))
                                : g_strdup(tool.by_mark ? "by a mark" : "");
        return tool;
    }
    const char *chosen = need.need == NEED_TORQUE ? toolbox_adapter(desk) : NULL;
    tool.adapter = g_strdup(!chosen ? adapter : *chosen ? chosen : NULL);
    tool.need = need.need;
    tool.ceiling = need.ceiling;
    tool.set = set_of(desk, &need, &tool);
    g_autofree char *set = set_words(desk, tightening, turn, &need, &tool);
    tool.words = g_strconcat(tool.tool, tool.adapter ? " with " : "",
                             tool.adapter ? tool.adapter : "", set ? " set " : "", set, NULL);
    return tool;
}

void bolt_tool_clear(BoltTool *tool)
{
    g_clear_pointer(&tool->adapter, g_free);
    g_clear_pointer(&tool->torque, g_free);
    g_clear_pointer(&tool->set, number_free);
    g_clear_pointer(&tool->words, g_free);
    g_clear_pointer(&tool->wrong, g_free);
}

Go bolt_tool_ask(Desk *desk, const Tightening *tightening, const Turn *turn)
{
    g_autoptr(Number) value = NULL;
    g_autofree char *adapter = NULL;
    ToolNeed need;
    if (!stage_needs(desk, tightening, turn, &need, &value, &adapter))
        return go(GO_STAY);
    g_autofree char *text = value ? number_text(value) : g_strdup(""),
                    *ceiling = need.ceiling ? number_text(need.ceiling) : g_strdup("");
    return go_open(VIEW_GAUGE, g_strdup_printf("%c%s\n%s\n%s", need.need == NEED_ANGLE ? 'A' : 'T',
                                               adapter ? adapter : "", text, ceiling));
}

char *bolt_tool_line(const BoltTool *tool)
{
    return g_strconcat(tool->tool ? " with " : "", tool->tool ? tool->tool : "",
                       tool->adapter ? " adapter " : "", tool->adapter, NULL);
}

gboolean bolt_tool_same(Desk *desk, const Tightening *tightening, const Turn *one,
                        const Turn *other)
{
    g_autofree char *first = planned_adapter(desk, tightening, one),
                    *second = planned_adapter(desk, tightening, other);
    return one == other || (!toolbox_adapter(desk) && g_strcmp0(first, second) == 0);
}
