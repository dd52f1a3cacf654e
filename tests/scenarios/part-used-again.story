# The plan asks for new shells, and used ones went in; a part that may be used again may.
plan: parts
2001-09-10 08:00 MO fit shells lot SH-A reused "they look well"
fit idler reused "teeth even, no pits"
? fit shells[1]: in doubt · part
? fit idler: pass
uphold shells[1] "run only for an hour, measured as new"
? fit shells[1]: pass, upheld
? fit shells[2]: in doubt · part
