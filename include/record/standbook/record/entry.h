// One line of the logbook, and its exact form, the ledger line: one JSON object with a fixed order
// of keys, no spaces, UTF-8 unescaped except control characters, quotes and backslashes.
#pragma once
#include <jansson.h>
#include <standbook/base/moment.h>
#include <standbook/record/kind.h>
#include <standbook/value/unit.h>

enum { LEDGER_LINE_MOST = 4096 }; // bytes, without the line feed

typedef struct {
    const EntryKind *kind;
    char *ledger; // id of the build, or of the shop
    gint64 seq;   // from 1, without gaps: the order of commit
    char *by;     // id of the person
    char *at;     // when it was typed, as moment_text of base gives it
    char *done;   // when it was done, NULL if that is the same
    gint64 after; // the seq behind which it stands, 0 if none
    json_t *body; // an object with the fields of the kind
} Entry;

// An entry of that kind with an empty body and nothing else set; the caller fills it in (its texts
// are freed with g_free) and frees it.
Entry *entry_new(const EntryKind *kind) G_GNUC_WARN_UNUSED_RESULT;
void entry_free(Entry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Entry, entry_free)

// The ledger line, without a line feed; the caller frees it with g_free. NULL with an error (NO) if
// the entry does not fit the table of kinds or is longer than LEDGER_LINE_MOST.
char *entry_write(const Entry *entry, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Reads a ledger line (without line feed). NULL with an error (NO) unless it is exactly what
// entry_write gives for its content, byte for byte.
Entry *entry_read(const char *line, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Whether the entry fits the table of kinds; if not, a sentence (NO).
gboolean entry_check(const Entry *entry, GError **error);

// Fields of the body. The getters give NULL or 0 where the field is not there; what they return
// belongs to the entry. A field the kind does not have is the caller's mistake (entry_check says
// so).
const char *entry_text(const Entry *entry, const char *field);
gint64 entry_number(const Entry *entry, const char *field);
gsize entry_list_length(const Entry *entry, const char *field); // lists and places
const char *entry_list_item(const Entry *entry, const char *field, gsize index);
const char *entry_value(const Entry *entry, const char *field,
                        const char *part); // value unit typed
// The number of a value in base units, that of a bound (`<0.03`) too; as it stands where the unit
// is a word of the plan's own. NULL if there is none. The caller frees.
Number *entry_amount(const Entry *entry, const char *field) G_GNUC_WARN_UNUSED_RESULT;

// The same of a width, such as a doubt: without the offset of a temperature. NULL also where its
// unit is a word of the plan's own. The caller frees.
Number *entry_width(const Entry *entry, const char *field) G_GNUC_WARN_UNUSED_RESULT;
// The id of the tool it was done with; NULL if its kind has none, or none was named.
const char *entry_tool(const Entry *entry);
// Whether that is among the items of a list or place.
gboolean entry_list_has(const Entry *entry, const char *field, const char *item);
// Whether two entries name the same `place`.
gboolean entry_same_place(const Entry *one, const Entry *other);
// Whether its `place` is just these labels, NULL-terminated.
gboolean entry_is_at(const Entry *entry, const char *const *labels);
// The same, or it names no place, which is all of them.
gboolean entry_reaches(const Entry *entry, const char *const *labels);
// The labels of its `place`, NULL-terminated; NULL where it names none (all places), or not one on
// so many axes. They belong to the entry; the caller frees the list with g_free.
const char **entry_labels(const Entry *entry, gsize axes) G_GNUC_WARN_UNUSED_RESULT;
// When it was done: `done`, or `at` where that is the same; as a text, and as a
// moment (0 for none).
const char *entry_done(const Entry *entry);
Moment entry_moment(const Entry *entry);

// Setters; a NULL text, an empty list or place sets nothing, so that what was not said is left out.
void entry_set_text(Entry *entry, const char *field, const char *text);
void entry_set_number(Entry *entry, const char *field, gint64 number);
void entry_set_list(Entry *entry, const char *field, const char *const *items, gsize count);
void entry_set_value(Entry *entry, const char *field, const char *value, const char *unit,
                     const char *typed);
