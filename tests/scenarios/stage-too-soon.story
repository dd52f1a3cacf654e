# Bolt 2 was turned through its angle before bolt 4 had its torque.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 from 2 to 1 with W1
tighten caps[2] stage 2 with A1
tighten caps[4] stage 1 with W1
tighten caps[3] stage 2 with A1
tighten caps[1] stage 2 with A1
tighten caps[4] stage 2 with A1
? bolt caps in Block[2], stage 2: in doubt · order
? bolt caps in Block[3], stage 2: pass
? bolt caps in Block[1], stage 2: pass
? bolt caps in Block[4], stage 2: pass
? bolt caps in Block[*], stage 1: pass
