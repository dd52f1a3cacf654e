# Where it stands before anything is read says nothing of how it answers: the advice is the same from
# wherever it began.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 2 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
? 0 from setting T-1 backlash --json
? says: "move": "-7/24"
? says: "to": "41/24"
? says: "On the safe side: how it answers is not known yet."
