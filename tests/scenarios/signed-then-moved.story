# A setting moved again behind the signature of its step: what was signed is not what stands. The
# signature is in doubt, also once it was read again, until the step is reopened and signed anew.
plan: setting
2001-09-10 08:00 MO pick up Backlash
move backlash to 0.2 turn
tighten carrier all with W1
read backlash 0.12 0.13 with G3
sign Backlash
? sign Backlash, 1: pass
read backlash 0.13 0.13 with G3
? sign Backlash, 1: pass
move backlash by 0.02 turn
? sign Backlash, 1: in doubt · basis
read backlash 0.14 0.14 with G3
? read backlash*: pass
? sign Backlash, 1: in doubt · basis
reopen Backlash "set once more"
sign Backlash
? sign Backlash, 1: pass
