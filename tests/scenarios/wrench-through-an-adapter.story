# Through an adapter the wrench is set to less than the bolt gets: L 285, E 30, at 60° 15, in line 30.
# Its range is judged by what it was set to, and what a calibration found it to give is looked up
# there: found to give 90 of 95, it pulled the bolt that was to get 100 with 90 × 300 / 285. Where
# nobody knows what it was set to, nobody knows what the bolt got.
plan: levers
2001-09-10 08:00 MO pick up Pump
shop: 2001-09-01 08:00 MO tool W9 "click wrench 10-98" kind click wrench range 10..98 N·m reach 285 mm
shop: 2001-09-01 08:00 MO calibration W9 2001-09-01 good
shop: 2001-09-01 08:00 MO tool W8 "click wrench, nobody measured it" kind click wrench range 10..98 N·m
shop: 2001-09-01 08:00 MO calibration W8 2001-09-01 good
tighten flange stage 1 from 1 to 3 with W9
tighten flange[4] stage 1 with W9 adapter X1
tighten flange[5] stage 1 with W9 adapter X1
tighten flange[6] stage 1 with W9
tighten flange stage 2 from 1 to 3 with W9
tighten flange[4] stage 2 with W9 adapter X1
tighten flange[5] stage 2 90 with W9 adapter X1 at 0°
tighten flange[6] stage 2 with W8 adapter X1
? bolt flange in Pump[1], stage 2: in doubt · tool
? bolt flange in Pump[4], stage 1: pass
? bolt flange in Pump[4], stage 2: pass
? bolt flange in Pump[6], stage 2: in doubt · tool
tighten flange[2] stage 1 with W9 adapter X1 at 200°
? refused: `200 °` is no angle of an adapter
tighten flange[2] stage 1 with W9 adapter X1 at
? refused: a value is missing here
shop: 2001-09-20 08:00 MO calibration W9 2001-09-20 wrong "low" gave 19 at 19, 90 at 95
? 0 from trace tool W9
? says: flange in Pump  4      1, 2    20 of 20, 95
shop: 2001-09-20 08:00 MO calibration W8 2001-09-20 wrong "low" gave 90 at 100
? 0 from trace tool W8
? says: flange in Pump  6      2       unknown of 100
