// Whether the store is whole.
#include "project.h"
#include "schema.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>

typedef struct {
    Book *book;
    GPtrArray *faults;
    GHashTable *labels; // id → label
    GError **error;
} Check;

static void fault_free(gpointer data)
{
    BookFault *fault = data;
    g_free(fault->ledger);
    g_free(fault->fault);
    g_free(fault);
}

static void add_fault(Check *check, const char *ledger, gint64 seq, const char *sentence)
{
    BookFault *fault = g_new0(BookFault, 1);
    const char *label = ledger ? g_hash_table_lookup(check->labels, ledger) : NULL;
    fault->ledger = ledger ? text_clean(label ? label : ledger, -1) : NULL;
    fault->seq = seq;
    fault->fault = g_strdup(sentence);
    g_ptr_array_add(check->faults, fault);
}

// Rows of a query, one after the other; FALSE has set the error.
typedef gboolean (*RowCheck)(Check *check, sqlite3_stmt *row, gpointer data);

static gboolean each_row(Check *check, const char *sql, RowCheck row_check, gpointer data)
{
    sqlite3_stmt *stmt = NULL;
    int answer = sqlite3_prepare_v2(check->book->db, sql, -1, &stmt, NULL);
    gboolean good = answer == SQLITE_OK;
    while (good && (answer = sqlite3_step(stmt)) == SQLITE_ROW)
        good = row_check(check, stmt, data);
    if (answer != SQLITE_DONE && answer != SQLITE_ROW)
        store_trouble(check->book->path, check->book->db, answer, check->error);
    sqlite3_finalize(stmt);
    return good && answer == SQLITE_DONE;
}

static const char *text_of(sqlite3_stmt *row, int column)
{
    const char *text = (const char *)sqlite3_column_text(row, column);
    return text ? text : "";
}

// THE FILE ----------------------------------------------------------------------------------------

static gboolean sound_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    if (strcmp(text_of(row, 0), "ok") != 0) {
        g_autofree char *clean = text_clean(text_of(row, 0), -1);
        g_autofree char *sentence = g_strdup_printf("the file is damaged: %s", clean);
        add_fault(check, NULL, 0, sentence);
    }
    return TRUE;
}

static gboolean orphan_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    add_fault(check, text_of(row, 0), sqlite3_column_int64(row, 1),
              "it belongs to a ledger that the store does not have");
    return TRUE;
}

// integrity_check leaves CHECK constraints out where the store is only read.
static gboolean strange_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    g_autofree char *clean = text_clean(text_of(row, 1), -1);
    g_autofree char *sentence =
        g_strdup_printf("%s says it is a `%s`, which there is not", text_of(row, 0), clean);
    add_fault(check, NULL, 0, sentence);
    return TRUE;
}

static gboolean label_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    g_hash_table_insert(check->labels, g_strdup(text_of(row, 0)), g_strdup(text_of(row, 1)));
    return TRUE;
}

static gboolean schema_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)check;
    g_string_append_printf(data, "%s\n%s\n", text_of(row, 0), text_of(row, 1));
    return TRUE;
}

static const char schema_query[] = "SELECT name, sql FROM main.sqlite_schema"
                                   " WHERE name NOT LIKE 'sqlite_stat%' ORDER BY name";

// A new store in memory says what tables, indexes and triggers there must be.
static gboolean check_schema(Check *check)
{
    g_autoptr(GString) here = g_string_new(NULL);
    g_autoptr(GString) expected = g_string_new(NULL);
    Book fresh = {.path = check->book->path};
    Check other = {.book = &fresh, .error = check->error};
    int answer = sqlite3_open(":memory:", &fresh.db);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(fresh.db, store_sql, NULL, NULL, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(fresh.db, projections_sql, NULL, NULL, NULL);
    gboolean good = answer == SQLITE_OK && each_row(&other, schema_query, schema_row, expected) &&
                    each_row(check, schema_query, schema_row, here);
    if (answer != SQLITE_OK)
        store_trouble(fresh.path, fresh.db, answer, check->error);
    sqlite3_close(fresh.db);
    if (good && strcmp(here->str, expected->str) != 0)
        add_fault(check, NULL, 0, "the tables or their guards are not those that standbook made");
    return good;
}

// THE CHAINS --------------------------------------------------------------------------------------

typedef struct {
    char ledger[40];
    char digest[65]; // as stored with the entry before
    gint64 seq;
} Link;

static void check_line(Check *check, const Link *link, const char *line)
{
    g_autoptr(GError) why = NULL;
    g_autoptr(Entry) entry = entry_read(line, &why);
    if (!entry)
        add_fault(check, link->ledger, link->seq, why->message);
    else if (strcmp(entry->ledger, link->ledger) != 0 || entry->seq != link->seq)
        add_fault(check, link->ledger, link->seq, "it says it is another entry");
}

static gboolean entry_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    Link *link = data;
    const char *ledger = text_of(row, 0), *line = text_of(row, 2);
    if (strcmp(ledger, link->ledger) != 0) {
        g_strlcpy(link->ledger, ledger, sizeof link->ledger);
        g_strlcpy(link->digest, CHAIN_START, sizeof link->digest);
        link->seq = 0;
    }
    gint64 seq = sqlite3_column_int64(row, 1);
    gboolean in_turn = seq == link->seq + 1;
    link->seq = seq;
    if (!in_turn)
        add_fault(check, ledger, seq, "the entry before it is missing");
    g_autofree char *digest = chain_next(link->digest, line);
    g_strlcpy(link->digest, text_of(row, 3), sizeof link->digest);
    // A text with a NUL inside would be hashed only up to there.
    gboolean whole = (gsize)sqlite3_column_bytes(row, 2) == strlen(line);
    if (strcmp(digest, text_of(row, 3)) != 0 || !whole)
        add_fault(check, ledger, seq,
                  "its digest does not follow from its line and the entry before");
    else
        check_line(check, link, line);
    // The next one is hashed behind 64 digits, whatever stands here.
    if (strlen(link->digest) != 64)
        g_strlcpy(link->digest, CHAIN_START, sizeof link->digest);
    return TRUE;
}

