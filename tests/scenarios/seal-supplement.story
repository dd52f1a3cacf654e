# What was handed over was handed over on the day of the first seal: a supplement is told beside it,
# with what each covers; what is left that was not then is left since the seal, on every page that
# says of a seal.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
read bore 50.040 50.041 50.042 50.043 with G1
read journal 49.995 49.996 49.997 49.998 with G1
read float 0.10 with G3
look clean yes
sign Block
JT sign Block
MO pick up Papers
look papers given yes
sign Papers
seal hand over
? 0 from build list
? says: hand over
? says: sealed 10
? says nothing of: since
2001-11-08 08:00 MO read float 0.11 with G3
seal hand over
? 0 from sheet T-1
? says: hand over 10 September 2001
? says: supplement 8 November 2001
? says: hand over sealed 10 September 2001: entries 1 to
? says: Sealed for hand over (supplement 1) on 8 November 2001 by Mab Orrin
? 0 from sheet T-1 record
? says: hand over 10 September 2001
? says: hand over sealed 10 September 2001: entries 1 to
? says: Sealed for hand over (supplement 1) on 8 November 2001 by Mab Orrin
2001-11-09 08:00 MO look papers given no
? 0 from sheet T-1
? says: Complete for first start. Since the seal of hand over: 1 left.
? says nothing of: Not complete
? 0 from assess T-1
? says: sealed 8 Nov 2001, 1 fail since
? 0 from build show T-1
? says: hand over: 1 left, sealed 8 Nov 2001, 1 fail since
