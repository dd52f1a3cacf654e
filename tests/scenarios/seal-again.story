# Nothing is closed for good: what is entered after a seal counts, and the next seal of that gate
# is numbered as a supplement. What is judged differently since is said.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
number: READ
seal first start
? answered: first start sealed with 7 left
number: SEALED
strike #{READ} dropped
? read lash: open
? 0 from sheet T-1
? says: pass then
seal first start
? 0 from export T-1
? says: "supplement":1
? 0 from assess T-1 --as-of #{SEALED} --all
? says: pass
? 0 from verify
