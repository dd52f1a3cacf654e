# It ends before the aim, but what it came to is inside the limits: nothing more is asked.
plan: advice
2001-09-10 08:00 MO pick up Gap
move gap to 0.5 turn
read gap[1] 0.20 loose with G3
tighten stay all with W1
read gap 0.24 0.23 0.22 0.23 with G3
slacken stay all
move gap to 0.36 turn
read gap[1] 0.13 loose with G3
tighten stay all with W1
read gap 0.17 0.16 0.15 0.16 with G3
? 0 from setting T-1 gap --json
? says: "kind": "leave"
? says: "asks": "done"
