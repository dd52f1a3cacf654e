#include "no_gauge.h"

#include <standbook/sheet/figures.h>
#include <string.h>

// The reading of the check that was entered last, at any place, and stands; NULL for none.
static const Entry *read_last(const Agenda *agenda, const PlanCheck *check)
{
    const GPtrArray *all = agenda->assessment->requirements;
    gint64 last = 0;
    for (guint i = 0; i < all->len; i++) {
        const Requirement *other = all->pdata[i];
        if (other->check && strcmp(other->check->name, check->name) == 0)
            last = MAX(last, other->entry);
    }
    return last ? agenda->entries[last - 1] : NULL;
}

// Whether the shop has a gauge of that sort that reads such, or had one.
static gboolean has_one_for(const Desk *desk, const PlanCheck *check)
{
    if (!check->gauge)
        return FALSE;
    g_autoptr(GPtrArray) all = shop_all(session_shop(desk->shop), "tool", check->gauge);
    for (guint i = 0; i < all->len; i++)
        if (!tool_reads_otherwise(all->pdata[i], check->kind))
            return TRUE;
    return FALSE;
}

char *no_gauge_words(const Desk *desk, const Agenda *agenda, const Requirement *made,
                     const char *gauge)
{
    const PlanCheck *check = made->check;
    if (gauge || made->asked != ASKED_READ || !made->value || !check || check->formula)
        return NULL;
    const ToolNeed need = bench_need(made);
    const Entry *last = read_last(agenda, check);
    gboolean expected = last ? entry_tool(last) != NULL : has_one_for(desk, check);
    if (!expected || toolbox_is_none(desk, &need))
        return NULL;
    g_autofree char *doubt = figure_doubt(made);
    return g_strdup_printf("no gauge: by its digits%s%s; Enter again keeps it; erased, g names one",
                           *doubt ? ", " : "", doubt);
}
