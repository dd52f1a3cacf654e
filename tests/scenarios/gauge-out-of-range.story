# A value beyond the range of its gauge: the gauge cannot have read it.
plan: lash
2001-09-10 08:00 MO pick up Set
read shim 90.000 2.100 with G1
? read shim[1]: in doubt · tool = 90.000
? read shim[2]: pass
