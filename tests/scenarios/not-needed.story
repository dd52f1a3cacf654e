# Places that do not exist on this engine: not needed, with a reason; folds leave them out.
plan: lash
2001-09-10 08:00 MO pick up Set
read shim[1] 2.100 with G1
? read shim spread: open
not needed shim[2] "single cylinder"
? read shim[2]: not needed
? read shim spread: pass = 0.000
? counts: open 7, pass 2, not needed 1
not needed lash "no tappet on this engine"
? read lash: not needed
? left for first start: 4
