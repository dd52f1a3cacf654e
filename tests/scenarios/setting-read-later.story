# What a later step reads once more is a requirement of its own: neither it, nor the re-torque before
# it, is of a try of the step in which it was set. Moved there, it is.
plan: reset
2001-09-10 08:00 MO pick up Lash
tighten head nuts all with W1
move lash to 0 turn
read lash 0.30 with G3
? read lash: pass
sign Lash
pick up Cold retorque
slacken head nuts all
tighten head nuts all with W1
read lash 0.36 with G3
? read lash in Cold retorque: fail · high = 0.36
? 0 from setting T-1 lash --json
? says: "verdict": "pass"
? says: "asks": "done"
? says nothing of: follow
move lash by -0.05 turn
read lash 0.31 with G3
? read lash in Cold retorque: pass = 0.31
? 0 from setting T-1 lash --json
? says: "0.31"
