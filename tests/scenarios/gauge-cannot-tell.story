# What a gauge cannot tell is not upheld: it is read better, or conceded.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G2
? read lash: in doubt · gauge = 0.15
uphold lash "it is good enough"
? refused: what the gauge cannot tell cannot be upheld
concede lash "quiet, and rarely run"
? read lash: conceded · gauge = 0.15
