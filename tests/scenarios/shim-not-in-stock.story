# A shim that is not in stock is taken and said, with its neighbours.
plan: shims
2001-09-10 08:00 MO pick up Float
move end float to 2.45 mm
move end float by 0.05 mm
move end float by 0.05 mm
? answered: 2.55 mm is not in stock; nearest are 2.5 mm and 2.6 mm
move end float to 2.7 mm
? answered: 2.7 mm is not in stock; nearest is 2.6 mm
