# A setting that is worked out: its move disturbs what is read for it, all of it or where it says;
# loose readings are not judged; every turn is judged, forth and back of one trial together.
plan: chain
2001-09-10 08:00 MO pick up Chain
move chain slack to 1 turn
read chain play[1, back] 10.0 loose with G2
read chain play[1, forth] 18.0 loose with G2
? read chain slack*: open
? read chain play*: open
tighten tensioner bolts all with W1
read chain play 10.0 17.0 10.0 17.5 10.0 16.5 with G2
? read chain slack[1]: fail · high = 7.0
? read chain play*: noted
slacken tensioner bolts all
? read chain slack*: in doubt · basis
? read chain play*: noted
move chain slack by 1/2 turn
? read chain play*: in doubt · basis
? counts: in doubt 9, open 3
tighten tensioner bolts all with W1
read chain play[1, back] 10.0 with G2
? read chain slack[1]: in doubt · basis
read chain play[1, forth] 14.5 with G2
? read chain slack[1]: pass = 4.5
? read chain slack[2]: in doubt · basis
read chain play 10.0 14.5 10.0 15.0 10.0 14.0 with G2
? read chain slack*: pass
? counts: pass 5, noted 6, open 1
