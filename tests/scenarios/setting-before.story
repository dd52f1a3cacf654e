# Where a setting stood and read loose within a try, before it was moved on, stays in its table: rows
# without a number above that of the try, in what is told of the setting and in the record.
plan: setting
2001-09-10 08:00 MO pick up Backlash
move backlash to 0.75 turn
read backlash[1] 0.45 loose with G3
move backlash to 0.6 turn
move backlash to 0.5 turn
read backlash[1] 0.30 loose with G3
read backlash[1] 0.31 loose with G3
? 0 from setting T-1 backlash
? says: 0.75  0.45           before
? says: 0.60                 before
? says: 0.50  0.30           before
? says: 1 0.50  0.31           open
tighten carrier all with W1
read backlash 0.35 0.37 with G3
? 0 from setting T-1 backlash
? says: 0.75  0.45           before
? says: 1 0.50  0.31 0.35 0.37 fail
? 0 from setting T-1 backlash --json
? says: "before": [
? says: "loose": "0.45"
? 0 from sheet T-1 record
? says: 0.75  0.45           before
? says: 0.60                 before
