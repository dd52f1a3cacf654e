// The ledger as it is judged: which entries are live, their order, their times, and what they make
// known of tools, lots and consumables.
#include "judge.h"

#include <standbook/record/live.h>
#include <standbook/record/order.h>
#include <string.h>

const char *judge_subject_id(const Entry *entry)
{
    static const char *const fields[] = {"tool", "lot", "id"};
    if (strcmp(entry->kind->name, "take") != 0 && strcmp(entry->kind->name, "news") != 0)
        return NULL;
    const char *what = entry_text(entry, "what");
    const json_t *body = json_object_get(entry->body, "body");
    gsize first = g_strcmp0(what, "calibration") == 0 ? 0 : g_strcmp0(what, "recall") == 0 ? 1 : 2;
    return json_string_value(json_object_get(body, fields[first]));
}

static void know(Judge *judge, const Entry *entry)
{
    const char *id = judge_subject_id(entry);
    if (!id)
        return;
    GPtrArray *about = g_hash_table_lookup(judge->known, id);
    if (!about) {
        about = g_ptr_array_new();
        g_hash_table_insert(judge->known, g_strdup(id), about);
    }
    g_ptr_array_add(about, (gpointer)entry);
}

static Moment moment_of(const char *text)
{
    Moment moment = 0;
    return text && moment_parse(text, &moment, NULL) ? moment : 0;
}

static void make_room(Judge *judge, gsize count)
{
    if (count <= judge->room)
        return;
    judge->room = count + count / 2;
    judge->live = g_renew(gboolean, judge->live, judge->room);
    judge->rank = g_renew(guint, judge->rank, judge->room);
    judge->ranked = g_renew(gint64, judge->ranked, judge->room);
    judge->at = g_renew(Moment, judge->at, judge->room);
    judge->done = g_renew(Moment, judge->done, judge->room);
}

static void read_entry(Judge *judge, gsize index)
{
    const Entry *entry = judge->entries[index];
    judge->at[index] = moment_of(entry->at);
    judge->done[index] = entry->done ? moment_of(entry->done) : judge->at[index];
    if (judge->live[index])
        know(judge, entry);
}

void judge_read_entries(Judge *judge, guint below, gboolean hindsight)
{
    gsize count = judge->count;
    make_room(judge, count);
    live_entries(judge->entries, count, judge->live);
    rank_order(judge->entries, count, judge->ranked);
    for (gsize i = 0; i < count; i++)
        judge->rank[judge->ranked[i] - 1] = (guint)i + 1;
    for (gsize i = 0; i < count; i++) {
        gboolean off = below && judge->rank[i] >= below;
        judge->live[i] = judge->live[i] && (!off || hindsight);
        read_entry(judge, i);
        judge->live[i] = judge->live[i] && !off;
    }
}

void judge_read_next(Judge *judge, const Entry *entry)
{
    gsize index = judge->count++;
    make_room(judge, judge->count);
    judge->live[index] = TRUE;
    judge->rank[index] = (guint)judge->count;
    judge->ranked[index] = entry->seq;
    read_entry(judge, index);
}

void judge_unread_last(Judge *judge)
{
    const char *id = judge_subject_id(judge->entries[--judge->count]);
    GPtrArray *about = id ? g_hash_table_lookup(judge->known, id) : NULL;
    if (!about)
        return;
    g_ptr_array_set_size(about, (gint)about->len - 1);
    g_hash_table_remove(judge->tools, id);
    g_hash_table_remove(judge->consulted, id);
}

gboolean judge_goes_on(const Judge *judge, const Entry *entry)
{
    static const char *const others[] = {"strike", "not needed", "withdraw", "add", "uphold",
                                         "amend",  "decide",     "concede",  NULL};
    const char *id = judge_subject_id(entry);
    return !entry->after && !g_strv_contains(others, entry->kind->name) &&
           !(id && g_hash_table_contains(judge->consulted, id));
}

void judge_entries_clear(Judge *judge)
{
    g_free(judge->live);
    g_free(judge->rank);
    g_free(judge->ranked);
    g_free(judge->at);
    g_free(judge->done);
    g_hash_table_unref(judge->known);
    g_hash_table_unref(judge->consulted);
}
