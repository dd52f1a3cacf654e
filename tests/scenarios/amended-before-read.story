# Limits amended before anything is read stand there from then on: who reads goes by them.
plan: lash
2001-09-10 08:00 MO pick up Set
amend lash limits 0.12..0.22 "other cam"
? read lash: open, amended
? 0 from sheet T-1 record
? says: Limits amended here to 0.12..0.22
read lash 0.21 with G1
? read lash: pass = 0.21, amended
