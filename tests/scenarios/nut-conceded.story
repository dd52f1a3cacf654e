# A bolt that failed its stage holds nothing, but who concedes it accepts it as it is: what is read
# with it is in doubt no longer, unless it fails, or is in doubt, for a reason that nobody accepted.
plan: nuts
2001-09-10 09:00 MO pick up Lash
move lash[1] to 0 turn
tighten lock nuts[1] 12 N·m with W1
read lash[1] 0.20 with G3
? bolt lock nuts*[1]*: fail · low
? read lash[1]: in doubt · basis = 0.20
concede lock nuts[1] "soft stud, holds at 12" customer telephone
? bolt lock nuts*[1]*: conceded · low
? read lash[1]: pass = 0.20
tighten lock nuts[1] 30 N·m with W1
read lash[1] 0.20 with G3
? bolt lock nuts*[1]*: fail · high
? read lash[1]: in doubt · basis = 0.20
move lash[2] to 0 turn
tighten lock nuts[2] 12 N·m with W2
read lash[2] 0.20 with G3
? bolt lock nuts*[2]*: in doubt · tool
? read lash[2]: in doubt · basis = 0.20
concede lock nuts[2] "holds at 12, and W2 was compared with W1" customer telephone
? bolt lock nuts*[2]*: conceded · tool
? read lash[2]: pass = 0.20
