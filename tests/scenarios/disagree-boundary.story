# Two readings of u = 0.001 each disagree beyond 2 · sqrt(2) · 0.001 = 0.00283 mm, and not before.
plan: lash
2001-09-10 08:00 MO pick up Set
read shim[1] 2.1000 with G1
read shim[1] 2.1028 with G1
? read shim[1]: pass
read shim[2] 2.1000 with G1
read shim[2] 2.1029 with G1
? read shim[2]: in doubt · disagree
