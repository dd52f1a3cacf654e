// The one way to write: a turn.
#include "schema.h"
#include "store.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/record/digest.h>
#include <standbook/record/entry.h>
#include <string.h>

enum { BYTES_MOST = 2 * 1024 * 1024 };

static gboolean refuse(GError **error, StandbookErrorCode code, const char *what, const char *why)
{
    g_autofree char *clean = text_clean(what, -1);
    g_set_error(error, STANDBOOK_ERROR, code, "%s: %s", clean, why);
    return FALSE;
}

// TAKING A TURN -----------------------------------------------------------------------------------

// Another program may have migrated the store since it was opened, or put another file in its
// place: then what is written would be lost with the file that nobody sees any more.
static gboolean still_ours(Book *book, GError **error)
{
    int moved = 0;
    sqlite3_file_control(book->db, "main", SQLITE_FCNTL_HAS_MOVED, &moved);
    if (moved)
        return refuse(error, STANDBOOK_ERROR_STORE, book->path,
                      "another file was put in its place, so nothing was stored; start standbook "
                      "again");
    g_autoptr(sqlite3_stmt) stmt = book->statements[SQL_VERSION];
    if (statement_step(book, stmt, error) != SQLITE_ROW)
        return FALSE;
    if (sqlite3_column_int(stmt, 0) == STORE_VERSION)
        return TRUE;
    return refuse(error, STANDBOOK_ERROR_STORE, book->path,
                  "a newer standbook changed it, so nothing was stored; go on with that version");
}

static gboolean begin(Book *book, GError **error)
{
    if (!statement_run(book, SQL_BEGIN, error))
        return FALSE;
    if (still_ours(book, error))
        return TRUE;
    statement_run(book, SQL_ROLLBACK, NULL);
    return FALSE;
}

BookTurn *book_turn(Book *book, GError **error)
{
    const char *why = NULL;
    if (book->read_only)
        why = "it is open to be read only";
    else if (book->in_turn)
        why = "a turn is already taken";
    else if (!turn_file_take(book->turn_file, TURN_MILLISECONDS))
        why = "others have been writing for five seconds; try again";
    if (why) {
        refuse(error, STANDBOOK_ERROR_STORE, book->path, why);
        return NULL;
    }
    if (!begin(book, error)) {
        turn_file_give(book->turn_file);
        return NULL;
    }
    BookTurn *turn = g_new0(BookTurn, 1);
    turn->book = book;
    book->in_turn = TRUE;
    return turn;
}

static void give_back(BookTurn *turn)
{
    Book *book = turn->book;
    if (!book->in_turn)
        return;
    if (!sqlite3_get_autocommit(book->db))
        statement_run(book, SQL_ROLLBACK, NULL);
    turn_file_give(book->turn_file);
    book->in_turn = FALSE;
}

gboolean book_turn_keep(BookTurn *turn, GError **error)
{
    gboolean kept = FALSE;
    if (turn->broken || !turn->book->in_turn)
        refuse(error, STANDBOOK_ERROR_STORE, turn->book->path,
               "something in this turn was refused, so nothing was stored");
    else
        kept = statement_run(turn->book, SQL_COMMIT, error);
    give_back(turn);
    return kept;
}

void book_turn_free(BookTurn *turn)
{
    if (!turn)
        return;
    give_back(turn);
    g_free(turn);
}

// PUTTING INTO IT ---------------------------------------------------------------------------------

static gboolean put(BookTurn *turn, sqlite3_stmt *stmt, GError **error)
{
    if (statement_step(turn->book, stmt, error) == SQLITE_DONE)
        return TRUE;
    turn->broken = TRUE;
    return FALSE;
}

// A row of `ledger` written; the labels and ids are unique.
static gboolean put_ledger(BookTurn *turn, sqlite3_stmt *stmt, const char *label, GError **error)
{
    int answer = sqlite3_step(stmt);
    if (answer == SQLITE_DONE)
        return TRUE;
    turn->broken = TRUE;
    if ((answer & 0xff) == SQLITE_CONSTRAINT)
        return refuse(error, STANDBOOK_ERROR_NO, label,
                      "the store has a ledger of that id or name already");
    store_trouble(turn->book->path, turn->book->db, answer, error);
    return FALSE;
}

