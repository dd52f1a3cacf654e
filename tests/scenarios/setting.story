# A loose reading advises and is not judged; a move after a tightened reading disturbs it.
plan: setting
2001-09-10 08:00 MO pick up Backlash
move backlash to 0.2 turn
read backlash[1] 0.10 loose with G3
? read backlash*: open
tighten carrier all with W1
read backlash 0.12 0.13 with G3
? read backlash*: pass
move backlash by 0.1 turn
? read backlash*: in doubt · basis
read backlash 0.17 0.19 with G3
? read backlash[1]: pass = 0.17
? read backlash[2]: fail · high = 0.19
