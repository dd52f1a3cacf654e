# A typing slip is struck: what it said is gone, its requirement is open again, and nothing else is
# touched.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 1.50 with G1
? read lash: fail · high = 1.50
? counts: open 9, fail 1
strike last typo
? read lash: open
? counts: open 10
read lash 0.15 with G1
? read lash: pass = 0.15
read shim 2.100 2.900 with G1
? read shim[1]: pass
? read shim[2]: fail · high
? read shim spread: fail · high
strike shim[2] "read the wrong scale"
? read shim[1]: pass
? read shim[2]: open
? read shim spread: open
? counts: open 8, pass 2
