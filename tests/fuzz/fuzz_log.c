// Log lines: each line of an input is taken as if by MO on 2001-09-10, into one build of a store
// made once, or behind a `$` into its shop. Nothing is stored, and only what the lines touched is
// made anew for the next input. Run from the top folder.
#include "fuzz.h"
#include "session_inside.h"

#include <glib/gstdio.h>
#include <standbook/work/begin.h>

// Judging costs more than taking: one input in so many, by its length, is judged line by line.
enum { JUDGED = 8 };

static char *folder, *store;
static guint ids;

static Moment now(gpointer user)
{
    (void)user;
    return 4102444800; // 2100-01-01: what the lines say has been
}

static char *next_id(gpointer user)
{
    (void)user;
    return g_strdup_printf("00000000-0000-4000-8000-%012x", ++ids);
}

static void leave(void)
{
    fuzz_empty(folder);
    g_rmdir(folder);
    g_free(folder);
    g_free(store);
}

static void stop(GError *error)
{
    fprintf(stderr, "the shop of the fuzzers cannot be made: %s\n", error ? error->message : "?");
    exit(EXIT_FAILURE);
}

static void make_store(void)
{
    static const char order[] = "plan plan.yaml\nshop shop.log\nshop builds.log\nF-1 build.log\n";
    static const char *const files[][2] = {{"tests/fuzz/plan.yaml", "plan.yaml"},
                                           {"tests/fuzz/shop.log", "shop.log"},
                                           {"tests/fuzz/builds.log", "builds.log"},
                                           {"tests/fuzz/build.log", "build.log"}};
    const SessionOptions options = {.now = now, .new_id = next_id, .trust_times = TRUE};
    GError *error = NULL;
    folder = g_dir_make_tmp("standbook-fuzz-XXXXXX", NULL);
    store = g_build_filename(folder, "store.db", NULL);
    atexit(leave);
    g_autofree char *order_file = g_build_filename(folder, "order", NULL);
    gboolean made = g_file_set_contents(order_file, order, -1, &error);
    for (gsize i = 0; made && i < G_N_ELEMENTS(files); i++) {
        g_autofree char *text = NULL, *copy = g_build_filename(folder, files[i][1], NULL);
        made = g_file_get_contents(files[i][0], &text, NULL, &error) &&
               g_file_set_contents(copy, text, -1, &error);
    }
    if (!made || !demo_make(folder, store, &options, &error))
        stop(error);
}

static void must_count(const Assessment *assessment)
{
    guint sum = 0;
    for (guint i = 0; i < VERDICTS; i++)
        sum += assessment->counts[i];
    must(assessment->planned + assessment->added - assessment->withdrawn == sum,
         "plan + added - withdrawn is the sum of the verdicts");
}

// Takes each line, with its answer if `judged`. Whether one was taken, so that the session is
// another than before.
static gboolean take_lines(Session *session, const char *text, gsize length, gboolean judged)
{
    gboolean touched = FALSE;
    for (const char *end = text + length; text < end;) {
        const char *feed = memchr(text, '\n', (gsize)(end - text));
        const char *stop_at = feed ? feed : end;
        g_autofree char *answer = NULL;
        GError *error = NULL;
        gboolean taken =
            session_line(session, text, stop_at - text, judged ? &answer : NULL, &error);
        if (!taken)
            must_say(error);
        must(!answer || g_utf8_validate(answer, -1, NULL), "an answer is whole characters");
        touched = touched || taken;
        text = stop_at + 1;
    }
    return touched;
}

static Session *open_session(gboolean shop)
{
    static const SessionOptions options = {
        .now = now, .new_id = next_id, .trust_times = TRUE, .check = TRUE};
    static Book *book;
    GError *error = NULL;
    if (!book) {
        make_store();
        book = book_open(store, BOOK_WRITE, &error);
    }
    Session *session = book ? session_open(book, shop ? NULL : "F-1", &options, &error) : NULL;
    if (!session)
        stop(error);
    return session;
}

// The first line of every input, so that short ones have somebody at a moment.
static Session *with_person(Session *session)
{
    GError *error = NULL;
    if (!session_line(session, "2001-09-10 09:00 MO", -1, NULL, &error))
        stop(error);
    return session;
}

// As it was opened. The plan is never read again, the shop only where lines entered something in
// it.
static Session *as_opened(Session *session, gboolean shop, gint64 shop_was)
{
    if (shop_last(session_shop(session)) != shop_was) {
        session_close(session);
        return with_person(open_session(shop));
    }
    GError *error = NULL;
    session_end(session);
    if (!session_begin(session, &error))
        stop(error);
    return with_person(session);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static Session *sessions[2]; // of the build, of the shop
    gboolean shop = size > 0 && *data == '$';
    Session *session = sessions[shop];
    if (!session)
        session = with_person(open_session(shop));
    gint64 shop_was = shop_last(session_shop(session));
    gboolean judged = size % JUDGED == 0;
    gboolean touched = take_lines(session, (const char *)data + shop, size - (gsize)shop, judged);
    if (touched && judged && !shop)
        must_count(session_assessment(session));
    sessions[shop] = touched ? as_opened(session, shop, shop_was) : session;
    return 0;
}
