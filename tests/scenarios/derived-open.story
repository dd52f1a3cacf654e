# A value worked out from several places is open while one of them is.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read journal 49.995 49.996 49.997 49.998 with G1
read bore[1] 50.040 50.041 with G1
read bore[2, front] 50.042 with G1
? read clearance[1]: pass = 0.044
? read clearance[2]: open
read bore[2, rear] 50.043 with G1
? read clearance[2]: pass = 0.044
