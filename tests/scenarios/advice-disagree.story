# By a rule whose doubt is below its marks a reading again may fall on the next mark, which puts both
# in doubt: then it is said what to do.
plan: advice
2001-09-10 08:00 MO pick up Slack
shop: 2001-09-02 08:00 MO tool R1 "steel rule" kind rule range 0..300 mm step 1
shop: MO calibration R1 2001-09-02 due 2002-09-02 good U 0.3 mm
move slack to 1 turn
read chain[1, back] 10 loose with R1
read chain[1, forth] 13 loose with R1
tighten tensioner all with W1
read chain 10 14 10 15 10 14 10 14 with R1
? 0 from setting T-1 slack --json
? says: "kind": "read again"
? says: "asks": "tight"
? says nothing of: strike the one
read chain[2, forth] 14 with R1
number: AGAIN
? read slack[2]: in doubt · disagree
? 0 from setting T-1 slack --json
? says: Two readings of one place differ by more than their doubt allows: strike the one that was misread; if neither was, uphold.
strike #{AGAIN} "misread"
? 0 from setting T-1 slack --json
? says nothing of: strike the one
