#include <standbook/work/session.h>

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/plan/extend.h>
#include <standbook/record/live.h>
#include <standbook/work/answer.h>
#include <string.h>

enum { TRIES = 5 }; // when others enter something at every one of them

struct Session {
    Book *book;
    SessionOptions options;
    char *build, *shop_ledger;
    gboolean has_shop; // the shop's ledger is in the store
    Plan *kept;        // as its file says
    Plan *grown;       // with what the build added, NULL if it added nothing
    Shop *shop;
    LineTaker *taker;
    Assessment *assessment; // NULL: to be judged anew
    gint64 version;         // of the store's data, when last looked at
    guint lines, taken;
};

// PLAN ------------------------------------------------------------------------------------------

static Plan *read_plan(Book *book, const char *digest, GError **error)
{
    g_autoptr(GBytes) bytes = book_kept(book, digest, error);
    if (!bytes)
        return NULL;
    gsize length = 0;
    const char *start = g_bytes_get_data(bytes, &length);
    g_autoptr(Faults) faults = faults_new();
    Plan *plan = plan_read(start, length, faults);
    if (!plan)
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                    "the plan kept for this build has faults: %s", faults_at(faults, 0)->message);
    return plan;
}

const Plan *session_plan(const Session *session)
{
    return session->grown ? session->grown : session->kept;
}

// What the build added and did not take back (PlanAddition).
static GArray *additions_of(const GPtrArray *entries)
{
    g_autofree gboolean *live = g_new0(gboolean, entries->len + 1);
    live_entries((const Entry *const *)entries->pdata, entries->len, live);
    GArray *additions = g_array_new(FALSE, FALSE, sizeof(PlanAddition));
    for (guint i = 0; i < entries->len; i++) {
        const Entry *entry = entries->pdata[i];
        if (!live[i] || strcmp(entry->kind->name, "add") != 0)
            continue;
        const PlanAddition addition = {entry_text(entry, "what"), entry_text(entry, "name"),
                                       entry_text(entry, "step"), entry_text(entry, "definition")};
        g_array_append_val(additions, addition);
    }
    return additions;
}

// The plan anew, with all additions. Everything that points into the old one goes first.
static gboolean grow_plan(Session *session, GError **error)
{
    g_autoptr(GArray) additions = additions_of(line_taker_entries(session->taker));
    if (additions->len == 0 && !session->grown)
        return TRUE;
    Plan *grown = NULL;
    if (additions->len)
        grown = plan_extend(session->kept, (const PlanAddition *)(gpointer)additions->data,
                            additions->len, NULL, error);
    if (additions->len && !grown)
        return FALSE;
    g_clear_pointer(&session->assessment, assessment_free);
    line_taker_set_plan(session->taker, grown ? grown : session->kept);
    plan_free(session->grown);
    session->grown = grown;
    return TRUE;
}

static gboolean changes_plan(const Entry *entry)
{
    return strcmp(entry->kind->name, "add") == 0 || strcmp(entry->kind->name, "strike") == 0;
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
    if (!session->assessment && session->kept)
        session->assessment = assess(session_plan(session), (const Entry *const *)entries->pdata,
                                     entries->len, 0, NULL);
    return session->assessment;
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

static Plan *plan_of_build(Session *session, GError **error)
{
    const Entry *build = shop_by_id(session->shop, "build", session->build);
    if (build)
        return read_plan(session->book, entry_text(build, "plan"), error);
    g_set_error(
        error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
        "the shop's ledger does not know this build; it was taken in from elsewhere and can "
        "only be read");
    return NULL;
}

static gboolean open_ledgers(Session *session, GError **error)
{
    const LineHelp help = {help_new_id, help_builds_with, help_file_digest, help_assessment,
                           session};
    if (session->has_shop && read_behind(session, session->shop_ledger, 0, error) < 0)
        return FALSE;
    if (session->build && !(session->kept = plan_of_build(session, error)))
        return FALSE;
    session->taker =
        line_taker_new(session->kept, session->shop, session->shop_ledger, session->build, &help);
    line_taker_trust_times(session->taker, session->options.trust_times);
    return !session->build ||
           (read_behind(session, session->build, 0, error) >= 0 && grow_plan(session, error));
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
    assessment_free(session->assessment);
    line_taker_free(session->taker);
    shop_free(session->shop);
    plan_free(session->grown);
    plan_free(session->kept);
    g_free(session->build);
    g_free(session->shop_ledger);
    g_free(session);
}

guint session_taken(const Session *session)
{
    return session->taken;
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
    g_clear_pointer(&session->assessment, assessment_free);
    return grow_plan(session, error);
}

// Looks for entries of others only when somebody has written to the store.
static gboolean look_around(Session *session, GError **error)
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

// What an entry is about, by name.
static const char *subject_of(const Entry *entry)
{
    static const char *const fields[] = {"check", "tightening", "part", "name"};
    for (gsize i = 0; i < G_N_ELEMENTS(fields); i++)
        if (kind_field(entry->kind, fields[i]) && entry_text(entry, fields[i]))
            return entry_text(entry, fields[i]);
    return strcmp(entry->kind->name, "sign") == 0 ? entry_text(entry, "step") : NULL;
}

static gboolean meet(const Entry *one, const Entry *other)
{
    const char *subject = subject_of(one), *others = subject_of(other);
    json_t *place = json_object_get(one->body, "place");
    json_t *others_place = json_object_get(other->body, "place");
    if (!subject || !others || strcmp(subject, others) != 0 ||
        g_strcmp0(entry_text(one, "step"), entry_text(other, "step")) != 0)
        return FALSE;
    return !place || !others_place || json_equal(place, others_place);
}

// Whether somebody has meanwhile entered something where this line wants to.
static gboolean check_seen(const Session *session, const LineTaken *taken, guint behind,
                           GError **error)
{
    const GPtrArray *entries = line_taker_entries(session->taker);
    for (guint i = behind; i < entries->len; i++)
        for (guint j = 0; j < taken->entries->len; j++) {
            const Entry *other = entries->pdata[i];
            if (!meet(other, taken->entries->pdata[j]))
                continue;
            const Entry *person = shop_by_id(session->shop, "person", other->by);
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                        "nothing is stored: %s entered #%" G_GINT64_FORMAT
                        " at `%s` meanwhile; look at it, then write the line anew",
                        person ? shop_label(person) : "somebody", other->seq, subject_of(other));
            return FALSE;
        }
    return TRUE;
}

