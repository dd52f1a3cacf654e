# A wrench found wrong, with what it gave in figures: one list says what each bolt really got, of
# what was read on the wrench or the plan asks for, and how it stands. A struck tick got nothing.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 with W1
08:10 tighten caps[3] stage 1 43 with W1
08:20 tighten caps[1] stage 1 30.5 with W1
08:30 tighten caps[4] stage 1 with W1
strike last "it was the old one"
tighten caps[4] stage 1 with W2
tighten caps stage 2 all with A1
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 wrong "low" gave 24 at 30, 45 at 50
? bolt caps in Block[*], stage 1: in doubt · tool
2001-09-20 09:00 MO uphold caps[3] "it holds" second JT
2001-09-21 08:00 MO shop calibration W1 2001-09-21 adjusted
slacken caps[1] "again"
tighten caps[1] stage 1 with W1
? 0 from trace tool W1
? says: caps in Block  2      1       34 of 40 N·m     #9  in doubt
? says: caps in Block  3      1       37 of 43 N·m    #10  upheld
? says: caps in Block  1      1       24.5 of 30.5    #11  done again
