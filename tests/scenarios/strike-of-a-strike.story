# The wrong line was struck: the strike is struck, and what it took back counts as before.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
strike last typo
number: STRIKE
? read lash: open
strike #{STRIKE} "the reading was right"
? read lash: pass = 0.15
number: SECOND
strike #{SECOND} "no, it was not"
? read lash: open
? counts: open 10
