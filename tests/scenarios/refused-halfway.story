# The first refused line stops the reading and is said by its number; what stands before it is
# taken, what stands behind it is not.
plan: lash
2001-09-10 08:00 MO pick up Set
? 2 from log T-1 refused.log
? says: line 4, column 11: a value is missing here
? says: 2 lines were taken before it
? read lash: pass = 0.15
? read shim*: open
? 0 from log --check T-1 checked.log
? read shim*: open
