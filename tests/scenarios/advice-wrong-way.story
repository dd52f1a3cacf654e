# Turned in to close it, it opened.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -7/24 turn
read backlash[1] 0.47 loose with G3
? 0 from setting T-1 backlash --json
? says: "It answers the other way: check direction, or the zero."
