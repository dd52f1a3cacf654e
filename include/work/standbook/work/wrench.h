// A wrench with an adapter: which one the plan asks for, and what the wrench is set to. Pure.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/work/shop.h>

// What the plan says of an adapter at a bolt: of `X1 on bolt 4` or `X1 on bolts 2, 4` what stands
// in front, at those bolts; what names no bolts at all of them. `place` is the bolt's label. NULL
// if it says nothing there. The caller frees with g_free.
char *wrench_adapter(const PlanGroup *group, const char *place) G_GNUC_WARN_UNUSED_RESULT;

// Whether a tool of the shop is an adapter: it has a reach and no range.
gboolean wrench_is_adapter(const Entry *tool);

// What the wrench (a tool of the shop) is set to for a torque, in base units; through the adapter
// if there is one. NULL if that is not known: the shop has no reach of one of them. The caller
// frees.
Number *wrench_setting(const Number *torque, const Entry *wrench,
                       const Entry *adapter) G_GNUC_WARN_UNUSED_RESULT;

// A setting as a scale has it: `18.5`, exact or to a tenth. The caller frees with g_free.
char *wrench_setting_words(const Number *setting, const Unit *unit) G_GNUC_WARN_UNUSED_RESULT;
