# What was found is as it counted when work began: rework does not bring back what was read before
# the bolts came off and was read again.
plan: bounds
2001-09-10 08:00 MO pick up Look over
tighten pins all with W1
read bush bore 60.20 with G1
slacken pins all "looked under"
tighten pins all with W1
read bush bore 60.0 with G2
? read found bore wear: pass = 0.00
rework bush bore "honed"
? read found bore wear: pass = 0.00
