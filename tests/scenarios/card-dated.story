# With --dated a card of an earlier hour is typed in between: the clock has not gone back for that,
# and the wait that runs across it is as long as it was.
plan: sealant
? 0 from log --dated T-1 card-dated.log
? sign Fill, 1: pass
? 0 from sheet T-1 record
? says: 2001-09-10 07:30  JT
