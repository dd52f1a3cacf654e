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
