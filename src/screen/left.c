#include "left.h"

#include "line_words.h"
#include "others.h"

#include <string.h>

static gboolean is_of(const Entry *entry, const char *kind, const char *step)
{
    return strcmp(entry->kind->name, kind) == 0 && g_strcmp0(entry_text(entry, "step"), step) == 0;
}

static gboolean is_by(Desk *desk, const Entry *entry, const char *initials)
{
    const Entry *person = shop_by_id(session_shop(desk_build(desk)), "person", entry->by);
    return person && g_strcmp0(shop_label(person), initials) == 0;
}

gint64 left_interrupted(Desk *desk, const char *step, const char *set)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    gboolean again = FALSE; // picked up here behind the last bolt, that nobody put down
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        if (is_of(entry, "put down", step))
            return entry->seq;
        if (kind_field(entry->kind, "tightening") &&
            g_strcmp0(entry_text(entry, "tightening"), set) == 0)
            return again && !others_are_at(desk, step, entry) ? entry->seq : 0;
        if (kind_field(entry->kind, "part") && g_strcmp0(entry_text(entry, "part"), set) == 0)
            return 0; // a bolt fitted since lies there as it was fitted
        again = again || (is_of(entry, "pick up", step) && is_by(desk, entry, desk->who));
    }
    return 0;
}

gboolean left_put_down(Desk *desk, gint64 seq)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    return seq > 0 && strcmp(((const Entry *)entries->pdata[seq - 1])->kind->name, "put down") == 0;
}

gboolean left_picked_up_here(Desk *desk, const char *step)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    for (guint i = entries->len; i-- > 0;)
        if (is_of(entries->pdata[i], "pick up", step))
            return is_by(desk, entries->pdata[i], desk->who);
    return FALSE;
}

gboolean left_note(Desk *desk, const Tightening *tightening, const Turn *turn, guint digit)
{
    static const char *const found[] = {
        [1] = "found done", [2] = "found not begun", [3] = "nobody can tell how it was left"};
    g_autofree char *target = line_target(session_plan(desk_build(desk)), turn->made);
    g_autofree char *amount = tightening_words(tightening, turn->stage);
    g_autofree char *line =
        g_strdup_printf("note on %s \"bolt %s, stage %u, %s: %s when work was taken up again\"",
                        target, turn->made->place, turn->stage, amount, found[digit]);
    return desk_line(desk, line, NULL);
}
