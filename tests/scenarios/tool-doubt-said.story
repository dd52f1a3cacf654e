# Why a tool puts something in doubt is said of each: which tool, and whether it was found wrong, had
# run out, was used outside its range, had no calibration or was not named.
plan: caps
shop: 2001-09-10 08:00 MO tool W9 "torque wrench 10-120" kind torque wrench range 10..120 N·m
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W3
tighten caps[3] stage 1
tighten caps[1] stage 1 with W2
tighten caps[4] stage 1 with W9
read float 0.10 with G3
? 0 from sheet T-1
? says: Undecided. Click wrench of caps had a calibration that ran out
? says: Undecided. Click wrench of caps was used outside its range.
? says: Undecided. The tool of caps was not named.
? says: Undecided. Torque wrench of caps had no calibration on record.
? 1 from sheet T-1 completion
? says: The tool of caps was
? 0 from assess T-1 --json
? says: "state": "overdue",
? says: "state": "out of range",
? says: "state": "unknown",
tighten caps[1] stage 1 with W1
tighten caps[2] stage 1 with W1
tighten caps[3] stage 1 with W1
tighten caps[4] stage 1 with W1
shop: 2001-09-20 08:00 MO calibration G3 2001-09-20 wrong "0.02 out"
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 wrong "set 40 gives 39"
? 0 from sheet T-1
? says: Undecided. Dial indicator of float found wrong 2001-09-20 (0.02 out).
? says: Undecided. Click wrench of caps found wrong 2001-09-20 (set 40 gives 39).
? says nothing of: Done twice
2001-09-21 08:00 MO uphold float "0.02 leaves it 0.03 inside"
tighten caps[1] stage 1 with W3
? 0 from sheet T-1
? says: Dial indicator of float found wrong 2001-09-20 (0.02 out). Upheld: 0.02
? says: Done twice, bolt 1 in stage 1: the first click wrench was found wrong
? 1 from sheet T-1 completion
? says: 40 N·m. Click wrench
