# Decisions can be struck like readings: what they said is gone, and the requirement is judged as if
# they had never been made.
plan: lash
2001-09-10 08:00 MO pick up Set
add check "carrier face flatness" "fretting seen" in Set: at most 0.05 mm
number: ADDED
read carrier face flatness 0.08 with G1
? planned 10, added 1, withdrawn 0
strike #{ADDED} "another engine"
? planned 10, added 0, withdrawn 0
? counts: open 10
read carrier face flatness 0.04 with G1
? refused: this is not the name of a check
read lash 0.25 with G1
concede lash "raced on Sunday" customer letter
number: CONCEDED
? read lash: conceded · high
strike #{CONCEDED} "he changed his mind"
? read lash: fail · high
amend lash limits 0.10..0.30 "later sheet"
number: AMENDED
? read lash: conceded · high, amended
strike #{AMENDED} "the sheet of another family"
? read lash: fail · high
not needed lash "no tappets"
number: NOT
? read lash: not needed
strike #{NOT} wrong place
? read lash: fail · high
withdraw lash "no tappets"
number: WITHDRAWN
? planned 10, added 0, withdrawn 1
strike #{WITHDRAWN} wrong place
? planned 10, added 0, withdrawn 0
? read lash: fail · high
? counts: open 9, fail 1
