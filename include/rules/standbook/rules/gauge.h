// What a gauge can tell before, or after, something was read with it: the decision rule turned
// round. All numbers of one call are in one unit (variances in that unit squared), and only read.
#pragma once
#include <standbook/rules/decision.h>
#include <standbook/value/number.h>

typedef enum {
    GAUGE_SETTLES, // whatever is read is decided; or the value that was read is
    GAUGE_CAN,     // decides away from the limits, cannot tell close to one
    GAUGE_CANNOT,  // can never pass this; or cannot tell for the value that was read
} GaugeOutlook;

// What is asked of the gauge; a limit that is not known is NULL, `value` NULL before it is read.
typedef struct {
    const Number *lower, *upper, *value;
} GaugeQuestion;

// `settles it`, `not close to a limit`, `cannot`. Static.
const char *gauge_outlook_words(GaugeOutlook outlook);

// `variance` >= 0 is u² of what the value has, or would have, with the gauge. Before it is read:
// GAUGE_SETTLES where it is believed as read (T² >= 256 u²), has no doubt, or has no limit;
// GAUGE_CANNOT where T < 3.3 u (decision_can_ever_pass). After: by `decide`.
GaugeOutlook gauge_outlook(const GaugeQuestion *question, const Number *variance);

// How far inside a limit a value must lie to pass with this doubt: 1.65 u, to 40 decimal places;
// NULL where it is believed as read or has no limit. The caller frees.
Number *gauge_inside(const GaugeQuestion *question,
                     const Number *variance) G_GNUC_WARN_UNUSED_RESULT;

// The widest doubt U (k = 2) with which the value would be decided: 2 d / 1.65, d its distance from
// the limit it lies nearest inside, or outside; or T/8, with which it would be believed as read.
// NULL without a value or a limit. The caller frees.
Number *gauge_doubt_wanted(const GaugeQuestion *question) G_GNUC_WARN_UNUSED_RESULT;
