// The tree of a formula, shared by its parser and its evaluation.
#pragma once
#include <standbook/value/formula.h>
#include <standbook/value/trade.h>

typedef enum {
    NODE_NUMBER,
    NODE_PI,
    NODE_NAME,
    NODE_NEGATE,
    NODE_BINARY,
    NODE_POWER,
    NODE_ABS,
    NODE_SQRT,
    NODE_FOLD,
    NODE_PICK,
    NODE_TRADE,
} NodeForm;

// A pick or an axis as written, and where.
typedef struct {
    char *text;
    gsize offset;
} NodeWord;

typedef struct Node Node;
struct Node {
    NodeForm form;
    gint references;
    gsize offset;               // of its first character
    char *text;                 // of an operand: as written, with its own parentheses
    GPtrArray *inner;           // of Node: operands or arguments; NULL for none
    GArray *words;              // of NodeWord: picks, or axes folded; NULL for none
    char *name;                 // NODE_NAME
    Number *number;             // NODE_NUMBER, in its unit
    Number *place;              // one unit of its last place typed, in its unit
    Number *doubt;              // its ±, in its unit; NULL for none
    Unit *unit;                 // NULL for a pure number
    gboolean width;             // a width: the offset of °C is left out
    guint decimals;             // typed
    guint doubt_index;          // which ± of the formula this is
    ArrayOperation operation;   // NODE_BINARY
    Fold fold;                  // NODE_FOLD
    gint exponent;              // NODE_POWER
    const TradeFunction *trade; // NODE_TRADE
    Node *body;                 // NODE_TRADE: its formula with the arguments in it
};

struct Formula {
    char *text;
    Node *root;
    GArray *names; // of NodeWord, each name once
    guint doubts;
    gint references;
};

Node *node_new(NodeForm form, gsize offset);
Node *node_copy(Node *node); // shared
void node_free(Node *node);  // NULL is allowed
G_DEFINE_AUTOPTR_CLEANUP_FUNC(Node, node_free)
void node_add(Node *node, Node *inner);                   // takes `inner` over
void node_add_word(Node *node, char *text, gsize offset); // takes `text` over
Node *node_inner(const Node *node, guint index);
guint node_inner_count(const Node *node);
// Calls `visit` for every number that stands as a whole term of the result, in the order written.
void node_each_term(Node *node, void (*visit)(Node *number, gpointer user), gpointer user);

// The tree of a whole text, and how many ± are in it (grammar.c).
Node *parse_formula(const char *text, gsize before, guint *doubts, gsize *offset, GError **error);

// Parses `length` bytes of `text`, which start `before` characters into what offsets count from.
Formula *formula_parse_part(const char *text, gsize length, gsize before, gsize *offset,
                            GError **error);
// A formula of that text and tree, both of which it takes over.
Formula *formula_new(char *text, Node *root, guint doubts);
// Two formulas joined by an operation, for limits written with ±.
Formula *formula_join(ArrayOperation operation, const Formula *one, const Formula *other);
// Makes its whole terms widths (5 °C is then 5 K).
void formula_make_width(Formula *formula);
