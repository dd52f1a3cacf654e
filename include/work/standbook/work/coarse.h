// A value that its gauge cannot decide. Pure.
#pragma once
#include <standbook/judge/assess.h>

// Whether the doubt of the gauge alone keeps it from being decided.
gboolean is_coarse(const Requirement *made);

// How far a value lies inside the limit that it is nearest to, base units, below 0 outside; that
// limit in *limit (NULL allowed). The value and a limit are there. The caller frees.
Number *nearest_inside(const Requirement *made, const Number **limit) G_GNUC_WARN_UNUSED_RESULT;

// `The true value may be 6.8 to 8.2; the limit is 7.0.`: the value less and more its U (k = 2), and
// the limit that it is nearest to. What would settle it says gauge_choice.h. The caller frees.
char *coarse_sentence(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
