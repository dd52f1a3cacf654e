// What the store answers.
#include "store.h"
#include <standbook/base/error.h>
#include <standbook/record/digest.h>
#include <string.h>

static void ledger_free(gpointer data)
{
    BookLedger *ledger = data;
    g_free(ledger->id);
    g_free(ledger->label);
    g_free(ledger);
}

static char *column(sqlite3_stmt *stmt, int index)
{
    return g_strdup((const char *)sqlite3_column_text(stmt, index));
}

GPtrArray *book_ledgers(Book *book, GError **error)
{
    g_autoptr(GPtrArray) ledgers = g_ptr_array_new_with_free_func(ledger_free);
    g_autoptr(sqlite3_stmt) stmt = book->statements[SQL_LEDGERS];
    int answer;
    while ((answer = statement_step(book, stmt, error)) == SQLITE_ROW) {
        BookLedger *ledger = g_new0(BookLedger, 1);
        ledger->id = column(stmt, 0);
        ledger->sort = sqlite3_column_text(stmt, 1)[0] == 's' ? LEDGER_SHOP : LEDGER_BUILD;
        ledger->label = column(stmt, 2);
        ledger->last = sqlite3_column_int64(stmt, 3);
        g_ptr_array_add(ledgers, ledger);
    }
    return answer == SQLITE_DONE ? g_steal_pointer(&ledgers) : NULL;
}

GPtrArray *book_read(Book *book, const char *ledger, gint64 behind, GError **error)
{
    g_autoptr(GPtrArray) lines = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_LINES, &ledger, 1);
    sqlite3_bind_int64(stmt, 2, behind);
    int answer;
    while ((answer = statement_step(book, stmt, error)) == SQLITE_ROW)
        g_ptr_array_add(lines, column(stmt, 0));
    return answer == SQLITE_DONE ? g_steal_pointer(&lines) : NULL;
}

gboolean book_end(Book *book, const char *ledger, gint64 *seq, char digest[65], GError **error)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_END, &ledger, 1);
    int answer = statement_step(book, stmt, error);
    gboolean any = answer == SQLITE_ROW;
    if (!any && answer != SQLITE_DONE)
        return FALSE;
    if (seq)
        *seq = any ? sqlite3_column_int64(stmt, 0) : 0;
    if (digest)
        g_strlcpy(digest, any ? (const char *)sqlite3_column_text(stmt, 1) : CHAIN_START, 65);
    return TRUE;
}

GBytes *book_kept(Book *book, const char *digest, GError **error)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_KEPT, &digest, 1);
    int answer = statement_step(book, stmt, error);
    if (answer == SQLITE_DONE)
        g_set_error(
            error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
            "store %s: no plan or assessment has the digest %.12s…; look for it in a backup",
            book->path, digest);
    if (answer != SQLITE_ROW)
        return NULL;
    const void *data = sqlite3_column_blob(stmt, 0);
    g_autoptr(GBytes) bytes = g_bytes_new(data, (gsize)sqlite3_column_bytes(stmt, 0));
    g_autofree char *sum = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, bytes);
    if (strcmp(sum, digest) == 0)
        return g_steal_pointer(&bytes);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                "store %s: the plan or assessment %.12s… was changed; take it from a backup",
                book->path, digest);
    return NULL;
}
