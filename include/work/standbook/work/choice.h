// What is proposed where the plan says `choose`: the label that lands nearest the aim, and its
// neighbours. A person confirms it; the verdict is that label's.
#pragma once
#include <standbook/judge/choices.h>
#include <standbook/rules/selection.h>
#include <standbook/work/session.h>

typedef struct {
    const Requirement *made; // the place to be chosen at
    GArray *labels;          // JudgementChoice, in the order of the axis; empty: nothing to choose
    Number *aim;             // base units; the plan's, else the middle of the limits; NULL: neither
    Selection selection;     // indexes in `labels`; -1 all of them without an aim
} ChoiceOffer;

// The place of that index in the assessment. `aim: smallest` and `low` are not gone below, `high`
// is not gone above; what is chosen must pass. The judgement outlives the result; the caller
// clears it.
ChoiceOffer choice_offer(Judgement *judgement, guint index);
ChoiceOffer session_choice(Session *session, guint index); // the same for a build at the bench
void choice_offer_clear(ChoiceOffer *offer);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC(ChoiceOffer, choice_offer_clear)

// The best first, then its neighbours, with the numbers that choose them:
// `2 B 0.046 √ nearest the aim 0.046   1 A 0.072 ▲ 0.007 over`; `none lands inside; …` where
// nothing fits. NULL where nothing is known of any. The caller frees with g_free.
char *choice_offer_words(const ChoiceOffer *offer) G_GNUC_WARN_UNUSED_RESULT;
