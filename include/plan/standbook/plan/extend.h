// A plan with what one build added to it (record.md §2): work that the plan does not have. What is
// added is put in its place among what the plan says and read by the same reader, so that it is
// checked exactly like the plan itself.
#pragma once
#include <standbook/plan/plan.h>

// One addition, in the words of an `add` entry.
typedef struct {
    const char *what;       // `step`, `check`, `tightening` or `part`
    const char *name;       // new in this build; of a check also `name = formula`
    const char *step;       // where it belongs; of a step the one before it, NULL: at the end
    const char *definition; // what follows the name, as a plan writes it on one line; NULL: nothing
} PlanAddition;

// The field of an addition in which a fault lies.
typedef enum { ADDITION_WHAT, ADDITION_NAME, ADDITION_STEP, ADDITION_DEFINITION } PlanAdditionField;

// Where an addition is refused.
typedef struct {
    gsize index; // of the addition
    PlanAdditionField field;
    gsize offset; // into the field's text, in characters
} PlanRefusal;

// Returns the plan with all additions (`count` at least 1: with none the plan itself does), in the
// order in which they were made. A check, part or tightening comes last among those of its step. A
// check of a name that the build itself added to the step, with nothing but places and perhaps
// limits for them (`{at: 4/5}`), gives that check more places behind its own, with its limits if
// these are one for all, else with those said. A step comes behind the one named and in the plan's
// order before the next; with an `after` of its own it stands beside the others, whose order, gate
// and phase it never changes. `plan` may itself come from plan_extend; it is only read, and the new
// one holds nothing of it. The caller frees with plan_free. NULL: STANDBOOK_ERROR_MISUSE with a
// sentence about the first addition that cannot be taken after those before it, and `refusal` (may
// be NULL) says where in it.
Plan *plan_extend(const Plan *plan, const PlanAddition *additions, gsize count,
                  PlanRefusal *refusal, GError **error) G_GNUC_WARN_UNUSED_RESULT;

// Whether this one addition would be taken; else FALSE, with error and refusal as above.
gboolean plan_extend_check(const Plan *plan, const PlanAddition *addition, PlanRefusal *refusal,
                           GError **error);

// The plan with as many of the additions as can be taken, one after another: for a build that must
// be judged though a strike took away what a later addition uses. `taken` (`count` flags) is filled
// with which are in it. NULL, without an error, if none can be: then the plan itself does. The
// caller frees with plan_free.
Plan *plan_extend_as_far(const Plan *plan, const PlanAddition *additions, gsize count,
                         gboolean *taken) G_GNUC_WARN_UNUSED_RESULT;
