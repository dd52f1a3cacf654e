// A session takes a line: stores it in one transaction, and says what it changed.
#include "session_inside.h"

#include <standbook/base/error.h>
#include <standbook/base/text.h>
#include <standbook/book/find.h>
#include <standbook/work/answer.h>
#include <standbook/work/slip_words.h>
#include <string.h>

enum { TRIES = 5 }; // when others enter something at every one of them

// OTHERS ----------------------------------------------------------------------------------------

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
            const char *moment = entry_done(other);
            g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_NO,
                        "done by %s %.5s: #%" G_GINT64_FORMAT
                        " at `%s`; nothing is stored, look at it, then write the line anew",
                        person ? shop_label(person) : "somebody", moment + strlen("2025-03-04 "),
                        other->seq, subject_of(other));
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

// The entry as a ledger line, with that number.
static char *write_as(Entry *entry, gint64 seq, GError **error)
{
    gint64 before = entry->seq;
    entry->seq = seq;
    char *line = entry_write(entry, error);
    entry->seq = before;
    return line;
}

// Whether all could be stored; news for another build has no number yet.
static gboolean can_be_written(const LineTaken *taken, GError **error)
{
    for (guint i = 0; i < taken->entries->len; i++) {
        Entry *entry = taken->entries->pdata[i];
        g_autofree char *line = write_as(entry, MAX(entry->seq, 1), error);
        if (!line)
            return FALSE;
    }
    return TRUE;
}

static BookOutcome put_entry(Session *session, BookTurn *turn, Entry *entry, GError **error)
{
    gint64 seq = entry->seq, last = 0;
    if (seq == 0) { // news for another build
        if (!book_end(session->book, entry->ledger, &last, NULL, error))
            return BOOK_REFUSED;
        seq = last + 1;
    }
    g_autofree char *line = write_as(entry, seq, error);
    if (!line || !begin_ledgers(session, turn, entry, error))
        return BOOK_REFUSED;
    return book_turn_put(turn, line, error);
}

static gboolean put_names(BookTurn *turn, const GPtrArray *names, GError **error)
{
    for (guint i = 0; i < names->len; i++) {
        const LineName *name = names->pdata[i];
        const BookPerson person = {.name = name->name};
        if (!book_turn_person(turn, name->id, &person, error))
            return FALSE;
    }
    return TRUE;
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
    return put_names(turn, taken->names, error) && book_turn_keep(turn, error) ? BOOK_TAKEN
                                                                               : BOOK_REFUSED;
}

