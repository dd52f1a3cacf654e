# A move that is struck joins the readings behind it to the trial before, in doubt.
plan: setting
2001-09-10 08:00 MO pick up Backlash
move backlash to 0.2 turn
tighten carrier all with W1
read backlash 0.12 0.13 with G3
slacken carrier all
move backlash by 0.1 turn
number: MOVE
tighten carrier all with W1
read backlash 0.12 0.13 with G3
? read backlash*: pass
strike #{MOVE} not done
? read backlash*: in doubt · basis
