#include <standbook/work/begin.h>

#include <glib/gstdio.h>
#include <standbook/base/error.h>
#include <string.h>

// PLAN ------------------------------------------------------------------------------------------

// The shop's entry of a plan. Plans come in before anybody is known by initials, so the shop itself
// stands for who entered it.
static Entry *plan_entry(const Plan *plan, const char *ledger, gint64 seq, Moment at)
{
    Entry *entry = entry_new(kind_newest("plan"));
    entry->ledger = g_strdup(ledger);
    entry->seq = seq;
    entry->by = g_strdup(ledger);
    entry->at = moment_text(at);
    entry_set_text(entry, "name", plan->name);
    entry_set_text(entry, "revision", plan->revision);
    entry_set_text(entry, "family", plan->family);
    entry_set_text(entry, "source", plan->source);
    return entry;
}

static gboolean put_plan(BookTurn *turn, Book *book, Entry *entry, GBytes *bytes, GError **error)
{
    char digest[65];
    gint64 last = 0;
    if (!book_turn_keep_bytes(turn, "plan", bytes, digest, error) ||
        !book_end(book, entry->ledger, &last, NULL, error))
        return FALSE;
    entry->seq = last + 1;
    entry_set_text(entry, "digest", digest);
    g_autofree char *line = entry_write(entry, error);
    return line && book_turn_put(turn, line, error) == BOOK_TAKEN;
}

gboolean plan_is_kept(const Shop *shop, const Plan *plan, GBytes *bytes)
{
    const Entry *entry = shop_find(shop, "plan", plan->name);
    g_autofree char *digest = g_compute_checksum_for_bytes(G_CHECKSUM_SHA256, bytes);
    return entry && strcmp(entry_text(entry, "digest"), digest) == 0;
}

static char *shop_ledger(Book *book)
{
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, NULL);
    const BookLedger *first = ledgers && ledgers->len ? ledgers->pdata[0] : NULL;
    return first && first->sort == LEDGER_SHOP ? g_strdup(first->id) : NULL;
}

gboolean plan_keep(Book *book, GBytes *bytes, const Plan *plan, const SessionOptions *options,
                   gboolean *kept, GError **error)
{
    g_autoptr(Session) session = session_open(book, NULL, options, error);
    if (!session)
        return FALSE;
    gboolean there = plan_is_kept(session_shop(session), plan, bytes);
    if (kept)
        *kept = !there;
    if (there)
        return TRUE;
    g_autofree char *known = shop_ledger(book);
    g_autofree char *ledger = known ? g_strdup(known) : options->new_id(options->user);
    g_autoptr(BookTurn) turn = book_turn(book, error);
    g_autoptr(Entry) entry = plan_entry(plan, ledger, 0, options->now(options->user));
    return turn && (known || book_turn_ledger(turn, ledger, LEDGER_SHOP, "shop", error)) &&
           put_plan(turn, book, entry, bytes, error) && book_turn_keep(turn, error);
}

// DEMO ------------------------------------------------------------------------------------------

static gboolean add_plan(Book *book, const char *file, const char *text, gsize length,
                         const SessionOptions *options, GError **error)
{
    g_autoptr(Faults) faults = faults_new();
    g_autoptr(Plan) plan = plan_read(text, length, faults);
    g_autoptr(GBytes) bytes = g_bytes_new(text, length);
    if (plan)
        return plan_keep(book, bytes, plan, options, NULL, error);
    g_autofree char *fault = fault_text(faults_at(faults, 0), file);
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE, fault);
    return FALSE;
}

static gboolean add_log(Book *book, const char *build, const char *text, gsize length,
                        const SessionOptions *options, GError **error)
{
    g_autoptr(Session) session =
        session_open(book, strcmp(build, "shop") == 0 ? NULL : build, options, error);
    return session && session_text(session, text, length, NULL, NULL, error);
}

static gboolean add_file(Book *book, const char *folder, const char *line,
                         const SessionOptions *options, GError **error)
{
    g_auto(GStrv) words = g_strsplit(line, " ", 2);
    if (!words[0] || !words[1])
        return TRUE;
    g_autofree char *file = g_build_filename(folder, words[1], NULL);
    g_autofree char *text = NULL;
    gsize length = 0;
    if (!g_file_get_contents(file, &text, &length, error))
        return FALSE;
    return (strcmp(words[0], "plan") == 0 ? add_plan(book, file, text, length, options, error)
                                          : add_log(book, words[0], text, length, options, error));
}

static gboolean add_files(const char *folder, const char *path, const SessionOptions *options,
                          GError **error)
{
    g_autofree char *order = g_build_filename(folder, "order", NULL);
    g_autofree char *text = NULL;
    if (!g_file_get_contents(order, &text, NULL, error))
        return FALSE;
    g_autoptr(Book) book = book_open(path, BOOK_WRITE, error);
    g_auto(GStrv) lines = g_strsplit(text, "\n", -1);
    for (guint i = 0; book && lines[i]; i++)
        if (!add_file(book, folder, lines[i], options, error))
            return FALSE;
    return book != NULL;
}

static void remove_store(const char *path)
{
    static const char *const behind[] = {"", "-wal", "-shm", "-turn"};
    for (gsize i = 0; i < G_N_ELEMENTS(behind); i++) {
        g_autofree char *file = g_strconcat(path, behind[i], NULL);
        g_unlink(file);
    }
}

// The story of the demo has been, also where a computer has lost the day and thinks it earlier.
static Moment demo_now(gpointer user)
{
    const SessionOptions *options = user;
    return MAX(options->now(options->user), moment_of_day("2026-01-01"));
}

static char *demo_id(gpointer user)
{
    const SessionOptions *options = user;
    return options->new_id(options->user);
}

gboolean demo_make(const char *folder, const char *path, const SessionOptions *options,
                   GError **error)
{
    SessionOptions given = *options;
    const SessionOptions dated = {.now = demo_now,
                                  .new_id = demo_id,
                                  .user = &given,
                                  .trust_times = TRUE,
                                  .quiet = TRUE};
    if (!book_create(path, error))
        return FALSE;
    if (add_files(folder, path, &dated, error))
        return TRUE;
    remove_store(path);
    return FALSE;
}
