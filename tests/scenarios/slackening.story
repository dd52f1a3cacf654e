# Slackening one bolt: its stages are open again; what rests on the caps falls and keeps its value;
# what was only taken with them tight survives their removal.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
read journal 49.995 49.996 49.997 49.998 with G1
read float 0.10 with G3
look clean yes
? read clearance[1]: pass = 0.044
? read float: pass = 0.10
? counts: open 4, pass 16, noted 4
? left for first start: 2
slacken caps[2] "shell looked at"
? read float: in doubt · basis = 0.10
? read clearance[1]: pass = 0.044
? read clearance[2]: pass = 0.044
? bolt caps in Block[2], stage 1: open
? bolt caps in Block[2], stage 2: open
? bolt caps in Block[1], stage *: pass
? bolt caps in Block[3], stage *: pass
? bolt caps in Block[4], stage *: pass
? counts: open 6, pass 13, in doubt 1, noted 4
? left for first start: 5
tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
? bolt caps in Block*: pass
? read float: in doubt · basis = 0.10
read float 0.11 with G3
? read float: pass = 0.11
? counts: open 4, pass 16, noted 4
