# Two people read the same place with the same gauge and agree: the later one counts, in the name
# of the one who read it; both stay.
plan: lash
2001-09-10 08:00 MO pick up Set
08:10 MO read lash 0.150 with G1
08:20 JT read lash 0.151 with G1
? read lash: pass = 0.15
? counts: open 9, pass 1
strike last typo
? read lash: pass = 0.15
08:30 JT strike last typo
? refused: this person has entered nothing
