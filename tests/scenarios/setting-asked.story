# What a setting comes to is told to who asks: its tries, what is asked next and the advice.
plan: setting
2001-09-10 08:00 MO pick up Backlash
? 0 from setting T-1 backlash
? says: backlash, in mm: 0.08 to 0.18
? says: Next: move the jackscrew.
move backlash to 0.5 turn
? 0 from setting T-1 backlash
? says: Next: read it loose at 1.
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
? 0 from setting --json T-1 backlash
? says: "asks": "tight"
? says: "reads": "backlash"
? says: "place": "1"
read backlash[1] 0.53 with G3
number: WRONG
strike #{WRONG} typo
read backlash[1] 0.35 with G3
? 0 from setting T-1 backlash
? says: try turn loose at 1 at 2      0.05                         0.37
? says: 1 0.50  0.31 0.35      fail    ├─────────┤               ▒█▒
? says: --read backlash[1] 0.53 mm with G3-- struck: typo
? says: Advised: turn in 0.347, to 0.15.
? says: Tighten when loose reads 0.07 to 0.09.
? 0 from setting --json T-1 backlash
? says: "move": "-0.347"
? says: "to": "0.153"
? says: "asks": "move"
? says: "moved": "0.5"
slacken carrier all
move backlash by -0.3 turn
read backlash[1] 0.20 loose with G3
? 0 from setting T-1 backlash
? says: Next: move the jackscrew.
? 2 from setting T-1 backlsh
? says: `backlsh` is no check of the plan; did you mean `backlash`?
? 2 from setting T-2 backlash
? says: there is no build `T-2`
