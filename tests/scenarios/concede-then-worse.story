# Conceded as it stood, then measured worse, or on the other side: the concession does not reach
# that far.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.25 with G1
concede lash "raced on Sunday" customer telephone
rework lash "set anew"
read lash 0.26 with G1
? read lash: fail · high = 0.26
rework lash "set anew"
read lash 0.05 with G1
? read lash: fail · low = 0.05
