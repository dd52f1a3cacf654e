# What is worked out and rests on bolts: the doubt of a gauge found wrong is argued away, and loosening
# those bolts ends that, whichever doubt it was.
plan: chain
2001-09-10 08:00 MO pick up Chain
tighten tensioner bolts all with W1
read chain play[1, forth] 5.0 with G3
read chain play[1, back] 1.0 with G3
shop: 2001-09-20 08:00 MO calibration G3 2001-09-20 wrong "0.1 out"
? read chain slack[1]: in doubt · tool
2001-09-20 09:00 uphold chain slack[1] "0.1 leaves it 0.9 inside"
? read chain slack[1]: pass, upheld
slacken tensioner bolts[1]
? read chain slack[1]: in doubt · tool
