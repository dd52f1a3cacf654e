# An idler from just solid to its backlash in four tries, the second by feel against the advice; then
# its wrench is found wrong, and it is tightened again where it stands.
plan: advice
2001-09-10 09:10 MO pick up Idler
move idler backlash to 0.50 turn
read idler backlash[1] 0.31 loose with G3
? 0 from setting T-1 "idler backlash" --json
? says: "Tighten now, to see what tightening changes; expect 0.17 to 0.42 at the smallest."
tighten idler carrier stage 1 all with W2
tighten idler carrier stage 2 all with W2
tighten locknut all with W4
read idler backlash[1] 0.35 with G3
? 0 from setting T-1 "idler backlash" --json
? says: "asks": "move"
? says: "move": "-0.3125"
? says: "On the safe side: how it answers is not known yet."
? says: "Tighten when loose reads 0.07 to 0.09."
? says: "Then expect 0.12 at 1, between 0.10 and 0.14, and 0.10 to 0.14 over the 4, tight."
slacken locknut all
slacken idler carrier all
move idler backlash to 0.00 turn
read idler backlash[1] 0.02 loose with G3
? 0 from setting T-1 "idler backlash" --json
? says: "move": "5/48"
tighten idler carrier stage 1 all with W2
tighten idler carrier stage 2 all with W2
tighten locknut all with W4
read idler backlash[1] 0.06 with G3
? 0 from setting T-1 "idler backlash" --json
? says: "move": "5/48"
? says nothing of: safe side
? says: "Then expect 0.12 at 1, between 0.11 and 0.13, and 0.10 to 0.14 over the 4, tight."
slacken locknut all
slacken idler carrier all
move idler backlash to 0.08 turn
read idler backlash[1] 0.07 loose with G3
? 0 from setting T-1 "idler backlash" --json
? says: "Tighten now; expect 0.06 to 0.12 at the smallest."
tighten idler carrier stage 1 all with W2
tighten idler carrier stage 2 all with W2
tighten locknut all with W4
read idler backlash 0.11 0.13 0.07 0.10 with G3
? 0 from setting T-1 "idler backlash" --json
? says: "move": "1/24"
? says: "Then expect 0.14 at 1, between 0.13 and 0.15, and 0.10 to 0.16 over the 4, tight."
slacken locknut all
slacken idler carrier all
move idler backlash to 0.13 turn
read idler backlash[1] 0.09 loose with G3
? 0 from setting T-1 "idler backlash" --json
? says: "Tighten now; expect 0.08 to 0.10 at the smallest."
tighten idler carrier stage 1 all with W2
tighten idler carrier stage 2 all with W2
tighten locknut all with W4
read idler backlash 0.14 0.16 0.10 0.12 with G3
? 0 from setting T-1 "idler backlash" --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
shop: 2001-09-11 09:40 MO calibration W2 2001-09-11 wrong "set 45 gives 41"
? read idler backlash*: in doubt · basis
? 0 from setting T-1 "idler backlash" --json
? says: Loosen it, leave it where it stands and tighten it again; expect
? says: "What was read in doubt is left out."
2001-09-11 15:20 MO slacken locknut all
slacken idler carrier all
read idler backlash[1] 0.09 loose with G3
tighten idler carrier stage 1 all with W1
tighten idler carrier stage 2 all with W1
tighten locknut all with W4
read idler backlash 0.15 0.17 0.11 0.13 with G3
? read idler backlash*: pass
? 0 from setting T-1 "idler backlash" --json
? says: "asks": "done"
? says: "Leave it: a further move is no better than this (chance 1.00)."
