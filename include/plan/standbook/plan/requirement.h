// What a plan asks for, one thing at a time (record.md §2), in the order of the work: the steps in
// their order, within a step its keys as written, its signatures last.
#pragma once
#include <standbook/plan/plan.h>

// The sorts of requirements, in the order in which entries name them.
typedef enum {
    PLAN_READ, // a value at one place of a check; a formula's too
    PLAN_LOOK, // a yes or no, a choice, a count or words
    PLAN_BOLT, // one bolt of one stage
    PLAN_WAIT, // the wait of one stage
    PLAN_FIT,  // a part at one place, or a new or tracked bolt at one position
    PLAN_SIGN, // one signature: the first is the builder's, the others are holds
} PlanAsked;

// The pointers that do not matter for the sort are NULL.
typedef struct {
    PlanAsked asked;
    const PlanStep *step;             // where it is asked
    const PlanCheck *check;           // PLAN_READ, PLAN_LOOK
    gboolean again;                   // the check is of an earlier step and read once more here
    const PlanTightening *tightening; // PLAN_BOLT, PLAN_WAIT
    const PlanPart *part;             // PLAN_FIT of a part
    const PlanGroup *group;           // PLAN_FIT of a bolt
    const PlanHold *hold;             // PLAN_SIGN but the first
    guint place;                      // index of the place or position, the last axis fastest
    guint number;                     // stage or signature, from 1; else 0
} PlanRequirement;

// All requirements, a GArray of PlanRequirement that the caller frees with g_array_unref.
GArray *plan_requirements(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;

// How many there are, without making them.
guint64 plan_requirement_count(const Plan *plan);

// The axes (const Axis *) along which `place` counts; NULL for a wait or a signature. They belong
// to the plan.
const GPtrArray *plan_requirement_axes(const PlanRequirement *requirement);

// The one name of a requirement, different from all others of the plan: `read main bore[1, front]`,
// `read inlet lash in Cold retorque[2]`, `look no leaks`, `bolt main caps in Crank[4], stage 2`,
// `wait head nuts in Head on, stage 4`, `fit main shells[2, upper]`, `sign Crank, 1`. The caller
// frees with g_free.
char *plan_requirement_name(const PlanRequirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
