#include "session_inside.h"

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/work/grown.h>
#include <standbook/work/opened.h>
#include <string.h>

// PLAN ------------------------------------------------------------------------------------------

const Plan *session_plan(const Session *session)
{
    return session->grown ? session->grown : session->kept;
}

Outgrown session_grow(Session *session)
{
    const GPtrArray *entries = line_taker_entries(session->taker);
    Outgrown old = {.plan = session->grown};
    session->grown = plan_grown(session->kept, (const Entry *const *)entries->pdata, entries->len);
    line_taker_set_plan(session->taker, session_plan(session));
    if (old.plan || session->grown)
        old.judgement = g_steal_pointer(&session->judgement);
    return old;
}

// The judgement points into the plan.
void outgrown_clear(Outgrown *outgrown)
{
    judgement_free(outgrown->judgement);
    plan_free(outgrown->plan);
}

// HELP FOR THE TAKER ----------------------------------------------------------------------------

static char *help_new_id(gpointer user)
{
    const Session *session = user;
    return session->options.new_id(session->options.user);
}

static GStrv help_builds_with(const char *what, const char *id, gpointer user)
{
    Session *session = user;
    (void)what; // an id is of one thing only
    g_autoptr(GPtrArray) hits = book_find(session->book, BOOK_FIND_TAKEN, id, NULL);
    g_autoptr(GStrvBuilder) builds = g_strv_builder_new();
    for (guint i = 0; hits && i < hits->len; i++)
        g_strv_builder_add(builds, ((BookHit *)hits->pdata[i])->ledger);
    return g_strv_builder_end(builds);
}

static gint64 help_uses(const char *tool, const char *calibration, gpointer user)
{
    return book_tool_uses(((Session *)user)->book, tool, calibration);
}

static char *help_name(const char *id, gpointer user)
{
    return person_name(((Session *)user)->book, id);
}

static char *help_file_digest(const char *name, gpointer user, GError **error)
{
    (void)user;
    g_autofree char *bytes = NULL;
    gsize length = 0;
    g_autoptr(GError) why = NULL;
    if (g_file_get_contents(name, &bytes, &length, &why))
        return g_compute_checksum_for_data(G_CHECKSUM_SHA256, (const guchar *)bytes, length);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                "the file `%s` cannot be read; write `digest` and its SHA-256 behind the name",
                name);
    return NULL;
}

const Assessment *session_assessment(Session *session)
{
    const GPtrArray *entries = line_taker_entries(session->taker);
    if (!session->kept)
        return NULL;
    if (!session->judgement)
        session->judgement = judgement_new(session_plan(session));
    for (gsize i = judgement_entries(session->judgement); i < entries->len; i++)
        judgement_add(session->judgement, entries->pdata[i]);
    return judgement_now(session->judgement);
}

static const Assessment *help_assessment(gpointer user)
{
    return session_assessment(user);
}

// OPENING ---------------------------------------------------------------------------------------

static gboolean find_shop(Session *session, const GPtrArray *ledgers)
{
    const BookLedger *first = ledgers->len ? ledgers->pdata[0] : NULL;
    session->has_shop = first && first->sort == LEDGER_SHOP;
    session->shop_ledger =
        session->has_shop ? g_strdup(first->id) : session->options.new_id(session->options.user);
    return TRUE;
}

static gboolean find_build(Session *session, const GPtrArray *ledgers, const char *number,
                           GError **error)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    for (guint i = 0; number && i < ledgers->len; i++) {
        const BookLedger *ledger = ledgers->pdata[i];
        if (ledger->sort == LEDGER_BUILD && strcmp(ledger->label, number) == 0)
            session->build = g_strdup(ledger->id);
        if (ledger->sort == LEDGER_BUILD)
            g_ptr_array_add(labels, ledger->label);
    }
    if (!number || session->build)
        return TRUE;
    g_autofree char *clean = text_clean(number, -1);
    const char *near = text_nearest(number, (const char *const *)labels->pdata, labels->len);
    if (near)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "there is no build `%s`; did you mean `%s`?", clean, near);
    else
        g_set_error(
            error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
            "there is no build `%s`; begin it with `build %s engine … plan …` in `standbook "
            "log --shop`",
            clean, clean);
    return FALSE;
}

// Reads what is in a ledger behind an entry: into the taker, or into the shop. -1 with an error,
// else how many there were.
static gint read_behind(Session *session, const char *ledger, gint64 behind, GError **error)
{
    g_autoptr(GPtrArray) lines = book_read(session->book, ledger, behind, error);
    if (!lines)
        return -1;
    for (guint i = 0; i < lines->len; i++) {
        Entry *entry = entry_read(lines->pdata[i], error);
        gboolean added =
            entry && (ledger == session->build ? line_taker_add(session->taker, entry, error)
                                               : shop_add(session->shop, entry, error));
        if (!added)
            return -1;
    }
    return (gint)lines->len;
}

