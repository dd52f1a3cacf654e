# Whoever takes up a bolt that nobody asks for any more puts no doubt on those beside it.
plan: mockup
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with W1
withdraw caps[1] "helicoil pulled, left out"
slacken caps all
tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with W1
tighten caps[1] stage 1 with W1
? bolt caps in Block[2], stage 2: pass
