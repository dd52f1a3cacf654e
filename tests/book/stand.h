// What the tests of the store share: a folder of their own, ids and lines.
#pragma once
#include <check.h>
#include <glib/gstdio.h>
#include <standbook/base/error.h>
#include <standbook/book/book.h>
#include <standbook/record/entry.h>
#include <stdlib.h>
#include <string.h>

static const char SHOP[] = "6f1c2d30-0000-4000-8000-000000000001";
static const char BUILD[] = "6f1c2d30-0000-4000-8000-000000000002";
static const char OTHER_BUILD[] = "6f1c2d30-0000-4000-8000-000000000003";

static inline char *folder_new(void)
{
    GError *error = NULL;
    char *folder = g_dir_make_tmp("standbook-XXXXXX", &error);
    ck_assert_ptr_nonnull(folder);
    return folder;
}

static inline void folder_remove(char *folder)
{
    GDir *dir = g_dir_open(folder, 0, NULL);
    for (const char *name; (name = g_dir_read_name(dir));) {
        char *path = g_build_filename(folder, name, NULL);
        g_remove(path);
        g_free(path);
    }
    g_dir_close(dir);
    ck_assert_int_eq(g_rmdir(folder), 0);
    g_free(folder);
}

// A note as a ledger line.
static inline char *note_line(const char *ledger, gint64 seq, const char *text)
{
    Entry *entry = entry_new(kind_newest("note"));
    entry->ledger = g_strdup(ledger);
    entry->seq = seq;
    entry->by = g_strdup("6f1c2d30-0000-4000-8000-0000000000aa");
    entry->at = g_strdup("2025-03-13T10:01:00");
    entry_set_text(entry, "text", text);
    GError *error = NULL;
    char *line = entry_write(entry, &error);
    ck_assert_msg(line != NULL, "%s", error ? error->message : "");
    entry_free(entry);
    return line;
}

// A store with the shop's ledger and two builds, all empty.
static inline Book *store_new(const char *path)
{
    GError *error = NULL;
    ck_assert_msg(book_create(path, &error), "%s", error ? error->message : "");
    Book *book = book_open(path, BOOK_WRITE, &error);
    ck_assert_msg(book != NULL, "%s", error ? error->message : "");
    BookTurn *turn = book_turn(book, &error);
    ck_assert_msg(turn != NULL, "%s", error ? error->message : "");
    ck_assert(book_turn_ledger(turn, SHOP, LEDGER_SHOP, "shop", NULL));
    ck_assert(book_turn_ledger(turn, BUILD, LEDGER_BUILD, "25-014", NULL));
    ck_assert(book_turn_ledger(turn, OTHER_BUILD, LEDGER_BUILD, "25-015", NULL));
    ck_assert(book_turn_keep(turn, &error));
    book_turn_free(turn);
    return book;
}

static inline BookOutcome note(Book *book, const char *ledger, gint64 seq, const char *text)
{
    char *line = note_line(ledger, seq, text);
    const char *lines[] = {line};
    BookOutcome outcome = book_append(book, lines, 1, NULL);
    g_free(line);
    return outcome;
}

static inline guint entries_in(Book *book, const char *ledger)
{
    GPtrArray *lines = book_read(book, ledger, 0, NULL);
    ck_assert_ptr_nonnull(lines);
    guint count = lines->len;
    g_ptr_array_unref(lines);
    return count;
}

static inline void expect_message(GError *error, int code, const char *part)
{
    ck_assert_ptr_nonnull(error);
    ck_assert_int_eq(error->code, code);
    ck_assert_msg(strstr(error->message, part) != NULL, "`%s` is not in: %s", part, error->message);
    g_error_free(error);
}

static inline int run_suite(const char *name, const TTest *const *tests, gsize count)
{
    Suite *suite = suite_create(name);
    TCase *tcase = tcase_create(name);
    tcase_set_timeout(tcase, 120);
    for (gsize i = 0; i < count; i++)
        tcase_add_test(tcase, tests[i]);
    suite_add_tcase(suite, tcase);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
