# A wrench that was only put right settles nothing that came before: what was in doubt stays so, and
# what was not, too.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 from 2 to 3 with W2
tighten caps stage 1 from 1 to 4 with W1
? bolt caps in Block[2], stage 1: in doubt · tool
? bolt caps in Block[1], stage 1: pass
shop: 2001-09-20 08:00 MO calibration W2 2001-09-20 due 2002-09-20 adjusted
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 due 2002-09-20 adjusted
? bolt caps in Block[2], stage 1: in doubt · tool
? bolt caps in Block[3], stage 1: in doubt · tool
? bolt caps in Block[1], stage 1: pass
? bolt caps in Block[4], stage 1: pass
