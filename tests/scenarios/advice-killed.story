# The program is killed behind a move and behind the last tick; the ledger is all that the adviser
# needs.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
? read backlash[1]: fail · high
move backlash by -7/24 turn
? killed once read backlash[1]: in doubt · basis
? 0 from setting T-1 backlash --json
? says: "asks": "loose"
? says: "Tighten when loose reads 0.09 to 0.11."
slacken carrier all
read backlash[1] 0.12 loose with G3
? 0 from setting T-1 backlash --json
? says: "move": "-1/48"
move backlash by -1/48 turn
read backlash[1] 0.10 loose with G3
tighten carrier all with W1
? killed once bolt carrier in Backlash[2], stage 1: pass
? 0 from setting T-1 backlash --json
? says: "asks": "tight"
? says: "place": "1"
read backlash 0.14 0.16 0.10 0.13 with G3
? 0 from setting T-1 backlash --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
