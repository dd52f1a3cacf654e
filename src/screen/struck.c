#include "struck.h"

#include <standbook/record/live.h>
#include <standbook/work/entry_words.h>
#include <string.h>

gboolean struck_can_be(const Entry *entry)
{
    static const char *const others[] = {"take", "pick up", "put down", "caution passed", NULL};
    return !g_strv_contains(others, entry->kind->name);
}

static const Entry *entry_at(Desk *desk, gint64 seq)
{
    Session *session = desk_build(desk);
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    return entries && seq >= 1 && seq <= (gint64)entries->len ? entries->pdata[seq - 1] : NULL;
}

gboolean struck_is_own(Desk *desk, gint64 seq)
{
    const Entry *entry = entry_at(desk, seq);
    const Entry *person =
        entry ? shop_by_id(session_shop(desk_build(desk)), "person", entry->by) : NULL;
    return person && g_strcmp0(shop_label(person), desk->who) == 0;
}

// Whether it was entered here, or stood when the build was taken up here: what the same person
// enters at another terminal meanwhile is struck there.
static gboolean is_from_here(const Desk *desk, gint64 seq)
{
    gboolean here = seq <= desk->known;
    for (guint i = 0; !here && i < desk->entered_since->len; i++)
        here = g_array_index(desk->entered_since, gint64, i) == seq;
    return here;
}

// A strike of a strike takes nothing back that could come back once more by 0.
static gboolean strikes_a_strike(Desk *desk, const Entry *entry)
{
    const Entry *struck = entry_at(desk, entry_number(entry, "entry"));
    return struck && strcmp(struck->kind->name, "strike") == 0;
}

static gint64 newest(Desk *desk, gboolean strikes)
{
    Session *session = desk->who ? desk_build(desk) : NULL;
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    g_autofree gboolean *live = entries ? g_new0(gboolean, entries->len + 1) : NULL;
    if (live)
        live_entries((const Entry *const *)entries->pdata, entries->len, live);
    for (guint i = entries ? entries->len : 0; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        gboolean strike = strcmp(entry->kind->name, "strike") == 0;
        if (live[i] && strike == strikes && struck_can_be(entry) && is_from_here(desk, i + 1) &&
            struck_is_own(desk, i + 1) && !(strike && strikes_a_strike(desk, entry)))
            return i + 1;
    }
    return 0;
}

gint64 struck_next(Desk *desk)
{
    return newest(desk, FALSE);
}

gint64 struck_last(Desk *desk)
{
    return newest(desk, TRUE);
}

char *struck_words(Desk *desk, gint64 seq)
{
    const Entry *entry = entry_at(desk, seq);
    if (seq == desk->entered_seq)
        return g_strdup(desk->entered);
    if (!entry)
        return g_strdup("");
    const GPtrArray *entries = session_entries(desk_build(desk));
    g_autoptr(Taken) taken = taken_new((const Entry *const *)entries->pdata, entries->len, NULL);
    return entry_said(session_plan(desk_build(desk)), taken, entry);
}

gboolean struck_behind(Desk *desk, guint opened, const char *set)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    const Entry *newest = entries->len ? entries->pdata[entries->len - 1] : NULL;
    if (entries->len <= opened || strcmp(newest->kind->name, "strike") != 0)
        return FALSE;
    const Entry *struck = entries->pdata[entry_number(newest, "entry") - 1];
    const char *of =
        kind_field(struck->kind, "tightening") ? entry_text(struck, "tightening") : NULL;
    return g_strcmp0(of, set) != 0;
}
