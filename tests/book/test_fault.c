// Whatever fails and whenever the process ends: the store opens afterwards, everything acknowledged
// is there, and at most the one line in flight, whole.
#include "fault_vfs.h"
#include "stand.h"
#include <standbook/book/care.h>
#include <sys/wait.h>

static char *folder, *path;

static void begin(void)
{
    folder = folder_new();
    path = g_build_filename(folder, "stand.db", NULL);
    fault = (Fault){0};
    Book *book = store_new(path);
    ck_assert_int_eq(note(book, BUILD, 1, "stands already"), BOOK_TAKEN);
    book_close(book);
}

static void end(void)
{
    g_free(path);
    folder_remove(folder);
}

// Opens, puts one line into the shop and one into the build in one turn, closes.
static BookOutcome scenario(gint64 shop_seq, gint64 build_seq)
{
    GError *error = NULL;
    Book *book = book_open(path, BOOK_WRITE, &error);
    BookOutcome outcome = BOOK_REFUSED;
    if (book) {
        char *lines[] = {note_line(SHOP, shop_seq, "wrench found wrong"),
                         note_line(BUILD, build_seq, "its wrench was found wrong")};
        outcome = book_append(book, (const char *const *)lines, 2, &error);
        g_free(lines[0]);
        g_free(lines[1]);
        book_close(book);
    }
    // What is refused has a sentence.
    ck_assert_int_eq(outcome == BOOK_TAKEN, error == NULL);
    ck_assert(!error || strlen(error->message) > 20);
    g_clear_error(&error);
    return outcome;
}

// The store without faults: whole, with as many lines of the build as are returned, and one less of
// the shop.
static gint64 lines_afterwards(void)
{
    fault = (Fault){0};
    GError *error = NULL;
    Book *book = book_open(path, BOOK_WRITE, &error);
    ck_assert_msg(book != NULL, "%s", error ? error->message : "");
    GPtrArray *faults = book_verify(book, &error);
    ck_assert_msg(faults != NULL, "%s", error ? error->message : "");
    ck_assert_msg(faults->len == 0, "%s",
                  faults->len ? ((BookFault *)faults->pdata[0])->fault : "");
    g_ptr_array_unref(faults);
    gint64 lines = entries_in(book, BUILD);
    ck_assert_int_eq(entries_in(book, SHOP) + 1, lines);
    book_close(book);
    return lines;
}

static const struct {
    FaultCall call;
    int answer;
    int least; // calls of that sort in the scenario
} calls[] = {
    {FAULT_OPEN, SQLITE_CANTOPEN, 2},     {FAULT_READ, SQLITE_IOERR_READ, 4},
    {FAULT_WRITE, SQLITE_IOERR_WRITE, 7}, {FAULT_WRITE, SQLITE_FULL, 7},
    {FAULT_SYNC, SQLITE_IOERR_FSYNC, 3},  {FAULT_SHARE, SQLITE_IOERR_SHMMAP, 1},
};

// In this process: the fault is answered by a sentence, and what was refused is not there.
START_TEST(the_nth_call_fails)
{
    FaultWay way = _i % 2 ? FAULT_EVER : FAULT_ONCE;
    int c = _i / 2, n = 0;
    begin();
    gint64 lines = lines_afterwards();
    for (gboolean fired = TRUE; fired;) {
        fault = (Fault){.call = calls[c].call, .way = way, .n = ++n, .answer = calls[c].answer};
        BookOutcome outcome = scenario(lines, lines + 1);
        fired = fault.fired;
        gint64 after = lines_afterwards();
        if (outcome == BOOK_TAKEN)
            ck_assert_int_eq(after, lines + 1);
        else if (way == FAULT_ONCE)
            ck_assert_int_eq(after, lines);
        else // a disk that no longer takes anything may keep what it had taken
            ck_assert(after == lines || after == lines + 1);
        lines = after;
    }
    ck_assert_int_gt(n, calls[c].least);
    end();
}
END_TEST

// In a process of its own, which says with a byte that the lines were acknowledged.
static gboolean killed(gint64 lines, FaultCall call, FaultWay way, int n, gboolean *acknowledged)
{
    int ends[2], status;
    ck_assert_int_eq(pipe(ends), 0);
    pid_t child = fork();
    ck_assert_int_ge(child, 0);
    if (child == 0) {
        fault = (Fault){.call = call, .way = way, .n = n};
        Book *book = book_open(path, BOOK_WRITE, NULL);
        char *written[] = {note_line(SHOP, lines, "wrench found wrong"),
                           note_line(BUILD, lines + 1, "its wrench was found wrong")};
        if (book_append(book, (const char *const *)written, 2, NULL) == BOOK_TAKEN &&
            write(ends[1], "!", 1) != 1)
            _exit(1);
        book_close(book);
        _exit(0);
    }
    close(ends[1]);
    char byte;
    *acknowledged = read(ends[0], &byte, 1) == 1;
    close(ends[0]);
    ck_assert_int_eq(waitpid(child, &status, 0), child);
    ck_assert(WIFSIGNALED(status) || WEXITSTATUS(status) == 0);
    return WIFSIGNALED(status);
}

