// Entries in words, the same in the answers to log lines, on the sheets and in the command line.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/record/entry.h>

// What a build's ledger says about the people, tools, lots and the engine it relies on, by their
// ids: the newest `take` or `news` of each. Of the shop's own ledger, its tools, lots and tins.
typedef struct Taken Taken;

// Reads all `take` and `news` of the entries, which outlive the result. `names` holds names in
// words by id of a person or owner (both char *), for what the ledger keeps only initials of; it
// may be NULL and outlives the result too. The caller frees.
Taken *taken_new(const Entry *const *entries, gsize count,
                 GHashTable *names) G_GNUC_WARN_UNUSED_RESULT;
void taken_free(Taken *taken); // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Taken, taken_free)

// One text of what was taken: taken_text(taken, "tool", id, "label"). NULL if it was not taken or
// has no such field. It belongs to the entries.
const char *taken_text(const Taken *taken, const char *what, const char *id, const char *field);
// All that was taken of it; NULL likewise.
const json_t *taken_body(const Taken *taken, const char *what, const char *id);
// One width of what was taken, such as a graduation, in base units. NULL as above, and where its
// unit is a word of the plan's own. The caller frees.
Number *taken_width(const Taken *taken, const char *what, const char *id,
                    const char *field) G_GNUC_WARN_UNUSED_RESULT;
// The same of the only one, or newest, of its kind: the engine, the build, the plan.
const char *taken_only(const Taken *taken, const char *what, const char *field);
// The ids of all that were taken of one kind, in the order of first use (const char *); freed with
// g_ptr_array_unref.
GPtrArray *taken_ids(const Taken *taken, const char *what) G_GNUC_WARN_UNUSED_RESULT;

// The newest live entry of a kind (fit, laid) about the part or bolts of that name which reaches a
// place; NULL if there is none.
const Entry *taken_newest(const Taken *taken, const char *kind, const char *name,
                          const char *const *labels);

// Initials of a person, the label of a tool or lot; the id's first eight letters when it was not
// taken. NULL for NULL.
const char *taken_initials(const Taken *taken, const char *person);
const char *taken_tool(const Taken *taken, const char *tool);
// The name in words if one was handed in, else the initials or the owner's label.
const char *taken_name(const Taken *taken, const char *person);

// The entry as a log line would say it, without date, time and person: `read main bore[1, front]
// 59.790 mm with G03`, `take tool G03`. Not clean text. The caller frees with g_free.
char *entry_words(const Taken *taken, const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;

// A value as a body holds it ({"value":…, "unit":…, "typed":…}) as it was typed, with its unit
// where that does not say it: `0.002 mm`, `90°`; empty for NULL. The caller frees with g_free.
char *value_words(const json_t *value) G_GNUC_WARN_UNUSED_RESULT;

// When it was done, for people: `2025-03-04 10:05`. The caller frees with g_free.
char *entry_when(const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;

// The entry as it is said at the stand, behind the work: `bolt 1 · 100 N·m · W3`, `all 18 · 8 N·m ·
// W1`, `top ring gap 2 · 0.36 mm`; any other as entry_words. `plan` is that in force. Not clean
// text. The caller frees with g_free.
char *entry_said(const Plan *plan, const Taken *taken,
                 const Entry *entry) G_GNUC_WARN_UNUSED_RESULT;
