# Two neighbours of the order swapped: of the two the later in the order is in doubt.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W1
tighten caps[3] stage 1 with W1
tighten caps[4] stage 1 with W1
tighten caps[1] stage 1 with W1
? bolt caps in Block[4], stage 1: in doubt · order
? bolt caps in Block[2], stage 1: pass
? bolt caps in Block[3], stage 1: pass
? bolt caps in Block[1], stage 1: pass
