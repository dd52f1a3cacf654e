#include <standbook/rules/claim.h>

const char *claim_answer_words(ClaimAnswer answer)
{
    static const char *const words[] = {
        [CLAIM_UNKNOWN] = "it states no doubt",
        [CLAIM_AGREES] = "they agree",
        [CLAIM_DISAGREES] = "they do not agree",
    };
    return words[answer];
}

// 4 u² + U²
static Number *square_of_doubt(const Number *variance, const Number *doubt)
{
    if (!variance || !doubt)
        return NULL;
    g_autoptr(Number) four = number_from_integer(4);
    g_autoptr(Number) own = number_multiply(variance, four), claimed = number_power(doubt, 2);
    return number_add(own, claimed);
}

Number *claim_doubt(const Number *variance, const Number *doubt)
{
    g_autoptr(Number) square = square_of_doubt(variance, doubt);
    return square ? number_sqrt(square) : NULL;
}

ClaimAnswer claim_compare(const Number *difference, const Number *variance, const Number *doubt,
                          Number **score)
{
    g_autoptr(Number) square = square_of_doubt(variance, doubt);
    if (score)
        *score = NULL;
    if (!square)
        return CLAIM_UNKNOWN;
    if (score && number_sign(square) > 0) {
        g_autoptr(Number) root = number_sqrt(square);
        *score = number_divide(difference, root);
    }
    g_autoptr(Number) apart = number_power(difference, 2);
    return number_compare(apart, square) <= 0 ? CLAIM_AGREES : CLAIM_DISAGREES;
}
