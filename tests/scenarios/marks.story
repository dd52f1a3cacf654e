# A mark that was seen to line up falls with the bolt that is slackened, not with its neighbours or
# another set's bolt of that number; one look at all of them falls with any.
plan: marks
2001-09-10 08:00 MO pick up Head
tighten nuts stage 1 all with W1
tighten nuts stage 2 all with W1
tighten studs stage 1 all with W1
pick up Proof
look nut mark[1] yes
look nut mark[2] yes
look nut mark[3] yes
look nut mark[4] no
look all marks line up yes
? look nut mark[1]: pass
? look nut mark[4]: fail · look
? look all marks line up: pass
slacken studs[2] "to see the stud"
? look nut mark[2]: pass
slacken nuts[3] "it had moved"
? look nut mark[3]: in doubt · basis
? look nut mark[2]: pass
? look all marks line up: in doubt · basis
tighten nuts[3] in Head stage 1 with W1
tighten nuts[3] in Head stage 2 with W1
look nut mark[3] yes
look all marks line up yes
? look nut mark[3]: pass
? look all marks line up: pass
