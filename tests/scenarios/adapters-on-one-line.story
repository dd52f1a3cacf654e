# Bolts of one line that the wrench reaches differently are entered and judged as if each had a line
# of its own: W9 may pull 93, and is set to 90 in line and to 95 at 60° for 100 N·m.
plan: levers
2001-09-10 08:00 MO pick up Pump
shop: 2001-09-01 08:00 MO tool W9 "click wrench 10-93" kind click wrench range 10..93 N·m reach 285 mm
shop: 2001-09-01 08:00 MO calibration W9 2001-09-01 good
tighten flange stage 1 all with W9
tighten flange stage 2 from 3 to 5 with W9 adapter X1
? bolt flange in Pump[3], stage 2: pass
? bolt flange in Pump[4], stage 2: in doubt · tool
? bolt flange in Pump[5], stage 2: in doubt · tool
? 0 from export T-1
? says: "bolts":["3"],"setting":{"value":"181/2","unit":"N·m","typed":"90.5"},"adapter":"X1"
? says: "bolts":["4","5"],"setting":{"value":"95","unit":"N·m","typed":"95"},"adapter":"X1 at 60°"
tighten flange stage 2 from 3 to 5 with W9 adapter X1 at 0°
? bolt flange in Pump[3], stage 2: pass
? bolt flange in Pump[4], stage 2: pass
? 0 from export T-1
? says: "bolts":["3","4","5"],"setting":{"value":"181/2","unit":"N·m","typed":"90.5"},"adapter":"X1 at 0°"
