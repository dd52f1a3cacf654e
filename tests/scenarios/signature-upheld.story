# A signature in doubt, of oil filled in too early: it is upheld, or conceded, by the name of its step.
plan: sealant
2001-09-10 08:00 MO pick up Sump
08:00 lay paste on sump lot P-1
08:01 tighten sump stage 1 all with W4
08:10 tighten sump stage 2 all with W4
08:50 sign Fill
? sign Fill, 1: in doubt · window
uphold Fill "a cold film of it held water" second JT
? sign Fill, 1: pass, upheld
2001-09-11 07:00 sign Run
? sign Run, 1: in doubt · window
concede sign Run, 1 "run dry for a minute" customer telephone
? sign Run, 1: conceded · window
