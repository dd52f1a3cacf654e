# A shell replaced: what was read on the old one is in doubt until it is read on the new one; the
# other shell's reading stands.
plan: parts
2001-09-10 08:00 MO pick up Shells
fit shells[1] lot SH-A new
fit shells[2] lot SH-A new
pick up Sizes
read shell height 1.990 1.991 with G1
? read shell height*: pass
fit shells[1] in Shells lot SH-A new
? fit shells*: pass
? read shell height[1]: in doubt · basis = 1.990
? read shell height[2]: pass = 1.991
read shell height[1] 1.989 with G1
? read shell height[1]: pass = 1.989
