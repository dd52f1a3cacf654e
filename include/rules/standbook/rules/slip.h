// A slip of the fingers: a value that is likely not what the gauge showed. It is asked about once
// and never corrected. Nothing here is floating point.
#pragma once
#include <standbook/value/number.h>

typedef enum {
    SLIP_NONE,
    SLIP_TEN_TIMES,  // the point one place too far right
    SLIP_A_TENTH,    // the point one place too far left
    SLIP_INCH_TIMES, // 25.4 times: millimetres where inches are asked
    SLIP_INCH_PART,  // 1/25.4: inches where millimetres are asked
    SLIP_SIGN,       // the others have the other sign
    SLIP_FRACTION,   // a bare fraction, as of an inch, where millimetres are asked
    SLIP_FAR,        // far from the others, and no factor explains it
} SlipKind;

// What a value is compared with, all in one unit; an unknown number is NULL.
typedef struct {
    const Number *value;
    const Number *const *others; // the same check at its other places
    gsize count;
    const Number *lower, *upper; // limits
    const Number *step;          // one unit of the last place shown, above 0
    gboolean fraction;           // it was typed as a fraction, where decimals are usual
    gboolean length;             // it is one: inches and millimetres are mistaken for each other
} SlipQuestion;

// What slip is likely, and in *meant (NULL allowed; NULL is set for SLIP_NONE and SLIP_FAR) what
// the value would have been without it; the caller frees that with number_free.
//
// Near the others: within their range and half their median again. The others tell something
// when their median, without its sign, is at least 20 steps and twice their range, so that a few
// steps of runout are never compared by ratio. With both limits known a value inside them is
// never a slip. A factor or the sign is a slip where the value without it lies near the others,
// or where there are none inside both limits, and the value itself lies in neither; one of 25.4
// only of a length. A fraction that
// lies in neither is one of an inch, whatever is known.
// These are rules of our own, no published source.
//
// Far: at least three others, or two where both limits are known; the modified z-score 0.6745 (x -
// median) / MAD is beyond 3.5 (B. Iglewicz and D. Hoaglin, How to Detect and Handle Outliers, ASQC
// 1993; NIST/SEMATECH e-Handbook 1.3.5.17). Beside it, of our own: MAD is taken as one step at
// least, which also serves where it is 0; the median lies more than ten ranges (one step at least)
// away; and, where both limits are known, the value lies outside them by more than their width.
// True extremes are common in worn engines, so that a published threshold alone would ask too
// often.
SlipKind slip_likely(const SlipQuestion *question, Number **meant);

// Whether a value lies outside its limits by more than ten times their width: of what is set, no
// first reading does. A rule of our own, no published source.
gboolean slip_is_beyond_all(const Number *value, const Number *lower, const Number *upper);

// Whether the modified z-score of a value against `count` >= 1 others is beyond 3.5 either way;
// `least` > 0 stands for a smaller MAD.
gboolean slip_is_outlier(const Number *value, const Number *const *others, gsize count,
                         const Number *least);
