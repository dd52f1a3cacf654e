# What a part must pass to be used again is a check that rests on it: the value stands as it is fitted;
# with another one in its place it is read again.
plan: reuse
2001-09-10 08:00 MO pick up Measure
read span worn 0.03
? read span worn: pass
pick up Build
fit idler gear reused "half of what a new one may have"
? read span worn: pass
fit idler gear new
? read span worn: in doubt · basis
read span worn 0.01
? read span worn: pass