// PLANS AND ASSESSMENTS ---------------------------------------------------------------------------

static gboolean kept_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    const void *bytes = sqlite3_column_blob(row, 2);
    gsize size = (gsize)sqlite3_column_bytes(row, 2);
    g_autofree char *sum = g_compute_checksum_for_data(G_CHECKSUM_SHA256, bytes, size);
    if (strcmp(sum, text_of(row, 0)) == 0)
        return TRUE;
    g_autofree char *clean = text_clean(text_of(row, 0), -1);
    g_autofree char *sentence =
        g_strdup_printf("the %s %.12s… does not have its digest", text_of(row, 1), clean);
    add_fault(check, NULL, 0, sentence);
    return TRUE;
}

static gboolean missing_row(Check *check, sqlite3_stmt *row, gpointer data)
{
    (void)data;
    g_autofree char *sentence = g_strdup_printf(
        "the %s it names (%.12s…) is not kept in this store",
        strcmp(text_of(row, 2), "seal") == 0 ? "assessment" : "plan", text_of(row, 3));
    add_fault(check, text_of(row, 0), sqlite3_column_int64(row, 1), sentence);
    return TRUE;
}

// PROJECTIONS -------------------------------------------------------------------------------------

static void projection_differs(gpointer data, const char *projection, const char *ledger,
                               gint64 seq)
{
    g_autofree char *sentence =
        g_strdup_printf("its rows in the table `%s` are not what its line makes them; remake them "
                        "with `standbook store rebuild`",
                        projection);
    add_fault(data, ledger, seq, sentence);
}

// ALL OF IT ---------------------------------------------------------------------------------------

// The lines are taken apart with SQL only if each of them is what it was.
static gboolean check_made(Check *check)
{
    if (check->faults->len > 0)
        return TRUE;
    return each_row(check, "SELECT ledger, seq, kind, digest FROM temp.kept_missing", missing_row,
                    NULL) &&
           projections_compare(check->book, projection_differs, check, check->error);
}

static gboolean check_all(Check *check)
{
    Link link = {.ledger = ""};
    return each_row(check, "SELECT id, label FROM main.ledger", label_row, NULL) &&
           check_schema(check) && each_row(check, "PRAGMA main.integrity_check", sound_row, NULL) &&
           each_row(check,
                    "SELECT 'the ledger ' || label, kind FROM main.ledger"
                    " WHERE kind NOT IN ('build', 'shop') UNION ALL"
                    " SELECT 'what is kept as ' || substr(digest, 1, 12), what FROM main.kept"
                    " WHERE what NOT IN ('plan', 'assessment')",
                    strange_row, NULL) &&
           each_row(check,
                    "SELECT ledger, seq FROM main.entry"
                    " WHERE ledger NOT IN (SELECT id FROM main.ledger)",
                    orphan_row, NULL) &&
           each_row(check, "SELECT ledger, seq, line, digest FROM main.entry ORDER BY ledger, seq",
                    entry_row, &link) &&
           each_row(check, "SELECT digest, what, bytes FROM main.kept", kept_row, NULL) &&
           check_made(check);
}

GPtrArray *book_verify(Book *book, GError **error)
{
    g_autoptr(GPtrArray) faults = g_ptr_array_new_with_free_func(fault_free);
    g_autoptr(GHashTable) labels = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    Check check = {.book = book, .faults = faults, .labels = labels, .error = error};
    gboolean alone = sqlite3_get_autocommit(book->db) != 0;
    if (alone)
        sqlite3_exec(book->db, "BEGIN", NULL, NULL, NULL);
    gboolean good = check_all(&check);
    if (alone)
        sqlite3_exec(book->db, "ROLLBACK", NULL, NULL, NULL);
    return good ? g_steal_pointer(&faults) : NULL;
}
