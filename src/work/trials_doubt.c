// Which tightened readings of a trial tell nothing of the next.
#include <standbook/work/trials.h>

// A tool that was found wrong, then or since, misleads; merely overdue it still tells most.
gboolean trial_place_misleads(const Trial *trial, guint place)
{
    const Requirement *made = trial->places[place].made;
    gboolean basis = made->reason == REASON_BASIS;
    if (trial->joined)
        return TRUE;
    if (made->verdict != VERDICT_IN_DOUBT || (!basis && made->reason != REASON_TOOL))
        return FALSE;
    return made->tool.state == TOOL_GOOD ? basis : made->tool.state == TOOL_WRONG;
}
