#include <standbook/work/found.h>

#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/record/live.h>
#include <standbook/work/opened.h>
#include <string.h>

// One ledger as it is looked into: read once.
typedef struct {
    GPtrArray *entries; // Entry *
    Taken *taken;
    gboolean *live;
} Read;

typedef struct {
    Book *book;
    Shop *shop;
    GHashTable *reads;  // ledger id → Read *
    GHashTable *labels; // ledger id → label
    GPtrArray *found;
} Search;

static void found_free(gpointer data)
{
    Found *found = data;
    g_free(found->label);
    g_free(found->kind);
    g_free(found->when);
    g_free(found->by);
    g_free(found->words);
    g_free(found);
}

static void read_free(gpointer data)
{
    Read *read = data;
    taken_free(read->taken);
    g_ptr_array_unref(read->entries);
    g_free(read->live);
    g_free(read);
}

static const Read *read_ledger(Search *search, const char *ledger, GError **error)
{
    Read *read = g_hash_table_lookup(search->reads, ledger);
    if (read)
        return read;
    GPtrArray *entries = entries_read(search->book, ledger, error);
    if (!entries)
        return NULL;
    const Entry *const *first = (const Entry *const *)entries->pdata;
    read = g_new0(Read, 1);
    *read =
        (Read){entries, taken_new(first, entries->len, NULL), g_new0(gboolean, entries->len + 1)};
    live_entries(first, entries->len, read->live);
    g_hash_table_insert(search->reads, g_strdup(ledger), read);
    return read;
}

// The initials of whoever typed it: of the shop's people, else of those the build took.
static const char *initials_of(const Search *search, const Read *read, const Entry *entry)
{
    const Entry *person = shop_by_id(search->shop, "person", entry->by);
    return person ? entry_text(person, "initials") : taken_initials(read->taken, entry->by);
}

static gboolean add_hit(Search *search, const BookHit *hit, GError **error)
{
    const Read *read = read_ledger(search, hit->ledger, error);
    if (!read)
        return FALSE;
    if (hit->seq > (gint64)read->entries->len)
        return TRUE; // entered meanwhile
    const Entry *entry = g_ptr_array_index(read->entries, (guint)hit->seq - 1);
    // What a build took is found where it stands, in the shop's ledger.
    if (strcmp(entry->kind->name, "take") == 0)
        return TRUE;
    g_autofree char *words = entry_words(read->taken, entry);
    Found *found = g_new0(Found, 1);
    *found = (Found){.label = g_strdup(g_hash_table_lookup(search->labels, hit->ledger)),
                     .seq = entry->seq,
                     .kind = g_strdup(entry->kind->name),
                     .when = entry_when(entry),
                     .by = g_strdup(initials_of(search, read, entry)),
                     .words = text_clean(words, -1),
                     .struck = !read->live[hit->seq - 1]};
    g_ptr_array_add(search->found, found);
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

// The entries that hold all words, in whatever order.
static GPtrArray *hits_of_all(Book *book, const char *const *words, GError **error)
{
    GPtrArray *hits = NULL;
    for (guint w = 0; words[w]; w++) {
        if (!*words[w])
            continue;
        g_autoptr(GPtrArray) others = book_find(book, BOOK_FIND_WORDS, words[w], error);
        if (!others) {
            g_clear_pointer(&hits, g_ptr_array_unref);
            return NULL;
        }
        if (!hits) {
            hits = g_steal_pointer(&others);
            continue;
        }
        for (guint i = hits->len; i-- > 0;)
            if (!holds(others, g_ptr_array_index(hits, i)))
                g_ptr_array_remove_index(hits, i);
    }
    return hits ? hits : g_ptr_array_new();
}

static gboolean is_in(const char *text, const char *words)
{
    g_autofree char *one = g_utf8_casefold(text, -1), *other = g_utf8_casefold(words, -1);
    return strstr(one, other) != NULL;
}

// The builds of an owner's engines.
static void add_builds_of(Search *search, const char *owner)
{
    g_autoptr(GPtrArray) builds = shop_all(search->shop, "build", NULL);
    for (guint i = 0; i < builds->len; i++) {
        const Entry *build = g_ptr_array_index(builds, i);
        const Entry *engine = shop_by_id(search->shop, "engine", entry_text(build, "engine"));
        if (!engine || g_strcmp0(entry_text(engine, "owner"), owner) != 0)
            continue;
        const char *note = entry_text(engine, "note");
        g_autofree char *words =
            g_strconcat(entry_text(engine, "serial"), note ? ", " : "", note, NULL);
        Found *found = g_new0(Found, 1);
        *found = (Found){.label = g_strdup(entry_text(build, "number")),
                         .kind = g_strdup("build"),
                         .by = g_strdup(""),
                         .words = text_clean(words, -1)};
        g_ptr_array_add(search->found, found);
    }
}

// Names stand outside the chain.
static void add_names(Search *search, const char *words)
{
    static const char *const kinds[][2] = {{"person", "initials"}, {"owner", "label"}};
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
        g_autoptr(GPtrArray) all = shop_all(search->shop, kinds[k][0], NULL);
        for (guint i = 0; i < all->len; i++) {
            const Entry *entry = g_ptr_array_index(all, i);
            g_autofree char *name = person_name(search->book, entry_text(entry, "id"));
            if (!name || !is_in(name, words))
                continue;
            Found *found = g_new0(Found, 1);
            *found = (Found){.label = g_strdup(kinds[k][0]),
                             .kind = g_strdup(kinds[k][0]),
                             .by = g_strdup(entry_text(entry, kinds[k][1])),
                             .words = text_clean(name, -1)};
            g_ptr_array_add(search->found, found);
            if (strcmp(kinds[k][0], "owner") == 0)
                add_builds_of(search, entry_text(entry, "id"));
        }
    }
}

static gboolean add_entries(Search *search, const char *words, GError **error)
{
    g_auto(GStrv) single = g_strsplit_set(words, " \t", -1);
    g_autoptr(GPtrArray) hits = hits_of_all(search->book, (const char *const *)single, error);
    for (guint i = 0; hits && i < hits->len; i++)
        if (!add_hit(search, g_ptr_array_index(hits, i), error))
            return FALSE;
    return hits != NULL;
}

static void fill_labels(Search *search, const GPtrArray *ledgers)
{
    for (guint i = 0; i < ledgers->len; i++) {
        const BookLedger *ledger = g_ptr_array_index(ledgers, i);
        g_hash_table_insert(search->labels, g_strdup(ledger->id), g_strdup(ledger->label));
    }
}

GPtrArray *found_words(Book *book, const char *words, GError **error)
{
    g_autoptr(Shop) shop = shop_open(book, error);
    g_autoptr(GPtrArray) ledgers = shop ? book_ledgers(book, error) : NULL;
    if (!ledgers)
        return NULL;
    g_autoptr(GHashTable) reads = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, read_free);
    g_autoptr(GHashTable) labels = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func(found_free);
    Search search = {book, shop, reads, labels, found};
    fill_labels(&search, ledgers);
    add_names(&search, words);
    return add_entries(&search, words, error) ? g_steal_pointer(&found) : NULL;
}
