#include <standbook/plan/extend.h>

#include "graft.h"
#include "read.h"
#include <standbook/base/error.h>

// The first fault of the addition's definition, for one of its name may only follow from that;
// else of its name; else the first.
static const Fault *telling_fault(const Faults *faults, guint line)
{
    const Fault *telling = faults_at(faults, 0);
    for (guint i = 0; i < faults_count(faults); i++)
        if (faults_at(faults, i)->line >= line && faults_at(faults, i)->line > telling->line)
            telling = faults_at(faults, i);
    return telling;
}

// The last addition, put into `line`, was not taken: what the reader said of it. A fault elsewhere
// in the plan is one that the addition makes there.
static void tell_fault(const Faults *faults, const PlanAddition *addition, guint line,
                       PlanRefusal *refusal, GError **error)
{
    const Fault *fault = telling_fault(faults, line);
    gboolean own = fault->line >= line;
    refusal->field = own && fault->line == line + 1 ? ADDITION_DEFINITION : ADDITION_NAME;
    refusal->offset = own ? fault->column - 1 : 0;
    if (own)
        g_set_error_literal(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE, fault->message);
    else
        g_set_error(error, STANDBOOK_ERROR, STANDBOOK_ERROR_MISUSE,
                    "with the %s \"%s\" the plan has a fault: %s", addition->what, addition->name,
                    fault->message);
}

// The plan with the first `count` additions. On failure the last is at fault if those before it
// alone were taken. `kept`: they were taken before.
static Plan *extend(const Plan *plan, const PlanAddition *additions, gsize count, gboolean kept,
                    PlanRefusal *refusal, GError **error)
{
    g_autoptr(TreeNode) top = tree_copy(plan->tree);
    graft_gates(top, plan->gates);
    guint line = GRAFT_LINE + 2 * plan->added;
    for (gsize i = 0; i < count; i++, line += 2) {
        refusal->index = i;
        if (!graft(top, &additions[i], line, refusal, error))
            return NULL;
    }
    g_autoptr(Faults) faults = faults_new();
    Plan *extended = plan_read_tree(g_steal_pointer(&top), plan->added + (guint)count,
                                    kept || plan->excused > 0, faults);
    if (!extended)
        tell_fault(faults, &additions[count - 1], line - 2, refusal, error);
    return extended;
}

static Plan *extend_by(const Plan *plan, const PlanAddition *additions, gsize count, gboolean kept,
                       PlanRefusal *refusal, GError **error)
{
    g_assert(count > 0);
    PlanRefusal unused = {0};
    PlanRefusal *where = refusal ? refusal : &unused;
    Plan *extended = extend(plan, additions, count, kept, where, NULL);
    // Which one is at fault is found by taking them one after another, as they were made.
    for (gsize i = 1; !extended && i <= count; i++) {
        g_autoptr(GError) problem = NULL;
        g_autoptr(Plan) partly = extend(plan, additions, i, kept, where, &problem);
        if (problem) {
            g_propagate_error(error, g_steal_pointer(&problem));
            return NULL;
        }
    }
    return extended;
}

Plan *plan_extend(const Plan *plan, const PlanAddition *additions, gsize count,
                  PlanRefusal *refusal, GError **error)
{
    return extend_by(plan, additions, count, FALSE, refusal, error);
}

gboolean plan_extend_check(const Plan *plan, const PlanAddition *addition, PlanRefusal *refusal,
                           GError **error)
{
    g_autoptr(Plan) extended = plan_extend(plan, addition, 1, refusal, error);
    return extended != NULL;
}

Plan *plan_extend_as_far(const Plan *plan, const PlanAddition *additions, gsize count,
                         gboolean *taken)
{
    Plan *extended = count ? extend_by(plan, additions, count, TRUE, NULL, NULL) : NULL;
    gboolean all = extended != NULL;
    for (gsize i = 0; i < count; i++) {
        Plan *further =
            all ? NULL : extend_by(extended ? extended : plan, &additions[i], 1, TRUE, NULL, NULL);
        taken[i] = all || further;
        if (!further)
            continue;
        plan_free(extended);
        extended = further;
    }
    return extended;
}
