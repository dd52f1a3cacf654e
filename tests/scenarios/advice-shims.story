# Shims: the advice is one of those in stock, which is named, and which of them stands in.
plan: advice
2001-09-10 08:00 MO pick up Float
? 0 from setting T-1 float
? says: In stock: 1.00, 1.05, 1.10, 1.18, 1.40 mm; none stands in.
? says nothing of: at the smallest
? says nothing of: tight
move float to 1.10 mm
read float 0.19 with G3
? 0 from setting T-1 float --json
? says: "kind": "move"
? says: "to": "1.18"
? says: "In stock: 1.00, 1.05, 1.10, 1.18, 1.40 mm; 1.10 stands in."
? 0 from setting T-1 float
? says: put in the shim of 1.18 mm
? says nothing of: tight
move float to 1.18 mm
read float 0.11 with G3
? 0 from setting T-1 float --json
? says: "Leave it: a further move is no better than this (chance 1.00)."
? says: 1.18 stands in."
? 0 from setting T-1 float
? says: From 1.10 to 1.18 mm it fell by 0.08.
? says nothing of: tight
? 0 from sheet T-1
? says: Set in 2 tries. The shim, in mm: 1.18.
move float to 1.12 mm
? 0 from setting T-1 float
? says: 1.12 stands in, which is none of
