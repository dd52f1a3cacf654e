# The sealant was laid, and two of the bolts were taken up when it had skinned over. The second
# stage is not held to that.
plan: sealant
2001-09-10 08:00 MO pick up Sump
08:00 lay paste on sump lot P-1
08:02 tighten sump[1] stage 1 with W4
08:02:01 tighten sump stage 1 from 2 to 3 with W4
08:10 tighten sump stage 2 all with W4
? bolt sump in Sump[1], stage 1: pass
? bolt sump in Sump[2], stage 1: in doubt · window
? bolt sump in Sump[3], stage 1: in doubt · window
? bolt sump in Sump[*], stage 2: pass
uphold sump "cool day, still wet to the finger"
? bolt sump in Sump[2], stage 1: pass, upheld
