# A card typed in an hour later, put where its work was done: before the bolt was slackened. The
# reading rests on what was slackened since.
plan: caps
2001-09-10 08:00 MO pick up Block
tighten caps stage 1 all with W1
tighten caps stage 2 all with A1
number: TIGHT
09:00 slacken caps[2]
09:10 tighten caps[2] stage 1 with W1
tighten caps[2] stage 2 with A1
10:00 note "now the card of half past eight"
08:30 JT read float 0.10 with G3 from paper after #{TIGHT}
? read float: in doubt · basis = 0.10
? bolt caps in Block*: pass
