#include "../../src/book/store.h"
#include "stand.h"
#include <standbook/record/digest.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

static char *folder, *path;

static void begin(void)
{
    folder = folder_new();
    path = g_build_filename(folder, "stand.db", NULL);
}

static void end(void)
{
    g_free(path);
    folder_remove(folder);
}

START_TEST(what_was_kept_is_read_in_order)
{
    begin();
    Book *book = store_new(path);
    ck_assert_int_eq(note(book, BUILD, 1, "first"), BOOK_TAKEN);
    ck_assert_int_eq(note(book, BUILD, 2, "½ \"second\""), BOOK_TAKEN);
    book_close(book);

    book = book_open(path, BOOK_READ, NULL);
    GPtrArray *lines = book_read(book, BUILD, 0, NULL);
    ck_assert_uint_eq(lines->len, 2);
    char *first = note_line(BUILD, 1, "first"), *second = note_line(BUILD, 2, "½ \"second\"");
    ck_assert_str_eq(lines->pdata[0], first);
    ck_assert_str_eq(lines->pdata[1], second);
    g_ptr_array_unref(lines);
    lines = book_read(book, BUILD, 1, NULL);
    ck_assert_uint_eq(lines->len, 1);
    ck_assert_str_eq(lines->pdata[0], second);
    g_ptr_array_unref(lines);

    gint64 seq = 0;
    char digest[65];
    ck_assert(book_end(book, BUILD, &seq, digest, NULL));
    char *one = chain_next(CHAIN_START, first), *two = chain_next(one, second);
    ck_assert_int_eq(seq, 2);
    ck_assert_str_eq(digest, two);
    ck_assert(book_end(book, OTHER_BUILD, &seq, digest, NULL));
    ck_assert_int_eq(seq, 0);
    ck_assert_str_eq(digest, CHAIN_START);
    g_free(one);
    g_free(two);
    g_free(first);
    g_free(second);
    book_close(book);
    end();
}
END_TEST

START_TEST(several_ledgers_in_one_turn_or_none)
{
    begin();
    Book *book = store_new(path);
    char *shop = note_line(SHOP, 1, "wrench found wrong");
    char *news = note_line(BUILD, 1, "wrench found wrong");
    char *gap = note_line(OTHER_BUILD, 2, "wrench found wrong");
    const char *bad[] = {shop, news, gap}, *good[] = {shop, news};
    GError *error = NULL;
    ck_assert_int_eq(book_append(book, bad, 3, &error), BOOK_REFUSED);
    expect_message(error, STANDBOOK_ERROR_NO, "gap");
    ck_assert_uint_eq(entries_in(book, SHOP), 0);
    ck_assert_uint_eq(entries_in(book, BUILD), 0);
    ck_assert_int_eq(book_append(book, good, 2, NULL), BOOK_TAKEN);
    ck_assert_uint_eq(entries_in(book, SHOP), 1);
    ck_assert_uint_eq(entries_in(book, BUILD), 1);
    ck_assert_int_eq(book_append(book, good, 2, NULL), BOOK_MOVED_ON);
    g_free(shop);
    g_free(news);
    g_free(gap);

    GPtrArray *ledgers = book_ledgers(book, NULL);
    ck_assert_uint_eq(ledgers->len, 3);
    const BookLedger *first = ledgers->pdata[0], *second = ledgers->pdata[1];
    ck_assert_str_eq(first->label, "shop");
    ck_assert_int_eq(first->sort, LEDGER_SHOP);
    ck_assert_int_eq(first->last, 1);
    ck_assert_str_eq(second->id, BUILD);
    ck_assert_int_eq(second->sort, LEDGER_BUILD);
    g_ptr_array_unref(ledgers);
    book_close(book);
    end();
}
END_TEST

START_TEST(a_turn_not_kept_leaves_nothing)
{
    begin();
    Book *book = store_new(path);
    BookTurn *turn = book_turn(book, NULL);
    char *line = note_line(BUILD, 1, "not kept");
    ck_assert_int_eq(book_turn_put(turn, line, NULL), BOOK_TAKEN);
    ck_assert_uint_eq(entries_in(book, BUILD), 1);
    GError *error = NULL;
    ck_assert_ptr_null(book_turn(book, &error));
    expect_message(error, STANDBOOK_ERROR_STORE, "already");
    book_turn_free(turn);
    ck_assert_uint_eq(entries_in(book, BUILD), 0);

    turn = book_turn(book, NULL);
    ck_assert_int_eq(book_turn_put(turn, "{}", NULL), BOOK_REFUSED);
    ck_assert_int_eq(book_turn_put(turn, line, NULL), BOOK_TAKEN);
    ck_assert(!book_turn_keep(turn, NULL));
    book_turn_free(turn);
    ck_assert_uint_eq(entries_in(book, BUILD), 0);
    g_free(line);
    book_close(book);
    end();
}
END_TEST

