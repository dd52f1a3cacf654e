// Ledgers out and in, and copies of the whole store.
#include "store.h"
#include <errno.h>
#include <fcntl.h>
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/book/care.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>
#include <unistd.h>

static gboolean refuse(GError **error, StandbookErrorCode code, const char *what, const char *why)
{
    g_autofree char *clean = text_clean(what, -1);
    g_set_error(error, STANDBOOK_ERROR, code, "%s: %s", clean, why);
    return FALSE;
}

// EXPORT ------------------------------------------------------------------------------------------

char *book_export(Book *book, const char *ledger, GError **error)
{
    g_autoptr(GString) rows = g_string_new(NULL);
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_ROWS, &ledger, 1);
    int answer;
    while ((answer = statement_step(book, stmt, error)) == SQLITE_ROW) {
        g_autofree char *row = chain_row((const char *)sqlite3_column_text(stmt, 0),
                                         (const char *)sqlite3_column_text(stmt, 1));
        g_string_append(rows, row);
        g_string_append_c(rows, '\n');
    }
    return answer == SQLITE_DONE ? g_string_free(g_steal_pointer(&rows), FALSE) : NULL;
}

// IMPORT ------------------------------------------------------------------------------------------

// The rows cut at their line feeds into links, which point into `text`. A last row without line
// feed was cut short.
static GArray *links_of(char *text, gsize length, GError **error)
{
    g_autoptr(GArray) links = g_array_new(FALSE, FALSE, sizeof(ChainLink));
    const char *wrong = NULL;
    if (length == 0)
        wrong = "it is empty";
    else if (text[length - 1] != '\n')
        wrong = "its last row is cut short";
    else if (strlen(text) != length)
        wrong = "there is a NUL in it";
    if (wrong) {
        refuse(error, STANDBOOK_ERROR_NO, "export of a ledger", wrong);
        return NULL;
    }
    for (char *row = text; *row;) {
        char *end = strchr(row, '\n');
        *end = '\0';
        ChainLink link;
        if (!chain_row_read(row, &link, error))
            return NULL;
        g_array_append_val(links, link);
        row = end + 1;
    }
    return g_steal_pointer(&links);
}

// What the store has of the ledger must be the first rows. `last` is how many that are.
static gboolean continues(Book *book, const char *ledger, const GArray *links, gint64 *last,
                          GError **error)
{
    char digest[65];
    if (!book_end(book, ledger, last, digest, error))
        return FALSE;
    if (*last == 0)
        return TRUE;
    if (*last > (gint64)links->len)
        return refuse(error, STANDBOOK_ERROR_NO, ledger,
                      "the store has more entries of this ledger than these rows");
    if (strcmp(g_array_index(links, ChainLink, *last - 1).digest, digest) != 0)
        return refuse(error, STANDBOOK_ERROR_NO, ledger,
                      "these rows and the store part ways before the store's last entry; compare "
                      "both with a printed seal");
    return TRUE;
}

static gboolean has_ledger(Book *book, const char *ledger)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_LEDGER_SORT, &ledger, 1);
    return sqlite3_step(stmt) == SQLITE_ROW;
}

static gboolean take_in(BookTurn *turn, Book *book, const GArray *links, LedgerSort sort,
                        const char *label, gint64 *taken, GError **error)
{
    g_autoptr(Entry) first = entry_read(g_array_index(links, ChainLink, 0).line, error);
    gint64 last = 0;
    if (!first || !continues(book, first->ledger, links, &last, error))
        return FALSE;
    if (!has_ledger(book, first->ledger) &&
        !book_turn_ledger(turn, first->ledger, sort, label, error))
        return FALSE;
    for (guint i = (guint)last; i < links->len; i++)
        if (book_turn_put(turn, g_array_index(links, ChainLink, i).line, error) != BOOK_TAKEN)
            return FALSE;
    *taken = (gint64)links->len - last;
    return TRUE;
}

gboolean book_import(Book *book, const char *rows, gssize length, LedgerSort sort,
                     const char *label, gint64 *taken, GError **error)
{
    gsize bytes = length < 0 ? strlen(rows) : (gsize)length;
    g_autofree char *text = g_strndup(rows, bytes);
    g_autoptr(GArray) links = links_of(text, bytes, error);
    if (!links || !chain_check((const ChainLink *)links->data, links->len, NULL, error))
        return FALSE;
    g_autoptr(BookTurn) turn = book_turn(book, error);
    gint64 number = 0;
    if (!turn || !take_in(turn, book, links, sort, label, &number, error) ||
        !book_turn_keep(turn, error))
        return FALSE;
    *taken = number;
    return TRUE;
}

// BACKUP ------------------------------------------------------------------------------------------

static gboolean copy_into(Book *book, const char *target, GError **error)
{
    sqlite3_stmt *stmt = NULL;
    int answer = sqlite3_prepare_v2(book->db, "VACUUM main INTO ?1", -1, &stmt, NULL);
    if (answer == SQLITE_OK) {
        sqlite3_bind_text(stmt, 1, target, -1, SQLITE_STATIC);
        answer = sqlite3_step(stmt);
    }
    if (answer != SQLITE_DONE)
        store_trouble(book->path, book->db, answer, error);
    sqlite3_finalize(stmt);
    return answer == SQLITE_DONE;
}

static gboolean copy_is_whole(const char *target, GError **error)
{
    g_autoptr(Book) copy = book_open(target, BOOK_READ, error);
    g_autoptr(GPtrArray) faults = copy ? book_verify(copy, error) : NULL;
    if (!faults)
        return FALSE;
    if (faults->len == 0)
        return TRUE;
    const BookFault *fault = faults->pdata[0];
    g_autofree char *where =
        fault->ledger ? g_strdup_printf("%s, entry %" G_GINT64_FORMAT, fault->ledger, fault->seq)
                      : g_strdup("the store");
    return refuse(error, STANDBOOK_ERROR_NO, where, fault->fault);
}

gboolean book_backup(Book *book, const char *target, GError **error)
{
    int file = open(target, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0)
        return refuse(error, STANDBOOK_ERROR_STORE, target,
                      errno == EEXIST ? "there is something of that name already; choose another"
                                      : "no file can be made there; check the folder");
    gboolean good = copy_into(book, target, error);
    if (good && fsync(file) != 0)
        good = refuse(error, STANDBOOK_ERROR_STORE, target, "the disk did not take the copy");
    close(file);
    if (good)
        folder_sync(target);
    if (good && copy_is_whole(target, error))
        return TRUE;
    unlink(target);
    return FALSE;
}
