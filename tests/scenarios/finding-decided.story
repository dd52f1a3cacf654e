# A finding answered by a decision; looking closer answers nothing yet.
plan: lash
2001-09-10 08:00 MO pick up Look over
read found wear 0.08 with G1
? read found wear: open = 0.08, own fail · high
decide found wear look closer "dye first"
? read found wear: open = 0.08, own fail · high
decide found wear keep "within what the maker lives with" customer letter
? read found wear: noted = 0.08, own fail · high, decided
