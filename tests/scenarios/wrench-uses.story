# A calibration lasts for 5,000 uses: the 5,001st is in doubt until the next one finds the wrench good.
plan: many
2001-09-10 08:00 MO pick up Plate
tighten plate stage 1 all with W1
tighten plate stage 2 all with W1
tighten plate stage 3 all with W1
tighten plate stage 4 all with W1
tighten plate stage 5 all with W1
tighten plate stage 6 all with W1
tighten plate stage 7 all with W1
tighten plate stage 8 all with W1
? 0 from tool list
? says: W1    click wrench    2001-01-05  good             2002-01-05  4000
tighten plate stage 9 all with W1
tighten plate stage 10 all with W1
tighten plate[1] stage 11 with W1
? answered: W1 was used 5000 times since its calibration: have it calibrated
? bolt plate in Plate[7], stage 10: pass
? bolt plate in Plate[1], stage 11: in doubt · tool
? counts: open 500, pass 5000, in doubt 1
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 good
? bolt plate in Plate[1], stage 11: pass
