# The doubt of a wrench found wrong is argued away by one person and a second: what was read in
# those bolts counts again too.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
read journal 49.995 49.996 49.997 49.998 with G1
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 wrong "set 40 gives 39"
? bolt caps in Block[*], stage 1: in doubt · tool
2001-09-20 09:00 MO uphold caps "2 % low, and the angle stage sets the load" second MO
? refused: the second person must be another one
uphold caps "2 % low, and the angle stage sets the load" second JT
? bolt caps in Block[*], stage 1: pass, upheld
? bolt caps in Block[*], stage 2: pass
? read bore*: noted
? read clearance*: pass
