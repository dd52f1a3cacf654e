# A wrench used below its range, one without calibration, and none named: in doubt.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W3
tighten caps[3] stage 1
tighten caps[1] stage 1 with W1
tighten caps[4] stage 1 with G4
? bolt caps in Block[2], stage 1: in doubt · tool
? bolt caps in Block[3], stage 1: in doubt · tool
? bolt caps in Block[1], stage 1: pass
? bolt caps in Block[4], stage 1: in doubt · tool
