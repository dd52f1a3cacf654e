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
? 0 from verify
