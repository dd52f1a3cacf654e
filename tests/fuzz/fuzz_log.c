// Log lines: each line of an input is taken as if into one build of a store made once, in the shop
// of the stories, and the build is judged at the end. Nothing is stored. Run from the top folder.
#include "fuzz.h"

#include <glib/gstdio.h>
#include <standbook/work/begin.h>
#include <standbook/work/session.h>

static char *folder, *store;
static guint ids;

static Moment now(gpointer user)
{
    (void)user;
    return 1000080000; // 2001-09-10
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
                                           {"tests/scenarios/shop.log", "shop.log"},
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

static void take_lines(Session *session, const char *text, gsize length)
{
    for (const char *end = text + length; text < end;) {
        const char *feed = memchr(text, '\n', (gsize)(end - text));
        const char *stop_at = feed ? feed : end;
        g_autofree char *answer = NULL;
        GError *error = NULL;
        if (!session_line(session, text, stop_at - text, &answer, &error))
            must_say(error);
        else
            must(!answer || g_utf8_validate(answer, -1, NULL), "an answer is whole characters");
        text = stop_at + 1;
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static Book *book;
    GError *error = NULL;
    if (!book) {
        make_store();
        book = book_open(store, BOOK_WRITE, &error);
    }
    if (!book)
        stop(error);
    const SessionOptions options = {
        .now = now, .new_id = next_id, .trust_times = TRUE, .check = TRUE};
    size_t shop = size > 0 && *data == '$';
    g_autoptr(Session) session = session_open(book, shop ? NULL : "F-1", &options, &error);
    if (!session)
        stop(error);
    take_lines(session, (const char *)data + shop, size - shop);
    if (!shop)
        must_count(session_assessment(session));
    return 0;
}
