# Lash read before and after the re-torque: the first is judged as it stood before that step
# disturbed it, and noted once the second ends well.
plan: again
2001-09-10 08:00 MO pick up Head on
tighten head nuts all with W1
read lash 0.30 with G1
? read lash: pass = 0.30
pick up Cold retorque
slacken head nuts all
tighten head nuts all with W1
? bolt head nuts in Head on*: pass
? bolt head nuts in Cold retorque*: pass
? read lash: pass = 0.30
? read lash in Cold retorque: open
read lash 0.36 with G1
? read lash in Cold retorque: fail · high = 0.36
? read lash: pass = 0.30
strike last "the wrong cylinder"
read lash 0.31 with G1
? read lash in Cold retorque: pass = 0.31
? read lash: noted = 0.30
