# A limit amended before anything is read: what is read then is judged by it, and passes.
plan: lash
2001-09-10 08:00 MO pick up Set
amend lash limits 0.10..0.30 "later sheet"
read lash 0.25 with G1
? read lash: pass = 0.25, amended
strike last typo
read lash 0.35 with G1
? read lash: fail · high = 0.35, amended
