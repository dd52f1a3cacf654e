# A place read with two gauges: the sheet and the history say truly why the one that counts does. It is
# the finer; of two as fine the later; or the other was out of its range or found wrong, and then even
# the finer one does not count. What was read before the parts were worked on is not beside it at all.
plan: lash
shop: 2001-09-01 08:00 MO tool G5 "micrometer 25-75" kind micrometer range 25..75 mm step 0.001
shop: 2001-09-01 08:00 MO calibration G5 2001-01-05 due 2002-01-05 good U 0.002 mm repeats 0.001 mm
shop: 2001-09-01 08:00 MO tool G6 "micrometer 0-25" kind micrometer range 0..25 mm step 0.001
shop: 2001-09-01 08:00 MO calibration G6 2001-01-05 due 2002-01-05 good U 0.002 mm repeats 0.001 mm
2001-09-10 08:00 MO pick up Set
read shim[1] 2.100 with G1
read shim[1] 2.10 with G3
? 0 from history shim
? says: Also read with a dial indicator; the finer gauge decides.
read shim[2] 2.099 with G6
read shim[2] 2.100 with G1
? 0 from history shim
? says: Also read with a micrometer; of two as fine the later reading decides.
read lash 0.15 with G5
read lash 0.15 with G3
? read lash: pass = 0.15
? 0 from history lash
? says: Also read with a micrometer, out of its range; the later reading decides.
? says nothing of: finer
shop: 2001-09-11 08:00 MO calibration G6 2001-09-11 wrong "reads 0.01 long"
? 0 from history shim
? says: Also read with a micrometer, found wrong; the later reading decides.
? says: the finer gauge decides
? 0 from sheet T-1
? says: Also read with a micrometer, found wrong; the later reading decides.
rework shim[2] "ground"
read shim[2] 2.050 with G1
? 0 from history shim
? says nothing of: found wrong
