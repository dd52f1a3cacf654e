#include "tool_digits.h"

#include <string.h>

// A label, and where it stands among all.
typedef struct {
    char *label;
    gboolean beside; // it serves another need
    guint adapter; // of a wrench: 0 without one, 1 with the one that the plan names, 2 with another
    gint64 seq;    // when the shop took it up
} Ranked;

static gint compare(gconstpointer one, gconstpointer other)
{
    const Ranked *first = one, *second = other;
    if (first->beside != second->beside)
        return first->beside ? 1 : -1;
    if (first->adapter != second->adapter)
        return first->adapter < second->adapter ? -1 : 1;
    return first->seq < second->seq ? -1 : first->seq > second->seq;
}

static guint adapter_rank(const ToolNeed *need, const char *label)
{
    const char *with = need->need == NEED_TORQUE ? strstr(label, " with ") : NULL;
    if (!with)
        return 0;
    return g_strcmp0(with + strlen(" with "), need->sort) == 0 ? 1 : 2;
}

static gint64 seq_of(const Desk *desk, const char *label)
{
    g_auto(GStrv) parts = g_strsplit(label, " with ", 2);
    const Entry *tool = shop_find(session_shop(desk->shop), "tool", parts[0]);
    return tool ? tool->seq : 0;
}

static gboolean has(const GPtrArray *labels, const char *label)
{
    return g_ptr_array_find_with_equal_func((GPtrArray *)labels, label, g_str_equal, NULL);
}

static void add(const Desk *desk, const ToolNeed *need, const GPtrArray *serving, const char *label,
                GArray *ranked)
{
    for (guint i = 0; i < ranked->len; i++)
        if (strcmp(g_array_index(ranked, Ranked, i).label, label) == 0)
            return;
    Ranked one = {g_strdup(label), !has(serving, label), adapter_rank(need, label),
                  seq_of(desk, label)};
    if (ranked->len < TOOL_DIGITS)
        g_array_append_val(ranked, one);
    else
        g_free(one.label);
}

GPtrArray *tool_digits(Desk *desk, const ToolNeed *need, const GaugeChoices *choices)
{
    g_autoptr(GPtrArray) serving =
        need->need == NEED_TORQUE ? toolbox_wrenches(desk, need) : toolbox_all(desk, need);
    g_autoptr(GArray) ranked = g_array_new(FALSE, FALSE, sizeof(Ranked));
    GPtrArray *labels = g_ptr_array_new_with_free_func(g_free);
    for (guint i = 0; choices && i < choices->gauges->len; i++)
        add(desk, need, serving, g_array_index(choices->gauges, GaugeChoice, i).label, ranked);
    for (guint i = 0; i < serving->len; i++)
        add(desk, need, serving, serving->pdata[i], ranked);
    g_array_sort(ranked, compare);
    for (guint i = 0; i < ranked->len; i++)
        g_ptr_array_add(labels, g_array_index(ranked, Ranked, i).label);
    return labels;
}
