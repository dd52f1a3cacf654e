# How far to move, the loose reading at which to tighten, and what to expect then.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -7/24 turn
read backlash[1] 0.12 loose with G3
? 0 from setting T-1 backlash --json
? says: "kind": "move"
? says: "move": "-1/48"
? says: "Tighten when loose reads 0.09 to 0.11."
? says: "Then expect 0.14 at 1, between 0.12 and 0.16, and 0.10 to 0.16 over the 4, tight."
