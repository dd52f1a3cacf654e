// Projections: tables made from the lines, see schema/made.sql.
#include "project.h"
#include "schema.h"
#include <standbook/base/error.h>

// Each table NAME is made by the view NAME_made.
static const char *const projections[] = {"reading",  "tick",  "part", "stock",
                                          "tool_use", "taken", "word"};

static gboolean run(Book *book, const char *sql, GError **error)
{
    int answer = sqlite3_exec(book->db, sql, NULL, NULL, NULL);
    if (answer != SQLITE_OK)
        store_trouble(book->path, book->db, answer, error);
    return answer == SQLITE_OK;
}

static gboolean remake(Book *book, GError **error)
{
    if (!run(book, projections_sql, error))
        return FALSE;
    for (gsize i = 0; i < G_N_ELEMENTS(projections); i++) {
        g_autofree char *sql = g_strdup_printf("INSERT INTO main.%s SELECT * FROM temp.%s_made",
                                               projections[i], projections[i]);
        if (!run(book, sql, error))
            return FALSE;
    }
    return TRUE;
}

gboolean book_rebuild(Book *book, GError **error)
{
    g_autoptr(BookTurn) turn = book_turn(book, error);
    return turn && remake(book, error) && book_turn_keep(turn, error);
}

gboolean projections_repair(Book *book)
{
    if (book->turn_file < 0 || !turn_file_take(book->turn_file, TURN_MILLISECONDS))
        return FALSE;
    gboolean good = run(book, "BEGIN IMMEDIATE", NULL) && remake(book, NULL);
    gboolean ended = run(book, good ? "COMMIT" : "ROLLBACK", NULL);
    turn_file_give(book->turn_file);
    return good && ended;
}

gboolean projections_compare(Book *book, ProjectionDiffers differs, gpointer data, GError **error)
{
    for (gsize i = 0; i < G_N_ELEMENTS(projections); i++) {
        const char *name = projections[i];
        g_autofree char *sql = g_strdup_printf(
            "SELECT ledger, seq FROM (SELECT * FROM main.%s EXCEPT SELECT * FROM temp.%s_made)"
            " UNION SELECT ledger, seq FROM"
            " (SELECT * FROM temp.%s_made EXCEPT SELECT * FROM main.%s)",
            name, name, name, name);
        sqlite3_stmt *stmt = NULL;
        int answer = sqlite3_prepare_v2(book->db, sql, -1, &stmt, NULL);
        while (answer == SQLITE_OK && (answer = sqlite3_step(stmt)) == SQLITE_ROW) {
            differs(data, name, (const char *)sqlite3_column_text(stmt, 0),
                    sqlite3_column_int64(stmt, 1));
            answer = SQLITE_OK;
        }
        if (answer != SQLITE_DONE)
            store_trouble(book->path, book->db, answer, error);
        sqlite3_finalize(stmt);
        if (answer != SQLITE_DONE)
            return FALSE;
    }
    return TRUE;
}
