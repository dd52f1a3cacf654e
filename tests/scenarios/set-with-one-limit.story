# Thousandths of an inch typed where millimetres are asked: of what is set, no first reading lies as
# far from its one limit and its aim.
plan: set-with-one-limit
2001-09-10 08:00 MO pick up Gap
move gap to 0 turn
read gap 1.9 with G3
? answered: gap 1.90 mm: fail
? read gap: fail · high = 1.90
strike last typo
read gap 12 with G3
? answered: Far from its limits? 12.00 mm is kept
