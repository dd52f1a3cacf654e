# A lot is recalled after its parts were fitted: where they are is in doubt, and nowhere else.
plan: parts
2001-09-10 08:00 MO fit shells[1] lot SH-A new
fit shells[2] lot SH-B new
? fit shells*: pass
shop: 2001-09-20 08:00 MO recall lot SH-A "supplier's letter"
? fit shells[1]: in doubt · part
? fit shells[2]: pass
? 0 from sheet T-1 customer
? says: Undecided. Lot SH-A is recalled: supplier's letter.
? says nothing of: expired
? 0 from verify
