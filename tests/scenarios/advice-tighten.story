# A loose reading that will do is tightened, and it is said what is to be expected.
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
? 0 from setting T-1 backlash --json
? says: "kind": "tighten"
? says: "asks": "tighten"
? says: "Tighten now; expect 0.08 to 0.12 at the smallest."
