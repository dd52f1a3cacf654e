# Two bolts slackened, and one of them taken through both stages before the other: its second stage
# had not the first on all that were done again.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
slacken caps[1]
slacken caps[3]
tighten caps[3] stage 1 with W1
tighten caps[3] stage 2 with A1
tighten caps[1] stage 1 with W1
tighten caps[1] stage 2 with A1
? bolt caps in Block[3], stage 1: pass
? bolt caps in Block[3], stage 2: in doubt · order
? bolt caps in Block[1], stage *: pass
? bolt caps in Block[2], stage *: pass
? bolt caps in Block[4], stage *: pass
