# A gauge set to zero on a known size is read as its dial stands: digits with a sign count its marks,
# a decimal is so much; before any zero, what is typed is the size.
plan: lash
2001-09-10 08:00 MO pick up Set
read shim[1] +2 with G1
? read shim[1]: pass = 2.000
strike last typo
zero G1 at 2.100 mm in "block 2.1"
read shim[1] +12 with G1
? read shim[1]: pass = 2.112
read shim[2] -0.005 with G1
? read shim[2]: pass = 2.095
? read shim spread: pass = 0.017
zero G1 at 2.105 in block
read shim[2] -10 with G1
? read shim[2]: pass = 2.095
zero G1 at 1 in in block
strike last typo
zero G1 2.1 mm
? refused: column 9: the size is missing here
