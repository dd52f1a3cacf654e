# A group and a part that the plan does not have are asked for bolt by bolt and place by place, as
# if it had them.
plan: lash
2001-09-10 08:00 MO pick up Set
? planned 10, added 0, withdrawn 0
add group "carrier bolts" "longer bolts" in Set: {bolts: 1..2, stages: 10 > 25 N·m}
? planned 10, added 4, withdrawn 0
? bolt carrier bolts in Set[2], stage 2: open
tighten carrier bolts stage 1 all with W4
tighten carrier bolts[1] stage 2 with W4
? bolt carrier bolts in Set[1], stage 2: pass
add part "carrier bush" "scored" in Set
? planned 10, added 5, withdrawn 0
? fit carrier bush: open
add part "carrier shims" "bush is short" in Set: {at: left/right}
? planned 10, added 7, withdrawn 0
fit carrier bush new
? fit carrier bush: pass
