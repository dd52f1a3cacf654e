# A finding answered by a decision; looking closer answers nothing yet.
plan: lash
2001-09-10 08:00 MO pick up Look over
read found wear 0.08 with G1
? read found wear: open = 0.08, own fail · high
decide found wear look closer "dye first"
? read found wear: open = 0.08, own fail · high
decide found wear keep "within what the maker lives with" customer letter
? read found wear: noted = 0.08, own fail · high, decided
# The record says what was found, and what was decided about it.
? 0 from sheet T-1 record
? says: As found it failed, 0.03 mm over. It lies above what was asked for.
? says: Decided 2001-09-10: keep, within what the maker lives with; the
# Nothing of a lot was used: no table stands there without a row.
? says nothing of: LOTS
# The customer reads that too.
? 0 from sheet T-1 customer
? says: FOUND AND DECIDED
? says: keep: within what the maker lives with.
