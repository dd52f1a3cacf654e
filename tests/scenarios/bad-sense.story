# A number out of any sense is an answer like any other: it fails, or its gauge cannot have read it.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 1000000000000000000000000000000000000000 mm
? read lash: fail · high
strike last typo
read lash 150 with G1
? read lash: in doubt · tool = 150.00
strike last typo
read lash -0.15 with G1
? read lash: in doubt · tool = -0.15
