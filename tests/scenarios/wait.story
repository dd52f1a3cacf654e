# Ten minutes between two pulls, from the last bolt of the first to the first bolt of the second.
plan: stretch
2001-09-10 08:00 MO pick up Head
08:00 tighten head nuts[1] stage 1 with W1
08:05 tighten head nuts[2] stage 1 with W1
? wait head nuts in Head, stage 2: open
08:14 waited head nuts stage 2
? wait head nuts in Head, stage 2: in doubt · window
strike last typo
? wait head nuts in Head, stage 2: open
08:15 tighten head nuts stage 3 all with W1
? wait head nuts in Head, stage 2: pass
