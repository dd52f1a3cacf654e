# The tube was past its date: every bolt it was laid for is in doubt.
plan: sealant
2001-09-10 08:00 MO pick up Sump
08:00 lay paste on sump lot P-OLD
08:01 tighten sump stage 1 all with W4
? bolt sump in Sump[*], stage 1: in doubt · part
? 0 from sheet T-1 record
? says: Paste P-OLD expired 2
? says nothing of: recalled