// Takes the line and stores it; where others were faster, takes it again behind theirs.
static LineTaken *take_and_store(Session *session, const char *text, GError **error)
{
    Moment now = session->options.now(session->options.user);
    for (guint i = 0; i < TRIES; i++) {
        g_autoptr(LineTaken) taken = line_take(session->taker, text, now, error);
        if (!taken || (session->options.check && !can_be_written(taken, error)))
            return NULL;
        if (taken->entries->len == 0 || session->options.check)
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

// Adds that a sealed gate has entries since its seal: once a session, and again after the next
// seal.
static void remark_seals(Session *session, GPtrArray *remarks)
{
    const GPtrArray *gates = session_assessment(session)->gates;
    for (guint i = 0; i < gates->len; i++) {
        const GateCount *gate = gates->pdata[i];
        if (!gate->since || session->seal_told >= gate->sealed)
            continue;
        g_autofree char *entries = text_counted(gate->since, "entry");
        session->seal_told = gate->sealed;
        g_ptr_array_add(remarks, g_strdup_printf("%s since the seal of %s (#%" G_GINT64_FORMAT
                                                 ") %s not covered "
                                                 "by it: `seal %s` once more makes a supplement",
                                                 entries, gate->name, gate->sealed,
                                                 gate->since == 1 ? "is" : "are", gate->name));
    }
}

static char *changes_in_words(Session *session, const Outgrown *old)
{
    const Assessment *now = session_assessment(session);
    return old->judgement ? answer_changes(judgement_now(old->judgement), now)
                          : answer_judged(judgement_changed(session->judgement), now);
}

static char *make_answer(Session *session, const char *numbers, const char *gate, gboolean judged,
                         const Outgrown *old, const GPtrArray *remarks)
{
    g_autofree char *changes = gate     ? seal_in_words(session, gate)
                               : judged ? changes_in_words(session, old)
                                        : NULL;
    GString *answer = g_string_new(numbers);
    const char *taken = session->options.check ? "would be taken" : "taken";
    g_string_append_printf(answer, ": %s", changes ? changes : taken);
    for (guint i = 0; i < remarks->len; i++)
        g_string_append_printf(answer, ". %s", (const char *)remarks->pdata[i]);
    return g_string_free(answer, FALSE);
}

// THE LINE --------------------------------------------------------------------------------------

static gboolean has_kind(const LineTaken *taken, const char *kind)
{
    for (guint i = 0; i < taken->entries->len; i++)
        if (strcmp(((Entry *)taken->entries->pdata[i])->kind->name, kind) == 0)
            return TRUE;
    return FALSE;
}

static gboolean enters_shop(const Session *session, const LineTaken *taken)
{
    for (guint i = 0; i < taken->entries->len; i++)
        if (strcmp(((Entry *)taken->entries->pdata[i])->ledger, session->shop_ledger) == 0)
            return TRUE;
    return FALSE;
}

static guint count_own(const Session *session, const LineTaken *taken)
{
    guint count = 0;
    for (guint i = 0; i < taken->entries->len; i++)
        count += g_strcmp0(((Entry *)taken->entries->pdata[i])->ledger, session->build) == 0;
    return count;
}

static gboolean is_judged(const Session *session, const LineTaken *taken)
{
    for (guint i = 0; i < taken->entries->len; i++) {
        const Entry *entry = taken->entries->pdata[i];
        if (g_strcmp0(entry->ledger, session->build) == 0 && !entry_is_idle(entry))
            return TRUE;
    }
    return FALSE;
}

// Keeps what is likely a slip, against the build as it stands before, and adds it to the answer.
static void remark_slips(Session *session, const LineTaken *taken)
{
    g_clear_pointer(&session->slips, g_ptr_array_unref);
    session->slips = session_slips(session, taken);
    for (guint i = 0; i < session->slips->len; i++)
        g_ptr_array_add(taken->remarks, g_strdup(session->slips->pdata[i]));
}

// Makes the stored line part of what is known here, and words the answer.
static void settle(Session *session, LineTaken *taken, char **answer)
{
    gboolean entered = taken->entries->len > 0;
    gboolean says = entered && answer && !session->options.quiet;
    gboolean grows = session->build && (has_kind(taken, "add") || has_kind(taken, "strike"));
    g_autofree char *numbers = numbers_of(session, taken);
    g_autofree char *gate = g_strdup(sealed_gate(taken));
    g_autoptr(GPtrArray) remarks = g_ptr_array_ref(taken->remarks);
    session->has_shop = session->has_shop || enters_shop(session, taken);
    session->taken += entered ? 1 : 0;
    session->entered = count_own(session, taken);
    gboolean judged = is_judged(session, taken);
    gboolean judges = says && judged;
    if (judges)
        remark_slips(session, taken);
    line_keep(session->taker, taken);
    g_auto(Outgrown) old = grows ? session_grow(session) : (Outgrown){0};
    if (judges)
        remark_seals(session, remarks);
    if (says)
        *answer = make_answer(session, numbers, gate, judged, &old, remarks);
}

static gboolean prefix_error(const Session *session, GError **error)
{
    if (error && *error)
        g_prefix_error(error, "line %u%s", session->lines,
                       g_str_has_prefix((*error)->message, "column ") ? ", " : ": ");
    return FALSE;
}

static gboolean take_line(Session *session, const char *line, char **answer, GError **error)
{
    LineTaken *taken =
        session_look_around(session, error) ? take_and_store(session, line, error) : NULL;
    if (!taken)
        return FALSE;
    settle(session, taken, answer);
    return TRUE;
}

gboolean session_line(Session *session, const char *text, gssize length, char **answer,
                      GError **error)
{
    if (answer)
        *answer = NULL;
    g_clear_pointer(&session->slips, g_ptr_array_unref);
    session->lines++;
    gsize bytes = length < 0 ? strlen(text) : (gsize)length;
    const char *nul = memchr(text, '\0', bytes);
    if (nul) {
        g_autofree char *before = g_utf8_make_valid(text, nul - text);
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "line %u, column %ld: a hidden character (U+0000); take it out", session->lines,
                    g_utf8_strlen(before, -1) + 1);
        return FALSE;
    }
    g_autofree char *line = g_strchomp(g_strndup(text, bytes));
    return take_line(session, line, answer, error) || prefix_error(session, error);
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
