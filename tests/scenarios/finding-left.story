# A decision before anything is read answers nothing, and neither does a check that was withdrawn.
plan: lash
2001-09-10 08:00 MO pick up Look over
decide found wear keep "nothing read yet"
? read found wear: open
read found wear 0.08 with G1
? read found wear: open = 0.08, own fail · high
read found lash 0.30 with G1
withdraw lash "no tappets"
? read found lash: open = 0.30, own fail · high
