# A calibration lasts for 5,000 uses: the 5,001st is in doubt until the next one finds the wrench good,
# also where it is one of a hundred bolts ticked together, which are pulled again and again.
plan: many
2001-09-10 08:00 MO pick up Plate
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
? 0 from tool list
? says: W1    click wrench    2001-01-05  good             2002-01-05  4000
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 all with W1
tighten plate stage 1 from 51 to 100 with W1
? 0 from tool list
? says: W1    click wrench    2001-01-05  good             2002-01-05  4950
tighten plate stage 2 all with W1
? answered: W1 has now been used 5050 times since its calibration, which lasts for 5000
? bolt plate in Plate[7], stage 1: pass
? bolt plate in Plate[1], stage 2: pass
? bolt plate in Plate[50], stage 2: pass
? bolt plate in Plate[51], stage 2: in doubt · tool
? bolt plate in Plate[100], stage 2: in doubt · tool
? counts: open 1, pass 150, in doubt 50
tighten plate[1] stage 2 with W1
? bolt plate in Plate[1], stage 2: in doubt · tool
? counts: open 1, pass 149, in doubt 51
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 good
? counts: open 1, pass 200
