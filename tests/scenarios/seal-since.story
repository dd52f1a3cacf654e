# What is entered after a seal, and can change what its gate asks for, is not covered by it: that is
# said, once, until it is sealed anew. Work of a later gate and notes leave the seal as it is.
plan: caps
2001-09-10 08:00 MO pick up Block
read float 0.10 with G1
seal first start
pick up Papers
look papers given yes
note "the tin is green"
? 0 from assess T-1
? says: 21 left; 21 open, 1 pass; sealed 10 Sep 2001
? says nothing of: since
read float 0.11 with G1
number: AGAIN
? answered: 1 entry since the seal of first start (#10) is not covered by it: `seal first start` once more makes a supplement
strike #{AGAIN} "wrong engine"
? 0 from assess T-1
? says nothing of: since
look clean yes
number: CLEAN
sign Papers
read float 0.12 with G1
? 0 from assess T-1
? says: sealed 10 Sep 2001, 1 in
? 0 from sheet T-1
? says: 2 entries since then bear on this and are not covered by the seal.
? says: , 2 since
? 0 from assess T-1 --json
? says: "since": 2
seal first start
? 0 from assess T-1
? says nothing of: since
strike #{CLEAN} "one more look"
? 0 from sheet T-1
? says: 1 entry since then bears on this and is not covered by the seal.
