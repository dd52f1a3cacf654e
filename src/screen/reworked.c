#include "reworked.h"

#include <standbook/record/live.h>
#include <string.h>

enum { HOUR = 60 * 60 };

static gboolean is_of(const Entry *entry, const Requirement *made, Moment now)
{
    const char *step = entry_text(entry, "step");
    Moment ago = now - entry_moment(entry);
    return strcmp(entry->kind->name, "rework") == 0 &&
           strcmp(entry_text(entry, "name"), made->name) == 0 &&
           (!step || strcmp(step, made->step->name) == 0) && ago >= 0 && ago <= HOUR;
}

const char *reworked_words(const Agenda *agenda, const Requirement *made, Moment now)
{
    g_autofree gboolean *live = g_new(gboolean, agenda->count);
    live_entries(agenda->entries, agenda->count, live);
    for (gsize i = agenda->count; i-- > 0;)
        if (live[i] && is_of(agenda->entries[i], made, now))
            return entry_text(agenda->entries[i], "work");
    return NULL;
}
