// A store in a folder of its own, with the demo's plan and shop, and sessions on it.
#pragma once
#include "demo.h"

#include <glib/gstdio.h>
#include <standbook/book/care.h>
#include <standbook/work/session.h>

static char *folder, *path;
static Book *book;
static guint ids;
static Moment clock_time;

static inline char *next_id(gpointer user)
{
    (void)user;
    return g_strdup_printf("00000000-0000-4000-8000-%012x", ++ids);
}

static inline Moment now(gpointer user)
{
    (void)user;
    return clock_time;
}

static inline SessionOptions options(void)
{
    return (SessionOptions){.now = now, .new_id = next_id, .trust_times = TRUE};
}

static inline Session *open_session(const char *number)
{
    GError *error = NULL;
    SessionOptions chosen = options();
    Session *session = session_open(book, number, &chosen, &error);
    ck_assert_msg(session != NULL, "%s", error ? error->message : "");
    return session;
}

static inline void take(Session *session, const char *line)
{
    GError *error = NULL;
    ck_assert_msg(session_line(session, line, -1, NULL, &error), "%s: %s", line,
                  error ? error->message : "");
}

static inline void expect_answer(Session *session, const char *line, const char *expected)
{
    GError *error = NULL;
    char *answer = NULL;
    ck_assert_msg(session_line(session, line, -1, &answer, &error), "%s: %s", line,
                  error ? error->message : "");
    if (!expected)
        ck_assert_ptr_null(answer);
    else
        ck_assert_msg(answer && strcmp(answer, expected) == 0, "%s\n  answers  %s\n  expected %s",
                      line, answer, expected);
    g_free(answer);
}

static inline void expect_refused(Session *session, const char *line, int code,
                                  const char *expected)
{
    GError *error = NULL;
    char *answer = NULL;
    ck_assert_msg(!session_line(session, line, -1, &answer, &error), "taken: %s", line);
    ck_assert_ptr_null(answer);
    ck_assert_int_eq(error->code, code);
    ck_assert_str_eq(error->message, expected);
    g_error_free(error);
}

static inline void feed(Session *session, const char *file)
{
    char *text = NULL;
    gsize length = 0;
    GError *error = NULL;
    ck_assert(g_file_get_contents(file, &text, &length, NULL));
    ck_assert_msg(session_text(session, text, length, NULL, NULL, &error), "%s: %s", file,
                  error ? error->message : "");
    g_free(text);
}

// The plan goes in as `standbook plan add` puts it: entered by the shop itself.
static inline void add_plan(void)
{
    char *text = NULL, digest[65];
    gsize length = 0;
    ck_assert(g_file_get_contents("demo-data/hathersey-h23.yaml", &text, &length, NULL));
    g_autoptr(GBytes) bytes = g_bytes_new_take(text, length);
    g_autoptr(BookTurn) turn = book_turn(book, NULL);
    ck_assert(book_turn_ledger(turn, SHOP_LEDGER, LEDGER_SHOP, "shop", NULL));
    ck_assert(book_turn_keep_bytes(turn, "plan", bytes, digest, NULL));
    g_autoptr(Entry) entry = entry_new(kind_newest("plan"));
    entry->ledger = g_strdup(SHOP_LEDGER);
    entry->seq = 1;
    entry->by = g_strdup(SHOP_LEDGER);
    entry->at = g_strdup("2024-01-08T07:00:00");
    entry_set_text(entry, "digest", digest);
    entry_set_text(entry, "name", "Hathersey H23 four, full rebuild");
    g_autofree char *line = entry_write(entry, NULL);
    ck_assert_int_eq(book_turn_put(turn, line, NULL), BOOK_TAKEN);
    ck_assert(book_turn_keep(turn, NULL));
}

static inline void make(void)
{
    folder = g_dir_make_tmp("standbook-XXXXXX", NULL);
    path = g_build_filename(folder, "shop.db", NULL);
    ids = 0;
    clock_time = TYPED;
    ck_assert(book_create(path, NULL));
    book = book_open(path, BOOK_WRITE, NULL);
    ck_assert_ptr_nonnull(book);
}

static inline void make_shop(void)
{
    make();
    add_plan();
    Session *shop = open_session(NULL);
    feed(shop, "demo-data/shop.log");
    session_close(shop);
}

static inline void clear(void)
{
    book_close(book);
    GDir *open = g_dir_open(folder, 0, NULL);
    const char *name;
    while ((name = g_dir_read_name(open))) {
        g_autofree char *file = g_build_filename(folder, name, NULL);
        g_unlink(file);
    }
    g_dir_close(open);
    g_rmdir(folder);
    g_free(path);
    g_free(folder);
}
