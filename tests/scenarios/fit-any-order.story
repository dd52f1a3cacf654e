# What stands behind a part has no order; what the plan tracks is asked for in the answer, and said
# later at the same place.
plan: parts
2001-09-10 08:00 MO fit shells new lot SH-A
? fit shells*: pass
fit shells[2] new
? fit shells[2]: open
? answered: The plan asks for its lot; once that is known, write `strike shells[2] "lot known"` and `fit shells[2] lot … new after #
number: WITHOUT
strike shells[2] "lot known"
fit shells[2] lot SH-A new after #{WITHOUT}
? fit shells*: pass
fit shells[1] new lot SH-A reused
? refused: its condition is said twice; leave one out
fit idler "runs true" reused
? fit idler: pass
