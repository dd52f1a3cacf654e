// Which tightened readings of a trial tell nothing of the next.
#include "wrong_tool.h"

#include <standbook/record/live.h>
#include <standbook/work/gave.h>
#include <standbook/work/trials.h>

// Whether the tool used there was found wrong, then or since; merely overdue it still tells most.
static gboolean is_found_wrong(const Agenda *agenda, guint use)
{
    gint64 seq = agenda_made(agenda, use)->entry;
    const Entry *entry = seq ? agenda->entries[seq - 1] : NULL;
    if (!entry || !entry_tool(entry))
        return FALSE;
    g_autofree gboolean *live = g_new(gboolean, agenda->count + 1);
    live_entries(agenda->entries, agenda->count, live);
    g_autoptr(GArray) calibrations =
        gave_calibrations(agenda->entries, agenda->count, live, entry_tool(entry));
    return gave_wrong(calibrations, entry) != NULL;
}

gboolean trial_place_misleads(const Trials *trials, const Trial *trial, guint place)
{
    const Requirement *made = trial->places[place].made;
    gboolean basis = made->reason == REASON_BASIS;
    if (trial->joined)
        return TRUE;
    if (made->verdict != VERDICT_IN_DOUBT || (!basis && made->reason != REASON_TOOL))
        return FALSE;
    const Assessment *assessment = trial->then ? trial->then : trials->assessment;
    const Agenda agenda = {trials->plan, assessment, trials->entries, trials->count};
    guint index = 0;
    g_ptr_array_find(assessment->requirements, made, &index);
    guint use = tool_use(&agenda, index);
    return use == AGENDA_NOWHERE ? basis : is_found_wrong(&agenda, use);
}
