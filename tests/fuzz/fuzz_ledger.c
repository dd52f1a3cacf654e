// Imported ledgers. The first byte of an input says what the lines behind it are:
//   `r` the rows of an export as they are
//   `c` ledger lines, which get the digest that they need
//   `b` KIND BODY, which are made entries of one ledger, one a minute, with their digests
// What is whole is judged by the plan of this folder, imported into a new store, found whole there
// and exported again as it was. Run from the top folder.
#include "fuzz.h"

#include <glib/gstdio.h>
#include <standbook/base/moment.h>
#include <standbook/book/care.h>
#include <standbook/judge/judgement.h>
#include <standbook/record/digest.h>
#include <standbook/record/order.h>

static Plan *read_plan(void)
{
    g_autofree char *text = NULL;
    gsize length = 0;
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = g_file_get_contents("tests/fuzz/plan.yaml", &text, &length, NULL)
                     ? plan_read(text, length, faults)
                     : NULL;
    if (plan)
        return plan;
    fprintf(stderr, "tests/fuzz/plan.yaml cannot be read; run this in the top folder\n");
    exit(EXIT_FAILURE);
}

// The ledger line of `KIND BODY`; NULL if it makes none.
static char *line_of(char *text, gint64 seq)
{
    char *body = strchr(text, '{');
    if (!body || body == text)
        return NULL;
    g_autofree char *name = g_strndup(text, (gsize)(body - text) - 1);
    const EntryKind *kind = kind_newest(name);
    json_t *object = kind ? json_loads(body, JSON_REJECT_DUPLICATES, NULL) : NULL;
    if (!object)
        return NULL;
    g_autoptr(Entry) entry = entry_new(kind);
    json_decref(entry->body);
    entry->body = object;
    entry->ledger = g_strdup("6f1c2d30-0000-4000-8000-000000000001");
    entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000aa");
    entry->at = moment_text(1000080000 + 60 * seq);
    entry->seq = seq;
    return entry_write(entry, NULL);
}

static char *rows_of(char way, const char *text)
{
    if (way == 'r')
        return g_strdup(text);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    g_autoptr(GString) rows = g_string_new(NULL);
    g_autofree char *digest = g_strdup(CHAIN_START);
    gint64 seq = 0;
    for (guint i = 0; lines[i]; i++) {
        g_autofree char *line = way == 'b'  ? line_of(lines[i], seq + 1)
                                : *lines[i] ? g_strdup(lines[i])
                                            : NULL;
        if (!line)
            continue;
        char *next = chain_next(digest, line);
        g_autofree char *row = chain_row(next, line);
        g_free(digest);
        digest = next;
        g_string_append_printf(rows, "%s\n", row);
        seq++;
    }
    return g_strdup(rows->str);
}

static GPtrArray *entries_of(const char *rows)
{
    g_auto(GStrv) lines = g_strsplit(rows, "\n", -1);
    GPtrArray *entries = g_ptr_array_new_with_free_func((GDestroyNotify)entry_free);
    for (guint i = 0; lines[i]; i++) {
        ChainLink link;
        Entry *entry = chain_row_read(lines[i], &link, NULL) ? entry_read(link.line, NULL) : NULL;
        if (!entry)
            continue;
        g_autofree char *line = entry_write(entry, NULL);
        must(line && strcmp(line, link.line) == 0, "a line read is written as it was");
        g_ptr_array_add(entries, entry);
    }
    return entries;
}

static void judge(const Plan *plan, const GPtrArray *entries)
{
    const Entry *const *all = (const Entry *const *)entries->pdata;
    GError *error = NULL;
    if (!ledger_in_turn(all, entries->len, &error)) {
        must_say(error);
        return;
    }
    g_autoptr(Assessment) whole = assess(plan, all, entries->len, 0, NULL);
    g_autoptr(Judgement) judgement = judgement_new(plan);
    const Assessment *grown = NULL;
    for (guint i = 0; i < entries->len; i++) {
        judgement_add(judgement, all[i]);
        grown = judgement_now(judgement);
    }
    for (guint i = 0; grown && i < VERDICTS; i++)
        must(grown->counts[i] == whole->counts[i], "judged one by one it counts the same");
}

static void must_be_whole(Book *book, const char *rows)
{
    g_autoptr(GPtrArray) faults = book_verify(book, NULL), ledgers = book_ledgers(book, NULL);
    for (guint i = 0; faults && i < faults->len; i++) {
        const BookFault *fault = faults->pdata[i];
        // An export of rows alone lacks the plans and assessments that they name.
        must(strstr(fault->fault, "is not kept in this store") != NULL, fault->fault);
    }
    must(ledgers && ledgers->len == 1, "one ledger was imported");
    g_autofree char *again = book_export(book, ((BookLedger *)ledgers->pdata[0])->id, NULL);
    must(again && strcmp(again, rows) == 0, "what was imported is exported as it was");
}

// An empty store in a folder of its own.
typedef struct {
    char *folder, *path;
    Book *book;
} Store;

static void store_open(Store *store)
{
    store->folder = g_dir_make_tmp("standbook-fuzz-XXXXXX", NULL);
    store->path = g_build_filename(store->folder, "store.db", NULL);
    must(book_create(store->path, NULL), "a new store can be made");
    store->book = book_open(store->path, BOOK_WRITE, NULL);
    must(store->book != NULL, "a new store can be opened");
}

static void store_close(Store *store)
{
    g_clear_pointer(&store->book, book_close);
    fuzz_empty(store->folder);
    g_rmdir(store->folder);
    g_clear_pointer(&store->folder, g_free);
    g_clear_pointer(&store->path, g_free);
}

static Store store;

static void leave(void)
{
    if (store.book)
        store_close(&store);
}

// What is refused leaves the store empty for the next.
static void import(const char *rows, LedgerSort sort)
{
    static gboolean begun = FALSE;
    GError *error = NULL;
    gint64 taken = 0;
    if (!begun)
        atexit(leave);
    begun = TRUE;
    if (!store.book)
        store_open(&store);
    if (book_import(store.book, rows, -1, sort, "F-1", &taken, &error)) {
        must_be_whole(store.book, rows);
        store_close(&store);
        return;
    }
    must_say(error);
    g_autoptr(GPtrArray) ledgers = book_ledgers(store.book, NULL);
    must(ledgers && ledgers->len == 0, "what is refused leaves nothing behind");
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static Plan *plan;
    if (!plan)
        plan = read_plan();
    g_autofree char *text = fuzz_text(data, size);
    if (!*text)
        return 0;
    g_autofree char *rows = rows_of(*text, text + 1);
    g_autoptr(GPtrArray) entries = entries_of(rows);
    judge(plan, entries);
    // Entries that were made here are whole; one in eight of their ledgers is imported.
    if (entries->len > 0 && (*text != 'b' || size % 8 == 0)) {
        const Entry *first = entries->pdata[0];
        import(rows, first->kind->ledgers == LEDGER_SHOP ? LEDGER_SHOP : LEDGER_BUILD);
    }
    return 0;
}
