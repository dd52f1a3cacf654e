# What was known at an entry can be asked for later, whatever was entered since.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
number: PASSED
strike last typo
read lash 1.50 with G1
? read lash: fail · high
? 0 from assess T-1 --as-of #{PASSED} --all
? says: pass
