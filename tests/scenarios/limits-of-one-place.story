# Limits may be said for one place of a check with several axes; the first that fit it count.
plan: lash
2001-09-10 08:00 MO pick up Set
add check "stop" "worn" in Set: {at: [1..2, in/ex], limits: {"2, ex": 1.0..1.4, ex: 1.0..1.2, in: 1.0..1.1}}
read stop[1, in] 1.25 with G1
read stop[1, ex] 1.15 with G1
read stop[2, in] 1.15 with G1
read stop[2, ex] 1.25 with G1
? read stop[1, in]: fail · high = 1.25
? read stop[1, ex]: pass = 1.15
? read stop[2, in]: fail · high = 1.15
? read stop[2, ex]: pass = 1.25
# Where two axes have the same labels, 1, 2 is another place than 2, 1.
add check "wear" "worn" in Set: {at: [cylinder, 1..2], limits: {"1, 2": 1.0..1.1, 1: 1.0..1.4, 2: 1.0..1.4}}
read wear[cylinder 1, 1..2 2] 1.25 with G1
read wear[cylinder 2, 1..2 1] 1.25 with G1
? read wear[1, 2]: fail · high = 1.25
? read wear[2, 1]: pass = 1.25
# An answer is one of those of its place.
add check "mark" "seen" in Set: {at: [cylinder, in/ex], limits: {"2, ex": dry of dry/wet, in: none of none/some, ex: none of none/some}}
look mark[2, ex] dry
? look mark[2, ex]: pass = dry
# A sheet names the limits that stood at that place.
amend stop[1, in] limits 1.0..1.3 "letter"
? 0 from sheet T-1 record
? says: Limits amended here to 1.0..1.3 mm; it was added here with 1.0..1.1 mm
