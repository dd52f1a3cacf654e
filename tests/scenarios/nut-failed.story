# A bolt that failed its stage holds nothing: what is read with it is in doubt, also once it was
# pulled again, until it is read again; a tenth beside what was asked is none.
plan: nuts
2001-09-10 09:00 MO pick up Lash
move lash[1] to 0 turn
read lash[1] 0.42 loose with G3
tighten lock nuts[1] with W1
read lash[1] 0.47 with G3
slacken lock nuts[1]
move lash[1] by -5/24 turn
read lash[1] 0.21 loose with G3
move lash[1] by -1/12 turn
read lash[1] 0.13 loose with G3
tighten lock nuts[1] 2 N·m with W1
? bolt lock nuts*[1]*: fail · low
? 0 from setting T-1 lash 1 --json
? says: "It is not held: lock nuts 1, 2 of 20 N
read lash[1] 0.20 with G3
? read lash[1]: in doubt · basis = 0.20
tighten lock nuts[1] 20 N·m with W1
? bolt lock nuts*[1]*: pass
? read lash[1]: in doubt · basis = 0.20
read lash[1] 0.21 with G3
? read lash[1]: pass = 0.21
move lash[2] to 0 turn
tighten lock nuts[2] 19 N·m with W1
read lash[2] 0.20 with G3
? read lash[2]: pass
