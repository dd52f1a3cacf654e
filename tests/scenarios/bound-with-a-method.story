# A bound that min or max passes on keeps its place under the doubt of the method.
plan: bounds
2001-09-10 08:00 MO pick up Measure
read gap[left] 0.10 with G1
read gap[right] >0.30 with G1
? read widest gap: fail · high = >0.30
strike last typo
read gap[right] <0.15 with G1
? read widest gap: pass = <0.15
