# Limits that no plan gave are their builder's own: other ones for a check added here concede nothing,
# and both stand in the record. Those of the plan, amended in the same build, do.
plan: lash
2001-09-10 08:00 MO pick up Set
add check "carrier play" "worn" in Set: 3 to 6 mm
read carrier play 7.0 with G1
? read carrier play: fail · high = 7.0
amend carrier play limits 3 to 8 mm "the sheet says so"
? read carrier play: pass = 7.0, amended
read lash 0.25 with G1
amend lash limits 0.10..0.30 "later sheet"
? read lash: conceded · high = 0.25, amended
