# After five moves that did not settle it, something else is wrong.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -4/48 turn
read backlash[1] 0.26 loose with G3
tighten carrier all with W1
read backlash 0.30 0.32 0.26 0.29 with G3
slacken carrier all
move backlash by 4/48 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -4/48 turn
read backlash[1] 0.26 loose with G3
tighten carrier all with W1
read backlash 0.30 0.32 0.26 0.29 with G3
slacken carrier all
move backlash by 4/48 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.31 0.34 with G3
slacken carrier all
move backlash by -4/48 turn
read backlash[1] 0.26 loose with G3
tighten carrier all with W1
read backlash 0.30 0.32 0.26 0.29 with G3
? 0 from setting T-1 backlash --json
? says nothing of: stop adjusting
slacken carrier all
move backlash by -4/48 turn
read backlash[1] 0.26 loose with G3
tighten carrier all with W1
read backlash 0.30 0.32 0.26 0.29 with G3
? 0 from setting T-1 backlash --json
? says: "kind": "stop"
? says: "asks": "stop"
? says: "6 moves: stop adjusting, look for a burr, a bent bracket, a moving datum."
? says: "No further move will do: find the cause first, or have it conceded."
? 0 from setting T-1 backlash
? says: Next: leave the jackscrew and look for the cause.
