#include "bolts_done.h"

enum { RUNS_TOLD = 6 }; // in one answer; the bolts of the others are counted

typedef struct {
    const GPtrArray *places; // Requirement *, NULL where a bolt lies between that is not meant
    GString *text;
    guint runs, left;
} Told;

static const Requirement *place_at(const Told *told, guint index)
{
    return index < told->places->len ? told->places->pdata[index] : NULL;
}

// The index behind a run of bolts that lie beside each other and stand by the same entry.
static guint run_end(const Told *told, guint first)
{
    guint end = first + 1;
    while (place_at(told, end) && place_at(told, end)->entry == place_at(told, first)->entry)
        end++;
    return end;
}

// `1`, `1, 2`, `1 to 50`
static void append_run(Told *told, guint first, guint end)
{
    const char *between = end - first > 2 ? " to " : ", ";
    g_string_append(told->text, place_at(told, first)->place);
    if (end - first > 1)
        g_string_append_printf(told->text, "%s%s", between, place_at(told, end - 1)->place);
}

// All runs of the entry by which the bolt at `first` stands: `1 to 3, 5 (#57)`.
static void append_entry(Told *told, guint first)
{
    gint64 entry = place_at(told, first)->entry;
    guint before = told->runs;
    for (guint i = first, end; i < told->places->len; i = end) {
        end = i + 1;
        if (!place_at(told, i) || place_at(told, i)->entry != entry)
            continue;
        end = run_end(told, i);
        if (told->runs == RUNS_TOLD) {
            told->left += end - i;
            continue;
        }
        g_string_append(told->text, told->runs++ ? ", " : "");
        append_run(told, i, end);
    }
    if (told->runs > before)
        g_string_append_printf(told->text, " (#%" G_GINT64_FORMAT ")", entry);
}

char *bolts_done_words(const GPtrArray *places)
{
    Told told = {places, g_string_new(NULL), 0, 0};
    g_autoptr(GHashTable) entries = g_hash_table_new(g_int64_hash, g_int64_equal);
    for (guint i = 0; i < places->len; i++)
        if (place_at(&told, i) && g_hash_table_add(entries, (gpointer)&place_at(&told, i)->entry))
            append_entry(&told, i);
    if (told.left)
        g_string_append_printf(told.text, " and %u more", told.left);
    return g_string_free(told.text, FALSE);
}
