// What the files of this room share: the open store and its statements.
#pragma once
#include <sqlite3.h>
#include <standbook/book/book.h>

typedef enum {
    SQL_BEGIN,
    SQL_COMMIT,
    SQL_ROLLBACK,
    SQL_VERSION,
    SQL_DATA_VERSION,
    SQL_LEDGERS,
    SQL_LEDGER_SORT,
    SQL_LEDGER_ADD,
    SQL_LEDGER_LABEL,
    SQL_LINES,
    SQL_ROWS,
    SQL_END,
    SQL_ENTRY_ADD,
    SQL_KEPT,
    SQL_KEPT_ADD,
    SQL_FIND_WORDS,
    SQL_FIND_CHECK,
    SQL_VALUES,
    SQL_TOOL_USES,
    SQL_LOT_FITTED,
    SQL_FIND_TOOL,
    SQL_FIND_LOT,
    SQL_FIND_SERIAL,
    SQL_FIND_STOCK,
    SQL_FIND_TAKEN,
    SQL_PERSON,
    SQL_PERSON_ADD,
    SQL_PERSON_ERASE,
    SQL_COUNT
} Sql;

enum { TURN_MILLISECONDS = 5000 }; // how long a turn is waited for

struct Book {
    sqlite3 *db;
    sqlite3_stmt *statements[SQL_COUNT];
    char *path;
    int turn_file; // STORE-turn, -1 if read only
    gboolean read_only;
    gboolean in_turn;
};

struct BookTurn {
    Book *book;
    gboolean broken; // something failed: it can no longer be kept
};

// Prepares all statements; FALSE leaves the reason with the connection.
gboolean statements_prepare(Book *book);
void statements_finalize(Book *book);

// A statement with its texts bound in order; NULL is bound as NULL. Reset it when done
// (statement_done), so that no reading stays open.
sqlite3_stmt *statement(Book *book, Sql sql, const char *const *texts, int count);

// Steps once. SQLITE_ROW or SQLITE_DONE; anything else has set the error.
int statement_step(Book *book, sqlite3_stmt *stmt, GError **error);
void statement_done(sqlite3_stmt *stmt);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(sqlite3_stmt, statement_done)

// A statement without rows and values, run to its end.
gboolean statement_run(Book *book, Sql sql, GError **error);

// Sets the error for what SQLite answered: the disk is full, locked, damaged, …
void store_trouble(const char *path, sqlite3 *db, int answer, GError **error);

// STORE-turn: opened beside the store (-1 if it cannot be), taken within `milliseconds`, given
// back.
int turn_file_open(const char *path);
gboolean turn_file_take(int file, int milliseconds);
void turn_file_give(int file);
// Marks a number under a name as long as this process runs and keeps the file open, and asks
// whether another process has marked it.
void turn_file_mark(int file, const char *what, gint64 number);
gboolean turn_file_is_marked(int file, const char *what, gint64 number);

// The name of the network file system that the path lies on, NULL if it lies on a disk.
const char *network_file_system(const char *path);
const char *network_name(unsigned long magic); // the same by its number in statfs(2)

// Makes the names in the file's folder outlive a power cut.
void folder_sync(const char *path);
