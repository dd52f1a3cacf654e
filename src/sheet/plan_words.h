// How what a plan says is put into words; for the sheets and JSON only.
#pragma once
#include <jansson.h>
#include <standbook/plan/plan.h>

// A node as it is written, on one line: `a, b`, `A: 0, B: 0.013`. The caller frees with g_free.
char *node_words(const TreeNode *node) G_GNUC_WARN_UNUSED_RESULT;
// The same as JSON: texts, lists, objects.
json_t *node_json(const TreeNode *node);
// The keys that stand in columns of their own, NULL-terminated.
const char *const *check_columns(void);
const char *const *group_columns(void);
// The other keys of a mapping: `wear 0.150; with main caps`; empty for a shorter form. The caller
// frees with g_free.
char *rest_words(const TreeNode *node, const char *const *columns) G_GNUC_WARN_UNUSED_RESULT;
json_t *rest_json(const TreeNode *node, const char *const *columns);

// `cylinder 1..4, height top/mid/bottom`; empty for one place. The caller frees with g_free.
char *axes_words(const GPtrArray *axes) G_GNUC_WARN_UNUSED_RESULT;
// `0.050..0.080 mm`, `A: 0..1; B: 0..2`, the unit alone where there are none. The caller frees.
char *check_limits_words(const PlanCheck *check) G_GNUC_WARN_UNUSED_RESULT;
// `40 > 75 > 100`. The caller frees with g_free.
char *stages_words(const PlanTightening *tightening) G_GNUC_WARN_UNUSED_RESULT;
