# The journals are ground after they were read: what was read on them is in doubt, and all that is
# worked out from it or rests on it.
plan: parts
2001-09-10 08:00 MO pick up Shells
read journal 49.980 50.000 with G1
choose clearance by grade B
pick up Sizes
read journal taper 0.005 with G1
? read clearance by grade[1]: pass
? read journal taper: pass
rework journal[1] "ground, Brackwater Grinding"
? read journal[1]: in doubt · basis
? read journal[2]: noted
? read clearance by grade[1]: in doubt · basis
read journal[1] in Shells 49.979 with G1
? read journal[1]: noted
? read clearance by grade[1]: pass
? read journal taper: in doubt · basis
read journal taper 0.004 with G1
? read journal taper: pass