// STORING ---------------------------------------------------------------------------------------

static gboolean begin_ledgers(Session *session, BookTurn *turn, const Entry *entry, GError **error)
{
    if (!session->has_shop && strcmp(entry->ledger, session->shop_ledger) == 0 && entry->seq == 1 &&
        !book_turn_ledger(turn, session->shop_ledger, LEDGER_SHOP, "shop", error))
        return FALSE;
    return strcmp(entry->kind->name, "build") != 0 ||
           book_turn_ledger(turn, entry_text(entry, "id"), LEDGER_BUILD,
                            entry_text(entry, "number"), error);
}

static BookOutcome put_entry(Session *session, BookTurn *turn, Entry *entry, GError **error)
{
    gint64 seq = entry->seq, last = 0;
    if (seq == 0) { // news for another build
        if (!book_end(session->book, entry->ledger, &last, NULL, error))
            return BOOK_REFUSED;
        entry->seq = last + 1;
    }
    g_autofree char *line = entry_write(entry, error);
    entry->seq = seq;
    if (!line || !begin_ledgers(session, turn, entry, error))
        return BOOK_REFUSED;
    return book_turn_put(turn, line, error);
}

static BookOutcome put_all(Session *session, const LineTaken *taken, GError **error)
{
    char digest[65];
    g_autoptr(BookTurn) turn = book_turn(session->book, error);
    if (!turn ||
        (taken->kept && !book_turn_keep_bytes(turn, "assessment", taken->kept, digest, error)))
        return BOOK_REFUSED;
    for (guint i = 0; i < taken->entries->len; i++) {
        BookOutcome outcome = put_entry(session, turn, taken->entries->pdata[i], error);
        if (outcome != BOOK_TAKEN)
            return outcome;
    }
    return book_turn_keep(turn, error) ? BOOK_TAKEN : BOOK_REFUSED;
}

static gboolean put_names(Session *session, const GPtrArray *names, GError **error)
{
    for (guint i = 0; i < names->len; i++) {
        const LineName *name = names->pdata[i];
        const BookPerson person = {.name = name->name};
        if (!book_person_set(session->book, name->id, &person, error))
            return FALSE;
    }
    return TRUE;
}

// Takes the line and stores it; where others were faster, takes it again behind theirs.
static LineTaken *take_and_store(Session *session, const char *text, GError **error)
{
    Moment now = session->options.now(session->options.user);
    for (guint i = 0; i < TRIES; i++) {
        g_autoptr(LineTaken) taken = line_take(session->taker, text, now, error);
        if (!taken || taken->entries->len == 0 || session->options.check)
            return g_steal_pointer(&taken);
        g_autoptr(GError) why = NULL;
        guint before = line_taker_entries(session->taker)->len;
        BookOutcome outcome = put_all(session, taken, &why);
        if (outcome == BOOK_TAKEN)
            return g_steal_pointer(&taken);
        if (outcome == BOOK_REFUSED) {
            g_propagate_error(error, g_steal_pointer(&why));
            return NULL;
        }
        g_clear_error(&why);
        session_catch_up(session, &why);
        if (why) {
            g_propagate_error(error, g_steal_pointer(&why));
            return NULL;
        }
        if (!check_seen(session, taken, before, error))
            return NULL;
    }
    g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_STORE,
                        "others write to the store all the time; try again");
    return NULL;
}

// ANSWERS ---------------------------------------------------------------------------------------

