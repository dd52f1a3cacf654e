# A wrench found wrong voids what it tightened, which is to be tightened again where it stands;
# upheld, it counts.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W2
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -7/24 turn
read backlash[1] 0.12 loose with G3
move backlash by -1/48 turn
read backlash[1] 0.10 loose with G3
tighten carrier all with W2
read backlash 0.14 0.16 0.10 0.13 with G3
? 0 from setting T-1 backlash --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
shop: 2001-09-11 08:00 MO calibration W2 2001-09-11 wrong "set 40 gives 36"
? read backlash*: in doubt · basis
? 0 from setting T-1 backlash --json
? says: "What was read in doubt is left out."
? says: "Loosen it, leave it where it stands and tighten it again; expect
? says: "kind": "tighten"
? says: "asks": "tighten"
? says nothing of: Leave it:
2001-09-11 09:00 MO uphold backlash "no effect" second JT
? 0 from setting T-1 backlash --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
? says: "kind": "leave"
? says: "asks": "done"
