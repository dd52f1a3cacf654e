# The clock went back between the first pull and the end of the wait: whether it was long enough
# cannot be known.
plan: stretch
2001-09-10 08:00 MO pick up Head
08:00 tighten head nuts stage 1 all with W1
07:30 waited head nuts stage 2
? wait head nuts in Head, stage 2: in doubt · clock
? 0 from sheet T-1
? says: Undecided. The clock went back
uphold head nuts "by the kitchen timer" second JT
? wait head nuts in Head, stage 2: pass, upheld
