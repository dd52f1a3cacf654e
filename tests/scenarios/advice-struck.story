# A struck move and a struck reading: the advice is that of before.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
? 0 from setting T-1 backlash --json
? says: "move": "-7/24"
? says: "to": "17/24"
move backlash by -7/24 turn
number: MOVE
? 0 from setting T-1 backlash --json
? says: "asks": "loose"
? says: "Tighten when loose reads 0.09 to 0.11."
strike #{MOVE} "not done"
? 0 from setting T-1 backlash --json
? says: "move": "-7/24"
? says: "to": "17/24"
move backlash by -7/24 turn
read backlash[1] 0.21 loose with G3
number: READ
? 0 from setting T-1 backlash --json
? says nothing of: "move": "-1/48"
strike #{READ} typo
read backlash[1] 0.12 loose with G3
? 0 from setting T-1 backlash --json
? says: "move": "-1/48"
