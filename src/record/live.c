#include <standbook/record/live.h>
#include <string.h>

// The seq that the entry takes back, 0 if it is no strike of an earlier entry.
static gint64 struck_by(const Entry *entry)
{
    if (strcmp(entry->kind->name, "strike") != 0)
        return 0;
    gint64 seq = entry_number(entry, "entry");
    return seq > 0 && seq < entry->seq ? seq : 0;
}

void live_entries(const Entry *const *entries, gsize count, gboolean *live)
{
    for (gsize i = 0; i < count; i++)
        live[i] = TRUE;
    for (gsize i = count; i-- > 0;) {
        gint64 struck = live[i] ? struck_by(entries[i]) : 0;
        if (struck)
            live[struck - 1] = FALSE;
    }
}

gint64 live_strike_of(const Entry *const *entries, gsize count, const gboolean *live, gint64 seq)
{
    for (gsize i = count; i-- > 0;)
        if (live[i] && struck_by(entries[i]) == seq)
            return entries[i]->seq;
    return 0;
}

void live_causes(const Entry *const *entries, gsize count, const char **causes)
{
    g_autofree gboolean *live = g_new(gboolean, count + 1);
    live_entries(entries, count, live);
    for (gsize i = 0; i < count; i++)
        causes[i] = NULL;
    for (gsize i = 0; i < count; i++) {
        gint64 seq = live[i] ? struck_by(entries[i]) : 0;
        if (seq)
            causes[seq - 1] = entry_text(entries[i], "cause");
    }
}
