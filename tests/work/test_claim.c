// A certificate's figure beside the own reading; those of the demo's launch, cylinder 4. U of G03
// is 0.004: √(0.004² + 0.005²) = 0.0064.
#include "agenda.h"

#include <standbook/work/claim.h>

static void expect_claims(const char *expected)
{
    Agenda agenda = agenda_now();
    g_autoptr(GArray) claims = claims_of(agenda.assessment, agenda.entries, agenda.count);
    g_autoptr(GString) all = g_string_new(NULL);
    for (guint i = 0; i < claims->len; i++) {
        const Claim *claim = &g_array_index(claims, Claim, i);
        g_autofree char *words = claim_words(claim), *name = requirement_name(claim->made);
        g_string_append_printf(all, "%s%s: %s", i ? "\n" : "", name, words);
    }
    ck_assert_str_eq(all->str, expected);
}

START_TEST(the_claim_stands_beside_the_own_reading)
{
    take("2025-02-25 09:00 MO claim bore[4, T, mid] 90.005 ± 0.005 by \"BG-2291\"");
    expect_claims("read bore[4, T, mid]: Certificate BG-2291 claims 90.005 ±.005; nothing of the "
                  "own is read there.");
    take("read bore[4, T, mid] 90.026 with G03");
    expect_claims("read bore[4, T, mid]: Certificate BG-2291 claims 90.005 ±.005; own - claim is "
                  "0.021 ±.007, E_n 3.28: they do not agree.");
    take("strike last typo");
    take("read bore[4, T, mid] 90.002 with G03");
    expect_claims("read bore[4, T, mid]: Certificate BG-2291 claims 90.005 ±.005; own - claim is "
                  "-0.003 ±.007, E_n -0.47: they agree.");
}
END_TEST

START_TEST(a_claim_keeps_the_decimals_it_states)
{
    take("2025-02-25 09:00 MO claim bore[4, T, mid] 90.0052 ± 0.0025 by \"BG-2291\"");
    take("read bore[4, T, mid] 90.026 with G03");
    expect_claims("read bore[4, T, mid]: Certificate BG-2291 claims 90.0052 ±.0025; own - claim is "
                  "0.0208 ±.0048, E_n 4.41: they do not agree.");
}
END_TEST

START_TEST(a_claim_without_a_doubt_is_not_compared)
{
    take("2025-02-25 09:00 MO claim bore[4, T, mid] 90.005 by \"BG-2291\"");
    take("read bore[4, T, mid] 90.026 with G03");
    expect_claims("read bore[4, T, mid]: Certificate BG-2291 claims 90.005; own - claim is 0.021: "
                  "it states no doubt.");
    take("strike last typo");
    take("strike bore[4, T, mid] \"another engine\"");
    expect_claims("");
}
END_TEST

int main(void)
{
    const TTest *const tests[] = {the_claim_stands_beside_the_own_reading,
                                  a_claim_keeps_the_decimals_it_states,
                                  a_claim_without_a_doubt_is_not_compared};
    return run_on_build("claim", tests, G_N_ELEMENTS(tests), 0);
}
