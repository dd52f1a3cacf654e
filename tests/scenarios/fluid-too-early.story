# Oil filled in before the sealant had cured: the signature of the step that begins it is in doubt;
# an hour after, and a day after for running, it is not.
plan: sealant
2001-09-10 08:00 MO pick up Sump
08:00 lay paste on sump lot P-1
08:01 tighten sump stage 1 all with W4
08:10 tighten sump stage 2 all with W4
08:59:59 sign Fill
? sign Fill, 1: in doubt · window
? 0 from sheet T-1
? says: Fill  in doubt  1
? says: Undecided. Fill was signed 2001-09-10 08:59; sump: no fluid before 09:00.
reopen Fill "too early"
? sign Fill, 1: open
09:00 sign Fill
? sign Fill, 1: pass
2001-09-11 07:59:59 sign Run
? sign Run, 1: in doubt · window
reopen Run "too early"
2001-09-11 08:00 sign Run
? sign Run, 1: pass
