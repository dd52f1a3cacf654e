# What was laid before a joint was opened is broken with it: bolts done again on it are in doubt until
# it is laid anew, and only those that the plan gives it.
plan: sealant
2001-09-10 08:00 MO lay paste on sump lot P-1
2001-09-10 08:01 tighten sump stage 1 all with W4
tighten sump stage 2 all with W4
slacken sump[2] "looked at"
tighten sump[2] stage 1 with W4
tighten sump[2] stage 2 with W4
? bolt sump in Sump[1], stage *: pass
? bolt sump in Sump[2], stage 1: in doubt · part
slacken sump[2] "no paste"
lay paste on sump lot P-1
tighten sump[2] stage 1 with W4
tighten sump[2] stage 2 with W4
? bolt sump in Sump[*], stage *: pass
