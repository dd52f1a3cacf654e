# What was argued away of a bolt stays so for a reading taken with it, though the bolt is off again.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[3] stage 1 with W1
tighten caps[2] stage 1 with W1
tighten caps[1] stage 1 with W1
tighten caps[4] stage 1 with W1
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
? read bore*: in doubt · basis
uphold caps "stage 2 sets them" second JT
? read bore*: noted
slacken caps[3]
? read bore*: noted
