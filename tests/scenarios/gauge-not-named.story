# A reading that names no gauge does not take the doubt of a wrong gauge away; one that names another
# does, and from then on neither counts against it.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
read shim 2.100 2.110 with G1
shop: 2001-09-20 08:00 MO calibration G1 2001-09-20 wrong "0.01 out"
2001-09-20 09:00 read lash 0.15
? read lash: in doubt · tool = 0.15
? 0 from assess T-1 --json
? says: no gauge named: that does not answer for the gauge in doubt with which it was read before
2001-09-20 09:10 read lash 0.15 with G3
? read lash: pass = 0.15
2001-09-20 09:20 read lash 0.15
? read lash: pass = 0.15
2001-09-20 09:30 read shim 2.100 2.110
? read shim*: in doubt · tool
