# Bolt by bolt, the wait is over when those that are asked for have waited.
plan: twice
2001-09-10 08:00 MO pick up Block
withdraw nuts[2] "stud sheared, left out"
tighten nuts[1] stage 1 with W1
08:12 tighten nuts[1] stage 3 with W1
? wait nuts in Block, stage 2: pass
