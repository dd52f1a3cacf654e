#include "opened.h"
#include "subcommands.h"

#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/record/live.h>
#include <string.h>

// Entries are told with what their build took, so each build is read once.
typedef struct {
    Book *book;
    GHashTable *entries; // ledger id → GPtrArray of Entry *
    GHashTable *taken;   // ledger id → Taken *
    GHashTable *labels;  // ledger id → label
    gboolean json;
    json_t *list;
    guint count;
} Telling;

static void telling_begin(Telling *telling, Book *book, const GPtrArray *ledgers, gboolean json)
{
    *telling = (Telling){.book = book, .json = json, .list = json_array()};
    telling->entries =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_ptr_array_unref);
    telling->taken =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)taken_free);
    telling->labels = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        g_hash_table_insert(telling->labels, g_strdup(ledger->id), g_strdup(ledger->label));
    }
}

static void telling_end(Telling *telling)
{
    g_hash_table_unref(telling->taken);
    g_hash_table_unref(telling->entries);
    g_hash_table_unref(telling->labels);
    json_decref(telling->list);
}

static const GPtrArray *entries_of(Telling *telling, const char *ledger, GError **error)
{
    const GPtrArray *known = g_hash_table_lookup(telling->entries, ledger);
    if (known)
        return known;
    GPtrArray *entries = entries_read(telling->book, ledger, error);
    if (!entries)
        return NULL;
    g_hash_table_insert(telling->entries, g_strdup(ledger), entries);
    g_hash_table_insert(telling->taken, g_strdup(ledger),
                        taken_new((const Entry *const *)entries->pdata, entries->len, NULL));
    return entries;
}

static void tell(Telling *telling, const char *ledger, const Entry *entry, const char *by,
                 gboolean live)
{
    const Taken *taken = g_hash_table_lookup(telling->taken, ledger);
    const char *label = g_hash_table_lookup(telling->labels, ledger);
    g_autofree char *words = entry_words(taken, entry), *when = entry_when(entry);
    telling->count++;
    if (telling->json) {
        g_autofree char *clean = text_clean(words, -1);
        json_array_append_new(telling->list,
                              json_pack("{s:s,s:I,s:s,s:s,s:s,s:s,s:b}", "ledger", label, "entry",
                                        (json_int_t)entry->seq, "kind", entry->kind->name, "done",
                                        when, "by", by, "words", clean, "struck", !live));
        return;
    }
    g_autofree char *line = g_strdup_printf("%s #%" G_GINT64_FORMAT "  %s %s  %s%s", label,
                                            entry->seq, when, by, words, live ? "" : "  (struck)");
    say_clean(line);
}

// The initials of whoever typed it: of the build's own people, else of the shop's.
static const char *initials_of(Telling *telling, const Shop *shop, const char *ledger,
                               const Entry *entry)
{
    const Entry *person = shop_by_id(shop, "person", entry->by);
    const Taken *taken = g_hash_table_lookup(telling->taken, ledger);
    return person ? entry_text(person, "initials") : taken_initials(taken, entry->by);
}

static gboolean tell_hit(Telling *telling, const Shop *shop, const BookHit *hit, GError **error)
{
    const GPtrArray *entries = entries_of(telling, hit->ledger, error);
    if (!entries || hit->seq > (gint64)entries->len)
        return FALSE;
    const Entry *entry = g_ptr_array_index(entries, (guint)hit->seq - 1);
    // What a build took is found where it stands, in the shop's ledger.
    if (strcmp(entry->kind->name, "take") == 0)
        return TRUE;
    g_autofree gboolean *live = g_new0(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    tell(telling, hit->ledger, entry, initials_of(telling, shop, hit->ledger, entry),
         live[hit->seq - 1]);
    return TRUE;
}

static gboolean holds(const GPtrArray *hits, const BookHit *hit)
{
    for (guint i = 0; i < hits->len; i++) {
        const BookHit *other = g_ptr_array_index(hits, i);
        if (other->seq == hit->seq && strcmp(other->ledger, hit->ledger) == 0)
            return TRUE;
    }
    return FALSE;
}

// Keeps of the hits those that hold all words, in whatever order.
static GPtrArray *hits_of_all(Book *book, GStrv words, GError **error)
{
    GPtrArray *hits = book_find(book, BOOK_FIND_WORDS, words[0], error);
    for (guint w = 1; hits && words[w]; w++) {
        g_autoptr(GPtrArray) others = book_find(book, BOOK_FIND_WORDS, words[w], error);
        if (!others) {
            g_ptr_array_unref(hits);
            return NULL;
        }
        for (guint i = hits->len; i-- > 0;)
            if (!holds(others, g_ptr_array_index(hits, i)))
                g_ptr_array_remove_index(hits, i);
    }
    return hits;
}

static gboolean is_in(const char *text, const char *words)
{
    g_autofree char *one = g_utf8_casefold(text, -1), *other = g_utf8_casefold(words, -1);
    return strstr(one, other) != NULL;
}

// Names stand outside the chain: people and owners of that name, with the owner's engines.
static void tell_names(Telling *telling, const Shop *shop, const char *words)
{
    static const char *const kinds[][2] = {{"person", "initials"}, {"owner", "label"}};
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
        g_autoptr(GPtrArray) all = shop_all(shop, kinds[k][0], NULL);
        for (guint i = 0; i < all->len; i++) {
            const Entry *entry = g_ptr_array_index(all, i);
            g_autofree char *name = person_name(telling->book, entry_text(entry, "id"));
            if (!name || !is_in(name, words))
                continue;
            g_autofree char *line =
                g_strdup_printf("%s %s  %s", kinds[k][0], entry_text(entry, kinds[k][1]), name);
            telling->count++;
            if (telling->json)
                json_array_append_new(telling->list,
                                      json_pack("{s:s,s:s,s:s}", "kind", kinds[k][0], "label",
                                                entry_text(entry, kinds[k][1]), "name", name));
            else
                say_clean(line);
        }
    }
}

static int find_words(GStrv words, Common *common)
{
    GError *error = NULL;
    g_autofree char *phrase = g_strjoinv(" ", words);
    g_auto(GStrv) single = g_strsplit_set(phrase, " ", -1);
    g_autoptr(Book) book = store_open(common, BOOK_READ, &error);
    g_autoptr(Shop) shop = book ? shop_open(book, &error) : NULL;
    g_autoptr(GPtrArray) ledgers = shop ? book_ledgers(book, &error) : NULL;
    g_autoptr(GPtrArray) hits = ledgers ? hits_of_all(book, single, &error) : NULL;
    if (!hits)
        return fail_with(error);
    Telling telling;
    telling_begin(&telling, book, ledgers, common->json);
    tell_names(&telling, shop, phrase);
    for (guint i = 0; i < hits->len && !error; i++)
        tell_hit(&telling, shop, g_ptr_array_index(hits, i), &error);
    if (common->json)
        say_json(telling.list);
    guint count = telling.count;
    telling_end(&telling);
    if (error)
        return fail_with(error);
    return count ? 0 : fail_saying(STANDBOOK_ERROR_NO, "nothing holds `%s`", phrase);
}

int find_run(int argc, char **argv, Common *common)
{
    int status;
    g_auto(GStrv) words = arguments_read(
        argc, argv, common, "WORDS",
        "Every entry of every build and of the shop that holds all these words, in any order:\n"
        "names, lots, serials, tools, notes. Exit status 1 if there is none.",
        NULL, &status);
    if (!words)
        return status;
    return arguments_fit(words, 1, 100, "find WORDS") ? find_words(words, common)
                                                      : STANDBOOK_ERROR_MISUSE;
}
