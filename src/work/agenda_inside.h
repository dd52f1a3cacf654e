// Parts of the agenda that its files share.
#pragma once
#include <standbook/work/agenda_item.h>

// The torque, angle or time that a stage asks for at a place of the set, in base units; NULL if it
// asks for none, or uses something that is not read yet. The caller frees.
Number *agenda_amount(const Agenda *agenda, const Requirement *made, const PlanTightening *of,
                      const Stage *stage) G_GNUC_WARN_UNUSED_RESULT;

// The unit in which the amount of a stage is said: of a torque the first that it is written with,
// else the plan's. The caller frees.
Unit *agenda_amount_unit(const Plan *plan, const Stage *stage) G_GNUC_WARN_UNUSED_RESULT;

// `75 N·m`, `+90°`, `90° from snug` of an amount in base units; the stage as written where there is
// none (NULL). The caller frees with g_free.
char *agenda_amount_words(const Stage *stage, const Number *amount,
                          const Unit *unit) G_GNUC_WARN_UNUSED_RESULT;

// A formula worked out from what stands in the assessment, as a step can see it; the sources of its
// weights are indexes of requirements. NULL if it cannot be. The caller frees.
Array *agenda_worked(const Agenda *agenda, const PlanStep *step, const Formula *formula,
                     gint first_doubt) G_GNUC_WARN_UNUSED_RESULT;

// The place in an array of the labels along some axes; -1 if one of its axes is not among them.
gssize agenda_place_in(const Array *array, const GPtrArray *axes, const char *const *labels);
