# Numbers that cannot be read, or are not what is asked for: refused with the place in the line and
# what to write instead; nothing is taken.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash
? refused: column 10: a value is missing here; write digits
read lash abc with G1
? refused: column 11: a value is missing here
read lash 0,1,5 with G1
? refused: column 14: `0,1,5` could be 01.5 or 0.15; write the one that is meant
read lash 0.1.5 with G1
? refused: column 14: `0.1` is a number by itself
read lash 1/0 with G1
? refused: column 13: a fraction cannot be over 0
read lash 12345678901234567890123456789012345678901 with G1
? refused: column 11: a number may have at most 40 digits
read lash 0.15 0.16 with G1
? refused: column 6: `lash` has one place here, but 2 values follow
read shim 2.100 with G1
? refused: column 6: `shim` has 2 places here, from `1` to `2`, but 1 follow
read shim spread 0.010 with G1
? refused: `shim spread` is worked out from other checks
look lash yes
? refused: write `read lash …`
look sump gasket seen maybe
? refused: write one of: yes, no
? counts: open 10
