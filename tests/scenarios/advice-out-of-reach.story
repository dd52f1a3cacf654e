# The adjuster ends before the aim.
plan: advice
2001-09-10 08:00 MO pick up Gap
move gap to 0.5 turn
read gap[1] 0.31 loose with G3
tighten stay all with W1
read gap 0.35 0.37 0.31 0.34 with G3
slacken stay all
move gap to 0.375 turn
read gap[1] 0.25 loose with G3
tighten stay all with W1
read gap 0.29 0.31 0.25 0.28 with G3
? 0 from setting T-1 gap --json
? says: "kind": "stop"
? says: "asks": "stop"
? says: "The wedge ends before the aim: at its stop expect 0.24."
# What slipped there says nothing of how far it goes.
slacken stay all
move gap to 0.40 turn
read gap[1] 0.55 loose with G3
? 0 from setting T-1 gap --json
? says: does not follow from the move
? says nothing of: ends before the aim
? says nothing of: "kind": "stop"
