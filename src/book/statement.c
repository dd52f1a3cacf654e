#include "store.h"
#include <standbook/base/error.h>
#include <standbook/base/text.h>

static const char *const texts[SQL_COUNT] = {
    [SQL_BEGIN] = "BEGIN IMMEDIATE",
    [SQL_COMMIT] = "COMMIT",
    [SQL_ROLLBACK] = "ROLLBACK",
    [SQL_VERSION] = "PRAGMA user_version",
    [SQL_DATA_VERSION] = "PRAGMA data_version",
    [SQL_LEDGERS] = "SELECT id, kind, label,"
                    " (SELECT coalesce(max(seq), 0) FROM entry WHERE entry.ledger = ledger.id)"
                    " FROM ledger ORDER BY kind DESC, label",
    [SQL_LEDGER_SORT] = "SELECT kind FROM ledger WHERE id = ?1",
    [SQL_LEDGER_ADD] = "INSERT INTO ledger (id, kind, label) VALUES (?1, ?2, ?3)",
    [SQL_LEDGER_LABEL] = "UPDATE ledger SET label = ?2 WHERE id = ?1",
    [SQL_LINES] = "SELECT line FROM entry WHERE ledger = ?1 AND seq > ?2 ORDER BY seq",
    [SQL_ROWS] = "SELECT digest, line FROM entry WHERE ledger = ?1 ORDER BY seq",
    [SQL_END] = "SELECT seq, digest FROM entry WHERE ledger = ?1 ORDER BY seq DESC LIMIT 1",
    [SQL_ENTRY_ADD] = "INSERT INTO entry (ledger, line, digest, seq) VALUES (?1, ?2, ?3, ?4)",
    [SQL_KEPT] = "SELECT bytes FROM kept WHERE digest = ?1",
    [SQL_KEPT_ADD] = "INSERT INTO kept (digest, what, bytes) VALUES (?1, ?2, ?3)",
    [SQL_FIND_WORDS] =
        "SELECT found.ledger, seq FROM word AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE instr(lower(text), lower(?1)) ORDER BY ledger.label, seq",
    [SQL_FIND_CHECK] =
        "SELECT found.ledger, seq FROM reading AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE name = ?1 ORDER BY ledger.label, seq",
    [SQL_FIND_TOOL] =
        "SELECT found.ledger, seq FROM tool_use AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE tool = ?1 ORDER BY ledger.label, seq",
    [SQL_FIND_LOT] =
        "SELECT found.ledger, seq FROM part AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE lot = ?1 ORDER BY ledger.label, seq",
    [SQL_FIND_SERIAL] =
        "SELECT found.ledger, seq FROM part AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE serial = ?1 ORDER BY ledger.label, seq",
    [SQL_FIND_STOCK] =
        "SELECT found.ledger, seq FROM stock AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE found.id = ?1 ORDER BY ledger.label, seq",
    [SQL_FIND_TAKEN] =
        "SELECT found.ledger, min(seq) FROM taken AS found JOIN ledger ON ledger.id = found.ledger"
        " WHERE found.id = ?1 GROUP BY found.ledger ORDER BY ledger.label",
    [SQL_VALUES] = "SELECT ledger, value, unit FROM reading WHERE name = ?1 AND kind = 'read'"
                   " AND value IS NOT NULL AND coalesce(state, '') <> 'loose' LIMIT 500",
    [SQL_TOOL_USES] = "SELECT coalesce(sum(json_array_length(line, '$.body.bolts')), 0)"
                      " FROM tool_use JOIN entry USING (ledger, seq)"
                      " WHERE tool = ?1 AND calibration = ?2 AND kind = 'tick'"
                      " AND line ->> '$.body.pulled' IS NULL",
    [SQL_LOT_FITTED] =
        "WITH strikes AS (SELECT ledger, seq, line ->> '$.body.entry' AS struck"
        " FROM word JOIN entry USING (ledger, seq)"
        " WHERE ledger IN (SELECT ledger FROM part WHERE lot = ?1) AND text >= 'strike '"
        " AND text < 'strike!')"
        " SELECT coalesce(sum(number), 0) FROM part WHERE lot = ?1 AND used = 'new'"
        " AND NOT EXISTS (SELECT 1 FROM strikes WHERE ledger = part.ledger AND struck = part.seq"
        " AND NOT EXISTS (SELECT 1 FROM strikes AS again WHERE again.ledger = strikes.ledger"
        " AND again.struck = strikes.seq))",
    [SQL_PERSON] = "SELECT name, address, phone FROM person_detail WHERE person = ?1",
    [SQL_PERSON_ADD] = "INSERT INTO person_detail (person, name, address, phone)"
                       " VALUES (?1, ?2, ?3, ?4)",
    [SQL_PERSON_ERASE] = "DELETE FROM person_detail WHERE person = ?1",
};

gboolean statements_prepare(Book *book)
{
    for (int i = 0; i < SQL_COUNT; i++)
        if (sqlite3_prepare_v3(book->db, texts[i], -1, SQLITE_PREPARE_PERSISTENT,
                               &book->statements[i], NULL) != SQLITE_OK)
            return FALSE;
    return TRUE;
}

void statements_finalize(Book *book)
{
    for (int i = 0; i < SQL_COUNT; i++) {
        sqlite3_finalize(book->statements[i]);
        book->statements[i] = NULL;
    }
}

sqlite3_stmt *statement(Book *book, Sql sql, const char *const *values, int count)
{
    sqlite3_stmt *stmt = book->statements[sql];
    for (int i = 0; i < count; i++)
        sqlite3_bind_text(stmt, i + 1, values[i], -1, SQLITE_TRANSIENT);
    return stmt;
}

int statement_step(Book *book, sqlite3_stmt *stmt, GError **error)
{
    int answer = sqlite3_step(stmt);
    if (answer != SQLITE_ROW && answer != SQLITE_DONE)
        store_trouble(book->path, book->db, answer, error);
    return answer;
}

void statement_done(sqlite3_stmt *stmt)
{
    sqlite3_reset(stmt);
    sqlite3_clear_bindings(stmt);
}

gboolean statement_run(Book *book, Sql sql, GError **error)
{
    g_autoptr(sqlite3_stmt) stmt = book->statements[sql];
    return statement_step(book, stmt, error) == SQLITE_DONE;
}

static const struct {
    int answer;
    const char *sentence;
} sentences[] = {
    {SQLITE_FULL, "the disk is full, so nothing was stored; make room and enter it again"},
    {SQLITE_BUSY, "another program holds it locked; close that program and try again"},
    {SQLITE_LOCKED, "another program holds it locked; close that program and try again"},
    {SQLITE_READONLY, "it may only be read here; ask for the right to write to the file"},
    {SQLITE_CORRUPT, "it is damaged; copy it aside and go back to the last backup"},
    {SQLITE_NOTADB, "it is not a store of standbook"},
    {SQLITE_CANTOPEN, "it cannot be opened; check the rights of the file and its folder"},
    {SQLITE_IOERR,
     "the disk failed; check it, and look whether the last entry stands in the log before "
     "entering it again"},
};

void store_trouble(const char *path, sqlite3 *db, int answer, GError **error)
{
    g_autofree char *shown = text_path(path);
    for (gsize i = 0; i < G_N_ELEMENTS(sentences); i++)
        if (sentences[i].answer == (answer & 0xff)) {
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, "store %s: %s", shown,
                        sentences[i].sentence);
            return;
        }
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                "store %s: %s, so nothing was stored; run `standbook verify`", shown,
                db ? sqlite3_errmsg(db) : sqlite3_errstr(answer));
}
