# Where nobody knows which way it answers, a small move tells.
plan: advice
2001-09-10 08:00 MO pick up Lash
move lash to 1 turn
read lash[1] 0.31 loose with G3
tighten bracket all with W1
read lash 0.35 0.37 0.31 0.34 with G3
? 0 from setting T-1 lash --json
? says: "kind": "direction"
? says: "move": "1/12"
? says: "To see which way it answers: read it loose."
slacken bracket all
move lash by 1/12 turn
read lash[1] 0.36 loose with G3
? 0 from setting T-1 lash --json
? says: "kind": "move"
? says: "move": "-5/12"
? says nothing of: To see which way
