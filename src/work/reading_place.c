#include "reading_place.h"

static gboolean is_at(const Requirement *made, const Entry *entry)
{
    if (made->asked != ASKED_READ || !made->check || made->withdrawn ||
        g_strcmp0(made->name, entry_text(entry, "check")) != 0 ||
        g_strcmp0(made->step->name, entry_text(entry, "step")) != 0)
        return FALSE;
    return entry_is_at(entry, (const char *const *)made->labels);
}

const Requirement *reading_place(const Assessment *assessment, const Entry *entry)
{
    for (guint i = 0; i < assessment->requirements->len; i++)
        if (is_at(assessment->requirements->pdata[i], entry))
            return assessment->requirements->pdata[i];
    return NULL;
}
