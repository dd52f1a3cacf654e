# The plan wants the shells tracked by lot: without it they are not fitted.
plan: parts
2001-09-10 08:00 MO fit shells new
? fit shells*: open
fit shells lot SH-A new
? fit shells*: pass
