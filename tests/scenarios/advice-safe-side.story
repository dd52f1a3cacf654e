# The first move stops short while nobody knows how it answers; once it was seen, no more.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
? 0 from setting T-1 backlash --json
? says: "On the safe side: how it answers is not known yet."
slacken carrier all
move backlash by -7/24 turn
read backlash[1] 0.12 loose with G3
? 0 from setting T-1 backlash --json
? says: "kind": "move"
? says nothing of: safe side
