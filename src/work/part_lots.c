#include "session_inside.h"

#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/record/live.h>
#include <standbook/work/agenda_item.h>
#include <standbook/work/part_lots.h>
#include <standbook/work/suppose.h>
#include <string.h>

// LOTS ------------------------------------------------------------------------------------------

static gboolean is_for(const Entry *lot, const char *part)
{
    const char *words = entry_text(lot, "part");
    gsize length = strlen(part);
    return words && g_ascii_strncasecmp(words, part, length) == 0 &&
           !g_ascii_isalnum(words[length]);
}

// Whether the build has had the lot, but every part out of it was struck: a slip of the keys.
static gboolean is_struck(const GPtrArray *entries, const gboolean *live, const Entry *lot)
{
    gboolean struck = FALSE;
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        if (strcmp(entry->kind->name, "fit") != 0 ||
            g_strcmp0(entry_text(entry, "lot"), entry_text(lot, "id")) != 0)
            continue;
        if (live[i])
            return FALSE;
        struck = TRUE;
    }
    return struck;
}

GPtrArray *part_lots(const Session *session, const char *part)
{
    const GPtrArray *entries = session_entries(session);
    g_autofree gboolean *live = g_new(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    g_autoptr(GPtrArray) all = shop_in_use(session_shop(session), "lot", NULL);
    g_autoptr(GPtrArray) struck = g_ptr_array_new();
    GPtrArray *lots = g_ptr_array_new();
    for (guint i = all->len; i-- > 0;)
        if (is_for(all->pdata[i], part))
            g_ptr_array_add(is_struck(entries, live, all->pdata[i]) ? struck : lots, all->pdata[i]);
    for (guint i = 0; i < struck->len; i++)
        g_ptr_array_add(lots, struck->pdata[i]);
    return lots;
}

// Whether the build has the lot as that part.
static gboolean is_fitted(const Session *session, const char *part, const Entry *lot)
{
    const GPtrArray *entries = session_entries(session);
    g_autofree gboolean *live = g_new(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    for (guint i = 0; i < entries->len; i++)
        if (live[i] && strcmp(((const Entry *)entries->pdata[i])->kind->name, "fit") == 0 &&
            g_strcmp0(entry_text(entries->pdata[i], "part"), part) == 0 &&
            g_strcmp0(entry_text(entries->pdata[i], "lot"), entry_text(lot, "id")) == 0)
            return TRUE;
    return FALSE;
}

const Entry *part_other_lot(const Session *session, const char *part, const char *label)
{
    const Entry *lot = shop_find(session_shop(session), "lot", label);
    return lot && !is_for(lot, part) && !is_fitted(session, part, lot) ? lot : NULL;
}

const Entry *part_lot_meant(const Session *session, const char *part, const char *typed)
{
    const Shop *shop = session_shop(session);
    g_autoptr(GPtrArray) lots = part_lots(session, part);
    g_autofree const char **labels = g_new0(const char *, lots->len + 1);
    for (guint i = 0; i < lots->len; i++)
        labels[i] = shop_label(lots->pdata[i]);
    const char *near = text_nearest(typed, labels, lots->len);
    near = near ? near : shop_nearest(shop, "lot", typed);
    return near ? shop_find(shop, "lot", near) : NULL;
}

char *part_answer(const GPtrArray *lots, const char *typed)
{
    char *end = NULL;
    for (guint i = 0; i < lots->len; i++)
        if (g_ascii_strcasecmp(shop_label(lots->pdata[i]), typed) == 0)
            return g_strdup(shop_label(lots->pdata[i]));
    guint64 line = g_ascii_isdigit(*typed) ? g_ascii_strtoull(typed, &end, 10) : 0;
    gboolean listed = line >= 1 && line <= lots->len && *end == '\0';
    return g_strdup(listed ? shop_label(lots->pdata[line - 1]) : typed);
}

gboolean part_lot_left(const Session *session, const Entry *lot, gint64 *left)
{
    gint64 quantity = entry_number(lot, "quantity");
    gint64 fitted = quantity ? book_lot_fitted(session->book, entry_text(lot, "id")) : -1;
    *left = quantity - fitted;
    return fitted >= 0;
}

char *part_lot_words(const Session *session, const Entry *lot)
{
    const char *supplier = entry_text(lot, "supplier"), *expires = entry_text(lot, "expires");
    gint64 quantity = entry_number(lot, "quantity"), left = quantity;
    GString *words = g_string_new(entry_text(lot, "part"));
    if (part_lot_left(session, lot, &left) && left != quantity)
        g_string_append_printf(words, " · %" G_GINT64_FORMAT " left of %" G_GINT64_FORMAT,
                               MAX(left, 0), quantity);
    else if (quantity)
        g_string_append_printf(words, " · %" G_GINT64_FORMAT, quantity);
    if (supplier)
        g_string_append_printf(words, "%s%s", quantity ? " of " : " · ", supplier);
    if (expires)
        g_string_append_printf(words, " · until %s", expires);
    return g_string_free(words, FALSE);
}

// PACKETS ---------------------------------------------------------------------------------------

// Whether both are places of the same part in the same step that differ in the last label alone.
static gboolean is_beside(const Requirement *made, const Requirement *other)
{
    guint labels = g_strv_length(made->labels);
    if (other->asked != ASKED_FIT || other->step != made->step || other->withdrawn ||
        other->verdict == VERDICT_NOT_NEEDED || strcmp(other->name, made->name) != 0 ||
        g_strv_length(other->labels) != labels)
        return FALSE;
    for (guint i = 0; i + 1 < labels; i++)
        if (strcmp(made->labels[i], other->labels[i]) != 0)
            return FALSE;
    return TRUE;
}

// The last labels of those a packet is for; NULL if one of them is fitted already.
static char *shared_labels(const Agenda *agenda, const Requirement *made)
{
    guint count = 0;
    g_autoptr(GString) shared = g_string_new(NULL);
    for (guint i = 0; i < agenda->assessment->requirements->len; i++) {
        const Requirement *other = agenda_made(agenda, i);
        if (!is_beside(made, other))
            continue;
        if (other->verdict != VERDICT_OPEN)
            return NULL;
        g_string_append_printf(shared, "%s%s", count++ ? ", " : "",
                               other->labels[g_strv_length(other->labels) - 1]);
    }
    return count > 1 ? g_strdup(shared->str) : NULL;
}

// Without the last label: `1, upper` or `name[1, upper] in Step`.
static char *without_last(const char *words)
{
    const char *bracket = strrchr(words, ']');
    g_autofree char *front = g_strndup(words, bracket ? (gsize)(bracket - words) : strlen(words));
    char *comma = strrchr(front, ',');
    if (comma)
        *comma = '\0';
    return g_strconcat(front, bracket ? bracket : "", NULL);
}

PartPacket part_packet(const Agenda *agenda, guint index)
{
    const Requirement *made = agenda_made(agenda, index);
    g_auto(AgendaItem) item = agenda_item(agenda, index);
    gboolean by_lot = g_strcmp0(item.track, "lot") == 0 && g_strv_length(made->labels) > 1;
    char *shared = by_lot ? shared_labels(agenda, made) : NULL;
    if (!shared)
        return (PartPacket){g_strdup(item.target), g_strdup(made->place), NULL};
    return (PartPacket){without_last(item.target), without_last(made->place), shared};
}

void part_packet_clear(PartPacket *packet)
{
    g_free(packet->target);
    g_free(packet->place);
    g_free(packet->shared);
}

// DOUBT -----------------------------------------------------------------------------------------

static char *doubt_words(Session *session, const Requirement *made, const Entry *lot, Moment now)
{
    const char *expires = entry_text(lot, "expires"), *grade = entry_text(lot, "grade");
    g_autofree char *today = moment_text(now);
    if (shop_recall(session_shop(session), entry_text(lot, "id")))
        return g_strdup("recalled");
    if (expires && strncmp(expires, today, strlen(expires)) < 0)
        return g_strdup_printf("expired %s", expires);
    return grade ? g_strdup_printf("grade %s", grade) : g_strdup(reason_words(made->reason));
}

char *part_lot_doubt(Session *session, const char *initials, guint index, const Entry *lot,
                     Moment now)
{
    const Agenda agenda = session_agenda(session);
    g_auto(PartPacket) packet = part_packet(&agenda, index);
    g_autofree char *line = g_strdup_printf("%s fit %s lot %s new", initials ? initials : "",
                                            packet.target, shop_label(lot));
    g_autoptr(Assessment) supposed = session_suppose(session, line, NULL);
    const Requirement *made = supposed ? supposed->requirements->pdata[index] : NULL;
    return made && made->verdict == VERDICT_IN_DOUBT ? doubt_words(session, made, lot, now) : NULL;
}
