# The engine is sold after the seal: the build learns of it, and no verdict turns.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.15 with G1
seal first start
? counts: open 9, pass 1
shop: 2001-09-20 08:00 MO engine E-1 family E owner sallow "sold"
? counts: open 9, pass 1
? 0 from sheet T-1 record
? says: sold
? says: for Sallow Ferry
? 0 from verify
# Told within the build's own log, and sold back to an owner whom the build knows.
shop: 2001-09-21 08:00 MO owner reed "Reed and Rush"
2001-09-22 08:00 MO shop engine E-1 family E owner reed "sold on"
? 0 from sheet T-1 record
? says: for Reed and Rush
shop: 2001-09-23 08:00 MO engine E-1 family E owner sallow "bought back"
? 0 from sheet T-1 record
? says: for Sallow Ferry
? 0 from verify
# An owner is named by the name too, where only one has it.
shop: 2001-09-24 08:00 MO engine E-1 family E owner "Reed and Rush" "sold by name"
? 0 from sheet T-1 record
? says: for Reed and Rush
2001-09-25 08:00 MO shop owner rush "Reed and Rush"
shop engine E-1 family E owner "Reed and Rush" "to which of them?"
? refused: the shop has no owner `Reed and Rush`
shop owner tam "Tam Wharf"
shop engine E-1 family E owner "Tam Wharf" "as typed"
? 0 from sheet T-1 record
? says: for Tam Wharf
? 0 from verify
