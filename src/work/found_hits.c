// Which entries answer a question.
#include "found_inside.h"

#include <standbook/record/live.h>
#include <standbook/work/opened.h>
#include <string.h>

const FoundThing found_things[FOUND_THINGS] = {{"tool", BOOK_FIND_TOOL}, {"lot", BOOK_FIND_LOT}};

void found_read_free(gpointer data)
{
    Read *read = data;
    taken_free(read->taken);
    g_ptr_array_unref(read->entries);
    g_free(read->live);
    g_free(read);
}

const Read *found_read(Search *search, const char *ledger, GError **error)
{
    Read *read = g_hash_table_lookup(search->reads, ledger);
    if (read)
        return read;
    GPtrArray *known =
        search->known
            ? g_hash_table_lookup(search->known, g_hash_table_lookup(search->labels, ledger))
            : NULL;
    GPtrArray *entries = known ? g_ptr_array_ref(known) : entries_read(search->book, ledger, error);
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

const Entry *found_entry(const Read *read, gint64 seq)
{
    return seq <= (gint64)read->entries->len ? read->entries->pdata[seq - 1] : NULL;
}

const Entry *found_thing(const Shop *shop, const char *kind, const char *label)
{
    const Entry *exact = shop_find(shop, kind, label);
    g_autoptr(GPtrArray) all = exact ? NULL : shop_all(shop, kind, NULL);
    for (guint i = 0; all && i < all->len; i++)
        if (g_ascii_strcasecmp(shop_label(all->pdata[i]), label) == 0)
            return all->pdata[i];
    return exact;
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

static BookHit *hit_new(const char *ledger, gint64 seq)
{
    BookHit *hit = g_new0(BookHit, 1);
    *hit = (BookHit){g_strdup(ledger), seq};
    return hit;
}

static void add_hit(GPtrArray *hits, const char *ledger, gint64 seq)
{
    if (!holds(hits, ledger, seq))
        g_ptr_array_add(hits, hit_new(ledger, seq));
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
        add_hit(hits, entry->ledger, entry->seq);
    }
}

static void add_ends(const Search *search, GPtrArray *hits, const Entry *thing)
{
    g_autoptr(GPtrArray) all = shop_uses_of(search->shop, thing);
    for (guint i = 0; i < all->len; i++) {
        const Entry *entry = all->pdata[i];
        add_hit(hits, entry->ledger, entry->seq);
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

// What says more of a thing than its uses: when a tool was calibrated; of a lot all that names it,
// so that a recall is found. FALSE with an error.
static gboolean add_said(Search *search, GPtrArray *hits, const Entry *thing, GError **error)
{
    const char *id = entry_text(thing, "id");
    add_ends(search, hits, thing);
    if (strcmp(thing->kind->name, "lot") == 0)
        return add_hits(search, hits, BOOK_FIND_WORDS, id, error);
    add_calibrations(search, hits, id);
    return TRUE;
}

// The entries that hold a word, and all uses of a tool or lot that has it as its label, and what
// else is said of that.
static GPtrArray *hits_of(Search *search, const char *word, GError **error)
{
    g_autoptr(GPtrArray) hits = book_find(search->book, BOOK_FIND_WORDS, word, error);
    for (gsize i = 0; hits && i < FOUND_THINGS; i++) {
        const Entry *thing = found_thing(search->shop, found_things[i].kind, word);
        if (!thing)
            continue;
        if (!add_hits(search, hits, found_things[i].uses, entry_text(thing, "id"), error) ||
            !add_said(search, hits, thing, error))
            return NULL;
        g_ptr_array_sort_with_data(hits, in_turn, search->labels);
    }
    return g_steal_pointer(&hits);
}

static void keep_common(GPtrArray *hits, const GPtrArray *others)
{
    for (guint i = hits->len; i-- > 0;) {
        const BookHit *hit = hits->pdata[i];
        if (!holds(others, hit->ledger, hit->seq))
            g_ptr_array_remove_index(hits, i);
    }
}

// The entries that hold all texts of a term.
static GPtrArray *hits_of_texts(Search *search, const FoundTerm *term, GError **error)
{
    g_autoptr(GPtrArray) hits = hits_of(search, term->texts[0], error);
    for (guint i = 1; hits && term->texts[i]; i++) {
        g_autoptr(GPtrArray) others = hits_of(search, term->texts[i], error);
        if (!others)
            return NULL;
        keep_common(hits, others);
    }
    return g_steal_pointer(&hits);
}

static gboolean is_called(const Search *search, const Entry *person, const char *word)
{
    g_autofree char *name = person_name(search->book, entry_text(person, "id"));
    g_auto(GStrv) words = g_strsplit(name ? name : "", " ", -1);
    g_autofree char *asked = g_utf8_casefold(word, -1);
    gboolean called = g_ascii_strcasecmp(shop_label(person), word) == 0;
    for (guint i = 0; !called && words[i]; i++) {
        g_autofree char *one = g_utf8_casefold(words[i], -1);
        called = strcmp(one, asked) == 0;
    }
    return called;
}

// The ids of the people whose initials, or a word of whose name, the term is.
static GPtrArray *people_of(const Search *search, const FoundTerm *term)
{
    g_autoptr(GPtrArray) people = shop_all(search->shop, "person", NULL);
    GPtrArray *called = g_ptr_array_new();
    for (guint i = 0; !term->texts[1] && i < people->len; i++)
        if (is_called(search, people->pdata[i], term->texts[0]))
            g_ptr_array_add(called, (gpointer)entry_text(people->pdata[i], "id"));
    return called;
}

static gboolean has_text(GPtrArray *texts, const char *text)
{
    return g_ptr_array_find_with_equal_func(texts, text, g_str_equal, NULL);
}

// Whether an entry answers a term without holding its text: it is of a build that it names, was
// done on that day, was struck, is of the kind meant, or entered by one of these people.
static gboolean answers(const Read *read, const Entry *entry, const FoundTerm *term,
                        GPtrArray *people)
{
    const char *done = entry_done(entry);
    g_autofree char *day = g_strndup(done, 10);
    return (term->builds && has_text(term->builds, entry->ledger)) ||
           (term->day && g_str_has_suffix(day, term->day)) ||
           (term->struck && !read->live[entry->seq - 1]) ||
           g_strcmp0(term->kind, entry->kind->name) == 0 ||
           (entry->by && has_text(people, entry->by));
}

// Whether entries that do not hold the text may answer a term, whoever entered them.
static gboolean can_be_listed(const FoundTerm *term)
{
    return term->builds || term->day || term->struck || term->kind;
}

// Adds all entries that answer a term of builds, of a day, of a verdict, or of people.
static gboolean add_answers(Search *search, GPtrArray *hits, const FoundTerm *term,
                            GPtrArray *people, GError **error)
{
    g_autoptr(GPtrArray) before = g_ptr_array_new();
    g_ptr_array_extend(before, hits, NULL, NULL);
    GHashTableIter each;
    gpointer ledger;
    g_hash_table_iter_init(&each, search->labels);
    while (g_hash_table_iter_next(&each, &ledger, NULL)) {
        const Read *read = found_read(search, ledger, error);
        if (!read)
            return FALSE;
        for (guint i = 0; i < read->entries->len; i++) {
            const Entry *entry = read->entries->pdata[i];
            if (answers(read, entry, term, people) && !holds(before, ledger, entry->seq))
                g_ptr_array_add(hits, hit_new(ledger, entry->seq));
        }
    }
    g_ptr_array_sort_with_data(hits, in_turn, search->labels);
    return TRUE;
}

static GPtrArray *hits_of_term(Search *search, const FoundTerm *term, GError **error)
{
    g_autoptr(GPtrArray) people = people_of(search, term);
    g_autoptr(GPtrArray) hits = hits_of_texts(search, term, error);
    if (hits && (can_be_listed(term) || people->len) &&
        !add_answers(search, hits, term, people, error))
        return NULL;
    return g_steal_pointer(&hits);
}

// Leaves those that hold the term's text or answer it.
static gboolean keep_answers(Search *search, GPtrArray *hits, const FoundTerm *term, GError **error)
{
    g_autoptr(GPtrArray) people = people_of(search, term);
    g_autoptr(GPtrArray) others = hits_of_texts(search, term, error);
    for (guint i = others ? hits->len : 0; i-- > 0;) {
        const BookHit *hit = hits->pdata[i];
        const Read *read = found_read(search, hit->ledger, error);
        if (!read)
            return FALSE;
        const Entry *entry = found_entry(read, hit->seq);
        gboolean answered = entry && answers(read, entry, term, people);
        if (!answered && !holds(others, hit->ledger, hit->seq))
            g_ptr_array_remove_index(hits, i);
    }
    return others != NULL;
}

// The term to begin with: a word that must stand there, else what can be listed, else people.
static guint first_term(const Search *search, const GPtrArray *terms)
{
    guint listed = 0;
    for (guint i = terms->len; i-- > 0;) {
        const FoundTerm *term = terms->pdata[i];
        if (can_be_listed(term))
            listed = i;
    }
    for (guint i = 0; i < terms->len; i++) {
        const FoundTerm *term = terms->pdata[i];
        g_autoptr(GPtrArray) people = people_of(search, term);
        if (!can_be_listed(term) && !people->len)
            return i;
    }
    return listed;
}

GPtrArray *found_hits(Search *search, const GPtrArray *terms, GError **error)
{
    if (terms->len == 0)
        return g_ptr_array_new();
    guint first = first_term(search, terms);
    g_autoptr(GPtrArray) hits = hits_of_term(search, terms->pdata[first], error);
    for (guint i = 0; hits && i < terms->len; i++)
        if (i != first && !keep_answers(search, hits, terms->pdata[i], error))
            return NULL;
    return g_steal_pointer(&hits);
}
