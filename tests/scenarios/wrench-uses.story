# A calibration lasts for 5,000 uses: the 5,001st is in doubt until the next one finds the wrench good.
# The hundred bolts are pulled again and again.
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
tighten plate stage 1 all with W1
tighten plate[1] stage 2 with W1
? answered: W1 was used 5000 times since its calibration: have it calibrated
? bolt plate in Plate[7], stage 1: pass
? bolt plate in Plate[1], stage 2: in doubt · tool
? counts: open 100, pass 100, in doubt 1
shop: 2001-09-20 08:00 MO calibration W1 2001-09-20 good
? bolt plate in Plate[1], stage 2: pass
