# What was read for a setting that is worked out stays in the record when it is moved on within the
# try, whole or not.
plan: chain
2001-09-10 08:00 MO pick up Chain
move chain slack to 1 turn
read chain play[1, back] 10.0 loose with G2
read chain play[1, forth] 18.0 loose with G2
move chain slack to 1.25 turn
read chain play[1, back] 10.5 loose with G2
move chain slack to 1.5 turn
read chain play[1, back] 11.0 loose with G2
read chain play[1, forth] 16.0 loose with G2
? 0 from sheet T-1 record
? says: 1.00   8.0                before
? says: 1.25                      before
? says: 1 1.50   5.0
? says: chain play 1, back   10.0 mm
? says: chain play 1, forth  18.0 mm
? says: chain play 1, back   10.5 mm
? says: 1  chain play 1, back   11.0 mm
