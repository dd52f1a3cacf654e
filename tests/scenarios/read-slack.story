# A bore read with one bolt of its set not yet final: it is in doubt, and so is what is worked out
# from it.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 from 2 to 1 with A1
read bore 50.040 50.041 50.042 50.043 with G1
read journal 49.995 49.996 49.997 49.998 with G1
? read bore*: in doubt · basis
? read clearance*: in doubt · basis
? read journal*: pass
tighten caps[4] stage 2 with A1
? read clearance*: in doubt · basis
read bore[1] 50.040 50.041 with G1
? read clearance[1]: pass
? read clearance[2]: in doubt · basis
