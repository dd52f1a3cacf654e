# A single-use bolt slackened after its angle and used again is spent, until a new one is fitted.
plan: stretch
2001-09-10 08:00 MO pick up Rods
fit rod bolts lot B-1 new
tighten rod bolts stage 1 all with W1
slacken rod bolts[1] "before its angle, so it is not used up"
tighten rod bolts[1] stage 1 with W1
tighten rod bolts stage 2 all with A1
? bolt rod bolts in Rods*: pass
slacken rod bolts[2]
tighten rod bolts[2] stage 1 with W1
tighten rod bolts[2] stage 2 with A1
? bolt rod bolts in Rods[1], stage *: pass
? bolt rod bolts in Rods[2], stage *: in doubt · spent
uphold rod bolts[2] "it will hold"
? refused: a spent bolt cannot be upheld
slacken rod bolts[2]
fit rod bolts[2] lot B-1 new
tighten rod bolts[2] stage 1 with W1
tighten rod bolts[2] stage 2 with A1
? bolt rod bolts in Rods*: pass
