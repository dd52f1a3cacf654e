#include <standbook/work/wrench.h>

#include <standbook/plan/adapter.h>
#include <standbook/rules/tool.h>
#include <string.h>

// Whether the bolt is among `4`, `2, 4` or `2 and 4`.
static gboolean is_listed(const char *bolts, const char *place)
{
    g_auto(GStrv) labels = g_strsplit_set(bolts, " ,", -1);
    return g_strv_contains((const char *const *)labels, place);
}

char *wrench_adapter(const PlanGroup *group, const char *place)
{
    const char *bolts = NULL;
    g_autofree char *front = group->adapter ? adapter_front(group->adapter->text, &bolts) : NULL;
    return !bolts || is_listed(bolts, place) ? g_steal_pointer(&front) : NULL;
}

gboolean wrench_is_adapter(const Entry *tool)
{
    g_autoptr(Number) reach = entry_amount(tool, "reach"),
                      greatest = entry_amount(tool, "greatest");
    return reach && !greatest;
}

// The tool that the words name, and its angle.
static const Entry *tool_named(const Shop *shop, const char *words, Number **angle)
{
    g_autofree char *label = NULL;
    return adapter_read(words, &label, angle, NULL) ? shop_find(shop, "tool", label) : NULL;
}

const Entry *wrench_adapter_tool(const Shop *shop, const char *words)
{
    g_autoptr(Number) angle = NULL;
    const Entry *tool = tool_named(shop, words, &angle);
    return tool && wrench_is_adapter(tool) ? tool : NULL;
}

// How far an adapter reaches along the wrench; NULL if that is not known.
static Number *reach_of(const Shop *shop, const char *words)
{
    g_autoptr(Number) angle = NULL;
    const Entry *tool = tool_named(shop, words, &angle);
    g_autoptr(Number) reach = tool ? entry_amount(tool, "reach") : NULL;
    return reach ? tool_reach_along(reach, angle) : NULL;
}

Number *wrench_setting(const Number *torque, const Shop *shop, const char *wrench,
                       const char *adapter)
{
    const Entry *tool = shop_find(shop, "tool", wrench);
    g_autoptr(Number) length = adapter && tool ? entry_amount(tool, "reach") : NULL,
                      reach = length ? reach_of(shop, adapter) : NULL;
    if (!adapter)
        return number_copy(torque);
    return reach ? tool_setting(torque, length, reach) : NULL;
}

Unit *wrench_unit(const Entry *tool)
{
    const char *greatest = tool ? entry_value(tool, "greatest", "unit") : NULL;
    const char *words = greatest || !tool ? greatest : entry_value(tool, "least", "unit");
    return words ? unit_parse(words, NULL) : NULL;
}

char *wrench_setting_words(const Number *setting, const Unit *unit)
{
    enum { MOST = 4 }; // characters of an exact setting
    g_autoptr(Number) shown = unit_from_base(unit, setting);
    g_autofree char *exact = number_text(shown);
    return strlen(exact) <= MOST && !strchr(exact, '/') ? g_steal_pointer(&exact)
                                                        : number_decimal(shown, 1);
}
