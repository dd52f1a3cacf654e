# One adjuster moves places that want different things, or a move names a place though there is one
# adjuster for all: no move is advised, and that is said.
plan: screws
2001-09-10 09:00 MO pick up Gaps
move wedge gap to 0 turn
read wedge gap[in] 0.10 with G3
? 0 from setting T-1 "wedge gap" --json
? says: "kind": "none"
? says: No move is advised: one wedge moves all places, and their limits differ.
move peg gap to 0 turn
read peg gap[in] 0.10 with G3
? 0 from setting T-1 "peg gap" --json
? says: "kind": "move"
? says nothing of: No move is advised
move peg gap[ex] to 0.1 turn
? 0 from setting T-1 "peg gap" --json
? says: No move is advised: a move names a place, and the plan has one peg for all; it says `each: yes` where each place has its own.