START_TEST(the_process_ends_at_the_nth_call)
{
    static const FaultCall killers[] = {FAULT_OPEN, FAULT_READ, FAULT_WRITE, FAULT_SYNC,
                                        FAULT_SHARE};
    FaultCall call = killers[_i / 3];
    FaultWay way = FAULT_KILL + _i % 3;
    begin();
    gint64 lines = lines_afterwards();
    gboolean was_killed = TRUE;
    int kills = -1;
    for (int n = 1; was_killed; n++, kills++) {
        gboolean acknowledged = FALSE;
        was_killed = killed(lines, call, way, n, &acknowledged);
        gint64 after = lines_afterwards();
        if (acknowledged)
            ck_assert_int_eq(after, lines + 1);
        else
            ck_assert(after == lines || after == lines + 1);
        ck_assert(was_killed || acknowledged);
        lines = after;
    }
    ck_assert_int_ge(kills, 1);
    end();
}
END_TEST

START_TEST(a_full_disk_takes_the_line_later)
{
    begin();
    Book *book = book_open(path, BOOK_WRITE, NULL);
    char *line = note_line(BUILD, 2, "no room");
    fault = (Fault){.call = FAULT_WRITE, .way = FAULT_EVER, .n = 1, .answer = SQLITE_FULL};
    for (int i = 0; i < 3; i++) {
        GError *error = NULL;
        ck_assert_int_eq(book_append(book, (const char *const *)&line, 1, &error), BOOK_REFUSED);
        expect_message(error, STANDBOOK_ERROR_STORE, "disk is full");
        ck_assert_uint_eq(entries_in(book, BUILD), 1);
    }
    fault = (Fault){0};
    ck_assert_int_eq(book_append(book, (const char *const *)&line, 1, NULL), BOOK_TAKEN);
    ck_assert_uint_eq(entries_in(book, BUILD), 2);
    g_free(line);
    book_close(book);
    end();
}
END_TEST

static const struct {
    int writers, lines; // each writes so many
} crowds[] = {{2, 200}, {8, 40}};

// One writer asks within its turn where the ledger ends; the other writes its line first, and anew
// if somebody was before.
static void eager_writer(gboolean asks_first, int lines)
{
    Book *book = book_open(path, BOOK_WRITE, NULL);
    for (int i = 0; i < lines;) {
        g_autoptr(BookTurn) turn = asks_first ? book_turn(book, NULL) : NULL;
        gint64 seq = 0;
        book_end(book, BUILD, &seq, NULL, NULL);
        char *line = note_line(BUILD, seq + 1, asks_first ? "asks" : "tries");
        BookOutcome outcome = asks_first ? book_turn_put(turn, line, NULL)
                                         : book_append(book, (const char *const *)&line, 1, NULL);
        g_free(line);
        if (outcome == BOOK_REFUSED || (turn && !book_turn_keep(turn, NULL)))
            _exit(1);
        i += outcome == BOOK_TAKEN;
    }
    book_close(book);
    _exit(0);
}

START_TEST(processes_write_at_once)
{
    begin();
    const int count = crowds[_i].writers;
    pid_t writers[8];
    for (int i = 0; i < count; i++) {
        writers[i] = fork();
        if (writers[i] == 0)
            eager_writer(i % 2 == 0, crowds[_i].lines);
    }
    for (int i = 0; i < count; i++) {
        int status;
        ck_assert_int_eq(waitpid(writers[i], &status, 0), writers[i]);
        ck_assert(WIFEXITED(status));
        ck_assert_int_eq(WEXITSTATUS(status), 0);
    }
    Book *book = book_open(path, BOOK_WRITE, NULL);
    ck_assert_uint_eq(entries_in(book, BUILD), 1 + count * crowds[_i].lines);
    GPtrArray *faults = book_verify(book, NULL);
    ck_assert_uint_eq(faults->len, 0);
    g_ptr_array_unref(faults);
    book_close(book);
    end();
}
END_TEST

int main(void)
{
    fault_vfs_register();
    Suite *suite = suite_create("fault");
    TCase *tcase = tcase_create("fault");
    tcase_set_timeout(tcase, 120);
    tcase_add_loop_test(tcase, the_nth_call_fails, 0, 2 * G_N_ELEMENTS(calls));
    tcase_add_loop_test(tcase, the_process_ends_at_the_nth_call, 0, 5 * 3);
    tcase_add_test(tcase, a_full_disk_takes_the_line_later);
    tcase_add_loop_test(tcase, processes_write_at_once, 0, G_N_ELEMENTS(crowds));
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    g_ptr_array_unref(fault_files);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
