# Slackening that the plan asks for is a stage, where the bolts stand at it; any other opens them.
plan: turnback
2001-09-10 08:00 MO pick up Head
tighten head stage 1 all with W1
slacken head[1] 1/4 turn
? answered: It counts as stage 2 of `head in Head`, slacken 1/4 turn
slacken head[2] 90°
? bolt head in Head[1], stage 1: pass
? bolt head in Head[2], stage 1: pass
? bolt head in Head[1], stage 2: pass
? bolt head in Head[2], stage 2: pass
tighten head stage 3 all with W1
? bolt head in Head*: pass
read lash 0.20 with G3
slacken head[1] 1/4 turn
? bolt head in Head[1], stage *: open
? bolt head in Head[2], stage *: pass
? read lash: in doubt · basis
tighten head[1] stage 1 with W1
slacken head[1] 1/2 turn "slipped"
? answered: It is no stage: stage 2 of `head in Head` is `slacken 1/4 turn`, and this went another way
? bolt head in Head[1], stage *: open
tighten head[1] stage 1 with W1
slacken head[1] 1/4 turn "by the book"
tighten head[1] stage 3 with W1
? bolt head in Head*: pass
pick up Cold
slacken head all 1/4 turn
? answered: It counts as stage 1 of `head in Cold`, slacken 1/4 turn
? bolt head in Head*: pass
? bolt head in Cold[1], stage 1: pass
tighten head stage 2 all with W1
? bolt head*: pass
