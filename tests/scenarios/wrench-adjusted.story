# A wrench that was only put right settles nothing that came before.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W2
? bolt caps in Block[*], stage 1: in doubt · tool
shop: 2001-09-20 08:00 MO calibration W2 2001-09-20 due 2002-09-20 adjusted
? bolt caps in Block[*], stage 1: in doubt · tool
