// A wrench with an adapter: which one the plan asks for, and what the wrench is set to. Pure.
#pragma once
#include <standbook/plan/plan.h>
#include <standbook/work/shop.h>

// What the plan says of an adapter at a bolt: of `X1 at 90° on bolt 4` or `X1 on bolts 2, 4` what
// stands in front, at those bolts; what names no bolts at all of them. `place` is the bolt's label.
// NULL if it says nothing there. The caller frees with g_free.
char *wrench_adapter(const PlanGroup *group, const char *place) G_GNUC_WARN_UNUSED_RESULT;

// Whether a tool of the shop is an adapter: it has a reach and no range.
gboolean wrench_is_adapter(const Entry *tool);

// The tool of the shop that the words of an adapter name, `X1` or `X1 at 90°`; NULL if there is
// none, or it is no adapter.
const Entry *wrench_adapter_tool(const Shop *shop, const char *words);

// What the wrench is set to for a torque, in base units, through the adapter and at the angle that
// the words say (`X1 at 90°`), NULL for none. NULL if that is not known: the shop has no reach of
// one of them, or the adapter points back beyond the grip. The caller frees.
Number *wrench_setting(const Number *torque, const Shop *shop, const char *wrench,
                       const char *adapter) G_GNUC_WARN_UNUSED_RESULT;

// The unit of a tool's range, of its greatest else of its least; NULL if it has none, or for no
// tool (NULL). The caller frees.
Unit *wrench_unit(const Entry *tool) G_GNUC_WARN_UNUSED_RESULT;

// A setting as a scale has it: `18.5`, exact or to a tenth. The caller frees with g_free.
char *wrench_setting_words(const Number *setting, const Unit *unit) G_GNUC_WARN_UNUSED_RESULT;
