# Each doubt of a place is said, in the answer and by assess, and just those are argued away: not
# those of a bolt that was conceded.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps[4] stage 1 with W2
tighten caps[2] stage 1 with W2
tighten caps[3] stage 1 with W2
tighten caps[1] stage 1 with W2
? answered: in doubt · tool, order
? 0 from assess T-1
? says: in doubt: tool, order
? says: in doubt: tool 
concede caps[2] stage 1 "known to be good" customer telephone
? bolt caps in Block[2], stage 1: conceded · tool
uphold caps "done once more by hand" second JT
? bolt caps in Block[4], stage 1: pass, upheld
? bolt caps in Block[3], stage 1: pass, upheld
? bolt caps in Block[2], stage 1: conceded · tool
? 0 from sheet T-1 record
? says: 2  Click wrench of caps had a calibration that ran out 2001-08-01. Upheld,
? says: 3  It was not done in the order asked for. Upheld, bolt 4, stage 1: done
? says: pass        #9 3 2
