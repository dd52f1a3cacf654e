# A tightened reading that was read again shows in its try, whichever of them counts, and so does
# what was struck, in the order of entry: in the table, in what is told and in the record.
plan: setting
2001-09-10 08:00 MO pick up Backlash
move backlash to 0.5 turn
read backlash[1] 0.10 loose with G3
tighten carrier all with W1
read backlash 0.12 0.15 with G3
read backlash[2] 0.16 with G3
? 0 from setting T-1 backlash
? says:                 0.15 before
? says: 1 0.50  0.10 0.12 0.16 pass
read backlash[1] 0.13 with G2
? 0 from setting T-1 backlash
? says:                 0.15 before
? says: 1 0.50  0.10 0.12 0.16 pass
? says:            0.13      later
read backlash[1] 0.9 with G3
strike last wrong place
? 0 from setting T-1 backlash --json
? says: "2": "0.15"
? says: "1": "0.13"
? says: "struck": "wrong place"
? says: "typed": "0.9 mm"
? 0 from sheet T-1 record
? says:                      0.15 before
? says:                 0.13      later
? says: --read backlash[1] 0.9 mm with G3-- struck: wrong place
