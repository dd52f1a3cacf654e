# Lash by screws, each with its lock nut: two valves set one after the other by limits of their own,
# with a move struck between; what is done at one is no matter of the other.
plan: screws
2001-09-10 09:00 MO pick up Lash
? 2 from setting T-1 lash
? says: `lash` is set place by place; say which: 1, in; 1, ex; 2, in; 2, ex
? 2 from setting T-1 lash 3
? says: `3` is no place of `lash`
? 2 from setting T-1 "peg gap" in
? says: all places of `peg gap` are set together; leave `in` out
move lash to 0 turn
? refused: each place of `lash` has a screw of its own; say which was moved, such as `lash[1, in]`
move lash[1, in] to 0 turn
read lash[1, in] 0.42 loose with G3
? 0 from setting T-1 lash "1, in" --json
? says: "set": "1, in"
? says: "asks": "tighten"
tighten lock nuts[1, in] with W1
read lash[1, in] 0.47 with G3
? read lash[1, in]: fail · high
? 0 from setting T-1 lash "1, in" --json
? says: "asks": "move"
? says: "move": "-5/24"
? says: "Then expect 0.18, between 0.16 and 0.20, tight."
? 0 from sheet T-1
? says nothing of: set in one try
? says nothing of: places set
slacken lock nuts[1, in]
move lash[1, in] by -5/24 turn
read lash[1, in] 0.21 loose with G3
? 0 from setting T-1 lash "1, in" --json
? says: "move": "-1/12"
move lash[1, in] by -1/12 turn
read lash[1, in] 0.13 loose with G3
tighten lock nuts[1, in] with W1
read lash[1, in] 0.18 with G3
? read lash[1, in]: pass
? 0 from setting T-1 lash "1, in"
? says: lash[1, in], in mm: 0.15 to 0.25
? says: Nothing more is asked of it.
? says: Leave it: a further move is no better than this (chance 1.00).
move lash[1, ex] to 0 turn
read lash[1, ex] 0.46 loose with G3
? read lash[1, in]: pass
? 0 from setting T-1 lash "in 1" --json
? says: "asks": "done"
? 0 from setting T-1 lash "1, ex" --json
? says: "move": "-7/48"
? says: It begins with 1 place set before, here or in earlier builds of the family.
? says: "earlier": 1
move lash[1, ex] to 1.5 turn
? 0 from setting T-1 lash "1, ex" --json
? says: "moved": "1.5"
strike last typo
? 0 from setting T-1 lash "1, ex" --json
? says: "moved": "0"
? says: "move": "-7/48"
move lash[1, ex] to -7/48 turn
read lash[1, ex] 0.31 loose with G3
? 0 from setting T-1 lash "1, ex" --json
? says: "move": "-1/48"
move lash[1, ex] by -1/48 turn
read lash[1, ex] 0.29 loose with G3
tighten lock nuts[1, ex] with W1
read lash[1, ex] 0.34 with G3
? read lash[1, ex]: pass
? 0 from setting T-1 lash "1, ex" --json
? says: "asks": "done"
slacken lock nuts[1, ex]
? read lash[1, ex]: in doubt · basis
? read lash[1, in]: pass
? 0 from setting T-1 lash "1, in" --json
? says: "asks": "done"
tighten lock nuts[1, ex] with W1
read lash[1, ex] 0.34 with G3
? read lash[1, ex]: pass
? 0 from sheet T-1 record
? says: lash[1, in], in mm: 0.15 to 0.25
? says: lash[1, ex], in mm: 0.30 to 0.40
? says nothing of: lash[2, in], in mm
? 0 from sheet T-1
? says: 2 of 4 places set, in 1 to 2 tries.
