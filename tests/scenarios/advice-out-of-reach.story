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
? says: "The wedge ends before the aim: at its stop expect 0.24."
