# The plan asks for new bolts: one that was used before, and one of a lot past its date.
plan: stretch
2001-09-10 08:00 MO pick up Rods
fit rod bolts[1] reused "length as new"
fit rod bolts[2] lot B-OLD new
tighten rod bolts stage 1 all with W1
? fit rod bolts*: in doubt · part
? bolt rod bolts in Rods[*], stage 1: in doubt · part
