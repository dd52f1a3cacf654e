// A value that its gauge cannot decide, in sentences. Pure.
#pragma once
#include <standbook/judge/assess.h>

// Whether the doubt of the gauge alone keeps it from being decided.
gboolean is_coarse(const Requirement *made);

// `The true value may be 6.8 to 8.2; the limit is 7.0.` and `Inside by 0.5; with this doubt a pass
// needs 0.6. A doubt of ±0.6 settles it.` (char *), by the rule of rules/decision.h: a guard band
// of 1.65 u, or, with two limits, a doubt U = 2 u of an eighth of the width between them, which is
// believed as read. A needed distance is rounded up, a doubt that settles down. The caller frees
// with g_ptr_array_unref.
GPtrArray *coarse_sentences(const Requirement *made) G_GNUC_WARN_UNUSED_RESULT;