// `#412`, `#412-415`, `shop #17`
static char *numbers_of(const Session *session, const LineTaken *taken)
{
    gint64 first = 0, last = 0, shop = 0;
    for (guint i = 0; i < taken->entries->len; i++) {
        const Entry *entry = taken->entries->pdata[i];
        gboolean ours = g_strcmp0(entry->ledger, session->build) == 0;
        if (ours && strcmp(entry->kind->name, "take") != 0) {
            first = first ? first : entry->seq;
            last = entry->seq;
        }
        if (strcmp(entry->ledger, session->shop_ledger) == 0)
            shop = entry->seq;
    }
    if (shop)
        return g_strdup_printf("shop #%" G_GINT64_FORMAT, shop);
    if (first == last)
        return g_strdup_printf("#%" G_GINT64_FORMAT, first);
    return g_strdup_printf("#%" G_GINT64_FORMAT "-%" G_GINT64_FORMAT, first, last);
}

static const char *sealed_gate(const LineTaken *taken)
{
    for (guint i = 0; i < taken->entries->len; i++) {
        const Entry *entry = taken->entries->pdata[i];
        if (strcmp(entry->kind->name, "seal") == 0)
            return entry_text(entry, "gate");
    }
    return NULL;
}

static char *seal_in_words(Session *session, const char *gate)
{
    const Assessment *assessment = session_assessment(session);
    gint index = plan_gate(session_plan(session), gate);
    const GateCount *count = index < 0 ? NULL : assessment->gates->pdata[index];
    if (!count)
        return g_strdup_printf("%s sealed", gate);
    return count->left ? g_strdup_printf("%s sealed with %u left open, failed or in doubt", gate,
                                         count->left)
                       : g_strdup_printf("%s sealed, nothing left", gate);
}

static char *make_answer(Session *session, const char *numbers, const char *gate,
                         const Assessment *before)
{
    g_autofree char *changes = gate     ? seal_in_words(session, gate)
                               : before ? answer_changes(before, session_assessment(session))
                                        : NULL;
    return g_strconcat(numbers, ": ", changes ? changes : "taken", NULL);
}

// THE LINE --------------------------------------------------------------------------------------

static gboolean any_changes_plan(const LineTaken *taken)
{
    for (guint i = 0; i < taken->entries->len; i++)
        if (changes_plan(taken->entries->pdata[i]))
            return TRUE;
    return FALSE;
}

// Makes the stored line part of what is known here, and words the answer.
static gboolean settle(Session *session, LineTaken *taken, char **answer, GError **error)
{
    gboolean grows = session->build && any_changes_plan(taken);
    gboolean says = answer && !session->options.quiet;
    g_autofree char *numbers = numbers_of(session, taken);
    g_autofree char *gate = g_strdup(sealed_gate(taken));
    if (taken->entries->len)
        session->has_shop = session->has_shop || shop_last(session->shop) == 0;
    if (says)
        session_assessment(session);
    Assessment *before = taken->entries->len ? g_steal_pointer(&session->assessment) : NULL;
    gboolean entered = taken->entries->len > 0;
    session->taken += entered ? 1 : 0;
    line_keep(session->taker, taken);
    // The plan judged before may go, and `before` points into it: it is read first.
    Plan *old = grows ? g_steal_pointer(&session->grown) : NULL;
    gboolean grown = !grows || grow_plan(session, error);
    if (grows && !session->grown)
        line_taker_set_plan(session->taker, session->kept);
    if (grown && says && entered)
        *answer = make_answer(session, numbers, gate, before);
    assessment_free(before);
    plan_free(old);
    return grown;
}

static gboolean prefix_error(const Session *session, GError **error)
{
    g_prefix_error(error, "line %u, ", session->lines);
    return FALSE;
}

gboolean session_line(Session *session, const char *text, gssize length, char **answer,
                      GError **error)
{
    if (answer)
        *answer = NULL;
    session->lines++;
    gsize bytes = length < 0 ? strlen(text) : (gsize)length;
    g_autofree char *line = g_strndup(text, bytes);
    g_strchomp(line);
    if (strlen(line) < bytes && memchr(text, '\0', bytes)) {
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "line %u, column %ld: a hidden character (U+0000); take it out", session->lines,
                    g_utf8_strlen(line, -1) + 1);
        return FALSE;
    }
    LineTaken *taken = look_around(session, error) ? take_and_store(session, line, error) : NULL;
    if (!taken)
        return prefix_error(session, error);
    if (!session->options.check && !put_names(session, taken->names, error)) {
        line_taken_free(taken);
        return prefix_error(session, error);
    }
    return settle(session, taken, answer, error) || prefix_error(session, error);
}

gboolean session_text(Session *session, const char *text, gsize length,
                      void (*say)(guint line, const char *answer, gpointer user), gpointer user,
                      GError **error)
{
    const char *end = text + length;
    while (text < end) {
        const char *feed = memchr(text, '\n', (gsize)(end - text));
        const char *stop = feed ? feed : end;
        g_autofree char *answer = NULL;
        if (!session_line(session, text, stop - text, say ? &answer : NULL, error))
            return FALSE;
        if (answer)
            say(session->lines, answer, user);
        text = stop + 1;
    }
    return TRUE;
}
