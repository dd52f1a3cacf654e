# A hold is signed by another person; a step reopened has no signatures.
plan: caps
2001-09-10 08:00 MO pick up Block
sign Block
? sign Block, 1: pass
sign Block
? refused: its hold (seen) is still open, and another person writes it, as in `JT sign Block`
JT sign Block
? sign Block, 2: pass
reopen Block "W2 reads low"
? sign Block, 1: open
? sign Block, 2: open
JT sign Block
? sign Block, 1: pass
