#include <standbook/plan/restate.h>

#include "graft.h"
#include "read.h"
#include <string.h>

// The value of a check in a tree, by its name in front of ` = `; NULL if it has none such.
static TreeNode *check_node(const TreeNode *top, const char *name)
{
    const TreeNode *steps = tree_get(top, "steps");
    g_autofree char *derived = g_strconcat(name, " =", NULL);
    for (guint i = 0; i < tree_count(steps); i++) {
        const TreeNode *checks = tree_get(tree_at(steps, i), "checks");
        for (guint j = 0; checks && j < tree_count(checks); j++) {
            const char *key = tree_at(checks, j)->key->text;
            if (strcmp(key, name) == 0 || g_str_has_prefix(key, derived))
                return (TreeNode *)tree_at(checks, j);
        }
    }
    return NULL;
}

// The other places keep their limits, written for the labels of the first axis.
static void amend_place(TreeNode *check, const PlanCheck *of, const PlanAmendment *amendment)
{
    g_autoptr(GPtrArray) labels = g_ptr_array_new();
    g_autofree char *place = g_strjoinv(", ", (GStrv)amendment->place);
    const Axis *first = of->places->pdata[0];
    for (gsize i = 0; i < axis_size(first); i++)
        g_ptr_array_add(labels, (gpointer)axis_label(first, i));
    g_ptr_array_add(labels, NULL);
    tree_say_limits(check, (const char *const *)labels->pdata, place, amendment->limits);
}

// Limits alone are the short form of a check; beside them nothing else can stand.
static void amend(TreeNode *check, const PlanCheck *of, const PlanAmendment *amendment)
{
    g_autofree char *alone =
        check->kind == TREE_SCALAR && *check->text ? g_strdup(check->text) : NULL;
    if (alone)
        tree_say(check, "limits", alone);
    if (amendment->place) {
        if (amendment->limits && of && of->places->len)
            amend_place(check, of, amendment);
        return;
    }
    if (amendment->limits)
        tree_say(check, "limits", amendment->limits);
    if (amendment->wear)
        tree_say(check, "wear", amendment->wear);
    if (amendment->source)
        tree_say(check, "source", amendment->source);
}

Plan *plan_restate(const Plan *plan, const char *name, const char *revision,
                   const PlanAmendment *amendments, gsize count, Faults *faults)
{
    g_autoptr(TreeNode) top = tree_copy(plan->tree);
    if (name)
        tree_say(top, "plan", name);
    tree_say(top, "revision", revision);
    for (gsize i = 0; i < count; i++) {
        TreeNode *check = check_node(top, amendments[i].check);
        if (check)
            amend(check, plan_check(plan, amendments[i].check), &amendments[i]);
    }
    return plan_read_tree(g_steal_pointer(&top), 0, plan->excused > 0, faults);
}
