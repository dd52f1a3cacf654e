// Choosing from what there is: shells by grade, shims by thickness, gaskets by height.
#pragma once
#include <standbook/value/number.h>

typedef enum {
    SELECTION_NEAREST,  // to the aim; of two equally near the larger: more clearance is the safe
                        // side (common practice, no published source)
    SELECTION_AT_LEAST, // the least that does not fall short of the aim
    SELECTION_AT_MOST,  // the greatest that does not go past it
} SelectionSide;

// What each would come to; `value` NULL where that is not known, `fits` whether it would pass.
typedef struct {
    const Number *value;
    gboolean fits;
} SelectionOffer;

// Indexes of offers, -1 for none.
typedef struct {
    gssize best;         // of those that fit; where the side leaves none, the nearest to the aim
    gssize below, above; // the next smaller and larger value, whether it fits or not; beside the
                         // aim where nothing fits
} Selection;

// All values in one unit. Of equal values the first counts.
Selection selection_of(const SelectionOffer *offers, gsize count, const Number *aim,
                       SelectionSide side);
