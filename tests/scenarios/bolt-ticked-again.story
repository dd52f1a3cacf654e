# A bolt pulled once more without slackening it: the last tick counts, and disturbs nobody's order.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
? answered: caps in Block, stage 1: 4 pass
tighten caps[2] stage 1 with W1
? answered: Done at this stage already: 2 (#9); what is entered now stands
? bolt caps in Block[*], stage 1: pass
tighten caps stage 2 all with A1
? bolt caps in Block*: pass
