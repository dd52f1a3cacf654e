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

// The same with limits for one label or place (`1, T`) of a check in its long form. Where one said
// them for all, the `labels` keep those.
void tree_say_limits(TreeNode *check, const char *const *labels, const char *label,
                     const char *limits);

// The check of that name among those of a step, if a build added it; else NULL.
TreeNode *graft_added_check(const TreeNode *checks, const char *name);
// Whether a definition says nothing but places, and perhaps one limit for all of them.
gboolean graft_is_places(const TreeNode *definition);
// Gives a check the places of such a definition, behind its own. FALSE with a sentence if it
// cannot have them.
gboolean graft_places(TreeNode *check, const TreeNode *more, GError **error);

// Writes the plan's gates into its tree as a list, which it must be before anything is grafted.
void graft_gates(TreeNode *top, const GPtrArray *gates);

// Puts the addition into the tree of a plan, its name in `line` and its definition in the one
// behind. FALSE if it cannot be put in; STANDBOOK_ERROR_MISUSE, and `refusal` (never NULL) says
// where, but not the index.
gboolean graft(TreeNode *top, const PlanAddition *addition, guint line, PlanRefusal *refusal,
               GError **error);
