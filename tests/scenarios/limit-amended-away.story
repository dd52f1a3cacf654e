# Limits amended while those of the plan were in doubt concede that doubt, and name the amendment.
plan: bounds
2001-09-10 08:00 MO pick up Measure
read bush 60.00 with G4
read play 0.20 with G1
shop: 2001-09-20 08:00 MO calibration G4 2001-09-20 wrong "reads high"
? read play: in doubt · tool = 0.20
2001-09-20 09:00 MO amend play limits at most 0.25 "letter"
? read play: conceded · tool = 0.20, own in doubt · tool, amended
