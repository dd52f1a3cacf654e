# What does not exist is refused, and the nearest that does is named.
plan: caps
2001-09-10 08:00 MO pick up Block
raed bore[1, front] 50.040 with G1
? refused: column 1: `raed` is no verb; did you mean `read`?
pick up Blocks
? refused: column 9: this is not the name of a step; did you mean `Block`?
read boer[1, front] 50.040 with G1
? refused: column 6: this is not the name of a check; did you mean `bore`?
read bore[3, front] 50.040 with G1
? refused: `bore` has no place `3`; its places are main 1 2, end front rear
read bore[1, frond] 50.040 with G1
? refused: `bore` has no place `frond`
tighten cpas stage 1 all with W1
? refused: column 9: this is not the name of a bolt set; did you mean `caps`?
tighten caps[5] stage 1 with W1
? refused: `caps` has no place `5`; its places are bolt 1 2 3 4
tighten caps stage 3 all with W1
? refused: has no stage 3; its stages are 40 > +90°
tighten caps stage 1 from 4 to 2 with W1
? refused: the run goes backwards; the order asked is 2-3-1-4
tighten caps stage 1 with W1
? refused: which bolts?
tighten caps in Papers stage 1 all with W1
? refused: `Papers` has no `caps`; write `in Block`
tighten caps stage 1 all with W9
? refused: the shop has no tool `W9`; did you mean `W1`?
XX tighten caps stage 1 all with W1
? refused: the shop has no person `XX`
strike #99 typo
? refused: there is no entry #99
seal first strat
? refused: which gate? write one of: first start, hand over, abandoned
? 2 from log T-2
? says: there is no build `T-2`; did you mean `T-1`?
? 2 from assess T-2
? says: there is no build `T-2`; did you mean `T-1`?
? 2 from assess T-1 --gate "first strat"
? says: the plan has no gate `first strat`; it has first start, hand over
? counts: open 24
pick up Block
add check "rod play" "worn" in Block: {at: 1..2, limits: 0.1 to 0.3 mm}
read rod play[3] 0.2 with G1
? refused: `rod play` has no place `3`; its places are 1 2
