#include "desk.h"

#include "page.h"
#include "struck.h"
#include "words.h"

#include <standbook/base/error.h>
#include <standbook/work/agenda.h>
#include <standbook/work/ago.h>
#include <standbook/work/clocks.h>
#include <standbook/work/opened.h>
#include <string.h>

static const guint NOT_YET = G_MAXUINT; // looked at the build in hand

static SessionOptions session_options(const Desk *desk)
{
    return (SessionOptions){
        .now = desk->options->now, .new_id = desk->options->new_id, .user = desk->options->user};
}

void desk_close_store(Desk *desk)
{
    g_clear_pointer(&desk->used, g_ptr_array_unref);
    g_hash_table_remove_all(desk->uses);
    g_hash_table_remove_all(desk->sessions);
    g_clear_pointer(&desk->shop, session_close);
    g_clear_pointer(&desk->book, book_close);
}

gboolean desk_read_shop(Desk *desk, GError **error)
{
    const SessionOptions options = session_options(desk);
    Session *shop = session_open(desk->book, NULL, &options, error);
    if (!shop)
        return FALSE;
    g_clear_pointer(&desk->used, g_ptr_array_unref);
    session_close(desk->shop);
    desk->shop = shop;
    return TRUE;
}

gboolean desk_open_store(Desk *desk, const char *path, GError **error)
{
    desk_close_store(desk);
    desk->book = book_open(path, BOOK_WRITE, error);
    return desk->book && desk_read_shop(desk, error);
}

gboolean desk_open(Desk *desk, const ScreenOptions *options, GError **error)
{
    *desk = (Desk){.options = options};
    desk->sessions =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)session_close);
    desk->tools = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    desk->uses = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, g_free);
    desk->drafts =
        g_hash_table_new_full(g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_strfreev);
    desk->not_yet = g_hash_table_new_full(g_str_hash, g_str_equal, g_free, NULL);
    desk->unplaced = unplaced_new();
    desk->entered_since = g_array_new(FALSE, FALSE, sizeof(gint64));
    desk->now = options->now(options->user);
    return !g_file_test(options->store, G_FILE_TEST_EXISTS) ||
           desk_open_store(desk, options->store, error);
}

void desk_clear(Desk *desk)
{
    desk_close_store(desk);
    g_hash_table_unref(desk->sessions);
    g_hash_table_unref(desk->tools);
    g_hash_table_unref(desk->drafts);
    g_hash_table_unref(desk->not_yet);
    g_hash_table_unref(desk->uses);
    g_ptr_array_unref(desk->unplaced);
    g_array_unref(desk->entered_since);
    g_free(desk->number);
    g_free(desk->who);
    g_free(desk->called);
    g_free(desk->last);
    g_free(desk->last_by);
    g_free(desk->entered);
    g_free(desk->warning);
    g_free(desk->clock);
    g_free(desk->new_tool);
    g_free(desk->known_tool);
    g_free(desk->both_stand);
}

void desk_warn(Desk *desk, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    g_free(desk->warning);
    desk->warning = g_strdup_vprintf(format, arguments);
    desk->warnings++;
    va_end(arguments);
}

void desk_warn_error(Desk *desk, GError *error)
{
    // A screen has one line at a time: where it stands in a file says nothing here.
    const char *words = error->message;
    if (g_str_has_prefix(words, "line "))
        words = strstr(words, ": ") ? strstr(words, ": ") + 2 : words;
    desk_warn(desk, "%s", words);
    g_error_free(error);
}

// `08:54 MO`, of a moment as entries have it.
static char *by_words(const Desk *desk, const char *moment)
{
    return g_strdup_printf("%.5s %s", moment + 11, desk->who ? desk->who : "");
}

// Takes both; `by` NULL: it is no entry.
static void set_last(Desk *desk, char *words, char *by)
{
    g_free(desk->last);
    g_free(desk->last_by);
    desk->last = words;
    desk->last_by = by;
    desk->last_at = desk->now;
    if (desk->entered_seq == desk->last_seq)
        return;
    g_free(desk->entered);
    desk->entered = g_strdup(desk->last);
    desk->entered_seq = desk->last_seq;
}

void desk_last(Desk *desk, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    set_last(desk, g_strdup_vprintf(format, arguments), NULL);
    va_end(arguments);
}

void desk_last_entry(Desk *desk, const char *format, ...)
{
    const GPtrArray *entries = session_entries(desk_build(desk));
    const char *done = desk->last_seq ? entry_done(entries->pdata[desk->last_seq - 1]) : NULL;
    va_list arguments;
    va_start(arguments, format);
    set_last(desk, g_strdup_vprintf(format, arguments), done ? by_words(desk, done) : NULL);
    va_end(arguments);
}

