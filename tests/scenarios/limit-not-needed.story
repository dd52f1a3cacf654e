# A limit that uses what is not needed here is not dropped in silence: it is open until it is amended.
plan: bounds
2001-09-10 08:00 MO pick up Measure
read bush 60.00 with G1
read play 0.40 with G1
? read play: fail · high = 0.40
not needed bush "no bush on this one"
? read play: open = 0.40
amend play limits at most 0.50 "letter"
? read play: pass = 0.40, amended
