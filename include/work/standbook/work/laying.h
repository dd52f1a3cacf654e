// What a plan asks to be laid (sealant, locker, paste) and nobody has laid yet. Pure.
#pragma once
#include <standbook/work/agenda.h>

typedef struct {
    const PlanConsumable *consumable;
    const PlanStep *step;   // that asks for it
    const PlanGroup *group; // whose lubricant it is; NULL: the step `uses` it
    gsize laid;             // of a bolt set: how many entries there were when it was laid last
} Laying;

// Of a step, as the plan has it (Laying): the lubricants with clocks of the bolt sets first
// tightened there, then what it `uses` beside them. It counts as laid where an entry that counts
// laid it on that bolt set; what a step uses, on whatever stands in the step or is asked for
// nowhere else. Of bolts slackened since it is left again. The caller frees with g_array_unref.
GArray *layings_left(const Agenda *agenda, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// Of these what nothing else that is open stands for: of a bolt set nothing of which is done the
// set itself is open, and so are bolts that were slackened. The caller frees with g_array_unref.
GArray *layings_missed(const Agenda *agenda, const PlanStep *step) G_GNUC_WARN_UNUSED_RESULT;

// The same of all steps up to a gate whose signatures are given: nobody is asked there any more.
GArray *layings_passed_over(const Agenda *agenda, guint gate) G_GNUC_WARN_UNUSED_RESULT;

// The one that comes before a place of its step can be done: of a bolt set nothing of which is
// done, of a bolt slackened since, of what the step uses the first part or bolt that is open. NULL
// if none does.
const Laying *laying_before(const Agenda *agenda, const GArray *layings, guint index);

// On what it can be laid, by name (const char *): the bolt set; else what the step tightens and
// fits; of a step that does neither, what the nearest step in front of it does. The caller frees
// with g_ptr_array_unref.
GPtrArray *laying_targets(const Plan *plan, const Laying *laying) G_GNUC_WARN_UNUSED_RESULT;