Session *desk_session(Desk *desk, const char *number)
{
    Session *session = g_hash_table_lookup(desk->sessions, number);
    if (session)
        return session;
    const SessionOptions options = session_options(desk);
    GError *error = NULL;
    session = session_open(desk->book, number, &options, &error);
    if (session)
        g_hash_table_insert(desk->sessions, g_strdup(number), session);
    else
        desk_warn_error(desk, error);
    return session;
}

Session *desk_build(Desk *desk)
{
    Session *session = desk->number ? desk_session(desk, desk->number) : NULL;
    if (session && desk->known == NOT_YET)
        desk->known = session_entries(session)->len;
    return session;
}

void desk_take_up(Desk *desk, const char *number)
{
    if (g_strcmp0(desk->number, number) == 0)
        return;
    g_free(desk->number);
    desk->number = g_strdup(number);
    desk->last_seq = desk->last_first = desk->entered_seq = 0;
    desk->seal_asked = desk->new_asked = 0;
    desk->latest_of = 0;
    desk->known = NOT_YET;
    g_array_set_size(desk->entered_since, 0);
    desk_recall(desk);
}

gboolean desk_open_next(Desk *desk, guint *tried)
{
    g_autoptr(GPtrArray) numbers = desk_numbers(desk);
    if (*tried >= numbers->len)
        return FALSE;
    desk_session(desk, numbers->pdata[(*tried)++]);
    return TRUE;
}

guint desk_entries_known(const Desk *desk)
{
    guint count = 0;
    GHashTableIter iterator;
    gpointer session;
    g_hash_table_iter_init(&iterator, desk->sessions);
    while (g_hash_table_iter_next(&iterator, NULL, &session))
        count += session_entries(session)->len;
    return count;
}

static gboolean take(Desk *desk, Session *session, const char *line, char **answer)
{
    GError *error = NULL;
    g_hash_table_remove_all(desk->uses);
    g_autofree char *whole = desk->who ? g_strconcat(desk->who, " ", line, NULL) : g_strdup(line);
    if (session && session_line(session, whole, -1, answer, &error))
        return TRUE;
    if (error)
        desk_warn_error(desk, error);
    return FALSE;
}

// Work that was picked up here is in hand as long as this program runs.
static void attend(Desk *desk, const Entry *entry)
{
    if (strcmp(entry->kind->name, "pick up") == 0)
        book_attend(desk->book, entry->ledger, entry->seq);
}

gboolean desk_line(Desk *desk, const char *line, char **answer)
{
    Session *session = desk_build(desk);
    if (!take(desk, session, line, answer))
        return FALSE;
    const GPtrArray *entries = session_entries(session);
    desk->last_first = 0;
    for (guint i = entries->len - session_entered(session); i < entries->len; i++) {
        attend(desk, entries->pdata[i]);
        if (struck_can_be(entries->pdata[i])) {
            desk->last_first = desk->last_first ? desk->last_first : i + 1;
            desk->last_seq = i + 1;
            g_array_append_val(desk->entered_since, desk->last_seq);
        }
    }
    return TRUE;
}

gboolean desk_line_as(Desk *desk, const char *who, const char *line)
{
    char *typist = desk->who;
    desk->who = g_strdup(who);
    gboolean taken = desk_line(desk, line, NULL);
    g_free(desk->who);
    desk->who = typist;
    return taken;
}

// Whether it is read, fitted or tightened by the newest line here, not worked out from that.
static gboolean is_of_last(const Desk *desk, const Requirement *made)
{
    gint64 last = desk->entered_seq;
    gint64 first = last == desk->last_seq && desk->last_first ? desk->last_first : last;
    return made->entry >= first && made->entry <= last && !(made->check && made->check->formula);
}

// What is wrong with what came of that line, as it is judged now: of several what fails first. ""
// if nothing is.
static char *last_fault(const Desk *desk)
{
    Session *session = desk->number ? g_hash_table_lookup(desk->sessions, desk->number) : NULL;
    const GPtrArray *all = session ? session_assessment(session)->requirements : NULL;
    const Requirement *fails = NULL, *doubtful = NULL;
    for (guint i = 0; all && i < all->len; i++) {
        const Requirement *made = all->pdata[i];
        gboolean last = is_of_last(desk, made);
        if (last && !fails && made->verdict == VERDICT_FAIL)
            fails = made;
        if (last && !doubtful && made->verdict == VERDICT_IN_DOUBT)
            doubtful = made;
    }
    return fails ? fault_words(fails) : doubtful ? fault_words(doubtful) : g_strdup("");
}

