# A whole step not needed: all it asks for, and its signature.
plan: lash
2001-09-10 08:00 MO not needed Papers "no papers with this engine"
? look sump gasket seen: not needed
? sign Papers, 1: not needed
? counts: open 8, not needed 2
? left for hand over: 8
