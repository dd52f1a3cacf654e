// The work of one build as a plan by which another engine can be begun.
#pragma once
#include <standbook/work/opened.h>

// Returns the plan of the build as a plan file: what was added stands in its place, other limits in
// the definition of their check, those of a whole check with their source. A card's is named after
// the build; where nothing was added or changed it is the plan as it is. *left_out is how many
// other service limits hold for single places only, and are not in it. NULL with an error (NO) if
// that is no plan. The caller frees.
char *plan_as_done(const Opened *opened, guint *left_out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
