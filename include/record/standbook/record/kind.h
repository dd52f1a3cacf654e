// The one table of all kinds of entries: their fields, types and format number. It drives the
// writing, the reading and standbook-ledger(5). A released row is never edited: a kind that changes
// gets a second row with the next format number, and both stay readable.
#pragma once
#include <glib.h>

typedef enum {
    FIELD_TEXT,    // words, not empty
    FIELD_VALUE,   // {"value":"17/32","unit":"in","typed":"17/32"}; "<1/4" or ">1/4" is a bound
    FIELD_PLACE,   // labels of one place in the order of the check's axes: ["1","front"]
    FIELD_LIST,    // texts: ["3","4"]
    FIELD_SEQ,     // the number of an entry of another ledger, from 1
    FIELD_EARLIER, // the number of an earlier entry of the same ledger
    FIELD_COUNT,   // a whole number, from 0
    FIELD_CHOICE,  // one of the words in `choices`
    FIELD_ID,      // a UUID, lower case
    FIELD_DIGEST,  // 64 hexadecimal digits, lower case
    FIELD_DATE,    // 2025-03-13
    FIELD_COUNTS,  // how many requirements have each verdict, all seven named
    FIELD_BODY,    // the body of the shop's entry that `what` and `format` beside it name
} FieldType;

typedef enum { LEDGER_BUILD = 1, LEDGER_SHOP = 2, LEDGER_BOTH = 3 } LedgerSort;

typedef struct {
    const char *name; // NULL ends the list
    FieldType type;
    gboolean needed;
    const char *help;
    const char *choices; // the words a FIELD_CHOICE, or each of a FIELD_LIST, is out of: "a/b"
} Field;

enum { KIND_FIELDS = 14 };

typedef struct {
    const char *name;
    int format;
    LedgerSort ledgers; // where it may stand
    const char *help;
    Field fields[KIND_FIELDS + 1];
} EntryKind;

// All rows, and their number in `count`. Of one kind the newest format stands last.
const EntryKind *kind_table(gsize *count);

// The row of a kind in one format; NULL if there is none.
const EntryKind *kind_find(const char *name, int format);

// The row of a kind in its newest format: the one to write; NULL if there is no such kind.
const EntryKind *kind_newest(const char *name);

// The field of a kind; NULL if it has none of that name.
const Field *kind_field(const EntryKind *kind, const char *name);

// Whether `word` is one of the words in a field's `choices`.
gboolean field_has_choice(const Field *field, const char *word);

// What a field of that type holds, for messages and the man page: "a whole number".
const char *field_type_words(FieldType type);

// The seven verdicts in the order in which FIELD_COUNTS names them, ending in NULL.
const char *const *verdict_names(void);
