# A check that was added is named again with other places: they follow its own, with its limits
# where they have none themselves, and are asked for like them.
plan: lash
2001-09-10 08:00 MO pick up Set
add check "rod play" "worn" in Set: {at: 1..2, limits: 0.05 to 0.25 mm}
? planned 10, added 2, withdrawn 0
read rod play[1] 0.30 with G1
? read rod play[1]: fail · high = 0.30
add check "rod play" "a third was found" in Set: {at: 3..3}
? planned 10, added 3, withdrawn 0
? read rod play[1]: fail · high = 0.30
read rod play[3] 0.26 with G1
? read rod play[3]: fail · high = 0.26
add check "rod play" "and a longer rod" in Set: {at: 4/5, limits: max 0.40 mm}
? planned 10, added 5, withdrawn 0
number: MORE
read rod play[5] 0.35 with G1
? read rod play[5]: pass = 0.35
? read rod play[1]: fail · high = 0.30
? read rod play[4]: open
strike #{MORE} typo
? planned 10, added 3, withdrawn 0
? read rod play[3]: fail · high = 0.26
