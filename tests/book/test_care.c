#include "stand.h"
#include <sqlite3.h>
#include <standbook/book/care.h>
#include <standbook/record/digest.h>

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

// Runs SQL on the file without its guards, and puts the guards back.
static void tamper(const char *sql)
{
    sqlite3 *db;
    ck_assert_int_eq(sqlite3_open(path, &db), SQLITE_OK);
    sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_TRIGGER, 0, NULL);
    char *why = NULL;
    ck_assert_msg(sqlite3_exec(db, sql, NULL, NULL, &why) == SQLITE_OK, "%s: %s", sql, why);
    sqlite3_close(db);
}

static GPtrArray *faults_now(void)
{
    GError *error = NULL;
    Book *book = book_open(path, BOOK_WRITE, &error);
    ck_assert_msg(book != NULL, "%s", error ? error->message : "");
    GPtrArray *faults = book_verify(book, &error);
    ck_assert_msg(faults != NULL, "%s", error ? error->message : "");
    book_close(book);
    return faults;
}

// The fault is named, at that ledger and entry, in words that have `part`.
static void expect_fault(const char *label, gint64 seq, const char *part)
{
    GPtrArray *faults = faults_now();
    gboolean found = FALSE;
    GString *all = g_string_new(NULL);
    for (guint i = 0; i < faults->len; i++) {
        const BookFault *fault = faults->pdata[i];
        g_string_append_printf(all, "%s %d: %s\n", fault->ledger, (int)fault->seq, fault->fault);
        found = found || (g_strcmp0(fault->ledger, label) == 0 && fault->seq == seq &&
                          strstr(fault->fault, part));
    }
    ck_assert_msg(found, "%s %d, %s, not in:\n%s", label, (int)seq, part, all->str);
    g_string_free(all, TRUE);
    g_ptr_array_unref(faults);
}

static void expect_whole(void)
{
    GPtrArray *faults = faults_now();
    ck_assert_msg(faults->len == 0, "%s",
                  faults->len ? ((BookFault *)faults->pdata[0])->fault : "");
    g_ptr_array_unref(faults);
}

static Entry *entry_on(const char *kind, const char *ledger, gint64 seq)
{
    Entry *entry = entry_new(kind_newest(kind));
    entry->ledger = g_strdup(ledger);
    entry->seq = seq;
    entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000aa");
    entry->at = g_strdup("2025-03-13T10:01:00");
    return entry;
}

static char *written(Entry *entry)
{
    GError *error = NULL;
    char *line = entry_write(entry, &error);
    ck_assert_msg(line != NULL, "%s", error ? error->message : "");
    entry_free(entry);
    return line;
}

static char *reading_line(gint64 seq)
{
    static const char *const place[] = {"1", "front"};
    Entry *entry = entry_on("read", BUILD, seq);
    entry_set_text(entry, "check", "main bore");
    entry_set_list(entry, "place", place, 2);
    entry_set_value(entry, "value", "5979/100", "mm", "59.790");
    entry_set_text(entry, "tool", "6f1c2d30-0000-4000-8000-000000000020");
    return written(entry);
}

static char *tick_line(gint64 seq)
{
    static const char *const bolts[] = {"2", "3", "1"};
    Entry *entry = entry_on("tick", BUILD, seq);
    entry_set_text(entry, "tightening", "main caps");
    entry_set_number(entry, "stage", 1);
    entry_set_list(entry, "bolts", bolts, 3);
    return written(entry);
}

// A shop with one note, a build with a note, a reading and a tick, and one plan kept.
static void story(void)
{
    Book *book = store_new(path);
    char *lines[] = {note_line(SHOP, 1, "opened"), note_line(BUILD, 1, "½ begun"), reading_line(2),
                     tick_line(3)};
    GError *error = NULL;
    BookOutcome outcome = book_append(book, (const char *const *)lines, 4, &error);
    ck_assert_msg(outcome == BOOK_TAKEN, "%s", error ? error->message : "");
    for (gsize i = 0; i < G_N_ELEMENTS(lines); i++)
        g_free(lines[i]);
    BookTurn *turn = book_turn(book, NULL);
    GBytes *plan = g_bytes_new_static("plan: Small twin\n", 17);
    char digest[65];
    ck_assert(book_turn_keep_bytes(turn, "plan", plan, digest, NULL));
    ck_assert(book_turn_keep(turn, NULL));
    book_turn_free(turn);
    g_bytes_unref(plan);
    book_close(book);
}

