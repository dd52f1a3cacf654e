# A bolt done again later changes the order in which the set stands, not the one a reading was taken in.
plan: twice
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with W1
slacken caps all "looked under"
tighten caps stage 1 all with W1
tighten caps stage 2 all with W1
read bore 60.00 with G1
? read bore: noted
pick up Again
tighten caps stage 1 all with W1
tighten caps[3] stage 2 with W1
slacken caps[3] "looked under"
tighten caps[3] in Block stage 1 with W1
? bolt caps in Block[2], stage 1: in doubt · order
? read bore: noted
