# What the reader says of his own reading counts: the ± typed behind it adds to the doubt of the gauge,
# and can make what would pass be in doubt; a finer reading then settles it.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash "0.19 ± 0.05" with G1
? read lash: in doubt · gauge = 0.19
read lash 0.19 with G1
? read lash: pass = 0.19
