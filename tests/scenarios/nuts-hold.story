# A lock nut that is only said to be tight while the lash is read holds it all the same: it is
# slackened for the next move, what was read falls with it, and it is tightened in every try. What
# is taken off again holds nothing, nor what the plan says of another check.
plan: nuts
2001-09-10 09:00 MO pick up Lash
move lash[1] to 0 turn
read lash[1] 0.42 loose with G3
tighten lock nuts[1] with W1
read lash[1] 0.47 with G3
? 0 from setting T-1 lash 1 --json
? says: "asks": "move"
slacken lock nuts[1]
? read lash[1]: in doubt · basis
move lash[1] by -5/24 turn
read lash[1] 0.21 loose with G3
move lash[1] by -1/12 turn
read lash[1] 0.13 loose with G3
? 0 from setting T-1 lash 1 --json
? says: "asks": "tighten"
? says: "Tighten now; expect
tighten lock nuts[1] with W1
read lash[1] 0.18 with G3
? read lash[1]: pass
tighten clamp all with W1
tighten cap nuts all with W1
move float to 0 turn
read float 0.20 with G3
slacken clamp all
slacken cap nuts all
? read float: pass
