# The engine came back after its run: a check of an earlier step is asked for once more in a step
# that was added. That is a requirement of its own; the earlier one keeps its value, noted once the
# later one ends pass.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
? read lash: pass
add step "500 km" "run in" behind Papers
add check lash "500 km run" in 500 km: again
? planned 10, added 2, withdrawn 0
? read lash in 500 km: open
? read lash: pass
read lash in 500 km 0.18 with G1
? read lash in 500 km: pass
? read lash: noted
