# What nothing in the plan holds is not tightened by it: it is left as it stands, and read.
plan: advice
2001-09-10 08:00 MO pick up Nip
move nip to 0.50 turn
read nip 0.31 loose with G3
? 0 from setting T-1 nip --json
? says: "asks": "tight"
? says: "Leave it where it stands and read it tight; expect
? says nothing of: Tighten now
read nip 0.35 with G3
? 0 from setting T-1 nip
? says: Read it tight when loose reads
? says nothing of: Tighten when
? says nothing of: Tightening has
