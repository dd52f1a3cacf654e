// The tool that was found wrong, as the reason of a doubt.
#include "wrong_tool.h"

#include <standbook/work/ago.h>
#include <standbook/work/subject.h>
#include <standbook/work/tool_cause.h>
#include <string.h>

const Entry *wrong_tool(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    gboolean wrong = made->tool.state == TOOL_WRONG &&
                     (made->reason == REASON_TOOL || made->reason == REASON_BASIS);
    return wrong ? agenda->entries[made->tool.entry - 1] : NULL;
}

const char *wrong_tool_label(const Taken *taken, const Entry *news)
{
    return taken_tool(taken, calibration_text(news, "tool"));
}

char *wrong_tool_words(const Taken *taken, const Entry *news, Moment now)
{
    g_autofree char *day = ago_day(entry_moment(news), now);
    const char *certificate = calibration_text(news, "certificate"),
               *note = calibration_text(news, "note");
    return g_strdup_printf("%s %s (%s%s%s).", wrong_tool_label(taken, news),
                           note ? note : "was found wrong", certificate ? certificate : "",
                           certificate ? ", " : "", day);
}

char *found_good_words(const char *label, Moment now)
{
    g_autofree char *today = moment_text(now);
    return g_strdup_printf("in standbook log --shop: INITIALS calibration %s %.10s good", label,
                           today);
}

gint64 uses_by_then(const Entry *tick)
{
    gint64 before = entry_number(tick, "uses");
    return before ? before + (gint64)entry_list_length(tick, "bolts") : 0;
}

// `was due 15 Oct 2025`, of a tool that had no calibration in force.
static char *late_words(const Agenda *agenda, const ToolCause *tool, Moment now)
{
    const Entry *use = agenda->entries[tool->use - 1];
    if (tool->state == TOOL_UNKNOWN)
        return g_strdup("has no calibration");
    gint64 uses = uses_by_then(use);
    if (uses)
        return g_strdup_printf("was used %" G_GINT64_FORMAT " times since its calibration", uses);
    g_autofree char *due = tool_ran_out(agenda->entries, tool);
    g_autofree char *words = ago_day(moment_of_day(due), now);
    return g_strdup_printf("was due %s", words);
}

char *late_tool_words(const Agenda *agenda, const Taken *taken, guint index, Moment now)
{
    const Requirement *made = agenda_made(agenda, index);
    gboolean doubted = made->verdict == VERDICT_IN_DOUBT && made->reason == REASON_TOOL &&
                       (made->tool.state == TOOL_OVERDUE || made->tool.state == TOOL_UNKNOWN);
    const char *tool = doubted ? entry_tool(agenda->entries[made->tool.use - 1]) : NULL;
    if (!tool)
        return NULL;
    const char *label = taken_tool(taken, tool);
    g_autofree char *late = late_words(agenda, &made->tool, now);
    g_autofree char *good = found_good_words(label, now);
    return g_strdup_printf("%s %s: what it was used for since is in doubt.\n"
                           "Found good it stands, %s",
                           label, late, good);
}
