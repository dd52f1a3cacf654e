# A bolt that stands turned is pulled once more: how far it is turned now nobody knows. Loosened and
# done again it passes; a torque clicked over it shows nothing either.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
tighten caps[2] stage 2 with A1
? answered: Bolt 2 was turned already and not loosened since: in doubt
? bolt caps in Block[2], stage 2: in doubt · order
? bolt caps in Block[2], stage 1: pass
? bolt caps in Block[1], stage 2: pass
tighten caps[3] stage 1 with W1
? bolt caps in Block[3], stage 1: in doubt · order
? bolt caps in Block[3], stage 2: pass
# The sheets say what happened, not that the order was wrong; so does what is upheld of it.
? 0 from sheet T-1
? says: Undecided. It was pulled once more after it was turned, without being
? says nothing of: not done in the order
uphold caps[3] stage 1 "the wrench clicked at once"
? 0 from sheet T-1 record
? says: far it is turned now is not known. Upheld, bolt 3, stage 1: the wrench
? says nothing of: not done in the order
slacken caps[2]
slacken caps[3]
tighten caps[2] stage 1 with W1
tighten caps[3] stage 1 with W1
tighten caps[2] stage 2 with A1
tighten caps[3] stage 2 with A1
? bolt caps in Block*: pass
# The second pull alone is struck: the first stands.
tighten caps[4] stage 2 with A1
? bolt caps in Block[4], stage 2: in doubt · order
number: A
strike #{A} typo
? bolt caps in Block*: pass
