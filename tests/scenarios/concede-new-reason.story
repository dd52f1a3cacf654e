# What was conceded is the value; a new doubt about the evidence was not.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.25 with G1
concede lash "raced on Sunday" customer letter
? read lash: conceded · high = 0.25
shop: 2001-09-20 08:00 MO calibration G1 2001-09-20 wrong "0.01 out"
? read lash: in doubt · tool = 0.25
