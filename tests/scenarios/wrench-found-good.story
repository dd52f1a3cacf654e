# A wrench whose calibration had run out: in doubt until the next one finds it good.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W2
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
? bolt caps in Block[*], stage 1: in doubt · tool
? bolt caps in Block[*], stage 2: pass
? read bore*: in doubt · basis
shop: 2001-09-20 08:00 MO calibration W2 2001-09-20 due 2002-09-20 good
? bolt caps in Block*: pass
? read bore*: noted
