# It answers nearly three times as much as the geometry says.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -6/48 turn
read backlash[1] 0.11 loose with G3
? 0 from setting T-1 backlash --json
? says nothing of: times as much
move backlash by 10/48 turn
read backlash[1] 0.44 loose with G3
move backlash by -8/48 turn
read backlash[1] 0.18 loose with G3
? 0 from setting T-1 backlash --json
? says: "It answers 2.8 times as much as the geometry says: wrong pitch, or something slips."
