#include <standbook/work/wrench.h>

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
    static const char *const between[] = {" on bolts ", " on bolt "};
    const char *words = group->adapter ? group->adapter->text : NULL;
    for (gsize i = 0; words && i < G_N_ELEMENTS(between); i++) {
        const char *at = strstr(words, between[i]);
        if (at)
            return is_listed(at + strlen(between[i]), place) ? g_strndup(words, (gsize)(at - words))
                                                             : NULL;
    }
    return g_strdup(words);
}

gboolean wrench_is_adapter(const Entry *tool)
{
    g_autoptr(Number) reach = entry_amount(tool, "reach"),
                      greatest = entry_amount(tool, "greatest");
    return reach && !greatest;
}

Number *wrench_setting(const Number *torque, const Entry *wrench, const Entry *adapter)
{
    g_autoptr(Number) length = adapter ? entry_amount(wrench, "reach") : NULL,
                      reach = adapter ? entry_amount(adapter, "reach") : NULL;
    if (!adapter)
        return number_copy(torque);
    return length && reach ? tool_setting(torque, length, reach) : NULL;
}

char *wrench_setting_words(const Number *setting, const Unit *unit)
{
    enum { MOST = 4 }; // characters of an exact setting
    g_autoptr(Number) shown = unit_from_base(unit, setting);
    g_autofree char *exact = number_text(shown);
    return strlen(exact) <= MOST && !strchr(exact, '/') ? g_steal_pointer(&exact)
                                                        : number_decimal(shown, 1);
}
