# Grade B was chosen for main 1, and a shell of a lot of grade A went in.
plan: parts
2001-09-10 08:00 MO pick up Shells
read journal 49.980 50.000 with G1
choose clearance by grade[1] B
choose clearance by grade[2] A
? read clearance by grade[1]: pass = 0.040
? read clearance by grade[2]: pass = 0.040
fit shells[1] lot SH-A new
fit shells[2] lot SH-A new
? fit shells[1]: in doubt · part
? fit shells[2]: pass
? 0 from sheet T-1 customer
? says: It is of grade A, not of the one chosen.
fit shells[1] lot SH-B new
? fit shells[1]: pass
