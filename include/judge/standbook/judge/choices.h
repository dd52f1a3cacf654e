// What each label would come to where one is to be chosen. Pure.
#pragma once
#include <standbook/judge/judgement.h>

typedef struct {
    const char *label; // it belongs to the plan
    Number *value;     // base units; NULL where it cannot be worked out yet
    Number *variance;  // u²; NULL without value
    Verdict verdict;   // of the value alone against the limits in force; open without value
    Reason reason;
} JudgementChoice;

// The labels of a check with `choose` at the place of that index (in the assessment of
// judgement_now), in the order of the axis; empty for any other requirement. The caller frees with
// g_array_unref.
GArray *judgement_choices(Judgement *judgement, guint index) G_GNUC_WARN_UNUSED_RESULT;