static gint64 number(const char *sql)
{
    sqlite3 *db;
    sqlite3_stmt *stmt;
    sqlite3_open(path, &db);
    ck_assert_int_eq(sqlite3_prepare_v2(db, sql, -1, &stmt, NULL), SQLITE_OK);
    ck_assert_int_eq(sqlite3_step(stmt), SQLITE_ROW);
    gint64 answer = sqlite3_column_int64(stmt, 0);
    sqlite3_finalize(stmt);
    sqlite3_close(db);
    return answer;
}

START_TEST(a_store_that_was_left_alone_is_whole)
{
    begin();
    story();
    expect_whole();
    ck_assert_int_eq(number("SELECT count(*) FROM reading WHERE name = 'main bore' AND"
                            " place = '[\"1\",\"front\"]' AND value = '5979/100'"),
                     1);
    ck_assert_int_eq(number("SELECT group_concat(bolt, '') = '231' FROM"
                            " (SELECT bolt FROM tick ORDER BY turn)"),
                     1);
    ck_assert_int_eq(number("SELECT count(*) FROM tool_use"), 1);
    ck_assert_int_eq(number("SELECT count(*) FROM word WHERE text = 'note ½ begun'"), 1);
    end();
}
END_TEST

// Every byte of every line and digest, one after the other.
START_TEST(one_changed_byte_is_named)
{
    begin();
    story();
    static const struct {
        const char *id, *label;
        int last;
    } ledgers[] = {{SHOP, "shop", 1}, {BUILD, "25-014", 3}};
    for (gsize l = 0; l < G_N_ELEMENTS(ledgers); l++)
        for (int seq = 1; seq <= ledgers[l].last; seq++) {
            char *length = g_strdup_printf("SELECT length(line) FROM entry WHERE ledger = '%s' AND"
                                           " seq = %d",
                                           ledgers[l].id, seq);
            gint64 bytes = number(length);
            for (int at = 1; at <= bytes; at += 7) {
                char *sql = g_strdup_printf(
                    "CREATE TABLE aside AS SELECT * FROM entry; UPDATE entry SET line ="
                    " substr(line, 1, %d) || iif(substr(line, %d, 1) = 'x', 'y', 'x') ||"
                    " substr(line, %d) WHERE ledger = '%s' AND seq = %d",
                    at - 1, at, at + 1, ledgers[l].id, seq);
                tamper(sql);
                expect_fault(ledgers[l].label, seq, "digest");
                tamper("UPDATE entry SET line = aside.line FROM aside WHERE"
                       " aside.ledger = entry.ledger AND aside.seq = entry.seq; DROP TABLE aside");
                g_free(sql);
            }
            for (int at = 1; at <= 64; at += 21) {
                char *sql = g_strdup_printf(
                    "UPDATE entry SET digest = substr(digest, 1, %d) ||"
                    " iif(substr(digest, %d, 1) = '0', '1', '0') || substr(digest, %d)"
                    " WHERE ledger = '%s' AND seq = %d",
                    at - 1, at, at + 1, ledgers[l].id, seq);
                tamper("CREATE TABLE aside AS SELECT * FROM entry");
                tamper(sql);
                expect_fault(ledgers[l].label, seq, "digest");
                tamper("UPDATE entry SET digest = aside.digest FROM aside WHERE"
                       " aside.ledger = entry.ledger AND aside.seq = entry.seq; DROP TABLE aside");
                g_free(sql);
            }
            g_free(length);
        }
    expect_whole();
    end();
}
END_TEST

// All that the ledgers say, or NULL if the store refuses to open or to be read.
static char *all_lines(gboolean *whole)
{
    Book *book = book_open(path, BOOK_READ, NULL);
    GPtrArray *faults = book ? book_verify(book, NULL) : NULL;
    *whole = faults && faults->len == 0;
    char *shop = *whole ? book_export(book, SHOP, NULL) : NULL;
    char *build = *whole ? book_export(book, BUILD, NULL) : NULL;
    char *both = shop && build ? g_strconcat(shop, build, NULL) : NULL;
    g_free(shop);
    g_free(build);
    g_clear_pointer(&faults, g_ptr_array_unref);
    book_close(book);
    return both;
}

// Bytes of the file itself: either the store is no longer called whole, or nothing it says changed.
START_TEST(no_byte_of_the_file_changes_a_whole_ledger)
{
    begin();
    story();
    gboolean whole;
    char *before = all_lines(&whole), *bytes = NULL;
    ck_assert(whole);
    gsize length = 0;
    int noticed = 0;
    ck_assert(g_file_get_contents(path, &bytes, &length, NULL));
    for (gsize at = (gsize)_i; at < length; at += 211) {
        bytes[at] ^= 0x01;
        FILE *file = fopen(path, "wb");
        ck_assert_uint_eq(fwrite(bytes, 1, length, file), length);
        ck_assert_int_eq(fclose(file), 0);
        char *after = all_lines(&whole);
        ck_assert_msg(!whole || g_strcmp0(before, after) == 0, "byte %d", (int)at);
        noticed += !whole;
        g_free(after);
        bytes[at] ^= 0x01;
    }
    ck_assert_int_gt(noticed, 0);
    g_free(bytes);
    g_free(before);
    end();
}
END_TEST

