# A gauge was entered with a range that is not its own: once that is put right, every build that took
# it in is told, and judged by what is true. Out of use later, what it read stands.
plan: lash
2001-09-10 08:00 MO pick up Set
read shim 80.000 2.100 with G1
? read shim[1]: in doubt · tool = 80.000
shop: 2001-09-11 08:00 MO correct tool G1 "micrometer 0-100" kind micrometer range 0..100 mm step 0.001
? read shim[1]: fail · high
? read shim[2]: pass
shop: 2001-09-12 08:00 MO correct tool G1 "micrometer 75-100" kind micrometer range 75..100 mm step 0.001
? read shim[1]: fail · high
? read shim[2]: in doubt · tool = 2.100
shop: 2001-09-13 08:00 MO out of use tool G1 scrapped "anvil worn"
? read shim[1]: fail · high
2001-09-13 09:00 read shim[2] 2.100 with G1
? refused: tool `G1` is out of use: scrapped 2001-09-13, anvil worn; is it another one?
2001-09-13 09:00 read shim[2] 2.100 with G4
