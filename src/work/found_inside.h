// What finding is made of: a question taken apart, the ledgers it is looked for in, and what holds
// it.
#pragma once
#include <standbook/book/find.h>
#include <standbook/work/entry_words.h>
#include <standbook/work/shop.h>

// One part of a question: it is answered by an entry that holds the text, or by what else it says.
typedef struct {
    GStrv texts;     // words that must all stand there: `noisy`; of a day `4`, `mar`
    char *day;       // how the day of an entry ends: `2025-03-04`, `-03-04`; NULL: it is no day
    gboolean struck; // the word `struck`
    const char *kind; // of the entries that a word of a verdict means: `concede`; NULL for none
    GPtrArray *builds; // ids of the builds that it names (const char *); NULL where it names none
} FoundTerm;

// The parts of a question (FoundTerm *). Blanks part words; `#` in front and `?` and the like
// behind are left out. A day is `2025-03-04`, `4 Mar 2025` or, of any year, `4 Mar`. The caller
// frees with g_ptr_array_unref.
GPtrArray *found_terms(const char *words) G_GNUC_WARN_UNUSED_RESULT;

// The words of a text without what is put around them: `#3`, `main?` (char *). The caller frees
// with g_ptr_array_unref.
GPtrArray *found_bare_words(const char *words) G_GNUC_WARN_UNUSED_RESULT;

// What is used in builds and known by a label.
typedef struct {
    const char *kind;
    BookQuestion uses;
} FoundThing;

enum { FOUND_THINGS = 2 };
extern const FoundThing found_things[FOUND_THINGS];

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
    GHashTable *known;  // label → GPtrArray of Entry *, or NULL
    const char *since;  // the first day, month or year that counts; "" for all
    GPtrArray *found;
} Search;

// The ledger of that id; NULL with an error. It belongs to the search.
const Read *found_read(Search *search, const char *ledger, GError **error);
// The entry of that number; NULL where it was entered meanwhile.
const Entry *found_entry(const Read *read, gint64 seq);
void found_read_free(gpointer read);

// The tool or lot of that label, however it is spelled; NULL for none.
const Entry *found_thing(const Shop *shop, const char *kind, const char *label);

// The entries that answer all these terms (BookHit *), by label and seq. NULL with an error. The
// caller frees with g_ptr_array_unref.
GPtrArray *found_hits(Search *search, const GPtrArray *terms,
                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
