# Of a file every line that is refused is said by its number, and nothing of it is entered: mended it
# is fed whole, and nothing stands twice. Lines that come from a pipe are entered up to the first.
plan: lash
2001-09-10 08:00 MO pick up Set
? 2 from log T-1 refused.log
? says: line 4, column 11: a value is missing here
? says: line 6, column 20: there is no unit `O.2`
? says: nothing is entered from this file; mend 2 lines and feed it again whole
? 2 from log --check T-1 refused.log
? says: line 6, column 20: there is no unit `O.2`
? read lash: open
? read shim*: open
? 0 from log --check T-1 checked.log
? read shim*: open
read lash 0.15 with G1
read lash O.15 with G1
? refused: a value is missing here
? read lash: pass = 0.15
