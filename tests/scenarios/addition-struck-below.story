# A step was added, and a check in it; the step is struck. The check falls with it, what was added
# elsewhere stands, and the build can be worked on, judged and printed as before.
plan: lash
2001-09-10 08:00 MO pick up Set
add step "Dye test" "a crack is feared" behind Set
number: STEP
add check "dye marks" "a crack is feared" in Dye test: at most 0.5 mm
add check "carrier flatness" "fretting seen" in Set: at most 0.05 mm
? planned 10, added 3, withdrawn 0
strike #{STEP} "wrong engine"
? planned 10, added 1, withdrawn 0
? read carrier flatness: open
? 0 from assess T-1 --all
? 0 from sheet T-1 record
read lash 0.15 with G1
? read lash: pass
