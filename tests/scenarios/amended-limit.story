# A limit amended after the reading: what stood as a fail does not become a pass but shows as
# conceded, and names the amendment. Set anew and inside the plan's own limits, it passes.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.25 with G1
? read lash: fail · high = 0.25
amend lash limits 0.10..0.30 "later sheet"
? read lash: conceded · high = 0.25, amended
? counts: open 9, conceded 1
rework lash "set anew"
read lash 0.15 with G1
? read lash: pass = 0.15, amended
