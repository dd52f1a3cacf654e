# Reading again until it passes shows: readings that differ by more than their doubt allows are in
# doubt until one is struck with a cause.
plan: lash
2001-09-10 08:00 MO pick up Set
read lash 0.250 with G1
? read lash: fail · high = 0.250
read lash 0.150 with G1
? read lash: in doubt · disagree = 0.150
read lash 0.150 with G1
? read lash: in doubt · disagree = 0.150
number: LAST
strike #{LAST} typo
strike last "the right one"
? read lash: fail · high = 0.250
JT read lash 0.150 with G1
? read lash: in doubt · disagree = 0.150
uphold lash "the first was taken on the lobe's flank" second MO
? read lash: pass = 0.150, upheld
