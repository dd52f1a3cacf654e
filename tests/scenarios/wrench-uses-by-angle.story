# A stage by angle is no use of the torque wrench that turned it, and a turned bolt never wears it.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with W1
? bolt caps in Block*: pass
? 0 from tool list
? says: W1    click wrench    2001-01-05  good             2002-01-05     4
