# Places that differ by as much as the limits lie apart: no setting serves, the part is to be looked
# at.
plan: advice
2001-09-10 08:00 MO pick up Backlash
move backlash to 1 turn
read backlash[1] 0.31 loose with G3
tighten carrier all with W1
read backlash 0.35 0.37 0.27 0.34 with G3
? 0 from setting T-1 backlash --json
? says: "Spread over rotation 0.10 and the gauge's 0.01 leave no room in 0.10: no setting can be shown to be inside; look at the part."