START_TEST(other_changes_are_named)
{
    static const struct {
        const char *sql, *label;
        int seq;
        const char *part;
    } cases[] = {
        {"DELETE FROM entry WHERE ledger LIKE '%2' AND seq = 2", "25-014", 3, "missing"},
        {"UPDATE kept SET bytes = CAST('plan: Large twin' || char(10) AS BLOB)", NULL, 0,
         "does not have its digest"},
        {"DROP TRIGGER entry_not_changed", NULL, 0, "guards"},
        {"DELETE FROM reading", "25-014", 2, "`reading`"},
        {"UPDATE tick SET bolt = '4' WHERE turn = 1", "25-014", 3, "`tick`"},
        {"INSERT INTO part VALUES ('6f1c2d30-0000-4000-8000-000000000002', 3, 'piston', NULL, NULL,"
         " 'new', NULL, NULL, NULL, NULL, 1)",
         "25-014", 3, "`part`"},
        {"UPDATE entry SET ledger = '6f1c2d30-0000-4000-8000-000000000003' WHERE ledger LIKE '%2'",
         "25-015", 1, "another entry"},
        {"UPDATE ledger SET id = '6f1c2d30-0000-4000-8000-000000000009' WHERE label = '25-014'",
         "6f1c2d30-0000-4000-8000-000000000002", 1, "does not have"},
    };
    for (gsize i = 0; i < G_N_ELEMENTS(cases); i++) {
        begin();
        story();
        tamper(cases[i].sql);
        expect_fault(cases[i].label, cases[i].seq, cases[i].part);
        end();
    }
}
END_TEST

START_TEST(projections_are_made_again)
{
    begin();
    story();
    tamper("DELETE FROM reading; UPDATE tick SET bolt = '4'; DROP TABLE word");
    Book *book = book_open(path, BOOK_WRITE, NULL);
    GError *error = NULL;
    ck_assert_msg(book_rebuild(book, &error), "%s", error ? error->message : "");
    book_close(book);
    expect_whole();
    book = book_open(path, BOOK_WRITE, NULL);
    ck_assert_int_eq(note(book, BUILD, 4, "goes on"), BOOK_TAKEN);
    book_close(book);
    expect_whole();
    ck_assert_int_eq(number("SELECT count(*) FROM word"), 5);
    // One that is not what the program needs is made again at the next opening.
    tamper("DROP TABLE word; CREATE TABLE word (ledger TEXT)");
    expect_whole();
    end();
}
END_TEST

START_TEST(a_plan_named_and_not_kept_is_missing)
{
    begin();
    Book *book = store_new(path);
    Entry *entry = entry_on("plan", SHOP, 1);
    entry_set_text(entry, "digest", CHAIN_START);
    entry_set_text(entry, "name", "Small twin");
    char *line = written(entry);
    ck_assert_int_eq(book_append(book, (const char *const *)&line, 1, NULL), BOOK_TAKEN);
    g_free(line);
    book_close(book);
    expect_fault("shop", 1, "plan it names");
    end();
}
END_TEST

START_TEST(an_export_is_taken_into_another_store)
{
    begin();
    story();
    Book *book = book_open(path, BOOK_WRITE, NULL);
    char *rows = book_export(book, BUILD, NULL);
    char *other_path = g_build_filename(folder, "other.db", NULL);
    ck_assert(book_create(other_path, NULL));
    Book *other = book_open(other_path, BOOK_WRITE, NULL);
    gint64 taken = -1;
    GError *error = NULL;
    ck_assert_msg(book_import(other, rows, -1, LEDGER_BUILD, "25-014", &taken, &error), "%s",
                  error ? error->message : "");
    ck_assert_int_eq(taken, 3);
    char *again = book_export(other, BUILD, NULL);
    ck_assert_str_eq(again, rows);
    g_free(again);
    ck_assert(book_import(other, rows, -1, LEDGER_BUILD, "25-014", &taken, NULL));
    ck_assert_int_eq(taken, 0); // nothing new

    ck_assert_int_eq(note(book, BUILD, 4, "went on"), BOOK_TAKEN);
    char *more = book_export(book, BUILD, NULL);
    ck_assert(book_import(other, more, -1, LEDGER_BUILD, "25-014", &taken, NULL));
    ck_assert_int_eq(taken, 1);
    ck_assert(!book_import(other, rows, -1, LEDGER_BUILD, "25-014", &taken, &error));
    expect_message(error, STANDBOOK_ERROR_NO, "more entries");

    ck_assert_int_eq(note(book, BUILD, 5, "one way"), BOOK_TAKEN);
    ck_assert_int_eq(note(other, BUILD, 5, "another way"), BOOK_TAKEN);
    char *parted = book_export(book, BUILD, NULL);
    error = NULL;
    ck_assert(!book_import(other, parted, -1, LEDGER_BUILD, "25-014", &taken, &error));
    expect_message(error, STANDBOOK_ERROR_NO, "part ways");
    g_free(parted);
    g_free(more);
    g_free(rows);
    g_free(other_path);
    book_close(other);
    book_close(book);
    end();
}
END_TEST

