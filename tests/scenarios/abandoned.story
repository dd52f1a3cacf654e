# A build given up: sealed as abandoned, with what was open then; no gate becomes complete by that.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
seal abandoned
? counts: open 9, pass 1
? left for first start: 7
? 1 from assess T-1 --gate "first start"
? 0 from sheet T-1 record
? says: abandoned
? 0 from verify
