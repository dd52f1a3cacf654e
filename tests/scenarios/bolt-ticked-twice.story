# A bolt pulled twice in a row at one stage keeps its turn: another one done again later, because its
# wrench was found wrong, comes after it and puts neither out of order.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W1
tighten caps[3] stage 1 with W1
tighten caps[1] stage 1 with W1
tighten caps[1] stage 1 with W1
tighten caps[4] stage 1 with W1
shop: 2001-09-11 08:00 MO calibration W1 2001-09-11 wrong "read 5 N·m low"
2001-09-12 08:00 tighten caps[3] stage 1 with W3
? bolt caps in Block[3], stage 1: in doubt · tool
uphold caps "pulled by hand with the other wrench and none moved"
? answered: caps in Block, stage 1: 4 pass (2, 3, 1, 4)
? bolt caps in Block[*], stage 1: pass, upheld
? 0 from sheet T-1
? says: Click wrench of caps found wrong
? says: Done twice, bolt 3 in stage 1: the first click wrench was found wrong
? says nothing of: not done in the order asked for
