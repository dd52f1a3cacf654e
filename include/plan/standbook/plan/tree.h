// A plan file as a tree of mappings, lists and texts, every node with its place in the file. Only
// the part of YAML that a builder writes by hand is taken; the rest is refused in words. All
// scalars are text here: what `1/2` or `yes` means is decided by the reader of the plan.
#pragma once
#include <glib.h>
#include <standbook/plan/fault.h>

enum {
    TREE_LEVELS = 16,      // mappings and lists inside one another
    TREE_NODES = 100000,   // keys, values, mappings and lists together
    TREE_BYTES = 2000000,  // the whole file
    TREE_KEY_LENGTH = 1024 // characters of a key: YAML's own bound
};

typedef enum { TREE_SCALAR, TREE_LIST, TREE_MAP } TreeKind;

typedef struct TreeNode TreeNode;
struct TreeNode {
    TreeKind kind;
    char *text;          // of a scalar, never NULL; of a list or mapping NULL
    guint line, column;  // where its text begins (behind an opening quote), from 1, in characters
    gboolean quoted;     // written in quotes or as a block: is text whatever it looks like
    gboolean flow;       // a list or mapping written in brackets
    TreeNode *key;       // of a value in a mapping, else NULL
    GPtrArray *children; // TreeNode *: a list's items, a mapping's values; NULL for a scalar
};

// Reads `length` bytes as one document. Returns its top node, or NULL with at least one fault
// added. Where a fault leaves the tree usable (a key given twice), the tree is still returned, so
// that other faults are found in the same run. The caller frees with tree_free.
TreeNode *tree_read(const char *bytes, gsize length, Faults *faults) G_GNUC_WARN_UNUSED_RESULT;
void tree_free(TreeNode *node);
G_DEFINE_AUTOPTR_CLEANUP_FUNC(TreeNode, tree_free)

// The number of children; 0 for a scalar.
guint tree_count(const TreeNode *node);

// The child at `index` (0 to count - 1). It belongs to the node.
const TreeNode *tree_at(const TreeNode *node, guint index);

// The value under the key of a mapping, NULL if there is none or the node is no mapping.
const TreeNode *tree_get(const TreeNode *node, const char *key);
