# A gauge as coarse as the room between the limits: it is said, and which would settle it.
plan: advice
2001-09-10 08:00 MO pick up Play
move play to 1 turn
read play 0.1 loose with G2
tighten strap all with W1
read play 0.1 with G2
? 0 from setting T-1 play --json
? says: "kind": "leave"
? says: "As near as this gauge can tell; 6 in 10. A gauge of 0.010 mm would settle it."