char *desk_last_words(const Desk *desk)
{
    enum { FRESH = 300, ROOM = PAGE_WIDTH - 6 }; // s, columns
    gboolean fresh = desk->now >= desk->last_at && desk->now - desk->last_at < FRESH;
    g_autofree char *since = desk->last && !fresh ? ago_since(desk->last_at, desk->now) : NULL;
    g_autofree char *ago = g_strconcat(since ? ", " : "", since, NULL);
    if (!desk->last || !desk->last_by)
        return g_strconcat(desk->last ? desk->last : "", ago, NULL);
    g_autofree char *fault = last_fault(desk);
    g_autofree char *behind = g_strconcat(fault, " · ", desk->last_by, ago, NULL);
    g_autofree char *words = front_words(desk->last, ROOM - g_utf8_strlen(behind, -1));
    return g_strconcat(words, behind, NULL);
}

void desk_recall(Desk *desk)
{
    Session *session = desk->who && !desk->last_seq ? desk_build(desk) : NULL;
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    for (guint i = entries ? entries->len : 0; i-- > 0 && !desk->last_seq;) {
        const Entry *entry = entries->pdata[i];
        if (!struck_can_be(entry) || !struck_is_own(desk, i + 1))
            continue;
        g_autofree char *said = struck_words(desk, i + 1);
        desk->last_seq = i + 1;
        set_last(desk, g_steal_pointer(&said), by_words(desk, entry_done(entry)));
        desk->last_at = entry_moment(entry);
    }
}

void desk_watch_clock(Desk *desk)
{
    enum { STEP = 60 }; // s
    const Session *session =
        desk->number ? g_hash_table_lookup(desk->sessions, desk->number) : NULL;
    const GPtrArray *entries = session ? session_entries(session) : NULL;
    if (entries && entries->len != desk->latest_of) {
        Moment latest = clock_latest((const Entry *const *)entries->pdata, entries->len);
        desk->latest = MAX(desk->latest, latest);
        desk->latest_of = entries->len;
    }
    gboolean back = desk->now + STEP < desk->latest;
    if (back && !desk->went_back) {
        g_autofree char *now = moment_text(desk->now);
        desk_warn(desk, "The clock went back to %.10s %.5s; entries keep their order. Set it.", now,
                  now + 11);
    }
    desk->went_back = back;
    desk->latest = MAX(desk->latest, desk->now);
}

static gboolean catch_up_all(Desk *desk)
{
    gboolean news = session_catch_up(desk->shop, NULL);
    GHashTableIter each;
    gpointer session;
    g_hash_table_iter_init(&each, desk->sessions);
    while (g_hash_table_iter_next(&each, NULL, &session))
        news = session_catch_up(session, NULL) || news;
    return news;
}

gboolean desk_shop_line(Desk *desk, const char *line)
{
    if (!take(desk, desk->shop, line, NULL))
        return FALSE;
    catch_up_all(desk); // each session knows the shop for itself
    return TRUE;
}

static gboolean is_closed(Session *session, const PlanStep *step, const Entry *since)
{
    const Agenda agenda = session_agenda(session);
    return agenda_is_closed(&agenda, step, since->seq);
}

static const Standing nowhere = {.step = NULL};

Standing standing_of(Session *session)
{
    const GPtrArray *entries = session_entries(session);
    gboolean is_signed = FALSE;
    for (guint i = entries->len; i-- > 0;) {
        const Entry *entry = entries->pdata[i];
        gboolean down = strcmp(entry->kind->name, "put down") == 0;
        is_signed = is_signed || strcmp(entry->kind->name, "sign") == 0;
        if (!down && strcmp(entry->kind->name, "pick up") != 0)
            continue;
        const PlanStep *step = plan_step(session_plan(session), entry_text(entry, "step"));
        return (Standing){step, !down && !is_signed, step && is_closed(session, step, entry),
                          entry};
    }
    return nowhere;
}

// Where the build in hand stands, if this person said so last; nothing otherwise.
static Standing own_standing(Desk *desk)
{
    Session *session = desk->who ? desk_build(desk) : NULL;
    Standing standing = session ? standing_of(session) : nowhere;
    gboolean own = standing.entry && struck_is_own(desk, standing.entry->seq);
    return own ? standing : nowhere;
}

