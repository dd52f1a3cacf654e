# Bolts of one set upheld for two reasons: the customer reads both, each with its bolt and stage.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 wrong "low"
2001-09-20 09:00 MO uphold caps[1], stage 1 "loose" second JT
uphold caps[2], stage 1 "tried" second JT
? 0 from sheet T-1
? says: loose. Mab Orrin
? says: tried. Mab Orrin
? says: Upheld, bolt 1, stage
? says: Upheld, bolt 2, stage
? says: 1: tried.
? says: 2 of 4, 2 in doubt
? says: Turned without an angle gauge, by a mark.
