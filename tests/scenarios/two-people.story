# Two people read the same place with the same gauge and agree: the later one counts; both stay, and
# each strikes only what is their own as `last`.
plan: lash
2001-09-10 08:00 MO pick up Set
08:10 MO read shim[1] 2.100 with G1
08:20 JT read shim[1] 2.101 with G1
? read shim[1]: pass = 2.101
? counts: open 9, pass 1
strike last typo
? read shim[1]: pass = 2.100
08:30 JT strike last typo
? refused: this person has entered nothing
