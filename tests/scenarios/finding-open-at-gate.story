# A finding outside its limits that nobody has answered keeps its gate from being complete.
plan: lash
2001-09-10 08:00 MO pick up Look over
read found lash 0.15 with G1
read found wear 0.08 with G1
sign Look over
pick up Set
read lash 0.15 with G1
read shim 2.100 2.110 with G1
sign Set
? read found lash: pass = 0.15
? read found wear: open = 0.08, own fail · high
? left for first start: 1
? 1 from assess T-1 --gate "first start"
? says: found wear
? 1 from sheet T-1 completion --gate "first start"
? says: found wear
decide found wear replace "new sleeve"
? left for first start: 0
? 0 from assess T-1 --gate "first start"
? 1 from assess T-1 --gate "hand over"
