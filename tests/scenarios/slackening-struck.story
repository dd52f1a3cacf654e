# A slackening that was never done is struck: bolts and readings stand as before. A bolt that is not
# there holds up nothing.
plan: caps
2001-09-10 08:00 MO pick up Block
not needed caps[4] "three bolts on this one"
tighten caps stage 1 from 2 to 1 with W1
tighten caps stage 2 from 2 to 1 with A1
read bore 50.040 50.041 50.042 50.043 with G1
read float 0.10 with G3
? bolt caps in Block[4], stage *: not needed
? read bore*: noted
slacken caps[2]
? read float: in doubt · basis
? bolt caps in Block[2], stage *: open
strike last not done
? read float: pass
? bolt caps in Block[1], stage *: pass
? bolt caps in Block[2], stage *: pass
? bolt caps in Block[3], stage *: pass
