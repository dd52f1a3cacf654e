// A plan stated anew from one build: with the limits that the build gave its checks, under a name
// and revision of its own, so that another engine can be begun by it.
#pragma once
#include <standbook/plan/plan.h>

// Other limits of one check, as an `amend` entry has them.
typedef struct {
    const char *check;
    const char *const *place;  // its labels, one for each axis; NULL: the whole check
    const char *limits, *wear; // as a plan writes them; NULL: as they are
    const char *source;        // on whose word; NULL: nobody's
} PlanAmendment;

// Returns the plan with the amendments, in their turn; those of a check that it does not have are
// passed over. Of a single place only the limits can stand in a plan. `name` NULL: as it is. `plan`
// (it may come from plan_extend) is only read, and the new one holds nothing of it. The caller
// frees with plan_free. NULL, with at least one fault added: with an amendment it is no plan.
Plan *plan_restate(const Plan *plan, const char *name, const char *revision,
                   const PlanAmendment *amendments, gsize count,
                   Faults *faults) G_GNUC_WARN_UNUSED_RESULT;
