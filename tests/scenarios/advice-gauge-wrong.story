# A gauge found wrong voids what was read with it, which is to be read again as it stands; with
# another it is.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -7/24 turn
read backlash[1] 0.12 loose with G3
move backlash by -1/48 turn
shop: 2001-09-02 08:00 MO tool D9 "dial" kind dial range 0..10 mm step 0.01
shop: MO calibration D9 2001-09-02 due 2002-09-02 good U 0.002 mm
read backlash[1] 0.10 loose with D9
tighten carrier all with W1
read backlash 0.14 0.16 0.10 0.13 with D9
shop: 2001-09-11 08:00 MO calibration D9 2001-09-11 wrong "reads low"
? read backlash*: in doubt · tool
? 0 from setting T-1 backlash --json
? says: "kind": "read again"
? says: "asks": "tight"
? says: "Read all places once more as they stand: the gauge leaves it in doubt."
