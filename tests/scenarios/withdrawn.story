# A check withdrawn is asked for no more: it leaves the counts, and the sum still holds.
plan: lash
2001-09-10 08:00 MO pick up Papers
look sump gasket seen no
? look sump gasket seen: fail · look
? counts: open 9, fail 1
withdraw sump gasket seen "no gasket on this sump"
? planned 10, added 0, withdrawn 1
? counts: open 9
? left for hand over: 9
