# A wrench found wrong after the seal: every bolt it pulled since it was last good is in doubt, and
# what was read in those bolts; what merely rests on them stands. The sealed sheet says so.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
read journal 49.995 49.996 49.997 49.998 with G1
read float 0.10 with G3
look clean yes
sign Block
JT sign Block
? 0 from assess T-1 --gate "first start"
seal first start
? counts: open 2, pass 18, noted 4
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 wrong "set 40 gives 36"
? bolt caps in Block[*], stage 1: in doubt · tool
? bolt caps in Block[*], stage 2: pass
? read bore*: in doubt · basis
? read clearance*: in doubt · basis
? read journal*: pass
? read float: pass
? sign Block, *: pass
? counts: open 2, pass 12, in doubt 10
? left for first start: 10
? 0 from assess T-1
? says: first start: 10 left; 12 pass, 10 in doubt; sealed 10 Sep 2001, 10 in doubt
? 0 from build list
? says: first start
? says: in doubt
? 0 from sheet T-1
? says: Since the seal of first start: 10 left.
? 1 from assess T-1 --gate "first start"
? 0 from sheet T-1 customer
? says: pass then
? 0 from verify
2001-09-21 09:00 MO seal first start
? 0 from history clearance 1
