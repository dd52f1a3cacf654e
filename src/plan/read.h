// Inside the room: the parts of plan_read.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/plan/schema.h>

// What is being read.
typedef struct {
    Plan *plan;
    Faults *faults; // swapped with `other` by hush
    Faults *other;
    gboolean hushed;
    gboolean kept; // it was taken before: late faults are notices
    // What holds for the steps below.
    guint gate;
    const char *phase;
    guint depth;         // formulas being bound, one inside another
    guint64 work;        // done on formulas
    guint64 looked;      // steps taken to find what is read for settings
    guint64 compared;    // names, for suggestions
    GPtrArray *names[8]; // by what they name (see names_of), made when first asked for
    GHashTable *told;    // nodes that many checks share and that have a fault already told
} Reader;

// Adds a fault at `offset` characters into the node's text; `where` begins the message.
void fault_at(Reader *reader, const TreeNode *node, gsize offset, const char *where,
              const char *message);

// Likewise what is a fault by a rule that plans taken before do not know, at a line and column.
void late_fault(Reader *reader, guint line, guint column, const char *where, const char *message);

// Whether the word may be compared with this many names more: a hostile file must not cost much
// time.
gboolean can_compare(Reader *reader, const char *word, gsize count);

// text_nearest, as long as that may be.
const char *suggest(Reader *reader, const char *word, const char *const *names, gsize count);

// What a name may name, as bits.
enum { NAMES_CHECKS = 1, NAMES_GROUPS = 2, NAMES_PARTS = 4 };

// The names of these kinds, for suggestions; 0: what a formula can use, the plan's constants first.
// They belong to the reader.
const GPtrArray *names_of(Reader *reader, unsigned kinds);

// From here on (TRUE), until FALSE, faults are not told: they were told elsewhere, or are none.
void hush(Reader *reader, gboolean quiet);

// Whether this is told for the first time: a fault that many nodes share is told once.
gboolean tell_once(Reader *reader, const void *cause);

// Like fault_at for a name that is not there: `there is no KIND called `x``, with a suggestion out
// of the `count` names.
void fault_unknown(Reader *reader, const TreeNode *node, const char *where, const char *kind,
                   const char *const *names, gsize count);

// Where the other thing of a name stands, for a message: its line, or in a plan with additions its
// step. The caller frees.
char *already_where(const Reader *reader, const PlanStep *step, guint line);

// Whether the text can be a name in a formula: words that begin with a letter.
gboolean is_name(const char *text);

// Whether the text can name a check: like is_name, but words behind the first may begin with a
// digit (`oil at rocker 8`); such a name cannot stand in a formula.
gboolean is_check_name(const char *text);

// Adds a fault to the node if this cannot name a check: which sign it is, and what would do.
void check_check_name(Reader *reader, const TreeNode *node, const char *name, const char *where);

// Adds one if a name holds a bracket or quote, which log lines need for themselves.
void check_plain_name(Reader *reader, const TreeNode *node, const char *where);

// The text under a key, NULL if it is not there or faulty.
const char *text_of(const SchemaMapping *mapping, const TreeNode *node, const char *key);

// The texts under a key as const char *, one alone standing for a list of one. The caller frees
// with g_ptr_array_unref.
GPtrArray *texts_of(const SchemaMapping *mapping, const TreeNode *node, const char *key);

// The scalar nodes under a key, likewise.
GPtrArray *nodes_of(const SchemaMapping *mapping, const TreeNode *node, const char *key);

// Reads `at:` or `bolts:`. `noun` NULL: axes only; else plain labels make an axis of that name.
// Returns const Axis *, empty where the node is NULL or faulty.
GPtrArray *read_places(Reader *reader, const TreeNode *node, const char *noun, const char *where);

// Reads a constant, a bare number in `unit` (NULL for none). Returns it in base units; NULL with a
// fault if it is none, or not of this kind. The caller frees.
Number *read_amount(Reader *reader, const TreeNode *node, const Unit *unit, Kind kind,
                    const char *where);

// What is said for a check under a key: by itself, its step or the plan; and by itself only.
const TreeNode *check_says(const Reader *reader, const PlanCheck *check, const char *key);
const TreeNode *check_says_itself(const PlanCheck *check, const char *key);

void read_checks(Reader *reader, PlanStep *step, const TreeNode *node);
void read_groups(Reader *reader, PlanStep *step, const TreeNode *node);
void read_retightens(Reader *reader, PlanStep *step, const TreeNode *node);
void read_steps(Reader *reader, const TreeNode *node);

// After all is read: names to what they name.
void resolve_plan(Reader *reader);

// Formulas, limits and stages: parsed, their names found, kinds and places worked out.
void bind_plan(Reader *reader);
void bind_check(Reader *reader, PlanCheck *check);
void bind_setting(Reader *reader, PlanCheck *check, const char *where);
// Once all checks are bound: what is read for the settings of a step, and what they move.
void bind_inputs(Reader *reader, const PlanStep *step);
// Of a setting whose inputs are known: what its `each` cannot stand with is a fault.
void bind_each(Reader *reader, const PlanCheck *setting);

// Reads a plan out of a tree, which is the plan's from here on, with `added` additions among its
// nodes. The rest as plan_read.
Plan *plan_read_tree(TreeNode *top, guint added, gboolean kept,
                     Faults *faults) G_GNUC_WARN_UNUSED_RESULT;

void free_step(gpointer step);
void free_check(gpointer check);
void free_group(gpointer group);