gboolean book_turn_ledger(BookTurn *turn, const char *id, LedgerSort sort, const char *label,
                          GError **error)
{
    const char *values[] = {id, sort == LEDGER_SHOP ? "shop" : "build", label};
    g_autoptr(sqlite3_stmt) stmt = statement(turn->book, SQL_LEDGER_ADD, values, 3);
    return put_ledger(turn, stmt, label, error);
}

gboolean book_turn_label(BookTurn *turn, const char *id, const char *label, GError **error)
{
    const char *values[] = {id, label};
    g_autoptr(sqlite3_stmt) stmt = statement(turn->book, SQL_LEDGER_LABEL, values, 2);
    return put_ledger(turn, stmt, label, error);
}

// The sort of the ledger, 0 if it is not there.
static LedgerSort sort_of(Book *book, const char *ledger)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_LEDGER_SORT, &ledger, 1);
    if (sqlite3_step(stmt) != SQLITE_ROW)
        return 0;
    return sqlite3_column_text(stmt, 0)[0] == 's' ? LEDGER_SHOP : LEDGER_BUILD;
}

static gboolean fits(Book *book, const Entry *entry, gint64 last, GError **error)
{
    LedgerSort sort = sort_of(book, entry->ledger);
    const char *why = NULL;
    if (!sort)
        why = "the store has no such ledger";
    else if (!(entry->kind->ledgers & sort))
        why = "an entry of that kind has no place in this ledger";
    else if (entry->seq > last + 1)
        why = "its `seq` would leave a gap";
    return why ? refuse(error, STANDBOOK_ERROR_NO, entry->kind->name, why) : TRUE;
}

static gboolean insert(BookTurn *turn, const Entry *entry, const char *line, const char *previous,
                       GError **error)
{
    g_autofree char *digest = chain_next(previous, line);
    const char *values[] = {entry->ledger, line, digest};
    g_autoptr(sqlite3_stmt) stmt = statement(turn->book, SQL_ENTRY_ADD, values, 3);
    sqlite3_bind_int64(stmt, 4, entry->seq);
    return put(turn, stmt, error);
}

BookOutcome book_turn_put(BookTurn *turn, const char *line, GError **error)
{
    char previous[65];
    gint64 last = 0;
    g_autoptr(Entry) entry = entry_read(line, error);
    if (!entry || !book_end(turn->book, entry->ledger, &last, previous, error) ||
        !fits(turn->book, entry, last, error)) {
        turn->broken = TRUE;
        return BOOK_REFUSED;
    }
    if (entry->seq <= last) {
        refuse(error, STANDBOOK_ERROR_NO, entry->kind->name,
               "something else was entered in the meantime");
        return BOOK_MOVED_ON;
    }
    return insert(turn, entry, line, previous, error) ? BOOK_TAKEN : BOOK_REFUSED;
}

static gboolean is_kept(Book *book, const char *digest)
{
    g_autoptr(sqlite3_stmt) stmt = statement(book, SQL_KEPT, &digest, 1);
    return sqlite3_step(stmt) == SQLITE_ROW;
}

gboolean book_turn_keep_bytes(BookTurn *turn, const char *what, GBytes *bytes, char digest[65],
                              GError **error)
{
    g_autofree char *sum = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, bytes);
    g_strlcpy(digest, sum, 65);
    if (is_kept(turn->book, sum))
        return TRUE;
    gsize size = 0;
    gconstpointer data = g_bytes_get_data(bytes, &size);
    if (size > BYTES_MOST) {
        turn->broken = TRUE;
        return refuse(error, STANDBOOK_ERROR_NO, what, "it is larger than 2 MB");
    }
    const char *values[] = {sum, what};
    g_autoptr(sqlite3_stmt) stmt = statement(turn->book, SQL_KEPT_ADD, values, 2);
    sqlite3_bind_blob(stmt, 3, data ? data : "", (int)size, SQLITE_TRANSIENT);
    return put(turn, stmt, error);
}

BookOutcome book_append(Book *book, const char *const *lines, gsize count, GError **error)
{
    g_autoptr(BookTurn) turn = book_turn(book, error);
    if (!turn)
        return BOOK_REFUSED;
    for (gsize i = 0; i < count; i++) {
        BookOutcome outcome = book_turn_put(turn, lines[i], error);
        if (outcome != BOOK_TAKEN)
            return outcome;
    }
    return book_turn_keep(turn, error) ? BOOK_TAKEN : BOOK_REFUSED;
}
