#include <standbook/work/found.h>

#include "found_inside.h"

#include <standbook/base/text.h>
#include <standbook/work/builds_meant.h>
#include <standbook/work/opened.h>
#include <string.h>

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
    const Read *read = found_read(search, hit->ledger, error);
    if (!read)
        return FALSE;
    const Entry *entry = found_entry(read, hit->seq);
    // What a build took is found where it stands, in the shop's ledger.
    if (!entry || strcmp(entry->kind->name, "take") == 0 || !is_since(search, entry))
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
        book_find(search->book, found_things[which].uses, entry_text(thing, "id"), error);
    guint first = search->found->len;
    for (guint i = 0; hits && i < hits->len; i++) {
        const BookHit *hit = hits->pdata[i];
        const Read *read = found_read(search, hit->ledger, error);
        if (!read)
            return FALSE;
        const Entry *entry = found_entry(read, hit->seq);
        g_autofree char *name = entry && read->live[hit->seq - 1] ? used_on(entry) : NULL;
        if (name && is_since(search, entry))
            add_use(uses_in(search, hit->ledger, found_things[which].kind,
                            entry_text(thing, "label"), first),
                    name);
    }
    return hits != NULL;
}

static gboolean add_all_uses(Search *search, const char *words, GError **error)
{
    for (gsize i = 0; i < FOUND_THINGS; i++) {
        const Entry *thing = found_thing(search->shop, found_things[i].kind, words);
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

static void add_found(Search *search, const char *label, const char *kind, const char *by,
                      const char *words)
{
    Found *found = g_new0(Found, 1);
    *found = (Found){.label = g_strdup(label),
                     .kind = g_strdup(kind),
                     .by = g_strdup(by),
                     .words = text_clean(words, -1)};
    g_ptr_array_add(search->found, found);
}

static gboolean has_owner(const Entry *engine, const GPtrArray *owners)
{
    const char *owner = entry_text(engine, "owner");
    return owner && g_ptr_array_find_with_equal_func((GPtrArray *)owners, owner, g_str_equal, NULL);
}

// The builds of these owners' engines (ids), and those whose number or engine holds the words.
static void add_builds(Search *search, const char *words, const GPtrArray *owners)
{
    g_autoptr(GPtrArray) builds = shop_all(search->shop, "build", NULL);
    for (guint i = 0; i < builds->len; i++) {
        const Entry *build = g_ptr_array_index(builds, i);
        const Entry *engine = shop_by_id(search->shop, "engine", entry_text(build, "engine"));
        const char *number = entry_text(build, "number");
        const char *note = engine ? entry_text(engine, "note") : NULL;
        g_autofree char *known =
            g_strconcat(engine ? entry_text(engine, "serial") : "", note ? ", " : "", note, NULL);
        gboolean owned = engine && has_owner(engine, owners);
        if (owned || is_in(number, words) || is_in(known, words))
            add_found(search, number, "build", "", known);
    }
}

// Names stand outside the chain. A person is known by initials too.
static void add_names(Search *search, const char *words)
{
    static const char *const kinds[][2] = {{"person", "initials"}, {"owner", "label"}};
    g_autoptr(GPtrArray) owners = g_ptr_array_new();
    for (gsize k = 0; k < G_N_ELEMENTS(kinds); k++) {
        g_autoptr(GPtrArray) all = shop_all(search->shop, kinds[k][0], NULL);
        for (guint i = 0; i < all->len; i++) {
            const Entry *entry = g_ptr_array_index(all, i);
            const char *label = entry_text(entry, kinds[k][1]);
            g_autofree char *name = person_name(search->book, entry_text(entry, "id"));
            if (!name || (!is_in(name, words) && g_ascii_strcasecmp(label, words) != 0))
                continue;
            add_found(search, kinds[k][0], kinds[k][0], label, name);
            if (strcmp(kinds[k][0], "owner") == 0)
                g_ptr_array_add(owners, (gpointer)entry_text(entry, "id"));
        }
    }
    add_builds(search, words, owners);
}

// What is no entry stays in front.
static gint newest_first(gconstpointer one, gconstpointer other)
{
    const Found *first = *(const Found *const *)one, *second = *(const Found *const *)other;
    if (!first->when || !second->when)
        return (first->when != NULL) - (second->when != NULL);
    return strcmp(second->when, first->when);
}

// A word that names builds stands for all entries of these, beside words that say more.
static void name_builds(const Search *search, GPtrArray *terms)
{
    gboolean more = FALSE;
    for (guint i = 0; i < terms->len; i++) {
        FoundTerm *term = terms->pdata[i];
        g_autoptr(GPtrArray) builds = builds_named(search->shop, term->texts[0]);
        if (builds->len && !term->texts[1])
            term->builds = g_steal_pointer(&builds);
        more = more || !term->builds;
    }
    for (guint i = 0; !more && i < terms->len; i++)
        g_clear_pointer(&((FoundTerm *)terms->pdata[i])->builds, g_ptr_array_unref);
}

static gboolean add_entries(Search *search, const char *words, GError **error)
{
    g_autoptr(GPtrArray) terms = found_terms(words);
    name_builds(search, terms);
    g_autoptr(GPtrArray) hits = found_hits(search, terms, error);
    for (guint i = hits ? hits->len : 0; i-- > 0;)
        if (!add_hit(search, g_ptr_array_index(hits, i), error))
            return FALSE;
    g_ptr_array_sort(search->found, newest_first);
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

GPtrArray *found_words(Book *book, const char *asked, GHashTable *known, GError **error)
{
    g_autofree char *words = g_strdup(asked);
    const char *since = take_since(words);
    g_autoptr(Shop) shop = shop_open(book, error);
    g_autoptr(GPtrArray) ledgers = shop ? book_ledgers(book, error) : NULL;
    if (!ledgers)
        return NULL;
    g_autoptr(GHashTable) reads =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, found_read_free);
    g_autoptr(GHashTable) labels = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    g_autoptr(GPtrArray) found = g_ptr_array_new_with_free_func(found_free);
    Search search = {book, shop, reads, labels, known, since, found};
    fill_labels(&search, ledgers);
    if (*g_strstrip(words))
        add_names(&search, words);
    return add_all_uses(&search, words, error) && add_entries(&search, words, error)
               ? g_steal_pointer(&found)
               : NULL;
}