// Whether who works here entered something in that build since then, at whatever terminal.
static gboolean has_entered(const Desk *desk, const Session *session, Moment since)
{
    const Entry *person = shop_find(session_shop(desk->shop), "person", desk->who);
    const GPtrArray *entries = session_entries(session);
    Moment at = since;
    for (guint i = entries->len; i-- > 0 && at >= since;) {
        const Entry *entry = entries->pdata[i];
        gboolean dated = moment_parse(entry->at, &at, NULL) && at >= since;
        if (dated && person && strcmp(entry->by, entry_text(person, "id")) == 0)
            return TRUE;
    }
    return FALSE;
}

void desk_fall_asleep(Desk *desk, Moment seconds)
{
    Moment since = desk->options->now(desk->options->user) - seconds;
    GHashTableIter each;
    gpointer session;
    if (!own_standing(desk).in_hand)
        return;
    g_hash_table_iter_init(&each, desk->sessions);
    while (g_hash_table_iter_next(&each, NULL, &session))
        if (has_entered(desk, session, since))
            return;
    desk_line(desk, "put down \"ten minutes without a key\"", NULL);
}

gboolean desk_was_put_down(Desk *desk)
{
    const Session *session =
        desk->number ? g_hash_table_lookup(desk->sessions, desk->number) : NULL;
    guint known = session ? session_entries(session)->len : 0;
    if (session == desk->held_of && known == desk->held_known)
        return FALSE;
    const Standing standing = own_standing(desk);
    gboolean held = session == desk->held_of && desk->held;
    desk->held_of = session;
    desk->held_known = known;
    desk->held = standing.in_hand;
    return held && standing.step && !standing.in_hand && !standing.closed &&
           strcmp(standing.entry->kind->name, "put down") == 0;
}

gboolean desk_catch_up(Desk *desk)
{
    gint64 version = desk->book ? book_data_version(desk->book) : desk->version;
    if (version == desk->version)
        return FALSE;
    desk->version = version;
    g_hash_table_remove_all(desk->uses);
    return catch_up_all(desk);
}

// The labels of the builds' ledgers (char *), as the store lists them.
static GPtrArray *build_ledgers(const Desk *desk)
{
    GPtrArray *labels = g_ptr_array_new_with_free_func(g_free);
    g_autoptr(GPtrArray) ledgers = desk->book ? book_ledgers(desk->book, NULL) : NULL;
    for (guint i = 0; ledgers && i < ledgers->len; i++) {
        const BookLedger *ledger = ledgers->pdata[i];
        if (ledger->sort == LEDGER_BUILD)
            g_ptr_array_add(labels, g_strdup(ledger->label));
    }
    return labels;
}

GPtrArray *desk_numbers(const Desk *desk)
{
    GPtrArray *numbers = build_ledgers(desk);
    g_autoptr(Shop) none = desk->shop ? NULL : shop_new();
    numbers_newest_first(numbers, none ? none : session_shop(desk->shop));
    return numbers;
}

char *desk_latest(const Desk *desk)
{
    g_autoptr(GPtrArray) ledgers = desk->book ? book_ledgers(desk->book, NULL) : NULL;
    g_autofree char *newest = g_strdup("");
    char *latest = NULL;
    for (guint i = 0; ledgers && i < ledgers->len; i++) {
        const BookLedger *ledger = ledgers->pdata[i];
        if (ledger->sort != LEDGER_BUILD || ledger->last == 0)
            continue;
        g_autoptr(GPtrArray) lines = book_read(desk->book, ledger->id, ledger->last - 1, NULL);
        g_autoptr(Entry) entry = lines && lines->len ? entry_read(lines->pdata[0], NULL) : NULL;
        if (!entry || strcmp(entry->at, newest) <= 0)
            continue;
        g_free(newest);
        newest = g_strdup(entry->at);
        g_free(latest);
        latest = g_strdup(ledger->label);
    }
    return latest;
}

const Entry *desk_engine(const Desk *desk, const char *number)
{
    const Shop *shop = session_shop(desk->shop);
    const Entry *build = shop_find(shop, "build", number);
    return build ? shop_by_id(shop, "engine", entry_text(build, "engine")) : NULL;
}

char *desk_title(const Desk *desk, const char *number)
{
    const Entry *engine = desk_engine(desk, number);
    const char *words = engine ? entry_text(engine, "note") : NULL;
    const char *serial = engine ? shop_label(engine) : NULL;
    return g_strconcat(number, words ? " " : "", words ? words : "", serial ? "  " : "",
                       serial ? serial : "", NULL);
}
