#include "tool_wrong.h"

#include <standbook/work/ago.h>
#include <standbook/work/tool_standing.h>
#include <string.h>

// What of the build in hand is in doubt for that tool.
static guint count_doubtful(Desk *desk, const char *tool)
{
    Session *session = desk_build(desk);
    const GPtrArray *all = session ? session_assessment(session)->requirements : NULL;
    guint count = 0;
    for (guint i = 0; all && i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        const Entry *entry = made->entry ? session_entries(session)->pdata[made->entry - 1] : NULL;
        gboolean doubtful = made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_TOOL;
        count += doubtful && entry && g_strcmp0(entry_tool(entry), tool) == 0 ? 1 : 0;
    }
    return count;
}

static char *line_of(Desk *desk, const char *label, const Entry *tool, const Entry *wrong)
{
    g_autofree char *day = ago_day(moment_of_day(entry_text(wrong, "date")), desk->now);
    const char *paper = entry_text(wrong, "certificate");
    guint count = count_doubtful(desk, entry_text(tool, "id"));
    g_autofree char *doubt =
        count ? g_strdup_printf("%u in doubt; Backspace, f, %s: where", count, label)
              : g_strdup("nothing in doubt");
    return g_strdup_printf(" %s was found wrong on %s%s%s%s: %s", label, day, paper ? " (" : "",
                           paper ? paper : "", paper ? ")" : "", doubt);
}

char *tool_wrong_lines(Desk *desk, const GPtrArray *labels)
{
    const Shop *shop = session_shop(desk->shop);
    g_autoptr(GHashTable) said = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    GString *lines = g_string_new(NULL);
    for (guint i = 0; i < labels->len; i++) {
        g_auto(GStrv) parts = g_strsplit(labels->pdata[i], " with ", 2);
        const Entry *tool = shop_find(shop, "tool", parts[0]);
        const Entry *wrong = tool ? tool_found_wrong(shop, tool, desk->now) : NULL;
        if (!wrong || !g_hash_table_add(said, g_strdup(parts[0])))
            continue;
        g_autofree char *line = line_of(desk, parts[0], tool, wrong);
        g_string_append_printf(lines, "%s%s", lines->len ? "\n" : "", line);
    }
    return g_string_free(lines, FALSE);
}
