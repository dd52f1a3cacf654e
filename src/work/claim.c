#include <standbook/work/claim.h>

#include "reading_place.h"

#include <standbook/record/live.h>
#include <string.h>

void claim_clear(Claim *claim)
{
    Number *const numbers[] = {claim->claimed, claim->doubt, claim->difference, claim->apart,
                               claim->score};
    for (gsize i = 0; i < G_N_ELEMENTS(numbers); i++)
        number_free(numbers[i]);
}

static void clear_one(gpointer claim)
{
    claim_clear(claim);
}

Claim claim_beside(const Entry *entry, const Requirement *made)
{
    Claim claim = {.entry = entry,
                   .made = made,
                   .claimed = entry_amount(entry, "value"),
                   .doubt = entry_width(entry, "doubt")};
    if (!claim.claimed || !made->value || made->bound != BOUND_NONE)
        return claim;
    claim.difference = number_subtract(made->value, claim.claimed);
    claim.apart = claim_doubt(made->variance, claim.doubt);
    claim.answer = claim_compare(claim.difference, made->variance, claim.doubt, &claim.score);
    return claim;
}

GArray *claims_of(const Assessment *assessment, const Entry *const *entries, gsize count)
{
    GArray *claims = g_array_new(FALSE, FALSE, sizeof(Claim));
    g_array_set_clear_func(claims, clear_one);
    g_autofree gboolean *live = g_new0(gboolean, count + 1);
    live_entries(entries, count, live);
    for (gsize i = 0; i < count; i++) {
        const Requirement *made = live[i] && strcmp(entries[i]->kind->name, "claim") == 0
                                      ? reading_place(assessment, entries[i])
                                      : NULL;
        if (made) {
            const Claim claim = claim_beside(entries[i], made);
            g_array_append_val(claims, claim);
        }
    }
    return claims;
}

char *claim_score_words(const Claim *claim)
{
    return claim->score ? number_decimal(claim->score, 2) : g_strdup("");
}

char *claim_doubt_words(const Claim *claim, const Number *doubt)
{
    if (!doubt || !claim->doubt || number_sign(doubt) == 0)
        return g_strdup("");
    g_autofree char *width = check_stated_doubt(claim->made->check, doubt, claim->doubt);
    return g_strconcat("±", width, NULL);
}

char *claim_words(const Claim *claim)
{
    const PlanCheck *check = claim->made->check;
    g_autofree char *claimed =
        claim->claimed ? check_stated_words(check, claim->claimed) : g_strdup("");
    g_autofree char *doubt = claim_doubt_words(claim, claim->doubt);
    g_autoptr(GString) words = g_string_new(NULL);
    g_string_append_printf(words, "Certificate %s claims %s%s%s",
                           entry_text(claim->entry, "certificate"), claimed, *doubt ? " " : "",
                           doubt);
    if (!claim->difference) {
        g_string_append(words, "; nothing of the own is read there.");
        return g_string_free(g_steal_pointer(&words), FALSE);
    }
    g_autofree char *difference = check_stated_width(check, claim->difference);
    g_autofree char *apart = claim_doubt_words(claim, claim->apart);
    g_autofree char *score = claim_score_words(claim);
    g_string_append_printf(words, "; own - claim is %s%s%s%s%s: %s.", difference, *apart ? " " : "",
                           apart, *score ? ", E_n " : "", score, claim_answer_words(claim->answer));
    return g_string_free(g_steal_pointer(&words), FALSE);
}
