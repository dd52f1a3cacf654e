// What outside certificates say beside the own readings. Pure.
#pragma once
#include <standbook/judge/assess.h>
#include <standbook/rules/claim.h>

// One claim that is not struck, and the place it is about. Numbers in base units.
typedef struct {
    const Entry *entry;
    const Requirement *made;
    Number *claimed;    // its figure
    Number *doubt;      // U (k = 2) that it states, NULL if none
    Number *difference; // own - claimed; NULL where nothing is read yet
    Number *apart;      // U (k = 2) of the difference; NULL where it is not known
    Number *score;      // E_n; NULL where it is not known
    ClaimAnswer answer; // CLAIM_UNKNOWN also where nothing is read yet
} Claim;

// A claim entry beside the place it is about, both of which outlive the result. The caller clears
// it.
Claim claim_beside(const Entry *entry, const Requirement *made);
void claim_clear(Claim *claim);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(Claim, claim_clear)

// All claims (Claim) among the entries of a build, in order of seq, against its assessment of them;
// both outlive the result. The caller frees with g_array_unref.
GArray *claims_of(const Assessment *assessment, const Entry *const *entries,
                  gsize count) G_GNUC_WARN_UNUSED_RESULT;

// `Certificate BG-2291 claims 90.005 ±.005; own - claim is 0.021 ±.007, E_n 3.28: they do not
// agree.` The caller frees with g_free.
char *claim_words(const Claim *claim) G_GNUC_WARN_UNUSED_RESULT;
// `±.005`: the doubt it states, or that of the difference, in the decimals that the stated one
// needs;
// "" where it is not known or nought. The caller frees with g_free.
char *claim_doubt_words(const Claim *claim, const Number *doubt) G_GNUC_WARN_UNUSED_RESULT;
// `3.28`, `-0.40`, rounded to two places; "" where it is not known. The caller frees with g_free.
char *claim_score_words(const Claim *claim) G_GNUC_WARN_UNUSED_RESULT;