static void expect_refused(const char *at, const char *part)
{
    GError *error = NULL;
    Book *book = book_open(at, BOOK_WRITE, &error);
    ck_assert_ptr_null(book);
    expect_message(error, STANDBOOK_ERROR_STORE, part);
}

// Runs SQL on the file, behind the program's back.
static void tamper(const char *sql)
{
    sqlite3 *db;
    ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
    char *why = NULL;
    ck_assert_msg(sqlite3_exec(db, sql, NULL, NULL, &why) == SQLITE_OK, "%s: %s", sql, why);
    sqlite3_close(db);
}

START_TEST(each_refusal_has_its_own_sentence)
{
    begin();
    expect_refused(path, "there is none");
    expect_refused(folder, "not a file");
    ck_assert(g_file_set_contents(path, "", 0, NULL));
    expect_refused(path, "it is empty");
    ck_assert(g_file_set_contents(path, "SQLite format 4\n this is a letter", -1, NULL));
    expect_refused(path, "not a store of standbook");
    g_remove(path);
    tamper("CREATE TABLE engine (serial)");
    expect_refused(path, "not a store of standbook");
    GError *error = NULL;
    ck_assert(!book_create(path, &error));
    expect_message(error, STANDBOOK_ERROR_STORE, "already");
    g_remove(path);
    ck_assert_int_eq(g_rmdir(folder), 0); // nothing was left beside what is not ours
    ck_assert_int_eq(g_mkdir(folder, 0700), 0);

    book_close(store_new(path));
    tamper("PRAGMA user_version = 2");
    expect_refused(path, "newer");
    tamper("PRAGMA user_version = 1; DROP TABLE person_detail; DROP TABLE kept");
    expect_refused(path, "damaged");
    end();
}
END_TEST

START_TEST(a_locked_store_says_so)
{
    begin();
    book_close(store_new(path));
    sqlite3 *db;
    sqlite3_open(path, &db);
    sqlite3_exec(db, "PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE", NULL, NULL, NULL);
    expect_refused(path, "locked");
    sqlite3_close(db);
    end();
}
END_TEST

START_TEST(a_store_opened_to_be_read_takes_nothing)
{
    begin();
    book_close(store_new(path));
    Book *book = book_open(path, BOOK_READ, NULL);
    ck_assert(book_is_read_only(book));
    GError *error = NULL;
    ck_assert_ptr_null(book_turn(book, &error));
    expect_message(error, STANDBOOK_ERROR_STORE, "read only");
    book_close(book);
    end();
}
END_TEST

// Root may write everything, so somebody else looks: `answer` is what the process exits with.
static void expect_as_another(int (*look)(void), int answer)
{
    pid_t child = fork();
    if (child == 0) {
        if (getuid() == 0 && setuid(65534) != 0)
            _exit(99);
        _exit(look());
    }
    int status;
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert(WIFEXITED(status));
    ck_assert_int_eq(WEXITSTATUS(status), answer);
}

// The entries read out of a store that is open to be read only, 98 if it is not, 97 if not open.
static int count_read_only(void)
{
    g_autoptr(Book) book = book_open(path, BOOK_WRITE, NULL);
    if (!book)
        return 97;
    return book_is_read_only(book) ? (int)entries_in(book, BUILD) : 98;
}

START_TEST(a_store_that_may_not_be_written_is_read)
{
    begin();
    Book *book = store_new(path);
    note(book, BUILD, 1, "first");
    ck_assert_int_eq(chmod(folder, 0755), 0);
    ck_assert_int_eq(chmod(path, 0644), 0);
    expect_as_another(count_read_only, 1); // while it is being written
    book_close(book);
    ck_assert_int_eq(chmod(path, 0444), 0);
    ck_assert_int_eq(chmod(folder, 0555), 0);
    expect_as_another(count_read_only, 1); // and left alone
    ck_assert_int_eq(chmod(path, 0400), 0);
    if (getuid() == 0)
        expect_as_another(count_read_only, 97);
    ck_assert_int_eq(chmod(folder, 0755), 0);
    end();
}
END_TEST

START_TEST(network_file_systems_are_known)
{
    // statfs(2), linux/magic.h
    ck_assert_str_eq(network_name(0x6969), "NFS");
    ck_assert_str_eq(network_name(0xfe534d42), "SMB");
    ck_assert_str_eq(network_name(0xfffffffffe534d42), "SMB");
    ck_assert_ptr_null(network_name(0xef53));     // ext4
    ck_assert_ptr_null(network_name(0x01021994)); // tmpfs
}
END_TEST

