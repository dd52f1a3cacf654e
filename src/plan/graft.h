// Inside the room: one addition put into a copy of a plan's tree.
#pragma once
#include <standbook/plan/extend.h>

// Nodes of additions stand in lines of their own from here on, two for each: its name's and its
// definition's. A file has fewer lines (TREE_BYTES).
enum { GRAFT_LINE = 0x40000000 };

// A copy of a tree that the caller frees with tree_free.
TreeNode *tree_copy(const TreeNode *node) G_GNUC_WARN_UNUSED_RESULT;

// Puts a text under a key of a mapping, in place of what stands there. A scalar becomes a mapping
// without its text.
void tree_say(TreeNode *node, const char *key, const char *text);

// Writes the plan's gates into its tree as a list, which it must be before anything is grafted.
void graft_gates(TreeNode *top, const GPtrArray *gates);

// Puts the addition into the tree of a plan, its name in `line` and its definition in the one
// behind. FALSE if it cannot be put in; STANDBOOK_ERROR_MISUSE, and `refusal` (never NULL) says
// where, but not the index.
gboolean graft(TreeNode *top, const PlanAddition *addition, guint line, PlanRefusal *refusal,
               GError **error);