// The digest of the build's plan as its own ledger took it: for a build that came in from another
// shop. The caller frees; NULL if it is not there.
static char *plan_taken(Session *session)
{
    g_autoptr(GPtrArray) lines = book_read(session->book, session->build, 0, NULL);
    for (guint i = 0; lines && i < lines->len; i++) {
        g_autoptr(Entry) entry = entry_read(lines->pdata[i], NULL);
        if (!entry || strcmp(entry->kind->name, "take") != 0 ||
            strcmp(entry_text(entry, "what"), "build") != 0)
            continue;
        const json_t *body = json_object_get(entry->body, "body");
        return g_strdup(json_string_value(json_object_get(body, "plan")));
    }
    return NULL;
}

static Plan *plan_of_build(Session *session, GError **error)
{
    const Entry *build = shop_by_id(session->shop, "build", session->build);
    g_autofree char *digest = build ? g_strdup(entry_text(build, "plan")) : plan_taken(session);
    if (digest)
        return plan_kept(session->book, digest, error);
    g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                "neither the shop's ledger nor the build's own says by which plan it is built; "
                "export it again where it came from");
    return NULL;
}

gboolean session_begin(Session *session, GError **error)
{
    const LineHelp help = {help_new_id, help_builds_with, help_file_digest, help_assessment,
                           help_uses,   help_name,        session};
    session->taker =
        line_taker_new(session->kept, session->shop, session->shop_ledger, session->build, &help);
    line_taker_trust_times(session->taker, session->options.trust_times);
    if (!session->build)
        return TRUE;
    if (read_behind(session, session->build, 0, error) < 0)
        return FALSE;
    g_auto(Outgrown) old = session_grow(session);
    return TRUE;
}

void session_end(Session *session)
{
    g_clear_pointer(&session->judgement, judgement_free);
    g_clear_pointer(&session->taker, line_taker_free);
    g_clear_pointer(&session->grown, plan_free);
    g_clear_pointer(&session->slips, g_ptr_array_unref);
}

static gboolean open_ledgers(Session *session, GError **error)
{
    if (session->has_shop && read_behind(session, session->shop_ledger, 0, error) < 0)
        return FALSE;
    if (session->build && !(session->kept = plan_of_build(session, error)))
        return FALSE;
    return session_begin(session, error);
}

Session *session_open(Book *book, const char *number, const SessionOptions *options, GError **error)
{
    g_autoptr(Session) session = g_new0(Session, 1);
    session->book = book;
    session->options = *options;
    session->shop = shop_new();
    session->version = book_data_version(book);
    g_autoptr(GPtrArray) ledgers = book_ledgers(book, error);
    if (!ledgers || !find_shop(session, ledgers) || !find_build(session, ledgers, number, error) ||
        !open_ledgers(session, error))
        return NULL;
    return g_steal_pointer(&session);
}

void session_close(Session *session)
{
    if (!session)
        return;
    session_end(session);
    shop_free(session->shop);
    plan_free(session->kept);
    g_free(session->build);
    g_free(session->shop_ledger);
    g_free(session);
}

guint session_entered(const Session *session)
{
    return session->entered;
}

const GPtrArray *session_last_slips(const Session *session)
{
    return session->slips;
}

guint session_lines(const Session *session)
{
    return session->lines;
}

char *session_carried(const Session *session)
{
    return line_taker_carried(session->taker);
}

guint session_taken(const Session *session)
{
    return session->taken;
}

Agenda session_agenda(Session *session)
{
    const GPtrArray *entries = session_entries(session);
    return (Agenda){session_plan(session), session_assessment(session),
                    (const Entry *const *)entries->pdata, entries->len};
}

const GPtrArray *session_entries(const Session *session)
{
    return line_taker_entries(session->taker);
}

const Shop *session_shop(const Session *session)
{
    return session->shop;
}

const PlanStep *session_step(const Session *session)
{
    return line_taker_step(session->taker);
}

// OTHERS ----------------------------------------------------------------------------------------

gboolean session_catch_up(Session *session, GError **error)
{
    const GPtrArray *entries = line_taker_entries(session->taker);
    guint before = entries->len;
    gint shop = session->has_shop
                    ? read_behind(session, session->shop_ledger, shop_last(session->shop), error)
                    : 0;
    if (shop < 0 || (session->build && read_behind(session, session->build, before, error) < 0))
        return FALSE;
    if (entries->len == before)
        return shop > 0;
    g_auto(Outgrown) old = session_grow(session);
    return TRUE;
}

gboolean session_look_around(Session *session, GError **error)
{
    g_autoptr(GError) why = NULL;
    gint64 version = book_data_version(session->book);
    if (version == session->version)
        return TRUE;
    session->version = version;
    session_catch_up(session, &why);
    if (!why)
        return TRUE;
    g_propagate_error(error, g_steal_pointer(&why));
    return FALSE;
}
