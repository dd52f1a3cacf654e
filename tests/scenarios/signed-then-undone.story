# A signature stands for the work of its step: once a bolt of it is slackened or pulled again behind
# it, it is in doubt, the builder's as the hold's, until it is upheld, or the step is reopened and
# signed anew. What was done before the signature, or is read again, is none of it.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
slacken caps[4] "thread looked at"
tighten caps[4] stage 1 with W1
tighten caps[4] stage 2 with A1
read float 0.10 with G3
look clean yes
sign Block
JT sign Block
? sign Block, *: pass
MO read float 0.11 with G3
? sign Block, *: pass
slacken caps[2] "shell looked at"
? sign Block, 1: in doubt · basis
? sign Block, 2: in doubt · basis
tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
read float 0.11 with G3
? bolt caps in Block*: pass
? read float: pass = 0.11
? sign Block, 1: in doubt · basis
? sign Block, 2: in doubt · basis
uphold Block, 1 "did it myself" second JT
? sign Block, 1: pass, upheld
? sign Block, 2: in doubt · basis
tighten caps[1] stage 2 with A1
? sign Block, 1: in doubt · basis
reopen Block "caps done again"
? sign Block, *: open
sign Block
JT sign Block
? sign Block, *: pass
