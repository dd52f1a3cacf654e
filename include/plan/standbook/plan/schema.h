// What may stand where in a plan file: one const table for each mapping. The tables drive the
// checking, its messages, writing a plan back and standbook-plan(5); there is no second list.
#pragma once
#include <glib.h>
#include <standbook/plan/fault.h>
#include <standbook/plan/tree.h>

// How a value is written.
typedef enum {
    SCHEMA_WORDS,    // words
    SCHEMA_TEXTS,    // words, or a list of them
    SCHEMA_LIST,     // a list of words; one word stands for a list of one
    SCHEMA_CHOICE,   // one of a few words
    SCHEMA_YES,      // yes or no
    SCHEMA_COUNT,    // a whole number
    SCHEMA_AMOUNT,   // a number, with its unit where it has one
    SCHEMA_PLACES,   // an axis, or a list of axes
    SCHEMA_LIMITS,   // LIMITS, or LIMITS for each label
    SCHEMA_BY_LABEL, // words, or words for each label
    SCHEMA_MAPPING,  // a mapping with keys of its own
    SCHEMA_NAMED,    // names, each with a mapping or a short form
    SCHEMA_NAMES,    // names, each with a mapping or short form; or only the names
} SchemaType;

typedef struct SchemaMapping SchemaMapping;

typedef struct {
    const char *key;
    SchemaType type;
    gboolean needed;
    const char *choices;         // of SCHEMA_CHOICE: the words, `/` between them; else NULL
    const SchemaMapping *inside; // of SCHEMA_MAPPING and the mappings of SCHEMA_NAMED; else NULL
    const char *help;            // one line, no full stop
} SchemaKey;

struct SchemaMapping {
    const char *name; // as messages call it: `a step`
    const SchemaKey *keys;
    gsize count;
};

extern const SchemaMapping schema_of_plan, schema_of_consumable, schema_of_step, schema_of_part,
    schema_of_check, schema_of_set, schema_of_group;

// The key's row, NULL if the mapping has no such key.
const SchemaKey *schema_find(const SchemaMapping *mapping, const char *key);

// The words for a type, as messages say them: `yes or no`. It belongs to the program.
const char *schema_type_words(SchemaType type);

// Checks one mapping: unknown keys, missing keys, and the shape of each value (not what stands
// inside mappings within it). `where` begins each message (`step "Crank": `, may be empty).
void schema_check(const SchemaMapping *mapping, const TreeNode *node, const char *where,
                  Faults *faults);

// The value under the key if there is one of the right shape, else NULL: what schema_check has
// found fault with is not looked at again. The key must be in the table.
const TreeNode *schema_get(const SchemaMapping *mapping, const TreeNode *node, const char *key);