START_TEST(labels_can_be_corrected)
{
    begin();
    Book *book = store_new(path);
    BookTurn *turn = book_turn(book, NULL);
    ck_assert(book_turn_label(turn, BUILD, "25-016", NULL));
    ck_assert(book_turn_keep(turn, NULL));
    book_turn_free(turn);
    turn = book_turn(book, NULL);
    GError *error = NULL;
    ck_assert(!book_turn_label(turn, BUILD, "25-015", &error));
    expect_message(error, STANDBOOK_ERROR_NO, "already");
    ck_assert(!book_turn_keep(turn, NULL));
    book_turn_free(turn);
    GPtrArray *ledgers = book_ledgers(book, NULL);
    ck_assert_str_eq(((BookLedger *)ledgers->pdata[2])->label, "25-016");
    g_ptr_array_unref(ledgers);
    book_close(book);
    end();
}
END_TEST

START_TEST(a_file_put_in_its_place_is_noticed)
{
    begin();
    Book *book = store_new(path);
    char *aside = g_build_filename(folder, "aside.db", NULL);
    ck_assert_int_eq(g_rename(path, aside), 0);
    ck_assert(book_create(path, NULL));
    char *line = note_line(BUILD, 1, "to the wrong file");
    GError *error = NULL;
    ck_assert_int_eq(book_append(book, (const char *const *)&line, 1, &error), BOOK_REFUSED);
    expect_message(error, STANDBOOK_ERROR_STORE, "another file");
    g_free(line);
    g_free(aside);
    book_close(book);
    end();
}
END_TEST

START_TEST(no_entry_is_changed_or_removed)
{
    begin();
    Book *book = store_new(path);
    note(book, BUILD, 1, "first");
    book_close(book);
    static const char *const attempts[] = {
        "UPDATE entry SET line = '{}'",
        "DELETE FROM entry",
        "INSERT OR REPLACE INTO entry SELECT ledger, seq, '{}', digest FROM entry",
        "INSERT INTO entry SELECT ledger, 3, line, digest FROM entry",
        "DELETE FROM ledger",
        "UPDATE ledger SET kind = 'shop'"};
    for (gsize i = 0; i < G_N_ELEMENTS(attempts); i++) {
        sqlite3 *db;
        sqlite3_open(path, &db);
        sqlite3_exec(db, "PRAGMA recursive_triggers = ON", NULL, NULL, NULL);
        ck_assert_int_eq(sqlite3_exec(db, attempts[i], NULL, NULL, NULL), SQLITE_CONSTRAINT);
        sqlite3_close(db);
    }
    end();
}
END_TEST

START_TEST(bytes_are_kept_by_their_digest)
{
    begin();
    Book *book = store_new(path);
    GBytes *plan = g_bytes_new_static("plan: Small twin\n", 17);
    char digest[65];
    for (int i = 0; i < 2; i++) {
        BookTurn *turn = book_turn(book, NULL);
        ck_assert(book_turn_keep_bytes(turn, "plan", plan, digest, NULL));
        ck_assert(book_turn_keep(turn, NULL));
        book_turn_free(turn);
    }
    // printf 'plan: Small twin\n' | sha256sum
    ck_assert_str_eq(digest, "02129357901e5e4d43508256dbb9264bd6d1f42ec8e726882e26ac0823a6c370");
    GBytes *kept = book_kept(book, digest, NULL);
    ck_assert(g_bytes_equal(kept, plan));
    g_bytes_unref(kept);
    GError *error = NULL;
    ck_assert_ptr_null(book_kept(book, CHAIN_START, &error));
    expect_message(error, STANDBOOK_ERROR_STORE, "no plan");
    g_bytes_unref(plan);
    book_close(book);
    end();
}
END_TEST

START_TEST(another_process_changes_the_data_version)
{
    begin();
    Book *book = store_new(path), *other = book_open(path, BOOK_WRITE, NULL);
    gint64 before = book_data_version(book);
    ck_assert_int_eq(note(book, BUILD, 1, "own"), BOOK_TAKEN);
    ck_assert_int_eq(book_data_version(book), before);
    ck_assert_int_eq(note(other, BUILD, 1, "stale"), BOOK_MOVED_ON);
    ck_assert_int_eq(note(other, BUILD, 2, "theirs"), BOOK_TAKEN);
    ck_assert_int_ne(book_data_version(book), before);
    book_close(other);
    book_close(book);
    char *log = g_strconcat(path, "-wal", NULL);
    ck_assert(!g_file_test(log, G_FILE_TEST_EXISTS)); // the last to close moved it in
    g_free(log);
    end();
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {what_was_kept_is_read_in_order,
                                  several_ledgers_in_one_turn_or_none,
                                  a_turn_not_kept_leaves_nothing,
                                  each_refusal_has_its_own_sentence,
                                  a_locked_store_says_so,
                                  a_store_opened_to_be_read_takes_nothing,
                                  a_store_that_may_not_be_written_is_read,
                                  network_file_systems_are_known,
                                  labels_can_be_corrected,
                                  a_file_put_in_its_place_is_noticed,
                                  no_entry_is_changed_or_removed,
                                  bytes_are_kept_by_their_digest,
                                  another_process_changes_the_data_version};
    return run_suite("book", tests, G_N_ELEMENTS(tests));
}
