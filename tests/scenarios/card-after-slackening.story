# The same card, put behind the bolt's new tightening: the reading stands. A card without a place
# stands where it is typed.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
09:00 slacken caps[2]
09:10 tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
number: AGAIN
10:00 slacken caps[2]
10:10 tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
09:30 JT read float 0.10 with G3 from paper after #{AGAIN}
? read float: in doubt · basis = 0.10
10:30 JT read float 0.12 with G3 from paper
? read float: pass = 0.12
