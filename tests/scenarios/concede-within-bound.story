# Conceded up to a bound: within it a worse reading is conceded too, beyond it not; and a bound
# that does not reach is refused.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.25 with G1
concede lash to 0.24 "raced on Sunday" customer present
? refused: that is not far enough
concede lash to 0.28 "raced on Sunday" customer present
? read lash: conceded · high = 0.25
rework lash "set anew"
read lash 0.28 with G1
? read lash: conceded · high = 0.28
rework lash "set anew"
read lash 0.281 with G1
? read lash: fail · high = 0.281
