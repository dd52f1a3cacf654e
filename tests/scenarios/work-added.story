# Work that the plan does not have: it is asked for from then on, counted apart, and in the sum.
plan: lash
2001-09-10 08:00 MO pick up Set
? planned 10, added 0, withdrawn 0
? left for first start: 8
add check "carrier face flatness" "fretting seen" in Set: at most 0.05 mm
? planned 10, added 1, withdrawn 0
? read carrier face flatness: open
? left for first start: 9
read carrier face flatness 0.08 with G1
? read carrier face flatness: fail · high = 0.08
? counts: open 10, fail 1
strike last typo
read carrier face flatness 0.04 with G1
? read carrier face flatness: pass
? counts: open 10, pass 1
add step "Dye test" "a crack is feared" behind Set
? planned 10, added 2, withdrawn 0
? sign Dye test, 1: open
? counts: open 11, pass 1
? 0 from assess T-1 --all
? says: carrier face flatness
