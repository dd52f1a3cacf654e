# A limit worked out from a reading in doubt is in doubt; that is argued away where it is judged.
plan: bounds
2001-09-10 08:00 MO pick up Measure
read bush 60.00 with G4
read play 0.20 with G1
shop: 2001-09-20 08:00 MO calibration G4 2001-09-20 wrong "reads high"
? read play: in doubt · tool = 0.20
2001-09-20 09:00 MO uphold play "0.1 on 60 moves the limit by 0.0005" second JT
? read play: pass = 0.20, upheld
? read bush: in doubt · tool = 60.00
shop: 2001-09-21 08:00 MO calibration G4 2001-09-21 wrong "worse"
2001-09-21 09:00 MO read bush 60.00 with G4
? read play: in doubt · tool = 0.20
