// What a value would be worth if it was, or had been, read with another gauge. Pure.
#pragma once
#include <standbook/judge/judgement.h>
#include <standbook/value/uncertainty.h>

typedef struct {
    const GPtrArray *checks; // const PlanCheck *: those read with it, at all their places
    ReadingDoubt doubt;      // of the gauge
} GaugeTrial;

// u² of the value of a requirement (index in the assessment of judgement_now) with every reading of
// those checks taken with that gauge, read already or not. What is not read yet stands in with the
// size of its neighbours, else the middle of its limits; NULL where the doubt depends on a size of
// which nothing is known, or where the formula cannot be worked out. *whole is FALSE where a check
// that is read otherwise is still open: the doubt is then what it is at least. The caller frees.
Number *judgement_variance_with(Judgement *judgement, guint index, const GaugeTrial *trial,
                                gboolean *whole) G_GNUC_WARN_UNUSED_RESULT;
