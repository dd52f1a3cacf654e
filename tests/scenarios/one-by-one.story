# Taken up again one by one: a nut is slackened and tightened before the next is slackened. A check is
# a torque, for which the wrench must be fit; a slot is none.
plan: slots
2001-09-10 08:00 MO pick up Hub
tighten nuts stage 1 all with W1
tighten nuts stage 2 all
? bolt nuts in Hub*: pass
pick up Cold
tighten nuts[2] stage 1
tighten nuts[2] stage 2 with W1
tighten nuts[1] stage 1
tighten nuts[1] stage 2 with W1
tighten nuts[3] stage 1
tighten nuts[3] stage 2 with W1
? bolt nuts in Cold*: pass
pick up Last
tighten nuts stage 1 all with W2
? bolt nuts in Last*: in doubt · tool
tighten nuts stage 1 all with W1
? bolt nuts in Last*: pass
pick up Later
tighten nuts[2] stage 1 with W1
tighten nuts[2] stage 2
tighten nuts[1] stage 1 with W1
tighten nuts[1] stage 2
tighten nuts[3] stage 1 with W1
tighten nuts[3] stage 2
? bolt nuts in Later*: pass
