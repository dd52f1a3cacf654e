# An answer that is not the one wanted fails; conceded it is accepted, answered anew it is judged
# anew.
plan: lash
2001-09-10 08:00 MO pick up Papers
look sump gasket seen no
? look sump gasket seen: fail · look
concede sump gasket seen "seen by the customer" customer mail
? look sump gasket seen: conceded · look
look sump gasket seen yes
? look sump gasket seen: pass
