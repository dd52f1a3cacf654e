# The program is killed in mid-angle, between two bolts: what it had acknowledged is there, the next
# bolt is unmistakable, and work goes on.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps[2] stage 2 with A1
tighten caps[3] stage 2 with A1
? killed once bolt caps in Block[3], stage 2: pass
? 0 from verify
? bolt caps in Block[*], stage 1: pass
? bolt caps in Block[2], stage 2: pass
? bolt caps in Block[3], stage 2: pass
? bolt caps in Block[1], stage 2: open
? bolt caps in Block[4], stage 2: open
2001-09-10 09:00 MO tighten caps[1] stage 2 with A1
tighten caps[4] stage 2 with A1
? bolt caps in Block*: pass
