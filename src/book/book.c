// Making, opening and closing the store.
#include "project.h"
#include "schema.h"
#include <errno.h>
#include <fcntl.h>
#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

G_DEFINE_AUTOPTR_CLEANUP_FUNC(sqlite3, sqlite3_close)

static gboolean refuse(GError **error, const char *path, const char *why)
{
    g_autofree char *shown = text_path(path);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, "store %s: %s", shown, why);
    return FALSE;
}

// CREATE ------------------------------------------------------------------------------------------

static gboolean fill_new(const char *path, GError **error)
{
    g_autoptr(sqlite3) db = NULL;
    int answer = sqlite3_open_v2(path, &db, SQLITE_OPEN_READWRITE, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(db, "PRAGMA synchronous = FULL; BEGIN", NULL, NULL, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(db, store_sql, NULL, NULL, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(db, projections_sql, NULL, NULL, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_exec(db, "COMMIT; PRAGMA journal_mode = WAL", NULL, NULL, NULL);
    if (answer != SQLITE_OK)
        store_trouble(path, db, answer, error);
    return answer == SQLITE_OK;
}

gboolean book_create(const char *path, GError **error)
{
    int file = open(path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0) {
        const char *why = errno == EEXIST
                              ? "there is something of that name already; choose another"
                              : "it cannot be made there; check the folder";
        return refuse(error, path, why);
    }
    close(file);
    if (!fill_new(path, error)) {
        unlink(path);
        return FALSE;
    }
    folder_sync(path);
    return TRUE;
}

// OPEN --------------------------------------------------------------------------------------------

static gboolean set_up(Book *book)
{
    static const struct {
        int option, value;
    } options[] = {
        {SQLITE_DBCONFIG_DEFENSIVE, 1},   {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
        {SQLITE_DBCONFIG_ENABLE_FKEY, 1}, {SQLITE_DBCONFIG_ENABLE_TRIGGER, 1},
        {SQLITE_DBCONFIG_DQS_DML, 0},     {SQLITE_DBCONFIG_DQS_DDL, 0},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(options); i++)
        if (sqlite3_db_config(book->db, options[i].option, options[i].value, NULL) != SQLITE_OK)
            return FALSE;
    sqlite3_busy_timeout(book->db, TURN_MILLISECONDS);
    return sqlite3_exec(book->db,
                        "PRAGMA synchronous = FULL; PRAGMA recursive_triggers = ON;"
                        "PRAGMA cell_size_check = ON; PRAGMA secure_delete = ON;"
                        "PRAGMA temp_store = MEMORY",
                        NULL, NULL, NULL) == SQLITE_OK;
}

// One whole number that a pragma answers; FALSE has set the error.
static gboolean ask(Book *book, const char *pragma, gint64 *number, GError **error)
{
    sqlite3_stmt *stmt = NULL;
    int answer = sqlite3_prepare_v2(book->db, pragma, -1, &stmt, NULL);
    if (answer == SQLITE_OK)
        answer = sqlite3_step(stmt);
    if (answer == SQLITE_ROW)
        *number = sqlite3_column_int64(stmt, 0);
    else
        store_trouble(book->path, book->db, answer, error);
    sqlite3_finalize(stmt);
    return answer == SQLITE_ROW;
}

static gboolean is_ours(Book *book, GError **error)
{
    gint64 application = 0, version = 0, pages = 0;
    if (!ask(book, "PRAGMA application_id", &application, error) ||
        !ask(book, "PRAGMA user_version", &version, error) ||
        !ask(book, "PRAGMA page_count", &pages, error))
        return FALSE;
    if (pages == 0)
        return refuse(error, book->path,
                      "it is empty: a store was begun here and never finished; remove the file and "
                      "make a new one with `standbook store new`");
    if (application != STORE_APPLICATION)
        return refuse(error, book->path, "it is not a store of standbook");
    if (version > STORE_VERSION)
        return refuse(error, book->path,
                      "it was made by a newer standbook; open it with that version");
    if (version < STORE_VERSION)
        return refuse(error, book->path, "it is damaged: its version is unknown");
    return TRUE;
}

// A file in a folder where nothing can be written has no place for the index of its log; if the
// log is empty, the file alone is the store.
static int open_read_only(Book *book)
{
    g_autofree char *log = g_strconcat(book->path, "-wal", NULL);
    g_autofree char *folder = g_path_get_dirname(book->path);
    g_autofree char *escaped = g_uri_escape_string(book->path, "/", FALSE);
    gboolean still = access(folder, W_OK) != 0 && access(log, F_OK) != 0;
    g_autofree char *uri =
        g_strdup_printf("file:%s?mode=ro%s", escaped, still ? "&immutable=1" : "");
    return sqlite3_open_v2(uri, &book->db, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL);
}

static int connect_file(Book *book)
{
    int answer = book->read_only
                     ? open_read_only(book)
                     : sqlite3_open_v2(book->path, &book->db, SQLITE_OPEN_READWRITE, NULL);
    if (answer == SQLITE_OK && !set_up(book))
        answer = sqlite3_errcode(book->db);
    return answer;
}

// What the statements are made for may be gone: projections can be made again, the rest cannot.
static int prepare(Book *book)
{
    if (sqlite3_exec(book->db, made_sql, NULL, NULL, NULL) != SQLITE_OK)
        return sqlite3_errcode(book->db);
    if (statements_prepare(book))
        return SQLITE_OK;
    int answer = sqlite3_errcode(book->db);
    if (answer != SQLITE_ERROR)
        return answer;
    statements_finalize(book);
    return projections_repair(book) && statements_prepare(book) ? SQLITE_OK : SQLITE_CORRUPT;
}

static gboolean connect(Book *book, GError **error)
{
    int answer = connect_file(book);
    if (answer == SQLITE_OK) {
        if (!is_ours(book, error))
            return FALSE;
        if (!book->read_only)
            book->turn_file = turn_file_open(book->path);
        book->read_only = book->turn_file < 0;
        answer = prepare(book);
    }
    if (answer != SQLITE_OK)
        store_trouble(book->path, book->db, answer, error);
    return answer == SQLITE_OK;
}

static gboolean may_open(const char *path, GError **error)
{
    if (!g_file_test(path, G_FILE_TEST_EXISTS))
        return refuse(error, path, "there is none; make one with `standbook store new`");
    if (!g_file_test(path, G_FILE_TEST_IS_REGULAR))
        return refuse(error, path, "it is not a file");
    if (access(path, R_OK) != 0)
        return refuse(error, path, "it may not be read; ask for the right to read the file");
    const char *network = network_file_system(path);
    if (!network)
        return TRUE;
    g_autofree char *why =
        g_strdup_printf("it lies on a network file system (%s), where two "
                        "computers could spoil it; keep it on a disk of this one",
                        network);
    return refuse(error, path, why);
}

static gboolean may_write(const char *path)
{
    g_autofree char *folder = g_path_get_dirname(path);
    return access(path, W_OK) == 0 && access(folder, W_OK) == 0;
}

Book *book_open(const char *path, BookUse use, GError **error)
{
    if (!may_open(path, error))
        return NULL;
    g_autoptr(Book) book = g_new0(Book, 1);
    char *real = realpath(path, NULL);
    book->path = g_strdup(real ? real : path);
    free(real);
    book->read_only = use == BOOK_READ || !may_write(book->path);
    book->turn_file = -1;
    if (!connect(book, error))
        return NULL;
    // A copy made by book_backup has no write-ahead log yet.
    if (!book->read_only)
        sqlite3_exec(book->db, "PRAGMA journal_mode = WAL", NULL, NULL, NULL);
    return g_steal_pointer(&book);
}

// The last to close moves the log into the file, which only the holder of the turn may do. Who
// does not get it at once is not the last.
void book_close(Book *book)
{
    if (!book)
        return;
    gboolean turn = book->turn_file >= 0 && turn_file_take(book->turn_file, 0);
    if (book->db && !turn)
        sqlite3_db_config(book->db, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, NULL);
    statements_finalize(book);
    sqlite3_close(book->db);
    if (book->turn_file >= 0)
        close(book->turn_file); // and with it the turn
    g_free(book->path);
    g_free(book);
}

void book_attend(Book *book, const char *ledger, gint64 seq)
{
    if (book->turn_file >= 0)
        turn_file_mark(book->turn_file, ledger, seq);
}

gboolean book_is_attended(const Book *book, const char *ledger, gint64 seq)
{
    return book->turn_file >= 0 && turn_file_is_marked(book->turn_file, ledger, seq);
}

gboolean book_is_read_only(const Book *book)
{
    return book->read_only;
}

const char *book_path(const Book *book)
{
    return book->path;
}

gint64 book_data_version(Book *book)
{
    g_autoptr(sqlite3_stmt) stmt = book->statements[SQL_DATA_VERSION];
    return sqlite3_step(stmt) == SQLITE_ROW ? sqlite3_column_int64(stmt, 0) : -1;
}
