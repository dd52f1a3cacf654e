# Beyond the limits is a fail; surely beyond the service limit is worn out.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read journal 49.980 49.980 49.980 49.980 with G1
read bore[1] 50.050 50.050 with G1
read bore[2] 50.080 50.080 with G1
? read clearance[1]: fail · high = 0.070
? read clearance[2]: fail · beyond wear = 0.100
