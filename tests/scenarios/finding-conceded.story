# A finding is answered as well by what settles it ending conceded.
plan: lash
2001-09-10 08:00 MO pick up Look over
read found lash 0.30 with G1
pick up Set
read lash 0.25 with G1
concede lash "raced on Sunday" customer present
? read lash: conceded · high
? read found lash: noted, own fail · high
