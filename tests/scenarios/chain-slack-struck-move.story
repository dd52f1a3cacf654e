# A move of a setting that is worked out is struck: what was read for it behind the move joins the
# trial before, in doubt, until it is read again.
plan: chain
2001-09-10 08:00 MO pick up Chain
move chain slack to 1 turn
tighten tensioner bolts all with W1
read chain play 10.0 14.5 10.0 15.0 10.0 14.0 with G2
slacken tensioner bolts all
move chain slack by 1/8 turn
number: MOVE
tighten tensioner bolts all with W1
read chain play 10.0 14.5 10.0 15.0 10.0 14.0 with G2
? read chain slack*: pass
strike #{MOVE} not done
? read chain play*: in doubt · basis
? read chain slack*: in doubt · basis
read chain play[2, back] 10.0 with G2
read chain play[2, forth] 15.0 with G2
? read chain slack[2]: pass = 5.0
? read chain slack[3]: in doubt · basis
