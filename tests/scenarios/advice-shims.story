# Shims: the advice is one of those in stock.
plan: advice
2001-09-10 08:00 MO pick up Float
move float to 1.10 mm
read float 0.19 with G3
? 0 from setting T-1 float --json
? says: "kind": "move"
? says: "to": "1.18"
? 0 from setting T-1 float
? says: put in the shim of 1.18 mm
move float to 1.18 mm
read float 0.11 with G3
? 0 from setting T-1 float --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
