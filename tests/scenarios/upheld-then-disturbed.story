# The doubt of a reading is argued away; a later disturbance ends that.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read float 0.10 with G3
slacken caps[2]
tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
? read float: in doubt · basis
uphold float "one bolt of four, the caps did not move" second JT
? read float: pass, upheld
slacken caps[3]
tighten caps[3] stage 1 with W1
tighten caps[3] stage 2 with A1
? read float: in doubt · basis
