# What a wrench or an angle gauge showed is held to what the stage asks: more than a tenth away is
# another torque or turn, and fails until the bolt is done again or somebody concedes it.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[2] stage 1 5 with W1
? answered: bolt caps in Block[2], stage 1 5 of 40 N·m shown: fail · low. Torque far from what is asked? 5 N·m is kept, not 40 N·m
? bolt caps in Block[2], stage 1: fail · low
tighten caps[3] stage 1 44 with W1
tighten caps[1] stage 1 36 with W1
tighten caps[4] stage 1 44.1 with W1
? bolt caps in Block[3], stage 1: pass
? bolt caps in Block[1], stage 1: pass
? bolt caps in Block[4], stage 1: fail · high
tighten caps[2] stage 1 40 with W1
? bolt caps in Block[2], stage 1: pass
tighten caps[2] stage 2 9 with A1
tighten caps stage 2 from 3 to 4 89 with A1
? bolt caps in Block[2], stage 2: fail · low
? bolt caps in Block[4], stage 2: pass
concede caps[4], stage 1 "it is but a little" customer telephone
? bolt caps in Block[4], stage 1: conceded · high
? 1 from assess T-1 --gate "first start"
? says: 9 of 90° shown
? says: 44.1 of 40 N·m shown
? 0 from sheet T-1
? says: Conceded, bolt 4, stage 1, 44.1 of 40 N·m shown: it is but a little.
? says: Failed, bolt 2, stage 2, 9 of 90° shown. It lies below what was asked
? says: 2 of 4, 1 failed, 1 conceded
