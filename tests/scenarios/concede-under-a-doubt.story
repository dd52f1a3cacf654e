# Who concedes what is in doubt concedes also what it would be without the doubt.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read bore 50.095 50.095 50.095 50.095 with G1
read journal 49.996 49.996 49.996 49.996 with G4
? read clearance*: fail · beyond wear
shop: 2001-09-20 08:00 MO calibration G1 2001-09-20 wrong "reads high"
? read clearance*: in doubt · tool
2001-09-20 09:00 MO concede clearance "an old engine, low revs" customer letter
? read clearance*: conceded · tool, own in doubt · tool
