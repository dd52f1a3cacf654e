# A caliper cannot tell what is asked for; the micrometer beside it can, and a later look with the
# caliper takes nothing from it.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.1 with G2
? read lash: in doubt · gauge = 0.10
read lash 0.150 with G1
? read lash: pass = 0.150
read lash 0.2 with G2
? read lash: pass = 0.150
uphold lash "it is good enough"
? refused: nothing there is in doubt
