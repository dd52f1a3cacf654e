// Somebody else's figure beside the own reading: E_n of ISO/IEC 17043:2010, B.3 (ISO 13528:2015,
// 9.7), the difference over the root of both expanded uncertainties (k = 2) squared and summed.
#pragma once
#include <standbook/value/number.h>

typedef enum {
    CLAIM_UNKNOWN,   // one of the two has no doubt that is known: nothing can be said
    CLAIM_AGREES,    // |E_n| <= 1
    CLAIM_DISAGREES, // |E_n| > 1
} ClaimAnswer;

// `they agree`, `they do not agree`, `it states no doubt`. Static.
const char *claim_answer_words(ClaimAnswer answer);

// `difference` is own - claimed, `variance` u² of the own value, `doubt` U (k = 2) of the claim;
// NULL where that is not known. Decided by squares, exactly; *score (NULL allowed) is E_n to 40
// decimal places, NULL where it is not known or both doubts are nought. The caller frees it.
ClaimAnswer claim_compare(const Number *difference, const Number *variance, const Number *doubt,
                          Number **score);

// U (k = 2) of the difference; NULL where a doubt is not known. The caller frees.
Number *claim_doubt(const Number *variance, const Number *doubt) G_GNUC_WARN_UNUSED_RESULT;
