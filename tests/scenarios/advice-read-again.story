# A difference by a rule, in doubt by its rounding, is read once more before it is left, place by
# place.
plan: advice
2001-09-10 08:00 MO pick up Slack
shop: 2001-09-02 08:00 MO tool R1 "steel rule" kind rule range 0..300 mm step 1
shop: MO calibration R1 2001-09-02 due 2002-09-02 good U 1 mm
move slack to 1 turn
read chain[1, back] 10 loose with R1
read chain[1, forth] 13 loose with R1
tighten tensioner all with W1
read chain 10 14 10 15 10 14 10 14 with R1
? 0 from setting T-1 slack --json
? says: "kind": "read again"
? says: "Read all places once more as they stand: the gauge leaves it in doubt."
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "1, back"
read chain[1, back] 10 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "1, forth"
read chain[1, forth] 14 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "2, back"
read chain[2, back] 10 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "2, forth"
read chain[2, forth] 14 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "3, back"
read chain[3, back] 10 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "3, forth"
read chain[3, forth] 14 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "4, back"
read chain[4, back] 10 with R1
? 0 from setting T-1 slack --json
? says: "asks": "tight"
? says: "place": "4, forth"
read chain[4, forth] 14 with R1
? 0 from setting T-1 slack --json
? says: "kind": "leave"
? says: "asks": "done"
? says nothing of: once more
