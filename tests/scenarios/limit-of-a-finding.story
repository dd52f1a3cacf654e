# The limit of a finding is of what was found: later work on what it uses does not unsettle it.
plan: bounds
2001-09-10 08:00 MO pick up Look over
tighten pins all with W1
read skirt 60.00 with G1
read found play 0.20 with G1
? read found play: pass = 0.20
slacken pins[1]
? read skirt: in doubt · basis = 60.00
? read found play: pass = 0.20
