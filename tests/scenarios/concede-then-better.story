# Conceded, then set and measured better: inside its limits it passes, and the concession is not
# needed any more.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.25 with G1
concede lash "raced on Sunday" customer telephone
? read lash: conceded · high = 0.25
? counts: open 9, conceded 1
rework lash "set anew"
read lash 0.15 with G1
? read lash: pass = 0.15
? counts: open 9, pass 1
