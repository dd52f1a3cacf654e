# A wrong unit or one that does not exist is refused; another unit of the same kind is taken and
# means what it says.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 N·m with G1
? refused: column 16: `N·m` is a torque, but a length is read here; write it in mm
read lash 0.15 mmm with G1
? refused: column 16: there is no unit `mmm`; did you mean `mm`?
read lash 0.15 kg with G1
? refused: column 16: `kg` is a mass
read lash 3/508 in with G1
? read lash: pass = 0.15
