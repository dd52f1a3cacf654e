# A move beyond the range of its setting, or between its steps, is taken and said; a wrong unit is
# refused.
plan: notch
2001-09-10 08:00 MO pick up Timing
move timing to 4 notch
move timing by 1
move timing by 2
? answered: 7 notch lies beyond the range of the stator plate, -6 notch to 6 notch
move timing to 1/2 notch
? answered: 1/2 notch is no multiple of its step, 1 notch
move timing by 3 mm
? refused: column 18: the stator plate is not moved in `mm`; write it in notch
move gap to 3.25 turn
? answered: 3.25 turn lies beyond the range of the wedge, 0 turn to 3 turn
move gap to 0.13 turn
move gap to 0.20 turn
? answered: 0.20 turn is no multiple of its step, 0.125 turn
move gap to 0.1 mm
? refused: `mm` is a length