START_TEST(a_spoilt_export_is_refused_whole)
{
    begin();
    story();
    Book *book = book_open(path, BOOK_WRITE, NULL);
    char *rows = book_export(book, BUILD, NULL);
    book_close(book);
    char *other_path = g_build_filename(folder, "other.db", NULL);
    ck_assert(book_create(other_path, NULL));
    book = book_open(other_path, BOOK_WRITE, NULL);
    gint64 taken = -1;
    gsize length = strlen(rows);
    for (gsize i = 0; i < length; i++) {
        char was = rows[i];
        rows[i] = was == '1' ? '2' : '1';
        GError *error = NULL;
        ck_assert_msg(!book_import(book, rows, -1, LEDGER_BUILD, "25-014", &taken, &error),
                      "byte %d", (int)i);
        ck_assert_int_eq(error->code, STANDBOOK_ERROR_NO);
        g_error_free(error);
        rows[i] = was;
    }
    ck_assert(!book_import(book, rows, (gssize)length - 1, LEDGER_BUILD, "25-014", &taken, NULL));
    ck_assert(!book_import(book, "", 0, LEDGER_BUILD, "25-014", &taken, NULL));
    GPtrArray *ledgers = book_ledgers(book, NULL);
    ck_assert_uint_eq(ledgers->len, 0);
    ck_assert_int_eq(taken, -1);
    g_ptr_array_unref(ledgers);
    book_close(book);
    g_free(other_path);
    g_free(rows);
    end();
}
END_TEST

START_TEST(a_backup_is_a_whole_store)
{
    begin();
    story();
    Book *book = book_open(path, BOOK_WRITE, NULL);
    char *target = g_build_filename(folder, "copy's.db", NULL);
    GError *error = NULL;
    ck_assert_msg(book_backup(book, target, &error), "%s", error ? error->message : "");
    ck_assert(!book_backup(book, target, &error));
    expect_message(error, STANDBOOK_ERROR_STORE, "already");
    char *rows = book_export(book, BUILD, NULL);
    book_close(book);
    g_free(path);
    path = target;
    expect_whole();
    book = book_open(path, BOOK_WRITE, NULL);
    char *again = book_export(book, BUILD, NULL);
    ck_assert_str_eq(again, rows);
    ck_assert_int_eq(note(book, BUILD, 4, "goes on"), BOOK_TAKEN);
    g_free(again);
    g_free(rows);
    book_close(book);
    end();
}
END_TEST

START_TEST(a_spoilt_store_gives_no_backup)
{
    begin();
    story();
    tamper("UPDATE entry SET line = replace(line, '59.790', '59.970')");
    Book *book = book_open(path, BOOK_WRITE, NULL);
    char *target = g_build_filename(folder, "copy.db", NULL);
    GError *error = NULL;
    ck_assert(!book_backup(book, target, &error));
    expect_message(error, STANDBOOK_ERROR_NO, "25-014, entry 2");
    ck_assert(!g_file_test(target, G_FILE_TEST_EXISTS));
    g_free(target);
    book_close(book);
    end();
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {a_store_that_was_left_alone_is_whole,
                                  one_changed_byte_is_named,
                                  other_changes_are_named,
                                  projections_are_made_again,
                                  a_plan_named_and_not_kept_is_missing,
                                  an_export_is_taken_into_another_store,
                                  a_spoilt_export_is_refused_whole,
                                  a_backup_is_a_whole_store,
                                  a_spoilt_store_gives_no_backup};
    Suite *suite = suite_create("care");
    TCase *tcase = tcase_create("care");
    tcase_set_timeout(tcase, 120);
    for (gsize i = 0; i < G_N_ELEMENTS(tests); i++)
        tcase_add_test(tcase, tests[i]);
    tcase_add_loop_test(tcase, no_byte_of_the_file_changes_a_whole_ledger, 0, 2);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
