#include <standbook/work/found.h>

#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/record/live.h>
#include <standbook/work/opened.h>
#include <string.h>

// What is used in builds and known by a label.
static const struct {
    const char *kind;
    BookQuestion uses;
} things[] = {{"tool", BOOK_FIND_TOOL}, {"lot", BOOK_FIND_LOT}};

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
    const char *since;  // the first day, month or year that counts; "" for all
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

static gboolean is_since(const Search *search, const Entry *entry)
{
    const char *day = entry_done(entry);
    return strncmp(day, search->since, strlen(search->since)) >= 0;
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
    if (strcmp(entry->kind->name, "take") == 0 || !is_since(search, entry))
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

static gboolean holds(const GPtrArray *hits, const char *ledger, gint64 seq)
{
    for (guint i = 0; i < hits->len; i++) {
        const BookHit *other = g_ptr_array_index(hits, i);
        if (other->seq == seq && strcmp(other->ledger, ledger) == 0)
            return TRUE;
    }
    return FALSE;
}

static gint in_turn(gconstpointer one, gconstpointer other, gpointer labels)
{
    const BookHit *first = *(const BookHit *const *)one, *second = *(const BookHit *const *)other;
    gint order = g_strcmp0(g_hash_table_lookup(labels, first->ledger),
                           g_hash_table_lookup(labels, second->ledger));
    return order ? order : (first->seq > second->seq) - (first->seq < second->seq);
}

static void add_calibrations(const Search *search, GPtrArray *hits, const char *tool)
{
    g_autoptr(GPtrArray) all = shop_calibrations(search->shop, tool);
    for (guint i = 0; i < all->len; i++) {
        const Entry *entry = all->pdata[i];
        if (!holds(hits, entry->ledger, entry->seq)) {
            BookHit *hit = g_new0(BookHit, 1);
            *hit = (BookHit){g_strdup(entry->ledger), entry->seq};
            g_ptr_array_add(hits, hit);
        }
    }
}

// Adds the hits of another question that are not there yet. FALSE with an error.
static gboolean add_hits(Search *search, GPtrArray *hits, BookQuestion question, const char *text,
                         GError **error)
{
    g_autoptr(GPtrArray) others = book_find(search->book, question, text, error);
    while (others && others->len) {
        BookHit *hit = others->pdata[others->len - 1];
        if (holds(hits, hit->ledger, hit->seq))
            g_ptr_array_set_size(others, (gint)others->len - 1);
        else
            g_ptr_array_add(hits, g_ptr_array_steal_index(others, others->len - 1));
    }
    return others != NULL;
}

// The entries that hold a word, and all uses of a tool or lot that has it as its label, and when
// the tool was calibrated.
static GPtrArray *hits_of(Search *search, const char *word, GError **error)
{
    g_autoptr(GPtrArray) hits = book_find(search->book, BOOK_FIND_WORDS, word, error);
    for (gsize i = 0; hits && i < G_N_ELEMENTS(things); i++) {
        const Entry *thing = shop_find(search->shop, things[i].kind, word);
        if (thing && !add_hits(search, hits, things[i].uses, entry_text(thing, "id"), error))
            return NULL;
        if (thing && i == 0)
            add_calibrations(search, hits, entry_text(thing, "id"));
        if (thing)
            g_ptr_array_sort_with_data(hits, in_turn, search->labels);
    }
    return g_steal_pointer(&hits);
}

// The entries that hold all words, in whatever order.
static GPtrArray *hits_of_all(Search *search, const char *const *words, GError **error)
{
    g_autoptr(GPtrArray) hits = NULL;
    for (guint w = 0; words[w]; w++) {
        if (!*words[w])
            continue;
        g_autoptr(GPtrArray) others = hits_of(search, words[w], error);
        if (!others)
            return NULL;
        if (!hits) {
            hits = g_steal_pointer(&others);
            continue;
        }
        for (guint i = hits->len; i-- > 0;) {
            const BookHit *hit = hits->pdata[i];
            if (!holds(others, hit->ledger, hit->seq))
                g_ptr_array_remove_index(hits, i);
        }
    }
    return hits ? g_steal_pointer(&hits) : g_ptr_array_new();
}

// USES --------------------------------------------------------------------------------------------

// What an entry used the thing on, of a part with the first label of its place: `main shells 2`;
// NULL if on nothing that has a name. The caller frees.
static char *used_on(const Entry *entry)
{
    static const char *const fields[] = {"check", "tightening", "part"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++) {
        if (!kind_field(entry->kind, fields[i]))
            continue;
        gboolean placed = i == 2 && entry_list_length(entry, "place") > 0;
        return g_strconcat(entry_text(entry, fields[i]), placed ? " " : "",
                           placed ? entry_list_item(entry, "place", 0) : "", NULL);
    }
    return NULL;
}

// One build's uses of a thing, in front of those of older builds.
static Found *uses_in(Search *search, const char *ledger, const char *kind, const char *thing,
                      guint first)
{
    const char *label = g_hash_table_lookup(search->labels, ledger);
    for (guint i = first; i < search->found->len; i++) {
        Found *found = search->found->pdata[i];
        if (strcmp(found->label, label) == 0)
            return found;
    }
    Found *found = g_new0(Found, 1);
    *found = (Found){.label = g_strdup(label),
                     .kind = g_strdup(kind),
                     .by = g_strdup(thing),
                     .words = g_strdup("")};
    g_ptr_array_insert(search->found, (gint)first, found);
    return found;
}

static void add_use(Found *found, const char *name)
{
    g_auto(GStrv) known = g_strsplit(found->words, ", ", -1);
    g_autofree char *clean = text_clean(name, -1);
    if (g_strv_contains((const char *const *)known, clean))
        return;
    char *words = g_strconcat(found->words, *found->words ? ", " : "", clean, NULL);
    g_free(found->words);
    found->words = words;
}

// Where a tool or lot was used, a line for each build.
static gboolean add_uses(Search *search, gsize which, const Entry *thing, GError **error)
{
    g_autoptr(GPtrArray) hits =
        book_find(search->book, things[which].uses, entry_text(thing, "id"), error);
    guint first = search->found->len;
    for (guint i = 0; hits && i < hits->len; i++) {
        const BookHit *hit = hits->pdata[i];
        const Read *read = read_ledger(search, hit->ledger, error);
        if (!read)
            return FALSE;
        const Entry *entry =
            hit->seq <= (gint64)read->entries->len ? read->entries->pdata[hit->seq - 1] : NULL;
        g_autofree char *name = entry && read->live[hit->seq - 1] ? used_on(entry) : NULL;
        if (name && is_since(search, entry))
            add_use(
                uses_in(search, hit->ledger, things[which].kind, entry_text(thing, "label"), first),
                name);
    }
    return hits != NULL;
}

static gboolean add_all_uses(Search *search, const char *words, GError **error)
{
    for (gsize i = 0; i < G_N_ELEMENTS(things); i++) {
        const Entry *thing = shop_find(search->shop, things[i].kind, words);
        if (thing && !add_uses(search, i, thing, error))
            return FALSE;
    }
    return TRUE;
}

// NAMES -------------------------------------------------------------------------------------------

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
    g_autoptr(GPtrArray) hits = hits_of_all(search, (const char *const *)single, error);
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

// Whether it is `2024`, `2024-01` or `2024-01-30`.
static gboolean is_day(const char *text)
{
    static const char form[] = "dddd-dd-dd";
    gsize length = strlen(text);
    if (length != 4 && length != 7 && length != 10)
        return FALSE;
    for (gsize i = 0; i < length; i++)
        if (form[i] == 'd' ? !g_ascii_isdigit(text[i]) : text[i] != form[i])
            return FALSE;
    return TRUE;
}

// Takes `since 2024` off the end of the words. Returns the day, "" if none is said.
static const char *take_since(char *words)
{
    char *at = g_strrstr(g_strchomp(words), " since ");
    if (!at || !is_day(at + strlen(" since ")))
        return "";
    *at = '\0';
    return at + strlen(" since ");
}

GPtrArray *found_words(Book *book, const char *asked, GError **error)
{
    g_autofree char *words = g_strdup(asked);
    const char *since = take_since(words);
    g_autoptr(Shop) shop = shop_open(book, error);
    g_autoptr(GPtrArray) ledgers = shop ? book_ledgers(book, error) : NULL;
    if (!ledgers)
        return NULL;
    g_autoptr(GHashTable) reads = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, read_free);
    g_autoptr(GHashTable) labels = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func(found_free);
    Search search = {book, shop, reads, labels, since, found};
    fill_labels(&search, ledgers);
    add_names(&search, words);
    return add_all_uses(&search, words, error) && add_entries(&search, words, error)
               ? g_steal_pointer(&found)
               : NULL;
}
