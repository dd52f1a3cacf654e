# The workshop's record prints every try of a setting, what was struck and what was read for it; the
# customer's sheet says once how many it took.
plan: chain
2001-09-10 08:00 MO pick up Chain
move chain slack to 1 turn
read chain play[1, back] 10.0 loose with G2
read chain play[1, forth] 18.0 loose with G2
tighten tensioner bolts all with W1
read chain play 10.0 17.0 10.0 17.5 10.0 16.5 with G2
slacken tensioner bolts all
move chain slack by 1/4 turn
strike last typo
move chain slack by 1/2 turn
tighten tensioner bolts all with W1
read chain play 10.0 14.5 10.0 15.0 10.0 14.0 with G2
? read chain slack*: pass
? 0 from sheet T-1 record
? says: 1 1.00   8.0  7.0  7.5  6.5 fail     ├──────────────┤ ▒█▒█▒▒█
? says: --move chain slack by 1/4 turn-- struck: typo
? says: 2 1.50        4.5  5.0  4.0 pass     ├───▒█▒▒█▒█▒───┤
? says: 1  chain play 1, forth  18.0 mm  17.0 mm
? 0 from sheet T-1 customer
? says: chain slack ×3 4.0 to 5.0 3.0 ├────███████────┤ 6.0 pass 1
? says: 1  Set in 2 tries.
