// What changed between two assessments of a build, in one sentence.
#pragma once
#include <standbook/judge/judgement.h>

// The requirements that were judged differently before, or rest on a newer entry, those that fail
// or are in doubt first: `main clearance[1] 0.026 mm: fail · low; main bore[1, front] 59.770 mm:
// noted`. More than a few of one name are counted, bolts of one stage always: `main caps in Crank,
// stage 1: 6 pass`, `rod bolts in Rods, stage 1: 2 pass (2, a; 2, b)`. NULL if nothing changed.
// `before` may be of another plan (with less or more added to it). The caller frees with g_free.
char *answer_changes(const Assessment *before, const Assessment *after) G_GNUC_WARN_UNUSED_RESULT;

// The same of what a judgement found changed (JudgementChange) for the assessment `now`.
char *answer_judged(const GArray *changed, const Assessment *now) G_GNUC_WARN_UNUSED_RESULT;

// One requirement: `main bore[1, front] 59.790 mm: pass`, with each doubt: `… in doubt · tool,
// order`. The caller frees with g_free.
char *answer_requirement(const Requirement *requirement) G_GNUC_WARN_UNUSED_RESULT;
