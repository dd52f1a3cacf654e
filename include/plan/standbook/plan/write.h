// A plan written back as a plan file, from the tables of schema.h.
#pragma once
#include <standbook/plan/plan.h>

// Returns the plan as UTF-8 text that plan_read reads as the same plan: everything in its order,
// the keys of a step as read (they are the order of its work), those of other mappings in the
// order of their table. Comments and the layout of the file it was
// read from are not kept. The caller frees with g_free.
char *plan_write(const Plan *plan) G_GNUC_WARN_UNUSED_RESULT;
