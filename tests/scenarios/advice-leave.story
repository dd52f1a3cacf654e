# What is where it is wanted is left.
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
read backlash[1] 0.10 loose with G3
tighten carrier all with W1
read backlash 0.14 0.16 0.10 0.13 with G3
? 0 from setting T-1 backlash --json
? says: "kind": "leave"
? says: "asks": "done"
? says: "Leave it: a further move is no better than this (chance 1.00)."
