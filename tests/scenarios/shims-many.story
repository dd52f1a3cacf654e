# Of many sizes in stock those about the one advised are named, else about the one that stands in.
plan: shims-many
2001-09-10 08:00 MO pick up Float
? 0 from setting T-1 "end float"
? says: In stock, 7 of 21: 2.00, 2.05, 2.10, 2.15, 2.20, 2.25, 2.30 mm; none
move end float to 2.40 mm
? 0 from setting T-1 "end float"
? says: In stock, 7 of 21: 2.25, 2.30, 2.35, 2.40, 2.45, 2.50, 2.55 mm; 2.40
read end float 0.55 with G3
? 0 from setting T-1 "end float"
? says: put in the shim of 2.80 mm
? says: In stock, 7 of 21: 2.65, 2.70, 2.75, 2.80, 2.85, 2.90, 2.95 mm; 2.40
move end float to 3.00 mm
? 0 from setting T-1 "end float" --json
? says: 7 of 21: 2.70, 2.75, 2.80, 2.85, 2.90, 2.95, 3.00 mm; 3.00 stands in.
