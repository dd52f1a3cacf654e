#include "reading_place.h"

#include <string.h>

static gboolean is_at(const Requirement *made, const Entry *entry)
{
    if (made->asked != ASKED_READ || !made->check || made->withdrawn ||
        g_strcmp0(made->name, entry_text(entry, "check")) != 0 ||
        g_strcmp0(made->step->name, entry_text(entry, "step")) != 0 ||
        g_strv_length(made->labels) != entry_list_length(entry, "place"))
        return FALSE;
    for (guint i = 0; made->labels[i]; i++)
        if (strcmp(made->labels[i], entry_list_item(entry, "place", i)) != 0)
            return FALSE;
    return TRUE;
}

const Requirement *reading_place(const Assessment *assessment, const Entry *entry)
{
    for (guint i = 0; i < assessment->requirements->len; i++)
        if (is_at(assessment->requirements->pdata[i], entry))
            return assessment->requirements->pdata[i];
    return NULL;
}
