# A gauge found wrong later puts its readings in doubt; upheld, they count again.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
read shim 2.100 2.110 with G3
shop: 2001-09-20 08:00 MO calibration G1 2001-09-20 wrong "0.01 out"
? read lash: in doubt · tool = 0.15
? read shim*: pass
2001-09-20 09:00 uphold lash "0.01 leaves it 0.04 inside"
? read lash: pass = 0.15, upheld
