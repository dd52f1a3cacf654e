# Bolt 3 was skipped in its stage and taken last: it is in doubt, and none of those that follow.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W1
tighten caps[1] stage 1 with W1
tighten caps[4] stage 1 with W1
? bolt caps in Block[3], stage 1: open
? bolt caps in Block[4], stage 1: pass
tighten caps[3] stage 1 with W1
? bolt caps in Block[3], stage 1: in doubt · order
? bolt caps in Block[2], stage 1: pass
? bolt caps in Block[1], stage 1: pass
? bolt caps in Block[4], stage 1: pass
tighten caps stage 2 all with A1
? bolt caps in Block[*], stage 2: pass
