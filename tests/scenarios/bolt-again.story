# Two bolts slackened and done again: they run their stages among themselves, in the order asked.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
? bolt caps in Block*: pass
slacken caps[1] "looked at the thread"
slacken caps[3] "looked at the thread"
? bolt caps in Block[1], stage *: open
? bolt caps in Block[3], stage *: open
? bolt caps in Block[2], stage *: pass
? bolt caps in Block[4], stage *: pass
tighten caps[3] stage 1 with W1
tighten caps[1] stage 1 with W1
tighten caps[3] stage 2 with A1
tighten caps[1] stage 2 with A1
? bolt caps in Block*: pass
? counts: open 16, pass 8
