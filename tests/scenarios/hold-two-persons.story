# A hold of two persons: every signature says what is still missing and how it is typed.
plan: hold
2001-09-10 08:00 MO look lid down yes
sign Lid
? answered: 2 signatures are missing (nothing left inside): another person writes it, as in `JT sign Lid`
? sign Lid, 2: open
JT sign Lid
? answered: One signature is missing (nothing left inside): another person writes it, as in `EV sign Lid`
? sign Lid, 3: open
sign Lid
? refused: this person has signed `Lid` already; its hold (nothing left inside) is still open
sign Lid, 2
? refused: the next signature of `Lid` is 3
EV sign Lid, 3
? counts: pass 4
